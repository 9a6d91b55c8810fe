package web_test

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"net/http/httptest"
	"reflect"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	browserpage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"

	"scratchpass/content"
	"scratchpass/lessons/face/inspect"
	"scratchpass/lessons/face/web"
	"scratchpass/lessons/page"
	"scratchpass/lessons/rehearsal"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/bench"
	"scratchpass/quiz/machine"
)

// atTheBench serves a rehearsal with a real clock, the tool at its first depth before the
// thread. kept has the lines of its log.
type atTheBench struct {
	t     *testing.T
	talk  *web.Talk
	r     *rehearsal.Rehearsal
	url   string
	kept  []string
	ended chan error
}

// setUp are the moves in front of the first pass.
var setUp = []string{"dress", "key out", "feed off", "speed 70", "gears 32/40", "angle 29.5 tailstock", "height", "square", "gibs", "oil",
	"start", "touch", "zero cross", "zero compound", "cross out 0.2", "return", "cross to 0", "compound in 0.002"}

func serveBench(t *testing.T, speed string) *atTheBench {
	t.Helper()
	a := &atTheBench{t: t, talk: web.NewTalk(t.Context()), ended: make(chan error, 1)}
	s, err := sitting.NewSession(a.talk, content.Shipped(), machine.Imperial, machine.InchLathe, nil)
	if err != nil {
		t.Fatal(err)
	}
	w, err := s.Library.Job("adjusting-screw")
	if err != nil {
		t.Fatal(err)
	}
	job, err := bench.ParseJob(w, machine.InchLathe)
	if err != nil {
		t.Fatal(err)
	}
	a.r = &rehearsal.Rehearsal{Name: "adjusting-screw", Bench: bench.New(job), Keep: func(lines ...string) error { a.kept = append(a.kept, lines...); return nil }}
	a.r.Bench.Live = true
	server := httptest.NewUnstartedServer(nil)
	server.Config.Handler = web.Handler(a.talk, web.Options{Key: "secret", Hosts: []string{server.Listener.Addr().String()}, Words: labels})
	server.Start()
	t.Cleanup(server.Close)
	a.url = server.URL
	go func() { a.ended <- rehearsal.Flow{Session: s}.Run(a.r); a.talk.End() }()
	for _, move := range setUp {
		if move == "speed 70" {
			move = speed
		}
		a.do(move)
	}
	return a
}

// do makes a move without a browser.
func (a *atTheBench) do(move string) web.View {
	a.t.Helper()
	a.talk.Answer(a.talk.View(a.t.Context()).Number, move)
	return a.talk.View(a.t.Context())
}

// leave ends the rehearsal.
func (a *atTheBench) leave() {
	a.t.Helper()
	a.do("leave")
	if err := <-a.ended; err != nil && !errors.Is(err, page.ErrStopped) {
		a.t.Fatal(err)
	}
}

// replayed plays the log of the rehearsal again, as dryrun --script does.
func (a *atTheBench) replayed() bench.Bench {
	a.t.Helper()
	script, err := bench.ParseScript("log", []byte("job adjusting-screw\nhands real\n"+strings.Join(a.kept, "\n")+"\n"))
	if err != nil {
		a.t.Fatal(err)
	}
	again, err := script.Replay("log", a.r.Bench.Job)
	if err != nil {
		a.t.Fatal(err)
	}
	return again.Bench
}

// The answers that a page can give: the moments come from it, what comes of them from the
// bench, and the log plays again to the same bench. Broken off or by steps nothing counts.
func TestPassByTheClock(t *testing.T) {
	a := serveBench(t, "speed 70")
	v := a.do("close")
	timed, ok := v.Prompt.Takes.(page.Timed)
	if !ok || timed.Dial == nil || timed.Work == nil || timed.Fails || timed.Closed {
		t.Fatalf("%+v", v.Prompt)
	}
	before := len(a.kept)
	for _, nothing := range []string{"broken", "no answer", "space 1, end 0", "steps"} {
		v = a.do(nothing)
		if _, again := v.Prompt.Takes.(page.Timed); again || len(a.kept) != before {
			t.Fatalf("%q: %v, kept %v", nothing, v.Prompt.Takes, a.kept[before:])
		}
		v = a.do("close")
		if nothing == "steps" { // the lathe waits now, and closing at any moment is a move like another
			break
		}
		if _, ok = v.Prompt.Takes.(page.Timed); !ok {
			t.Fatalf("after %q: %+v", nothing, v.Prompt)
		}
	}
	a.do("open")
	a.leave()
	if len(a.r.Bench.Passes) > 0 && a.r.Bench.Passes[0].Cuts() {
		t.Errorf("%+v", a.r.Bench.Passes)
	}

	a = serveBench(t, "speed 70")
	a.do("close")
	mark := timed.Dial.Seconds * (math.Ceil(timed.Dial.At+0.5) - timed.Dial.At) // the next mark but at once
	drops := mark
	end := drops + timed.Way.Seconds*(timed.Way.ThreadEnds-timed.Way.Tool)
	a.do(page.Taken{Presses: []page.Press{{Key: "space", At: mark + 0.02}, {Key: "space", At: end + 0.1}}, End: end + 0.1}.String())
	a.leave()
	if len(a.r.Bench.Passes) != 1 || a.r.Bench.Passes[0].Mark == 0 || len(a.r.Bench.Mistakes) > 0 {
		t.Fatalf("%+v, %v", a.r.Bench.Passes, a.r.Bench.Mistakes)
	}
	if !reflect.DeepEqual(a.replayed(), a.r.Bench) {
		t.Error("the log plays to another bench")
	}
}

// A pass in a browser, with its own clock: Space closes the half-nut on a mark and takes the
// tool out at the end. The page tells the same of the dial and the tool as the bench does.
func TestPassInABrowser(t *testing.T) {
	ctx := inspect.Browser(t)
	a := serveBench(t, "speed 110")
	a.do("close")
	if err := chromedp.Do(ctx, chromedp.EmulateViewport(360, 740), chromedp.Navigate(a.url+"/?key=secret")); err != nil {
		t.Fatal(err)
	}
	inspect.Pictures(t, ctx, "pass-waits")
	inspect.Page(t, ctx, "a pass that waits")
	inspect.Evaluated[int](t, ctx, `document.querySelector('[data-part="main"]').focus(), 0`)
	if err := chromedp.Do(ctx, chromedp.KeyEvent(" ")); err != nil {
		t.Fatal(err)
	}
	// The page presses, when its own words say so: a busy machine is too late from outside.
	const space = ` && !part("main").dispatchEvent(new KeyboardEvent("keydown", {key: " ", bubbles: true, cancelable: true}))`
	at := waitFor(t, ctx, `part("mark").textContent.startsWith("At the index")`+space)
	waitFor(t, ctx, `part("nut").textContent.includes("closed") && toolShare() > ends`+space)
	waitFor(t, ctx, `!document.querySelector("[data-pass]")`)
	inspect.Pictures(t, ctx, "pass-over")
	inspect.Page(t, ctx, "the bench after a pass")
	a.leave()
	if len(a.r.Bench.Passes) != 1 || a.r.Bench.Over {
		t.Fatalf("%s: %d passes, %v\n%s", at, len(a.r.Bench.Passes), a.r.Bench.Mistakes, strings.Join(a.kept, "\n"))
	}
	if !reflect.DeepEqual(a.replayed(), a.r.Bench) {
		t.Error("the log plays to another bench")
	}
}

// A page that goes out of sight breaks the pass off, and one that can't reach the program says
// so: neither is a mistake.
func TestBrokenPassInABrowser(t *testing.T) {
	ctx := inspect.Browser(t)
	a := serveBench(t, "speed 70")
	a.do("close")
	kept := len(a.kept)
	if err := chromedp.Do(ctx, chromedp.EmulateViewport(1024, 768), chromedp.Navigate(a.url+"/?key=secret"), chromedp.KeyEvent(" "),
		chromedp.Evaluate[chromedp.Void](`Object.defineProperty(document, "hidden", {value: true}); document.dispatchEvent(new Event("visibilitychange"))`)); err != nil {
		t.Fatal(err)
	}
	waitFor(t, ctx, `document.body.textContent.includes("The pass was broken off")`)
	if len(a.kept) != kept || len(a.r.Bench.Passes) > 0 {
		t.Fatalf("kept: %v", a.kept[kept:])
	}
	a.do("close")
	if err := chromedp.Do(ctx, chromedp.Navigate(a.url), chromedp.Evaluate[chromedp.Void](`window.fetch = () => Promise.reject(new Error("gone"))`), chromedp.KeyEvent(" "), chromedp.KeyEvent("s")); err != nil {
		t.Fatal(err)
	}
	waitFor(t, ctx, `document.querySelector('[data-part="message"]').textContent.includes("did not answer")`)
	if len(a.kept) != kept {
		t.Fatalf("kept: %v", a.kept[kept:])
	}
	a.do("broken")
	a.leave()
}

// In calm motion the dial goes on by quarters from mark to mark.
func TestCalmPassInABrowser(t *testing.T) {
	ctx := inspect.Browser(t)
	a := serveBench(t, "speed 70")
	a.do("close")
	media := emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{{Name: "prefers-reduced-motion", Value: "reduce"}}}
	if _, err := chromedp.Call(ctx, emulation.SetEmulatedMedia, media); err != nil {
		t.Fatal(err)
	}
	if err := chromedp.Do(ctx, chromedp.Navigate(a.url+"/?key=secret"), chromedp.KeyEvent(" ")); err != nil {
		t.Fatal(err)
	}
	text, err := chromedp.Run(ctx, chromedp.Evaluate[string](`new Promise(done => { const seen = new Set(); let n = 0;
		const look = () => { seen.add(document.querySelector('[data-part="dial"] .moves').getAttribute("transform")); if (++n < 90) requestAnimationFrame(look); else done(JSON.stringify([...seen])); };
		setTimeout(() => failed(new Error("no frame for long: " + document.body.innerText)), 25000); // a browser may draw none
		look(); })`, chromedp.EvalAwaitPromise))
	if err != nil {
		t.Fatal(err)
	}
	var turns []string
	if err := json.Unmarshal([]byte(text), &turns); err != nil {
		t.Fatal(err)
	}
	if len(turns) == 0 || len(turns) > 12 {
		t.Errorf("%d places of the dial: %v", len(turns), turns)
	}
	for _, turn := range turns {
		var degrees float64
		if _, err := fmt.Sscanf(turn, "rotate(%g", &degrees); err != nil {
			t.Fatal(err)
		}
		if quarters := degrees * float64(machine.InchLathe.DialMarks) * 4 / 360; math.Abs(quarters-math.Round(quarters)) > 1e-6 {
			t.Errorf("%s is no quarter from mark to mark", turn)
		}
	}
	a.do("broken")
	a.leave()
}

// waitFor waits in the page, frame by frame, until something holds there.
func waitFor(t *testing.T, ctx context.Context, holds string) string {
	t.Helper()
	script := `new Promise((done, failed) => { const until = performance.now() + 20000;
		const pass = document.querySelector("[data-pass]"), c = pass ? JSON.parse(pass.dataset.pass) : {}, ends = c.ends;
		const part = (name) => document.querySelector('[data-part="' + name + '"]');
		const toolShare = () => (parseFloat(document.querySelector('[data-part="way"] .moves').getAttribute("transform").slice(10)) / (c.to - c.from));
		const look = () => { if (` + holds + `) done(document.body.innerText.slice(0, 300)); else if (performance.now() > until) failed(new Error(document.body.innerText)); else requestAnimationFrame(look); };
		look(); })`
	var text string
	var err error
	for range 3 { // the page may be another one meanwhile
		if text, err = chromedp.Run(ctx, chromedp.Evaluate[string](script, chromedp.EvalAwaitPromise)); err == nil {
			return text
		}
		t.Log("again: ", err)
		if _, err := chromedp.Call(ctx, browserpage.BringToFront, cdp.Empty{}); err != nil {
			t.Fatal(err)
		}
	}
	t.Fatalf("%s: %v", holds, err)
	return ""
}
