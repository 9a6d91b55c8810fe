package qti

import (
	"fmt"
	"path"
	"regexp"
	"slices"
	"strings"
	"testing"

	"scratchpass/quiz/drawing"
)

// image finds the address of an image in the text of a question.
var image = regexp.MustCompile(`<img src="([^"]*)"`)

// What a cartridge says of itself holds: every id stands once, every reference has its aim,
// the manifest lists each file of the zip and no other, each assessment has its questions, and
// the images of a question are found from the folder of its file.
func TestPartsOfACartridgeFit(t *testing.T) {
	pack := packageOf(V12, false)
	for s := range 3 {
		slot := Slot{ID: fmt.Sprint("form-", s), Title: fmt.Sprint("Form ", s)}
		for i := range 2 + s {
			it := oneItem(t)
			it.ID = fmt.Sprintf("q%d-%d", i, s)
			if i%2 == 0 {
				it.Picture = &drawing.Drawing{Title: "A dial", Twin: "A dial in words.", Width: 100, Height: 50}
			}
			slot.Items = append(slot.Items, it)
		}
		pack.Slots = append(pack.Slots, slot)
	}
	names, files := cartridged(t, pack)
	manifest := parse(t, files[manifestFile])

	ids, listed := map[string]int{}, []string{manifestFile}
	for _, name := range []string{"manifest", "organization", "item", "resource"} {
		for _, n := range manifest.all(name) {
			ids[n.attrs["identifier"]]++
		}
	}
	for _, f := range manifest.all("file") {
		listed = append(listed, f.attrs["href"])
	}
	resources := map[string]*tree{}
	for _, r := range manifest.all("resource") {
		resources[r.attrs["identifier"]] = r
		if href := r.attrs["href"]; href != "" && files[href] == nil {
			t.Errorf("%s has no file %s", r.attrs["identifier"], href)
		}
		for _, d := range r.all("dependency") {
			if ids[d.attrs["identifierref"]] != 1 {
				t.Errorf("%s hangs on %s, which is not there", r.attrs["identifier"], d.attrs["identifierref"])
			}
		}
	}
	slices.Sort(listed)
	if there := slices.Sorted(slices.Values(names)); !slices.Equal(listed, there) {
		t.Errorf("listed are %q, there are %q", listed, there)
	}
	for id, times := range ids {
		if times != 1 || id == "" {
			t.Errorf("%q stands %d times", id, times)
		}
	}

	n := 0
	for _, item := range manifest.all("item") {
		ref := item.attrs["identifierref"]
		if ref == "" {
			continue // it holds the others
		}
		r := resources[ref]
		if r == nil {
			t.Errorf("%s is shown and not there", ref)
			continue
		}
		file := r.all("file")[0].attrs["href"]
		questions := parse(t, files[file]).all("item")
		if want := len(pack.Slots[n].Items); len(questions) != want || item.kid("title").text == "" {
			t.Errorf("%s has %d questions, want %d", file, len(questions), want)
		}
		n++
		within := map[string]bool{}
		pictures := 0
		for _, q := range questions {
			if within[q.attrs["ident"]] {
				t.Errorf("%s: %s stands twice", file, q.attrs["ident"])
			}
			within[q.attrs["ident"]] = true
			for _, m := range q.all("mattext") {
				for _, found := range image.FindAllStringSubmatch(m.text, -1) {
					pictures++
					rest, token := strings.CutPrefix(found[1], "$IMS-CC-FILEBASE$")
					if at := path.Join(path.Dir(file), rest); !token || files[at] == nil {
						t.Errorf("%s: no picture at %s", file, found[1])
					}
				}
			}
		}
		if pictures != len(r.all("dependency")) || pictures == 0 {
			t.Errorf("%s shows %d pictures and hangs on %d", file, pictures, len(r.all("dependency")))
		}
	}
	if n != len(pack.Slots) {
		t.Errorf("%d assessments are shown, want %d", n, len(pack.Slots))
	}
}
