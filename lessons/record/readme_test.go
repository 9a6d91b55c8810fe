package record_test

import (
	"os"
	"reflect"
	"slices"
	"strings"
	"testing"

	"scratchpass/lessons/record"
)

// The table of the export in README.md has a row for every field, in the order in which
// they are written, and says of each whether it may be missing.
func TestReadmeTellsEveryField(t *testing.T) {
	text, err := os.ReadFile("README.md")
	if err != nil {
		t.Fatal(err)
	}
	_, table, _ := strings.Cut(string(text), "## The export")
	table, _, _ = strings.Cut(table, "A rehearsal is a line as well")
	var told, written []string
	for line := range strings.Lines(table) {
		cells := strings.Split(line, "|")
		if len(cells) < 4 || !strings.Contains(cells[1], "`") {
			continue
		}
		field := strings.Trim(cells[1], " `")
		if strings.Contains(cells[2], "not there") {
			field += ",omitempty"
		}
		told = append(told, field)
	}
	for fields, i := reflect.TypeFor[record.Answer](), 0; i < fields.NumField(); i++ {
		written = append(written, fields.Field(i).Tag.Get("json"))
	}
	if !slices.Equal(told, written) {
		t.Errorf("told %v\nwritten %v", told, written)
	}
}

// The table of a rehearsal has every field too.
func TestReadmeTellsEveryFieldOfARehearsal(t *testing.T) {
	text, err := os.ReadFile("README.md")
	if err != nil {
		t.Fatal(err)
	}
	_, table, _ := strings.Cut(string(text), "A rehearsal is a line as well")
	table, _, _ = strings.Cut(table, "\n## ")
	for _, of := range []reflect.Type{reflect.TypeFor[record.Rehearsal](), reflect.TypeFor[record.MistakeMade](), reflect.TypeFor[record.Room](), reflect.TypeFor[record.SpeedRoom](), reflect.TypeFor[record.Way]()} {
		for i := range of.NumField() {
			name, rest, _ := strings.Cut(of.Field(i).Tag.Get("json"), ",")
			if !strings.Contains(table, "`"+name+"`") {
				t.Errorf("%s is not told of", name)
			}
			if rest == "omitempty" && !strings.Contains(table, "`"+name+"` | text, or not there") && !strings.Contains(table, "`"+name+"` | true, or not there") {
				t.Errorf("%s may be missing, and that is not told", name)
			}
		}
	}
}
