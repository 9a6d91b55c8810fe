package sitting

import (
	"testing"
	"time"
)

// SaidAfter sets how long something may wait before that is said, while a test runs.
func SaidAfter(t *testing.T, wait time.Duration) {
	before := saidAfter
	saidAfter = wait
	t.Cleanup(func() { saidAfter = before })
}
