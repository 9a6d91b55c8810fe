package set

import (
	"bytes"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// A list of sheets tells which of them another blueprint or secret would not make.
func TestOtherSheets(t *testing.T) {
	m, class := maker(t, twenty(19)), roster(30)
	class[3].ID = "=1+1" // a cell that is written with an apostrophe
	list := filepath.Join(t.TempDir(), "codes.csv")
	var text bytes.Buffer
	if err := m.WriteCodes(&text, class); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(list, text.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	others, err := m.OtherSheets(list, append(slices.Clone(class), Apprentice{ID: "late"}))
	if err != nil || len(others) != 0 {
		t.Errorf("the same set: %v, %v", others, err)
	}
	others, err = maker(t, twenty(20)).OtherSheets(list, class)
	if err != nil || len(others) != len(class) || others[3].Who.ID != "=1+1" || others[3].There == others[3].Here {
		t.Errorf("a blueprint with one question more: %d differ, %v", len(others), err)
	}
	if _, err := m.OtherSheets(list, []Apprentice{{ID: "late"}}); err == nil || !strings.Contains(err.Error(), "nobody") {
		t.Errorf("nobody of the class: %v", err)
	}
	if err := os.WriteFile(list, []byte("name,sheet\nAda,1\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := m.OtherSheets(list, class); err == nil || !strings.Contains(err.Error(), "id and code") {
		t.Errorf("another file: %v", err)
	}
}
