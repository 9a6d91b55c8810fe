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
	l := flock.New(path)
	return held(l, l.TryLock, l.TryLockContext, wait)
}

// LockShared is Lock for what several programs may do at once, but none of them while one
// has the lock for itself alone.
func LockShared(path string, wait time.Duration) (free func() error, err error) {
	l := flock.New(path)
	return held(l, l.TryRLock, l.TryRLockContext, wait)
}

func held(l *flock.Flock, try func() (bool, error), tryUntil func(context.Context, time.Duration) (bool, error), wait time.Duration) (free func() error, err error) {
	ok, err := try()
	if err == nil && !ok && wait > 0 {
		ctx, end := context.WithTimeout(context.Background(), wait)
		defer end()
		ok, err = tryUntil(ctx, lockTries)
	}
	switch {
	case ok:
		return l.Close, nil
	case err == nil || errors.Is(err, context.DeadlineExceeded):
		err = ErrHeld
	}
	return nil, fmt.Errorf("%s: %w", l.Path(), err)
}
