package handout

import (
	"flag"
	"os"
	"path/filepath"
	"testing"
)

var update = flag.Bool("update", false, "write the goldens anew")

// The goldens are what an apprentice and an instructor get. Of a PDF the hash of its
// unpacked streams is kept, the same on every machine.
func TestGolden(t *testing.T) {
	parts := map[string]func(Writer){
		"sheet":  sheets(fixedSheet()),
		"report": reports(fixedReport()),
		"key": func(w Writer) {
			keys(fixedKey())(w)
			_ = w.Tally("Bench 3", []string{"1. Compound travel for the depth", "2. Stop before gauging", "3. Dial after passes"})
		},
	}
	for name, part := range parts {
		for _, f := range Formats() {
			got := string(document(t, f.New, testOptions(A4), part))
			path := filepath.Join("testdata", name+f.Ending)
			if f.Name == "pdf" {
				got, path = unpackedSum(t, []byte(got))+"\n", path+".sum"
			}
			if *update {
				if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			if got != string(want) {
				t.Errorf("%s has changed: read the change, then run with -update\n%s", path, got)
			}
		}
	}
}
