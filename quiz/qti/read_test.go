package qti

import (
	"bytes"
	"fmt"
	"sync"
	"testing"

	"scratchpass/content"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
	"scratchpass/quiz/wording"
)

// parse is readTree for a document that must be sound.
func parse(t testing.TB, data []byte) *tree {
	t.Helper()
	root, err := readTree(data)
	if err != nil {
		t.Fatalf("%v in %.200s", err, data)
	}
	return root
}

// sentences are the fixed words of the test packages.
var sentences = Words{
	Number: "Type a number, with a point and without a unit.", Limits: "Type a number. Any size inside the limits is right.",
	Numbers: "Type a number into each box.", Parts: "Fill in each part.", Choice: "Choose one.", Several: "Choose all that fit.",
	Order: "Put them in order.", None: "none of them", Unread: "Nothing was answered.", WrongUnit: "The number is right, its unit is not.",
	Fields: map[string]string{"diameter": "Diameter", "pitch": "Pitch", "tpi": "Threads per inch", "starts": "Starts", "side": "Side", "hand": "Hand"},
}

// drawn makes an item of a task; ok is false where the task is not set in the system.
func drawn(t testing.TB, task *problem.Task, level problem.Level, s machine.System, seed uint32) (Item, bool) {
	t.Helper()
	if !task.Allows(s) {
		return Item{}, false
	}
	p, err := problem.New(task, problem.NewCode(task.Name, level, s, seed, machine.DefaultLathe(s)))
	if err != nil {
		t.Fatal(err)
	}
	words := wordsOf(t, task.Name)
	picture, err := words.Drawing(p, drawingWords(t))
	if err != nil {
		t.Fatal(err)
	}
	return Item{ID: fmt.Sprintf("%s-%d%s-%d", task.Name, level, s, seed), Problem: p, Words: words, Points: 2, Picture: picture}, true
}

var drawingWords = func() func(t testing.TB) map[string]content.DrawingWords {
	read := sync.OnceValues(content.Shipped().Drawings)
	return func(t testing.TB) map[string]content.DrawingWords {
		words, err := read()
		if err != nil {
			t.Fatal(err)
		}
		return words
	}
}()

var loaded = map[string]*wording.Words{}

func wordsOf(t testing.TB, task string) *wording.Words {
	t.Helper()
	if loaded[task] == nil {
		w, err := wording.Load(content.Shipped(), task)
		if err != nil {
			t.Fatal(err)
		}
		loaded[task] = w
	}
	return loaded[task]
}

// everyTask is one slot of so many problems of each task, level and system; in a short
// run a fifth of them.
func everyTask(t testing.TB, seeds uint32) Slot {
	slot, drawnSoFar := Slot{ID: "all", Title: "All tasks"}, 0
	for _, task := range tasks.All() {
		for level := problem.Level(1); level <= 3; level++ {
			for _, s := range []machine.System{machine.Imperial, machine.Metric} {
				for seed := range seeds {
					drawnSoFar++
					if testing.Short() && drawnSoFar%5 != 0 {
						continue
					}
					if it, ok := drawn(t, task, level, s, seed); ok {
						slot.Items = append(slot.Items, it)
					}
				}
			}
		}
	}
	return slot
}

// packed writes a package and returns its files in their order.
func packed(t testing.TB, p Package) (names []string, files map[string][]byte) {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, p); err != nil {
		t.Fatal(err)
	}
	names, files, err := unpack(b.Bytes())
	if err != nil {
		t.Fatal(err)
	}
	return names, files
}

// packageOf is a package of some slots, sound in everything else.
func packageOf(v Version, choiceOnly bool, slots ...Slot) Package {
	return Package{ID: "first-thread", Title: "Before the first thread", Version: v, ChoiceOnly: choiceOnly, Slots: slots, Words: sentences}
}
