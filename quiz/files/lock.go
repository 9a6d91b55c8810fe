package files

import (
	"context"
	"errors"
	"fmt"
	"time"

	"github.com/gofrs/flock"
)

// ErrHeld says that another program holds a lock.
var ErrHeld = errors.New("another program is using it")

// lockTries is how long one waits before a lock is tried again.
const lockTries = 20 * time.Millisecond

// Lock takes the lock that a file stands for, and makes the file where there is none; while
// it is held no other program has it. Where another one holds it for longer than one waits,
// the error is ErrHeld. The lock goes with the process that holds it, killed or not, and
// the file stays: who takes it away may take it from under another's feet.
func Lock(path string, wait time.Duration) (free func() error, err error) {
	ctx, end := context.WithTimeout(context.Background(), wait)
	defer end()
	l := flock.New(path)
	held, err := l.TryLock()
	if err == nil && !held && wait > 0 {
		held, err = l.TryLockContext(ctx, lockTries)
	}
	switch {
	case held:
		return l.Close, nil
	case err == nil || errors.Is(err, context.DeadlineExceeded):
		err = ErrHeld
	}
	return nil, fmt.Errorf("%s: %w", path, err)
}
