package files

import (
	"fmt"
	"os"
	"path/filepath"
	"runtime"

	"github.com/gofrs/flock"
)

// lockName is the file that stands for the lock of a folder while someone has it.
const lockName = ".scratchpass-lock"

// folderLock is the right to write into a folder. It goes with the process that has it.
type folderLock struct {
	path string
	held *flock.Flock
}

// lockFolder takes the lock of a folder. Where another program has it the error is ErrHeld:
// nobody waits for a run that may take minutes.
func lockFolder(dir string) (*folderLock, error) {
	l := &folderLock{path: filepath.Join(dir, lockName)}
	const tries = 100 // each is lost only to another run that has just ended
	for range tries {
		l.held = flock.New(l.path)
		held, err := l.held.TryLock()
		switch {
		case err != nil:
			return nil, err
		case !held:
			return nil, fmt.Errorf("%s: %w: try again when it has ended", dir, ErrHeld)
		}
		if l.stands() {
			return l, nil
		}
		if err := l.held.Close(); err != nil {
			return nil, err
		}
	}
	return nil, fmt.Errorf("%s: %w", dir, ErrHeld)
}

// stands reports whether the file that was locked has its name still: who had the lock
// before may have taken it away after it was opened here.
func (l *folderLock) stands() bool {
	mine, err := l.held.Stat()
	if err != nil {
		return false
	}
	there, err := os.Stat(l.path)
	return err == nil && os.SameFile(mine, there)
}

// free gives the lock back and takes its file away. That is done before the lock is gone:
// after it the file may be another's. Windows takes no open file away, but none either that
// another has open.
func (l *folderLock) free() {
	err := os.Remove(l.path)
	l.held.Close()
	if err != nil && runtime.GOOS == "windows" {
		os.Remove(l.path)
	}
}
