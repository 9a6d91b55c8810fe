package qti

import (
	"bytes"
	"maps"
	"slices"
	"strings"
	"testing"
)

// seedPackages are packages as the writer makes them, one of each kind, with an item of
// each kind of answer.
func seedPackages(t testing.TB) map[string][]byte {
	t.Helper()
	slot := Slot{ID: "all", Title: "One of each"}
	for i, code := range []string{"single-depth@1-0001", "blank-diameter@1-0001", "cross-slide-return@1-0001", "square-the-tool@1-0001", "thread-dial-line@1-0001", "one-full-pass@1-0001", "inch-designation@1-0001"} {
		p := remade(t, code)
		slot.Items = append(slot.Items, Item{ID: "item" + string(rune('a'+i)), Problem: p, Words: wordsOf(t, p.Task.Name), Points: 1})
	}
	seeds := map[string][]byte{}
	for name, p := range map[string]Package{"2.1": packageOf(V21, false, slot), "3.0": packageOf(V30, false, slot), "3.0, choices": packageOf(V30, true, Slot{ID: "travel-slot", Items: []Item{fixedItem(t)}})} {
		var b bytes.Buffer
		if err := Write(&b, p); err != nil {
			t.Fatal(err)
		}
		seeds[name] = b.Bytes()
	}
	return seeds
}

// A package that was cut off anywhere, or in which a bit has changed, is told from a whole
// one: it is an error, or its files are the same all the same.
func TestDamagedPackagesAreTold(t *testing.T) {
	for name, whole := range seedPackages(t) {
		_, want, err := unpack(whole)
		if err != nil {
			t.Fatal(name, err)
		}
		for end := range len(whole) {
			if end%101 != 0 && end < len(whole)-40 {
				continue // near the end every byte counts
			}
			if _, _, err := unpack(whole[:end]); err == nil {
				t.Errorf("%s: cut off after %d of %d bytes it is read", name, end, len(whole))
			}
		}
		refused := 0
		for i := 0; i < len(whole); i += 41 {
			damaged := bytes.Clone(whole)
			damaged[i] ^= 1 << (i % 8)
			_, got, err := unpack(damaged)
			switch {
			case err != nil:
				refused++
			case !maps.EqualFunc(got, want, bytes.Equal):
				t.Errorf("%s: a bit at %d of %d changes what is read", name, i, len(whole))
			}
		}
		if refused < len(whole)/41/2 {
			t.Errorf("%s: only %d of %d damages were told", name, refused, len(whole)/41)
		}
	}
}

// What is no one document is told too.
func TestDamagedDocumentsAreTold(t *testing.T) {
	for text, want := range map[string]string{
		"<a/>": "", " <a>x</a>\n": "", "<?xml version=\"1.0\"?><a><b/></a>": "", "<a--b/>": "", "<qti-a-b/>": "", "<a x--y='1'/>": "",
		"": "0 elements", "x": "elements", "<a/><b/>": "2 elements", "<a/>x": "between them", "<a>": "unexpected EOF", "<a></b>": "element <a> closed by </b>", "</a>": "unexpected end element", "<a x=1/>": "unquoted",
		"<a>&no;</a>": "invalid character entity", "<a>\x00</a>": "illegal character", strings.Repeat("<a>", deepest+1) + strings.Repeat("</a>", deepest+1): "deep", strings.Repeat("<a>", deepest) + strings.Repeat("</a>", deepest): "",
	} {
		if _, err := readTree([]byte(text)); (err == nil) != (want == "") || err != nil && !strings.Contains(err.Error(), want) {
			t.Errorf("%.20q: %v, want %q", text, err, want)
		}
	}
	for name, want := range map[string]string{"qti-response-declaration": "responseDeclaration", "baseType": "baseType", "qti-": "", "a--b": "aB", "-a": "A"} {
		if got := plain(name); got != want {
			t.Errorf("%s is %q, want %q", name, got, want)
		}
	}
}

// Whatever is read, a package or not, the reader gives an error or whole documents.
func FuzzReadPackage(f *testing.F) {
	for _, whole := range seedPackages(f) {
		f.Add(whole)
		f.Add(whole[:len(whole)/2])
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		names, files, err := unpack(data)
		if err != nil {
			return
		}
		if len(names) != len(files) || !slices.Contains(names, manifestFile) {
			t.Fatalf("read %q", names)
		}
		for name, data := range files {
			if _, err := readTree(data); err != nil {
				t.Errorf("%s: %v", name, err)
			}
		}
	})
}

// Whatever document is read, its elements have names and none stands in itself.
func FuzzReadDocument(f *testing.F) {
	for _, whole := range seedPackages(f) {
		_, files, err := unpack(whole)
		if err != nil {
			f.Fatal(err)
		}
		for _, data := range files {
			f.Add(data)
		}
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		root, err := readTree(data)
		if err != nil {
			return
		}
		if n := len(root.all(root.name)); n < 1 {
			t.Errorf("the root %q is not found in itself", root.name)
		}
	})
}
