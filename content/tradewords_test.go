package content

import (
	"strings"
	"testing"
	"testing/fstest"
)

// An old word and a trade word that no term explains are found on their line; a key and
// what the program fills in are not words that anyone reads.
func TestTradeWords(t *testing.T) {
	lib := Reading("mine", fstest.MapFS{"lessons/500-mine.yaml": {Data: []byte("title: Mine\nwhy: An outside thread is cut.\n" +
		"rests_on: [\"${told-thread} outside-thread\"]\ngoals:\n  - say where the saddles are\n  - I was told so, at First Touch\n")}})
	c := checker{lib: lib}
	c.trade()
	want := []string{
		`mine/lessons/500-mine.yaml:2: "outside thread" is not what the trade says: write external thread`,
		`mine/lessons/500-mine.yaml:6: "First Touch" is not what the trade says: write touch-off`,
		`mine/lessons/500-mine.yaml:6: "was told" is not what the trade says: write said`,
	}
	if got := c.found.sorted().Error(); got != strings.Join(want, "\n") {
		t.Errorf("found\n%s", got)
	}

	terms, err := lib.Terms()
	if err != nil {
		t.Fatal(err)
	}
	delete(terms, "saddle")
	delete(terms, "thread chasing dial")
	delete(terms, "cross slide") // compound rest and carriage only speak of it
	if got := strings.Join(withoutATerm(terms), ", "); got != "cross slide, saddle, thread chasing dial, thread dial" {
		t.Errorf("without a term are %s", got)
	}
	c = checker{lib: lib, unexplained: withoutATerm(terms)}
	c.tradeWordsOf("a.yaml", []byte("why: The saddles slide.\nsaddle: The cross-slide dial.\n"))
	if got := c.found.Error(); got != `a.yaml:1: "saddle" has no entry in terms.yaml` {
		t.Errorf("found\n%s", got)
	}
}

// Every trade word of the list has its term, so that the check can't fall silent.
func TestEveryTradeWordHasATerm(t *testing.T) {
	terms, err := Shipped().Terms()
	if err != nil {
		t.Fatal(err)
	}
	if missing := withoutATerm(terms); len(missing) > 0 {
		t.Errorf("no term explains %s", strings.Join(missing, ", "))
	}
}
