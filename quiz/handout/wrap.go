package handout

import (
	"sort"
	"strings"
	"unicode"
	"unicode/utf8"
)

// wrap breaks a text into lines no wider than width. It breaks at spaces only, so
// that no number is torn apart; only a word that is wider than a whole line is cut.
// A no-break space is part of its word, and a number keeps the short word behind it:
// "0.7430 in." stays together, and so does "c = 0.0556". There is at least one line.
func wrap(text string, width int, measure func(string) int) []string {
	var lines []string
	line := ""
	for _, word := range pieces(text) {
		if joined := line + " " + word; line != "" && measure(joined) <= width {
			line = joined
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		for {
			cut := fitting(word, width, measure)
			if cut == len(word) {
				break // it fits, or is one letter that is wider than the line
			}
			lines = append(lines, word[:cut])
			word = word[cut:]
		}
		line = word
	}
	if line != "" || lines == nil {
		lines = append(lines, line)
	}
	return lines
}

// pieces parts a text into what must not be broken.
func pieces(text string) []string {
	const (
		unit   = 4 // letters of the longest unit that is kept with its number
		symbol = 2 // letters of the longest symbol that is kept with its value
	)
	var out []string
	number := false
	for word := range strings.SplitSeq(text, " ") {
		if word == "" {
			continue
		}
		if n := len(out); n > 0 && (word == "=" && len(out[n-1]) <= symbol || strings.HasSuffix(out[n-1], "=")) {
			out[n-1] += " " + word
			number = endsInDigit(word)
			continue
		}
		letters := strings.TrimRight(word, ".,;:?!)")
		if number && len(letters) <= unit && strings.IndexFunc(letters, notLetter) < 0 {
			out[len(out)-1] += " " + word
			number = false
			continue
		}
		out = append(out, word)
		number = endsInDigit(word)
	}
	return out
}

func endsInDigit(word string) bool {
	last := word[len(word)-1]
	return '0' <= last && last <= '9'
}

func notLetter(r rune) bool { return !unicode.IsLetter(r) }

// fitting is how many bytes of a word fit into a width: all, or as many whole letters as
// do, and one at least. Of a very long word only about as much is measured as fits.
func fitting(word string, width int, measure func(string) int) int {
	end := letterEnd(word, 64)
	for end < len(word) && measure(word[:end]) <= width {
		end = letterEnd(word, 2*end)
	}
	var cuts []int // behind each letter
	for i := range word[:end] {
		if i > 0 {
			cuts = append(cuts, i)
		}
	}
	cuts = append(cuts, end)
	tooLong := sort.Search(len(cuts), func(k int) bool { return measure(word[:cuts[k]]) > width })
	return cuts[max(tooLong-1, 0)]
}

// letterEnd is the end of a letter at so many bytes or just behind them.
func letterEnd(word string, bytes int) int {
	for bytes < len(word) && !utf8.RuneStart(word[bytes]) {
		bytes++
	}
	return min(bytes, len(word))
}

// wrapAll wraps each line of a text that has several.
func wrapAll(text string, width int, measure func(string) int) []string {
	var lines []string
	for line := range strings.SplitSeq(text, "\n") {
		lines = append(lines, wrap(line, width, measure)...)
	}
	return lines
}
