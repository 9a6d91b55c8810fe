package served_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"

	"scratchpass/lessons/class"
)

// Every page that a phone shows is sound: how to come in, and the seat in each of its scenes, with
// each kind of answer.
func TestScenesOfAPhoneInABrowser(t *testing.T) {
	roster := people(3)
	s := openShop(t, class.Head{Roster: roster, Listed: true}, withRules("sure: true\nrules: {feedback: end}"), class.Together)
	p := s.tab(chromium(t), roster[0].Name)
	for path, name := range map[string]string{"/": "door-code", "/r/" + roomCode: "door-listed", "/AAAAAA": "door-no-room", "/r/" + roomCode + "/leave": "door-again"} {
		p.goes(path)
		p.sound(name)
	}
	s.phone().comesIn(roster[1].Name)
	enters := func(name string) {
		p.name = name
		p.comesIn()
	}
	enters("Zoe")
	p.until(`document.querySelector("[name=visitor]")`)
	p.sound("door-no-such-name")
	enters(roster[1].Name)
	p.until(`document.body.hasAttribute("data-waits")`)
	p.sound("door-waits")
	p.js(`document.querySelector("form[action$=leave] button").click()`)
	p.until(`document.getElementById("name")`)
	enters(roster[0].Name)
	p.scene("waits", "")
	p.sound("seat-waits")
	for place := range questions {
		s.do("open", "place", fmt.Sprint(place))
		p.scene("asks", fmt.Sprint(place))
		p.sound(fmt.Sprint("seat-asks-", s.item(roster[0].ID, 0, place).Problem.Task.Name))
	}
	s.do("open", "place", "0")
	p.scene("asks", "0")
	p.js(`(() => { const f = document.getElementById("sum"); f.value = "1/3"; f.form.querySelector("button").click(); })()`)
	p.until(`document.getElementById("aid").innerText.includes("0.333")`)
	p.sound("seat-asks-aid")
	p.types("0.05")
	p.sends()
	p.tells("sure")
	p.sound("seat-asks-how-sure")
	p.sure("bet")
	p.sends()
	p.scene("kept", "0")
	p.sound("seat-kept")
	s.do("lock")
	p.scene("closed", "0")
	p.sound("seat-closed")
	s.do("show", "place", "0", "n", "1")
	p.scene("tells", "0")
	p.sound("seat-tells-wrong")
	s.do("open", "place", "4")
	p.scene("asks", "4")
	p.types(s.right(roster[0].ID, 0, 4))
	p.sure("fairly")
	p.sends()
	p.scene("kept", "4")
	s.do("show", "place", "4", "n", "1")
	p.scene("tells", "4")
	p.sound("seat-tells-right")
	s.do("pause")
	p.scene("stops", "")
	p.sound("seat-stops")
	s.do("resume")
	s.do("way", "way", "ticket")
	p.goes("/r/" + roomCode + "?at=3")
	p.scene("asks", "3")
	p.sound("seat-asks-at-own-pace")
	for place := range questions {
		if err := s.live.Do(t.Context(), class.Event{Kind: class.Answered, Who: roster[0].ID, Place: place, Text: "0.05"}); err != nil {
			t.Fatal(err)
		}
	}
	p.goes("/r/" + roomCode)
	p.scene("done", "")
	p.sound("seat-done-and-a-line")
	p.goes("/r/" + roomCode + "?at=3")
	p.scene("kept", "3")
	s.restart(func() {
		p.tells("offline")
		p.sound("seat-offline")
		p.types("0.05 0.06")
		p.sure("guess")
		p.sends()
		p.tells("waiting")
		p.sound("seat-waiting")
	})
	p.tells("saved")
	s.do("end")
	p.scene("over", "")
	p.sound("seat-over")
	p.goes("/r/" + roomCode + "?at=0")
	p.sound("seat-over-a-question")
}

// With a keyboard alone everything on a page is reached, in its order, and an answer is given.
func TestAKeyboardInABrowser(t *testing.T) {
	roster := people(1)
	s := openShop(t, class.Head{Roster: roster}, fmt.Sprintf(three, "rules: {feedback: end}"), class.OwnPace)
	p := s.tab(chromium(t), roster[0].Name)
	p.comesIn()
	p.scene("asks", "0")
	p.goes("/r/" + roomCode)
	walk := `(() => { const a = document.activeElement; return [...document.querySelectorAll("a[href],button,input:not([type=hidden]),summary,[tabindex='0']")].filter((e) => e.checkVisibility() || e.matches(".skip")).indexOf(a); })()`
	reachable := p.js(`[...document.querySelectorAll("a[href],button,input:not([type=hidden]),summary,[tabindex='0']")].filter((e) => e.checkVisibility() || e.matches(".skip")).length`)
	for i := 0; fmt.Sprint(i) != reachable; i++ {
		p.try(chromedp.Do(p.ctx, chromedp.KeyEvent("\t")))
		if got := p.js(walk); got != fmt.Sprint(i) {
			t.Errorf("key %d leads to %s, %s", i+1, got, p.js(`document.activeElement.outerHTML`))
		}
	}
	p.try(chromedp.Do(p.ctx, chromedp.SendKeys(chromedp.CSS("#typed"), "0.05\r")))
	p.scene("kept", "0")
	// The field stays in sight where a keyboard takes half of the screen, above the line at the foot.
	p.try(chromedp.Do(p.ctx, chromedp.EmulateViewport(360, 400)))
	p.js(`(document.activeElement.blur(), scrollTo(0, 0), document.getElementById("typed").focus())`)
	if seen := p.js(`(() => { const f = document.getElementById("typed").getBoundingClientRect(); return f.top >= 0 && f.bottom <= innerHeight; })()`); seen != "true" {
		t.Error("the field is not in sight")
	}
}

// After an answer was saved nothing lies over the button that changes it, wherever the page is
// scrolled to; and the signs and units for a number stand in one row, each large enough.
func TestNothingCoversInABrowser(t *testing.T) {
	roster := people(1)
	s := openShop(t, class.Head{Roster: roster}, fmt.Sprintf(three, "rules: {feedback: end}"), class.OwnPace)
	p := s.tab(chromium(t), roster[0].Name)
	p.try(chromedp.Do(p.ctx, chromedp.EmulateViewport(360, 740)))
	p.comesIn()
	p.scene("asks", "0")
	if keys := p.js(`JSON.stringify([...document.querySelectorAll(".keys button")].map((b) => b.getBoundingClientRect()).map((r, i, all) => [Math.abs(r.top - all[0].top) < 1, r.width >= 43.5, r.height >= 43.5, r.right <= innerWidth]))`); strings.Contains(keys, "false") || strings.Count(keys, "[true") != 7 {
		t.Error("the keys: ", keys)
	}
	p.types("0.05")
	p.sends()
	p.scene("kept", "0")
	p.tells("saved")
	p.until(`document.getElementById("sent").textContent !== ""`)
	if covered := p.js(`(() => {
		for (let y = 0; y <= document.documentElement.scrollHeight; y += 20) {
			scrollTo(0, y);
			const b = document.querySelector("#answer button.primary"), r = b.getBoundingClientRect();
			for (const at of [r.top + 3, r.bottom - 3]) {
				if (at <= 0 || at >= innerHeight) continue;
				const over = document.elementFromPoint(r.left + r.width / 2, at);
				if (over !== b) return y + ": " + over?.outerHTML.slice(0, 80);
			}
		}
		return "";
	})()`); covered != "" {
		t.Error("over the button lies ", covered)
	}
	p.picture("seat-kept-saved")
	// Once what came is there, nothing of it is covered, and it is not said any more.
	s.do("lock")
	p.scene("tells", "0")
	p.until(`document.getElementById("sent").textContent === ""`)
	if covered := p.js(`(() => {
		scrollTo(0, document.documentElement.scrollHeight);
		return getComputedStyle(document.getElementById("sent")).display !== "none" || [...document.querySelectorAll("#came *")].some((e) => {
			const r = e.getBoundingClientRect(), over = document.elementFromPoint(r.left + 5, r.bottom - 3);
			return r.bottom > 0 && r.bottom < innerHeight && over && !over.closest("#came") && !e.contains(over);
		});
	})()`); covered != "false" {
		t.Error("what came is covered")
	}
	p.picture("seat-tells-after-saved")
}

// Without script every form works: what was typed stays with a word that helps, how sure is asked
// once, and the answer is kept.
func TestWithoutScriptInABrowser(t *testing.T) {
	roster := people(1)
	s := openShop(t, class.Head{Roster: roster}, fmt.Sprintf(three, "sure: true"), class.OwnPace)
	p := s.tab(chromium(t), roster[0].Name)
	_, err := chromedp.Call(p.ctx, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: true})
	p.try(err)
	press := func(selector string) { // the browser waits for nothing where no script runs
		p.until(`document.querySelector("` + selector + `")`)
		p.js(`document.querySelector("` + selector + `").click()`)
	}
	p.goes("/" + roomCode)
	p.js(`document.getElementById("name").value = "` + p.name + `"`)
	press("main button.primary")
	p.scene("asks", "0")
	p.js(`document.getElementById("typed").value = "0.05"`)
	press("button[name=word][value=hint]")
	p.until(`document.getElementById("aid").innerText.length > 10 && document.getElementById("typed").value === "0.05"`)
	p.picture("without-script-hint")
	press("#answer button.primary")
	p.until(`document.querySelector("[name=asked]") && document.getElementById("typed").value === "0.05"`)
	press("#answer button.primary")
	p.scene("tells", "0")
	if at := p.js(`location.search + location.hash`); at != "?at=0#came" {
		t.Error("after the answer it is at ", at)
	}
	press("a.button")
	p.scene("asks", "1")
	p.goes("/r/" + roomCode + "?at=0")
	p.scene("tells", "0")
	press(".call button")
	p.until(`document.querySelector(".call p")`)
}
