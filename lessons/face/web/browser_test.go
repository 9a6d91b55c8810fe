package web_test

import (
	"context"
	"net/http/httptest"
	"os"
	"os/exec"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"

	"scratchpass/lessons/face/web"
	"scratchpass/lessons/page"
	"scratchpass/quiz/drawing"
)

// What the project's own check sets: the file of axe-core (npm), which it fetches, and that
// a browser must be here.
const (
	axeFile  = "AXE_CORE"
	mustLook = "SCRATCHPASS_BROWSER"
)

// everyPrompt is a page of every block, and after it each kind of prompt.
func everyPrompt() (page.Page, []page.Prompt) {
	d := drawing.Curve("depth", []float64{1, 2, 3}, 0, 0)
	d.Twin = "A curve that goes up."
	options := []string{"one", "two, a long one that has to be broken over several lines of a narrow window", "three"}
	p := page.Page{
		page.Where{Text: "Problem 1 of 3", Of: 3}, page.Heading{Text: "Practice"},
		page.Verdict{Text: "Not right.", Given: "You gave 0.0511 in.", Answer: "The answer is 0.0587 in."},
		page.Paragraph{Text: "That is the depth straight in."},
		page.Working{{Symbol: "c", Line: "c = h / cos(a) = 0.051120 / cos(29.5) = 0.0587 in", Means: "c: compound travel"}},
		page.Caution{Text: "CAUTION: stop the spindle."}, page.Meter{Done: 1, Of: 3, Text: "1 of 3 shown"},
		page.Table{Columns: []string{"who", "right"}, Rows: [][]string{{"Ada", "1"}}}, page.Columns{Head: "pass   depth", Rows: []page.ColumnRow{{Row: "1      0.0050", Sentence: "pass 1"}}},
		page.Verdict{Right: true, Text: "Right."}, page.Mistake{Text: "The tool is buried."}, page.Item{Text: "an item"}, page.Aside{Text: "a remark"},
		page.Figure{Caption: "Drawing: depth", Pictures: []drawing.Drawing{d}, Twin: d.Twin},
		page.Question{Text: "The thread has 12 threads per inch.\nHow far?", Figure: &page.Figure{Pictures: []drawing.Drawing{d}, Twin: d.Twin}},
	}
	help := []string{"hint", "look", "pass", "stop"}
	return p, []page.Prompt{
		{Text: "Answer in inches", Takes: page.Number{Unit: "in", Places: 4}, Words: help, Beside: true},
		{Text: "Which?", Takes: page.Menu{Options: options, Back: true}}, {Text: "Which line?", Takes: page.OneOf{Options: options}, Words: help},
		{Text: "Which fit?", Takes: page.SeveralOf{Options: options}, Words: help}, {Text: "In which order?", Takes: page.InOrder{Steps: options}, Words: help},
		{Text: "Both readings", Takes: page.Readings{Labels: []string{"for a spring pass?", "for the next cut?"}, Unit: "in"}}, {Text: "What does it say?", Takes: page.Parts{}},
		{Text: "A word", Takes: page.Words{}}, {Takes: page.GoOn{}},
	}
}

// browserFor starts a browser; without one there is no test, but in the project's own check
// that is an error.
func browserFor(t *testing.T) context.Context {
	t.Helper()
	if _, err := exec.LookPath("chromium"); err != nil {
		if os.Getenv(mustLook) != "" {
			t.Fatal("no Chromium: ", err)
		}
		t.Skip("no Chromium here")
	}
	ctx, cancel := context.WithTimeout(t.Context(), 3*time.Minute)
	t.Cleanup(cancel)
	ctx, cancel = chromedp.NewContext(ctx)
	t.Cleanup(cancel)
	return ctx
}

// Every kind of page and prompt passes axe-core, narrow and light, wide and dark; nothing
// is wider than a window of 320 pixels, and every target is high enough for a thumb.
func TestPagesInABrowser(t *testing.T) {
	ctx := browserFor(t)
	axe, err := os.ReadFile(os.Getenv(axeFile))
	if err != nil && os.Getenv(axeFile) != "" {
		t.Fatal(axeFile, ": ", err)
	}
	talk := web.NewTalk(t.Context())
	s := httptest.NewUnstartedServer(nil)
	s.Config.Handler = web.Handler(talk, web.Options{Key: "secret", Hosts: []string{s.Listener.Addr().String()}, Words: labels})
	s.Start()
	defer s.Close()
	p, prompts := everyPrompt()
	for i, q := range prompts {
		if err := talk.Show(p); err != nil {
			t.Fatal(err)
		}
		go func() { _, _ = talk.Ask(q) }()
		talk.View(t.Context())
		look(t, ctx, s.URL, i == 0, "light", 320, string(axe))
		look(t, ctx, s.URL, false, "dark", 1440, string(axe))
		talk.Answer(i+1, "x")
	}
}

// labels are words for each label of a page.
var labels = web.Words{Lang: "en", Name: "Scratchpass", Skip: "To the answer", Send: "Mark it", GoOn: "Go on", Sum: "Work it out", SumLabel: "A sum",
	Term: "Explain", TermLabel: "A word", Words: "Other ways on", Units: "Units", None: "none of them", Gone: "open the link", Ended: "That is all.", Order: "Tap the steps in order",
	Hidden: "The page was out of sight.", Lost: "The program did not answer.", Again: "Start over", Look: "Look up", Back: "Back to your work", Do: "Do it", Moves: "Moves", Log: "Before"}

// look opens the page as it is now and looks at it.
func look(t *testing.T, ctx context.Context, base string, first bool, theme string, width int64, axe string) {
	t.Helper()
	where := base + "/"
	if first {
		where += "?key=secret"
	}
	media := emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: theme}}}
	if _, err := chromedp.Call(ctx, emulation.SetEmulatedMedia, media); err != nil {
		t.Fatal(err)
	}
	if err := chromedp.Do(ctx, chromedp.EmulateViewport(width, 740), chromedp.Navigate(where)); err != nil {
		t.Fatal(err)
	}
	wide, err := chromedp.Run(ctx, chromedp.Evaluate[int64](`document.documentElement.scrollWidth`))
	if err != nil || wide > width {
		t.Errorf("%d wide: the page is %d wide, %v", width, wide, err)
	}
	small, err := chromedp.Run(ctx, chromedp.Evaluate[string](`[...document.querySelectorAll("button,input:not([type=hidden]):not([type=checkbox]),label.choice")].filter(e=>e.offsetParent&&e.getBoundingClientRect().height<44).map(e=>e.outerHTML).join("\n")`))
	if err != nil || small != "" {
		t.Errorf("%d wide: too low for a thumb: %s, %v", width, small, err)
	}
	if axe == "" {
		return
	}
	if err := chromedp.Do(ctx, chromedp.Evaluate[chromedp.Void](axe)); err != nil {
		t.Fatal(err)
	}
	found, err := chromedp.Run(ctx, chromedp.Evaluate[string](`axe.run({rules:{"target-size":{enabled:true}}}).then(r=>r.violations.map(v=>v.id+": "+v.nodes.map(n=>n.html+" "+n.failureSummary).join(" | ")).join("\n"))`, chromedp.EvalAwaitPromise))
	if err != nil || strings.TrimSpace(found) != "" {
		t.Errorf("%s, %d wide: %s, %v", theme, width, found, err)
	}
}
