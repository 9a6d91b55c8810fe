package handout

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"
)

// keyOf is a key of so many items; each has so many wrong numbers.
func keyOf(code string, items, seen int) Key {
	k := Key{Title: "Ticket", Code: code}
	for n := range items {
		it := KeyItem{Number: n + 1, Title: "Single depth", Points: "1 point", Answer: fmt.Sprintf("0.0%02d1 in", n), Limits: "0.0501 to 0.0521 in", Path: "h = 0.613435 P = 0.0511"}
		for s := range seen {
			it.Seen = append(it.Seen, Seen{fmt.Sprintf("0.%d%02d", s, n), "no angle at all"})
		}
		k.Items = append(k.Items, it)
	}
	return k
}

// A key that closer type gets onto fewer pages is set so, and no closer than that takes; two
// that half a page holds share a page, and what is longer begins one.
func TestPagesOfKeys(t *testing.T) {
	for _, c := range []struct {
		keys  []Key
		pages int
	}{
		{[]Key{keyOf("C-1", 12, 4)}, 1}, // two in the widest setting
		{[]Key{keyOf("C-1", 30, 6)}, 3},
		{[]Key{keyOf("C-1", 5, 3), keyOf("C-2", 5, 3)}, 1},
		{[]Key{keyOf("C-1", 5, 3), keyOf("C-2", 5, 3), keyOf("C-3", 5, 3)}, 2},
		{[]Key{keyOf("C-1", 5, 3), keyOf("C-2", 12, 4), keyOf("C-3", 5, 3)}, 3},
		{[]Key{{Title: "Ticket", Code: "C-1"}}, 1},
	} {
		for _, paper := range []Paper{A4, Letter} {
			pages, _ := pagesOf(t, document(t, PDF, testOptions(paper), keys(c.keys...)))
			if len(pages) != c.pages {
				t.Errorf("%d keys, the first of %d items: %d pages of %s, want %d", len(c.keys), len(c.keys[0].Items), len(pages), paper, c.pages)
			}
		}
	}
}

// Whatever a key is like, none of its words is lost or printed twice, and none stands in the
// foot or outside the margins.
func TestRandomKeys(t *testing.T) {
	for seed := range uint64(60) {
		chance, n := rand.New(rand.NewPCG(seed, 7)), 0
		var all []string
		words := func(most int) string {
			var text []string
			for range chance.IntN(most) {
				n++
				text = append(text, fmt.Sprintf("Q%d%s", n, strings.Repeat("x", chance.IntN(9))))
			}
			all = append(all, text...)
			return strings.Join(text, " ")
		}
		k := Key{Title: "Title", Name: "Somebody", Code: "C-1"}
		for i := range 1 + chance.IntN(20) {
			it := KeyItem{Number: i + 1, Title: words(4 + chance.IntN(12)), Points: "2 points", Answer: words(3 + chance.IntN(30)), Limits: words(9), Path: words(30), Caution: chance.IntN(3) == 0, Carried: words(4)}
			for range chance.IntN(9) {
				it.Seen = append(it.Seen, Seen{words(4), words(3 + chance.IntN(20))})
			}
			k.Items = append(k.Items, it)
		}
		paper := []Paper{A4, Letter}[seed%2]
		pages, _ := pagesOf(t, document(t, PDF, testOptions(paper), keys(k)))
		met := map[string]int{}
		for n, page := range pages {
			foot := 0.0
			for _, p := range page {
				if strings.HasPrefix(p.text, "Page ") {
					foot = p.y
				}
			}
			for _, p := range page {
				for _, word := range strings.Fields(p.text) {
					if !strings.HasPrefix(word, "Q") {
						continue
					}
					if met[strings.TrimSuffix(word, ",")]++; p.y < foot+pt(small.size) || p.x < pt(margin) {
						t.Errorf("seed %d: %q stands in the foot or the margin of page %d", seed, word, n+1)
					}
				}
			}
		}
		for _, word := range all {
			if met[word] != 1 {
				t.Errorf("seed %d: %q stands there %d times", seed, word, met[word])
			}
		}
	}
}
