package main

import (
	"archive/zip"
	"bytes"
	"crypto/sha256"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

var updateSets = flag.Bool("update-sets", false, "write the hashes of sheets, keys and packages anew; look at them before committing")

// The sheets, keys and packages of the examples are byte for byte those that were
// looked at. Where a format is packed, what is inside counts: a packer may change with
// the Go release.
func TestSheetsAreThoseThatWereLookedAt(t *testing.T) {
	dir := t.TempDir()
	t.Setenv("XDG_CONFIG_HOME", dir)
	t.Setenv("XDG_DATA_HOME", dir)
	t.Setenv("HOME", dir)
	secret := filepath.Join(dir, "secret")
	if err := os.WriteFile(secret, []byte("a secret that stands in a test, so it is none\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	call := func(args ...string) {
		t.Helper()
		var out bytes.Buffer
		if code := run(t.Context(), args, strings.NewReader(""), &out, &out); code != 0 {
			t.Fatalf("%v: %d\n%s", args, code, out.String())
		}
	}
	sets := filepath.Join(dir, "sets")
	call("set", "example", sets)
	var hashes []string
	for _, name := range []string{"first-thread", "exit-ticket"} {
		blueprint, class := filepath.Join(sets, name+".yaml"), filepath.Join(sets, "roster.csv")
		call("set", "make", blueprint, "--roster", class, "--secret", secret, "--format", "html,text,codes", "--out", filepath.Join(dir, name, "sheets"))
		call("set", "make", blueprint, "--forms", "4", "--secret", secret, "--format", "qti3,qti2", "--out", filepath.Join(dir, name, "packages"))
		call("set", "key", blueprint, "--roster", class, "--secret", secret, "--format", "html,text", "--out", filepath.Join(dir, name, "key"))
		for _, part := range []string{"sheets", "packages", "key"} {
			hashes = append(hashes, hashOf(t, filepath.Join(dir, name, part))+"  "+name+"/"+part)
		}
	}
	got := strings.Join(hashes, "\n") + "\n"
	golden := filepath.Join("testdata", "sets.sha256")
	if *updateSets {
		if err := os.WriteFile(golden, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(golden)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("sheets that were handed out can't be made again as they were; where that is meant, run go test ./cmd/scratchpass -run Sheets -update-sets.\ngot:\n%swant:\n%s", got, want)
	}
}

// hashOf is one hash over the names and contents of all files below a folder, and of
// those inside of packages.
func hashOf(t *testing.T, dir string) string {
	t.Helper()
	contents := map[string][]byte{}
	err := filepath.WalkDir(dir, func(path string, entry os.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		text, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		name, _ := filepath.Rel(dir, path)
		if !strings.HasSuffix(name, ".zip") {
			contents[filepath.ToSlash(name)] = text
			return nil
		}
		z, err := zip.NewReader(bytes.NewReader(text), int64(len(text)))
		if err != nil {
			return err
		}
		for _, f := range z.File {
			r, err := f.Open()
			if err != nil {
				return err
			}
			inner, err := io.ReadAll(r)
			if err != nil {
				return err
			}
			contents[filepath.ToSlash(name)+"!"+f.Name] = inner
		}
		return nil
	})
	if err != nil || len(contents) == 0 {
		t.Fatalf("%s: %d files, %v", dir, len(contents), err)
	}
	var names []string
	for name := range contents {
		names = append(names, name)
	}
	slices.Sort(names)
	h := sha256.New()
	for _, name := range names {
		fmt.Fprintf(h, "%s %d\n", name, len(contents[name]))
		h.Write(contents[name])
	}
	return fmt.Sprintf("%x", h.Sum(nil))
}
