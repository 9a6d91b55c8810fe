package cli

import (
	"errors"
	"fmt"
	"hash/crc32"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"scratchpass/quiz/files"
)

// LogLockEnding is put behind the name of a log: that file stands for the lock on it.
const LogLockEnding = ".lock"

// LogFile is where the log of a learner's rehearsal of a job is kept when nothing else is
// said: in a folder of the learner's own.
func LogFile(learner, job string) (string, error) {
	dir, err := logFolder(learner)
	return filepath.Join(dir, safeName(filepath.Base(job))+".log"), err
}

func logFolder(learner string) (string, error) {
	return DataFile(filepath.Join("rehearsals", safeName(learner)))
}

// ForgetLogs deletes the logs of a learner's rehearsals. Those that a rehearsal that goes on
// is still writing are left, and so are those that an earlier version kept elsewhere under a
// name that may be another learner's.
func ForgetLogs(learner string) (deleted, left []string, err error) {
	dir, err := logFolder(learner)
	if err != nil {
		return nil, nil, nil // no home, no logs
	}
	if deleted, left, err = forgetLogsIn(dir); err != nil {
		return deleted, left, err
	}
	earlier, err := filepath.Glob(filepath.Join(filepath.Dir(filepath.Dir(dir)), "dryrun-"+safeName(learner)+"-*"))
	return deleted, append(left, earlier...), err
}

func forgetLogsIn(dir string) (deleted, left []string, err error) {
	entries, err := os.ReadDir(dir)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil, nil
	}
	for _, e := range entries {
		path := filepath.Join(dir, e.Name())
		if strings.HasSuffix(path, LogLockEnding) {
			continue
		}
		free, e := files.Lock(path+LogLockEnding, 0)
		if errors.Is(e, files.ErrHeld) {
			left = append(left, path)
			continue
		}
		if e == nil {
			e = errors.Join(os.Remove(path), free())
		}
		if e != nil {
			return deleted, left, e
		}
		deleted = append(deleted, path)
	}
	if len(left) == 0 && err == nil {
		err = os.RemoveAll(dir) // with the locks that nobody holds
	}
	return deleted, left, err
}

// safeName makes a file name of a person's name. Letters that a file name had better
// not have are left out, and a sum over the name keeps two such names apart.
func safeName(name string) string {
	safe := strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '-' {
			return r
		}
		return '_'
	}, name)
	if safe != name {
		safe += fmt.Sprintf("-%08x", crc32.ChecksumIEEE([]byte(name)))
	}
	return safe
}
