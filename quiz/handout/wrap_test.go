package handout

import (
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
)

// A word is cut where the letters one by one say it must be.
func TestFitting(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	letters := []rune("abcM.,ä…é世界\u00a0")
	oneByOne := func(word string, width int) int {
		cut := 0
		for i := range word + "x" { // also behind the last letter
			if i > 0 && (cut == 0 || ansi.StringWidth(word[:i]) <= width) {
				cut = i
			}
		}
		return cut
	}
	for range 20_000 {
		var word strings.Builder
		for range 1 + rng.IntN(1+rng.IntN(200)) {
			word.WriteRune(letters[rng.IntN(len(letters))])
		}
		width := rng.IntN(150)
		if got, want := fitting(word.String(), width, ansi.StringWidth), oneByOne(word.String(), width); got != want {
			t.Fatalf("%q in %d: cut at %d, want %d", word.String(), width, got, want)
		}
	}
}

// To break a word of two million letters, each about one line is measured: it is not
// measured to its end for every line.
func TestLongWordsAreBrokenQuickly(t *testing.T) {
	const letters = 2_000_000
	for name, width := range map[string]int{"wide letters": 1, "letters without a width": 0} {
		measured := 0
		lines := wrap(strings.Repeat("x", letters), 80, func(s string) int { measured += len(s); return width * len(s) })
		if measured > 100*letters {
			t.Errorf("%s: %d letters measured for %d", name, measured, letters)
		}
		if want := letters / 80; width > 0 && len(lines) != want || width == 0 && len(lines) != 1 {
			t.Errorf("%s: %d lines", name, len(lines))
		}
	}
}
