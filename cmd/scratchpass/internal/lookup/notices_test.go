package lookup

import (
	"os"
	"runtime"
	"slices"
	"strings"
	"testing"

	"scratchpass/content"
)

// Everything that the module needs outside its tests has a notice, with its text; nothing
// in one is obeyed by a terminal. What exactly is compiled in, the check in .ci/notices
// knows.
func TestNotices(t *testing.T) {
	docs := splitNotices(notices)
	var names []string
	for _, d := range docs {
		names = append(names, d.Name)
		if d.Version == "" || d.Licence == "" || len(d.Text) < 20 || content.Printable(strings.ReplaceAll(d.Text, "\t", " ")) != strings.ReplaceAll(d.Text, "\t", " ") {
			t.Errorf("%s %s, %s: %.60q", d.Name, d.Version, d.Licence, d.Text)
		}
		if strings.HasPrefix(d.Name, "Go,") && d.Version != runtime.Version() {
			t.Errorf("%s has the version %s", d.Name, d.Version)
		}
	}
	for _, want := range []string{"SQLite, in modernc.org/sqlite", "DejaVu fonts, in github.com/go-fonts/dejavu", "Go, its standard library and run time", "github.com/inconshreveable/mousetrap"} {
		if !slices.Contains(names, want) {
			t.Errorf("no notice of %s", want)
		}
	}
	module, err := os.ReadFile("../../../../go.mod")
	if err != nil {
		t.Fatal(err)
	}
	for _, d := range docs {
		if strings.Contains(d.Name, ".") && !strings.Contains(d.Name, " ") && !strings.Contains(string(module), d.Name+" "+d.Version) {
			t.Errorf("%s %s is not what the module asks for", d.Name, d.Version)
		}
	}
}
