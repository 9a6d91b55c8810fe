package cli

import (
	"runtime/debug"
	"testing"
)

// Each way of building says what it can: a package its version, `go install` in a checkout
// its commit, `go run` that it is none of both.
func TestVersion(t *testing.T) {
	const commit = "v0.0.0-20261126221530-c9d289f0a1b2+dirty"
	for _, c := range []struct {
		name, released, module string
		known                  bool
		want                   string
	}{
		{"package", "1.2.3", "(devel)", true, "1.2.3"},
		{"package, built in a checkout", "1.2.3", commit, true, "1.2.3"},
		{"go install in a checkout", "", commit, true, commit},
		{"go run", "", "(devel)", true, "development"},
		{"test", "", "", true, "development"},
		{"nothing known", "", "", false, "development"},
	} {
		got := version(c.released, func() (*debug.BuildInfo, bool) {
			return &debug.BuildInfo{Main: debug.Module{Path: "scratchpass", Version: c.module}}, c.known
		})
		if got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}
