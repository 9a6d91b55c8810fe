package files

import (
	"errors"
	"os"
	"runtime"
)

// SyncFolder waits until the names in a folder are on the disk: a file that was put in its
// place has its name for good only then. Windows does so by itself.
func SyncFolder(dir string) error {
	if runtime.GOOS == "windows" {
		return nil
	}
	d, err := os.Open(dir)
	if err != nil {
		return err
	}
	return errors.Join(d.Sync(), d.Close())
}
