package cli

import (
	"os"
	"path/filepath"
	"runtime"
)

// The program's own folder in the folders that the system has for each user.
const ownFolder = "scratchpass"

// ConfigFile is where the program keeps what a user has set up.
func ConfigFile(name string) (string, error) {
	dir, err := os.UserConfigDir()
	return filepath.Join(dir, ownFolder, name), err
}

// DataFile is where the program keeps what it remembers of a user.
func DataFile(name string) (string, error) {
	dir, err := dataFolder()
	return filepath.Join(dir, ownFolder, name), err
}

// dataFolder is where the system keeps what programs remember of a user.
func dataFolder() (string, error) {
	if runtime.GOOS == "windows" || runtime.GOOS == "darwin" {
		return os.UserConfigDir() // there it is the same folder
	}
	if dir := os.Getenv("XDG_DATA_HOME"); filepath.IsAbs(dir) {
		return dir, nil
	}
	home, err := os.UserHomeDir()
	return filepath.Join(home, ".local", "share"), err
}
