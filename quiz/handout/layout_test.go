package handout

import (
	"fmt"
	"io"
	"math/rand/v2"
	"strings"
	"testing"
)

// randomSheet has items of all forms and lengths; each word is used once, and begins
// with Q and the number of its item.
func randomSheet(r *rand.Rand) (s Sheet, words [][]string) {
	s = Sheet{Title: "T", Code: "C", Name: strings.Repeat("Name ", r.IntN(30))}
	for n := range 1 + r.IntN(25) {
		var mine []string
		phrase := func(most int) string {
			var texts []string
			for range 1 + r.IntN(most) {
				texts = append(texts, fmt.Sprintf("Q%dw%d%s", n, len(mine), strings.Repeat("x", r.IntN(14)*r.IntN(2))))
				mine = append(mine, texts[len(texts)-1])
			}
			return strings.Join(texts, " ")
		}
		it := Item{Number: n + 1, Points: "2 points", Caution: r.IntN(4) == 0, Unit: []string{"", "in", "divisions"}[r.IntN(3)]}
		for range r.IntN(5) {
			it.Text = append(it.Text, phrase(20))
		}
		for range r.IntN(2) * r.IntN(6) {
			it.Options = append(it.Options, phrase(12))
		}
		for range r.IntN(2) * r.IntN(5) {
			it.Readings = append(it.Readings, phrase(10))
		}
		if r.IntN(2) == 0 {
			it.Expects = phrase(15)
		}
		s.Items, words = append(s.Items, it), append(words, mine)
	}
	return s, words
}

// Whatever the items are like: none is lost, printed twice, split or over the foot.
func TestRandomItemsKeepTheirPage(t *testing.T) {
	seeds := uint64(150)
	if testing.Short() {
		seeds = 15
	}
	for seed := range seeds {
		r := rand.New(rand.NewPCG(seed, 29))
		paper := []Paper{A4, Letter}[seed%2]
		s, words := randomSheet(r)
		pages, lines := pagesOf(t, document(t, PDF, testOptions(paper), sheets(s)))
		where := map[string]int{}
		for n, page := range pages {
			foot := 0.0 // where the caution stands
			for _, p := range page {
				if p.text == testWords.Rehearsal {
					foot = p.y
				}
			}
			if foot < pt(margin) {
				t.Fatalf("seed %d: page %d has its foot at %g", seed, n+1, foot)
			}
			for _, y := range lines[n] {
				if y < foot+pt(small.size) {
					t.Errorf("seed %d: page %d: a line reaches into the foot", seed, n+1)
				}
			}
			for _, p := range page {
				for _, word := range strings.Fields(p.text) {
					if !strings.HasPrefix(word, "Q") {
						continue
					}
					if was, ok := where[word]; ok {
						t.Errorf("seed %d: %q is on pages %d and %d", seed, word, was+1, n+1)
					}
					if where[word] = n; p.y < foot+2*pt(small.size) {
						t.Errorf("seed %d: %q stands in the foot of page %d", seed, word, n+1)
					}
				}
			}
		}
		for i, mine := range words {
			for _, word := range mine {
				if on, ok := where[word]; !ok || on != where[mine[0]] {
					t.Errorf("seed %d: item %d: %q is on page %d (found: %v), the item on page %d", seed, i+1, word, on+1, ok, where[mine[0]]+1)
				}
			}
		}
	}
}

// The same on the places themselves, with blocks higher than a page among them, and
// with what is printed again where one of them begins a page or goes on on one.
func TestPaginate(t *testing.T) {
	const height = 1000
	for seed := range uint64(2000) {
		r := rand.New(rand.NewPCG(seed, 7))
		blocks := make([]block, 1+r.IntN(12))
		var printed []int // how often each row is
		counted := func(high int) row {
			n := len(printed)
			printed = append(printed, 0)
			return row{high, func(int) { printed[n]++ }}
		}
		repeats := 0
		for i := range blocks {
			blocks[i].gap = r.IntN(40)
			for range r.IntN(12) * (1 + r.IntN(4)/3*10) {
				blocks[i].add(counted(1 + r.IntN(100)))
			}
			for range r.IntN(3) {
				blocks[i].again = append(blocks[i].again, row{1 + r.IntN(50)*(1+r.IntN(10)/9*30), func(int) { repeats++ }})
			}
		}
		on := map[int]map[int]bool{} // block to pages
		last, first := 0, true
		for n, page := range paginate(blocks, height) {
			bottom := 0
			for i, p := range page {
				if p.top < bottom || p.top+p.height > height {
					t.Fatalf("seed %d: a row at %d to %d, after %d", seed, p.top, p.top+p.height, bottom)
				}
				if bottom = p.top + p.height; p.block < last && !first {
					t.Fatalf("seed %d: block %d after %d", seed, p.block, last)
				}
				last, first = p.block, false
				if on[p.block] == nil {
					on[p.block] = map[int]bool{}
				}
				on[p.block][n] = true
				before := repeats
				p.paint(p.top)
				again := blocks[p.block].again
				if repeats > before && (n == 0 || i >= len(again)) {
					t.Fatalf("seed %d: row %d of page %d is printed again", seed, i, n)
				}
				if repeats == before && n > 0 && i == 0 && len(again) > 0 && heightOf(again)+100 <= height {
					t.Fatalf("seed %d: page %d lacks what is printed again", seed, n)
				}
			}
		}
		for n, times := range printed {
			if times != 1 {
				t.Fatalf("seed %d: row %d is printed %d times", seed, n, times)
			}
		}
		for i, b := range blocks {
			if len(on[i]) > 1 && heightOf(b.again)+heightOf(b.rows) <= height {
				t.Fatalf("seed %d: block %d is split although it fits on a page", seed, i)
			}
		}
	}
}

func TestWrap(t *testing.T) {
	letters := func(s string) int { return len([]rune(s)) }
	for text, want := range map[string]string{
		"":                          "",
		"one two three":             "one two|three",
		"take 0.7430 in. of it":     "take|0.7430 in.|of it",
		"a b = 1.5 c":               "a|b = 1.5 c",
		"abcdefghijklmnop":          "abcdefghij|klmnop",
		"x abcdefghijkl":            "x|abcdefghij|kl",
		"1 2 3 4 5 6":               "1 2 3 4 5|6",
		"29.5\u00a0deg \u00a0 more": "29.5\u00a0deg \u00a0|more",
		"   spaced    out   ":       "spaced out",
	} {
		if got := strings.Join(wrap(text, 10, letters), "|"); got != want {
			t.Errorf("%q is wrapped %q, want %q", text, got, want)
		}
	}
	if got := wrap("ab c", 0, letters); strings.Join(got, "|") != "a|b|c" {
		t.Errorf("no width gives %q", got)
	}
}

func BenchmarkClassOf24(b *testing.B) {
	all, allKeys := class(b, 24, 20)
	b.ReportAllocs()
	for b.Loop() {
		document(b, PDF, testOptions(A4), sheets(all...))
		document(b, PDF, testOptions(A4), keys(allKeys...))
	}
}

func BenchmarkThousandSheets(b *testing.B) {
	all, _ := class(b, 1000, 10)
	for _, f := range Formats() {
		b.Run(f.Name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				for begin := 0; begin < len(all); begin += 50 {
					w, err := f.New(io.Discard, testOptions(A4))
					if err != nil {
						b.Fatal(err)
					}
					sheets(all[begin : begin+50]...)(w)
					if err := w.Close(); err != nil {
						b.Fatal(err)
					}
				}
			}
		})
	}
}
