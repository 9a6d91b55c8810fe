package qti

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"flag"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"scratchpass/content"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
	"scratchpass/quiz/wording"
)

var update = flag.Bool("update", false, "write the goldens anew")

func remade(t testing.TB, code string) *problem.Problem {
	t.Helper()
	p, err := (tasks.Set{}).FromCode(code)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// fixedItem has words of its own, so that the goldens change only with this package.
func fixedItem(t testing.TB) Item {
	return Item{ID: "travel", Problem: remade(t, "compound-travel@2-7f3a"), Points: 1.5, Words: &wording.Words{
		Task: content.TaskWords{
			Title: "Compound & travel", Ask: map[int]string{1: "P is ${P}, the angle ${a}.\nHow far < in \"thou\"?"},
			Slips:      map[string]string{"no-angle": "Straight in.", "times-cos": "Times.", "sin-or-ref": "Sine.", "double": "Twice.", "double-no-angle": "Twice, straight in."},
			AtTheLathe: "It snaps.",
		},
		Phrases: map[string]string{
			"mark-right": "Right: ${answer}.", "mark-wrong": "Not right.", "mark-given": "You gave ${given}.", "mark-answer": "The answer is ${answer}.", "mark-passed": "No answer given.",
			"mark-scrap-side": "Dangerous.", "mark-safe-side": "Safe.", "mark-cannot-tell": "Cannot tell.", "mark-far-off": "Far off.",
		},
	}}
}

// The same problems give the same bytes, today and on any machine. The goldens are
// the files themselves and the sum of all of them: the bytes of the zip hang on the
// compressor.
func TestGolden(t *testing.T) {
	for _, v := range []struct {
		name string
		Version
		choiceOnly bool
	}{{"2p1", V21, false}, {"3p0", V30, false}, {"3p0-choice", V30, true}} {
		p := packageOf(v.Version, v.choiceOnly, Slot{ID: "travel-slot", Title: "Travel", Items: []Item{fixedItem(t)}})
		var once, again bytes.Buffer
		if Write(&once, p) != nil || Write(&again, p) != nil || !bytes.Equal(once.Bytes(), again.Bytes()) {
			t.Errorf("%s: two runs differ", v.name)
		}
		names, files := packed(t, p)
		sum := sha256.New()
		for _, name := range names {
			sum.Write([]byte(name + "\n"))
			sum.Write(files[name])
		}
		golden(t, v.name+".sha256", []byte(hex.EncodeToString(sum.Sum(nil))+"\n"))
		golden(t, v.name+"-item.xml", files[itemFile("travel")])
		if !v.choiceOnly {
			golden(t, v.name+"-manifest.xml", files[manifestFile])
			golden(t, v.name+"-test.xml", files[testFile])
		}
	}
}

func golden(t *testing.T, name string, got []byte) {
	t.Helper()
	path := filepath.Join("testdata", name)
	if *update {
		if err := os.WriteFile(path, got, 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(path)
	if err != nil || !bytes.Equal(got, want) {
		t.Errorf("%s: %v, or it has changed: run with -update and read it", path, err)
	}
}

// What is wrong is said with what was given and what would work.
func TestErrors(t *testing.T) {
	for want, change := range map[string]func(p *Package){
		`version "0": give V21, V30 or V12`:               func(p *Package) { p.Version = 0 },
		`package ID "2nd": give a letter first`:           func(p *Package) { p.ID = "2nd" },
		`item ID "a b": give a letter first`:              func(p *Package) { p.Slots[0].Items[0].ID = "a b" },
		`item ID "compound-travel@2-7f3a": give a letter`: func(p *Package) { p.Slots[0].Items[0].ID = "compound-travel@2-7f3a" },
		`slot ID "": give a letter first`:                 func(p *Package) { p.Slots[0].ID = "" },
		`item ID "SLOT" is taken by "slot": give each`:    func(p *Package) { p.Slots[0].Items[0].ID = "SLOT" },
		`slot ID "part-1" is taken by "part-1"`:           func(p *Package) { p.Slots[0].ID = "part-1" },
		`title of the package "\n": give a title`:         func(p *Package) { p.Title = "\n" },
		`the package has no slots`:                        func(p *Package) { p.Slots = nil },
		`selection of 2 from 1 items: give at least one`:  func(p *Package) { p.Slots[0].Select = 2 },
		`selection of -1 from 1 items`:                    func(p *Package) { p.Slots[0].Select = -1 },
		`selection of 0 from 0 items`:                     func(p *Package) { p.Slots[0].Items = nil },
		`item travel: points 0: give a number above 0`:    func(p *Package) { p.Slots[0].Items[0].Points = 0 },
		`item travel: points NaN`:                         func(p *Package) { p.Slots[0].Items[0].Points = math.NaN() },
		`item travel: points +Inf`:                        func(p *Package) { p.Slots[0].Items[0].Points = math.Inf(1) },
		`item travel has no problem or no words`:          func(p *Package) { p.Slots[0].Items[0].Words = nil },
		`words: Unread is empty: give its sentence`:       func(p *Package) { p.Words.Unread = " " },
		`item travel: cross-slide-return asks for 2 readings and has 0 labels`: func(p *Package) {
			p.Slots[0].Items[0].Problem = remade(t, "cross-slide-return@1-0001")
			p.Slots[0].Items[0].Words.Task.Ask[1] = "What does it say?"
		},
		`item travel: the words of compound-travel ask for ["x"]`: func(p *Package) {
			p.Slots[0].Items[0].Words.Task.Ask[1] = "How far is ${x}?"
		},
		`words: Fields has no label for "diameter"`: func(p *Package) {
			p.Words.Fields = nil
			p.Slots[0].Items[0].Problem = remade(t, "inch-designation@1-0001")
			p.Slots[0].Items[0].Words.Task.Ask[1] = "What does it say?"
		},
	} {
		p := packageOf(V30, false, Slot{ID: "slot", Items: []Item{fixedItem(t)}})
		change(&p)
		var b bytes.Buffer
		if err := Write(&b, p); err == nil || !strings.Contains(err.Error(), want) || b.Len() > 0 {
			t.Errorf("%v after %d bytes, want %q", err, b.Len(), want)
		}
	}
}

// Every item that can't be expressed is named, not only the first.
func TestErrorNamesEveryItem(t *testing.T) {
	row := fixedItem(t)
	row.Problem = remade(t, "cross-slide-return@1-0001")
	other := row
	row.ID, other.ID = "row", "other-row"
	err := Write(&bytes.Buffer{}, packageOf(V21, false, Slot{ID: "slot", Items: []Item{row, fixedItem(t), other}}))
	if err == nil || !strings.Contains(err.Error(), "item row:") || !strings.Contains(err.Error(), "item other-row:") || strings.Contains(err.Error(), "travel:") {
		t.Error(err)
	}
}

// What a learner sees before answering is the question, the options and the sentence
// how to answer: nothing of the key, the working or the feedback.
func TestBodyHoldsNoKey(t *testing.T) {
	slot := everyTask(t, 1)
	_, files := packed(t, packageOf(V30, false, slot))
	for _, it := range slot.Items {
		body := parse(t, files[itemFile(it.ID)]).kid("itemBody")
		left := body.text
		question, _ := it.Words.Ask(it.Problem)
		known := append(strings.Split(question, "\n"), it.Words.Options(it.Problem)...)
		known = append(known, it.Words.ReadingLabels(it.Problem)...)
		known = append(known, sentences.Number, sentences.Limits, sentences.Numbers, sentences.Parts, sentences.Choice, sentences.Several, sentences.Order, sentences.None)
		for _, label := range sentences.Fields {
			known = append(known, label)
		}
		if it.Picture != nil { // drawn from what is given alone: see quiz/wording
			known = append(known, it.Picture.Twin)
			for line := range strings.SplitSeq(it.Picture.Twin, "\n") {
				known = append(known, line)
			}
		}
		known = append(known, "external", "internal", "right", "left")
		slices.SortFunc(known, func(a, b string) int { return len(b) - len(a) }) // one may be part of another
		for _, s := range known {
			left = strings.ReplaceAll(left, clean(s), " ")
		}
		left = strings.ReplaceAll(left, it.Problem.Expected.Unit.Name, "")
		if left = strings.Trim(left, " \n0123456789)"); left != "" {
			t.Errorf("%s: the body also says %q", it.ID, left)
		}
	}
}

// Odd characters in someone's own words come out as text.
func TestOddCharacters(t *testing.T) {
	it := fixedItem(t)
	it.Words.Task.Title = "<b>\x00\u202e\ufffe]]>\xff"
	it.Words.Task.AtTheLathe = "a < b && \"c\" > 'd'\r\n\x1b[31mred"
	_, files := packed(t, packageOf(V21, false, Slot{ID: "slot", Title: "\u0085\u200f", Items: []Item{it}}))
	item := parse(t, files[itemFile("travel")])
	if got := item.attrs["title"]; got != "<b> ]]>" {
		t.Errorf("title %q", got)
	}
	if !strings.Contains(item.text, "a < b && \"c\" > 'd'") || strings.ContainsAny(item.text, "\x00\x1b\r\u202e\ufffe") {
		t.Errorf("%q", item.text)
	}
	if test := parse(t, files[testFile]); test.all("assessmentSection")[0].attrs["title"] != "slot" {
		t.Error("a section without a title is not called by its ID")
	}
}

func BenchmarkWriteThousandItems(b *testing.B) {
	all := everyTask(b, 10).Items[:1000]
	p := packageOf(V30, false, Slot{ID: "all", Items: all})
	var out bytes.Buffer
	b.ReportAllocs()
	for b.Loop() {
		out.Reset()
		if err := Write(&out, p); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(out.Len()), "zip-bytes")
}
