package served_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"

	"scratchpass/lessons/class"
	"scratchpass/lessons/class/journal"
	"scratchpass/lessons/face/inspect"
)

// moves types a move and waits until it is made.
func (p *tab) moves(text string) {
	p.t.Helper()
	before := p.question()
	p.types(text)
	p.js(`document.querySelector("#answer button.primary").click()`)
	p.until(`document.querySelector("#seat > div").dataset.question !== "` + before + `"`)
}

func (p *tab) question() string {
	return p.js(`document.querySelector("#seat > div").dataset.question`)
}

// taps taps a move by its words.
func (p *tab) taps(move string) {
	p.t.Helper()
	p.js(`[...document.querySelectorAll(".moves button")].find((b) => b.textContent === "` + move + `").click()`)
}

// looks looks at a page of the instructor's as it is: nothing is wider than the window, axe-core
// finds nothing.
func (p *tab) looks(what string, width, height int64) {
	p.t.Helper()
	p.try(chromedp.Do(p.ctx, chromedp.EmulateViewport(width, height)))
	if p.s.in.File() == "" {
		return // the same page was looked at with the room in a file
	}
	if wide := inspect.Evaluated[int64](p.t, p.ctx, `document.documentElement.scrollWidth`); wide > width {
		p.t.Errorf("%s: %d wide: the page is %d wide", what, width, wide)
	}
	inspect.Axe(p.t, p.ctx, fmt.Sprintf("%s, %d wide", what, width))
	p.picture(fmt.Sprintf("%s-%d", what, width))
}

// A whole bench round: six phones make the same pass, by taps, by typing, with a move that is not
// taken, with one whose word is lost, with the computer killed in the middle; then it is closed, and
// told. Moves in equal moves out, each once and in its order.
func TestABenchRoundInABrowser(t *testing.T) { onBoth(t, aBenchRound) }

func aBenchRound(t *testing.T, in journal.At) {
	roster := people(6)
	s := openShopOn(t, in, class.Head{Roster: roster}, fmt.Sprintf(three, "rules: {feedback: end}"), class.Together)
	browser := chromium(t)
	phones := make([]*tab, len(roster))
	for i := range phones {
		phones[i] = s.tab(browser, roster[i].Name)
	}
	each(phones, func(_ int, p *tab) {
		p.comesIn()
		p.scene("waits", "")
	})
	desk := s.tab(browser, "desk")
	desk.goes("/desk/" + roomCode + "?key=" + privateKey)
	desk.js(`(() => { const f = document.querySelector("#job").form; f.closest("details").open = true; f.elements.job.value = "adjusting-screw"; f.elements.pass.value = "3"; f.elements.hints.checked = true; })()`)
	desk.looks("desk-before-a-round", 1024, 768)
	desk.js(`document.querySelector("button[value=bench]").click()`)
	each(phones, func(_ int, p *tab) { p.scene("bench", "") })
	wall := desk.second()
	wall.goes("/wall/" + roomCode)
	wall.looks("wall-round", 1024, 768)
	wall.looks("wall-round", 1440, 900)
	phones[0].sound("seat-bench")

	t.Log("all are at the bench")
	want := make([][]string, len(phones))
	each(phones, func(i int, p *tab) {
		want[i] = slices.Clone(aPass)
		switch i {
		case 0: // by taps: how much is asked for, and said behind it
			p.moves("cross to 0")
			p.taps("compound in ...")
			p.until(`document.getElementById("typed").value === "compound in " && document.activeElement.id === "typed"`)
			p.try(chromedp.Do(p.ctx, chromedp.KeyEvent("0.006\r")))
			p.until(`document.querySelector(".panel").innerText.includes("0.0210")`)
		case 1: // what can't be read is said, and stays to be put right
			p.types("cross too 0")
			p.sends()
			p.until(`document.getElementById("aid").innerText.includes("Not done") && document.getElementById("typed").value === "cross too 0"`)
			if seen := p.js(`(() => { const why = document.getElementById("aid").getBoundingClientRect(); return document.activeElement.id === "aid" && why.top >= 0 && why.bottom <= innerHeight; })()`); seen != "true" {
				t.Error("why it was not done is not in sight")
			}
			p.sound("seat-bench-not-done")
			p.moves("cross to 0")
			p.moves("compound in 0.006")
		case 2: // no deeper, and into the shoulder
			want[i] = []string{"cross to 0", "close on 1", "run", "run"}
			p.moves("cross to 0")
			p.moves("close on 1")
		default:
			p.moves("cross to 0")
			p.moves("compound in 0.006")
		}
	})

	t.Log("the computer is killed")
	s.restart(func() {
		each(phones, func(i int, p *tab) {
			next := want[i][2]
			p.types(next)
			p.sends()
			p.tells("waiting")
			p.until(`[...document.querySelectorAll("#answer button, #answer input")].every((f) => f.disabled)`) // no other comes before it
			p.js(`document.getElementById("answer").requestSubmit()`)
			if n := p.js(`Object.keys(localStorage).filter((n) => n.includes(".out.")).length`); n != "1" {
				t.Error(p.name, ": moves that wait: ", n)
			}
		})
		phones[3].sound("seat-bench-waiting")
	})
	s.cut.Store(3) // and three are made, without a word of it
	each(phones, func(i int, p *tab) {
		p.until(`document.querySelector("#seat > div").dataset.question.endsWith(".3")`)
		for _, text := range want[i][3:] {
			p.moves(text)
		}
		p.scene("bench-over", "")
	})
	phones[0].sound("seat-bench-over")
	phones[2].sound("seat-bench-scrap")
	s.see(func(r *class.Room) {
		for i, a := range roster {
			if got := moved(r.Work(r.Person(a.ID), 0)); !slices.Equal(got, want[i]) {
				t.Errorf("%s made %q, and the room has %q", a.Name, want[i], got)
			}
		}
	})

	t.Log("what came")
	desk.until(`document.querySelector(".benches tbody tr .scrap")`)
	desk.looks("desk-round", 1024, 768)
	desk.looks("desk-round", 1440, 900)
	// A key is pressed again until it is so, for what is below the edge comes first. It is pressed at the
	// very page that was looked at: one more, at a page that has come since, would be a step too far.
	press := func(k, what string) {
		t.Helper()
		for end := time.Now().Add(patience); wall.js(`Boolean(`+what+`) || (dispatchEvent(new KeyboardEvent("keydown", { key: "`+k+`", cancelable: true })), false)`) != "true"; {
			if time.Now().After(end) {
				t.Fatal("never ", what, "; the wall says ", wall.js(`document.body.innerText`))
			}
			select {
			case <-time.After(30 * time.Millisecond):
			case <-wall.ctx.Done():
				t.Fatal(wall.ctx.Err())
			}
		}
	}
	press("n", `document.querySelector("footer").innerText.includes("Closed")`)
	each(phones, func(_ int, p *tab) { p.scene("bench-told", "") })
	phones[2].sound("seat-bench-told")
	press("n", `document.querySelectorAll(".bars li").length === 2`)
	wall.looks("wall-round-came", 1024, 768)
	shown := func(n int) string { return fmt.Sprintf(`document.querySelectorAll(".worked dt").length === %d`, n) }
	for n := range aPass {
		press("n", shown(n+1))
	}
	wall.looks("wall-round-goes", 1024, 768)
	if text := wall.js(`document.body.innerText`); strings.Contains(text, "Zquill") {
		t.Error("a name is on the wall")
	}
	press("p", shown(len(aPass)-1))
	s.do("next")
	s.do("next")
	each(phones, func(_ int, p *tab) { p.scene("waits", "") })
	desk.goes("/desk/" + roomCode + "/person/" + roster[2].ID)
	desk.looks("person-round", 1024, 768)
	if len(s.fails) > 0 {
		t.Error(s.fails)
	}
}
