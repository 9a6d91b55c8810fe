package web_test

import (
	"net/http/httptest"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"

	"scratchpass/content"
	"scratchpass/lessons/face/inspect"
	"scratchpass/lessons/face/web"
	"scratchpass/lessons/page"
	"scratchpass/quiz/drawing"
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

// Every kind of page and prompt is one that anyone can read and use.
func TestPagesInABrowser(t *testing.T) {
	ctx := inspect.Browser(t)
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
		where := s.URL + "/"
		if i == 0 {
			where += "?key=secret"
		}
		inspect.Open(t, ctx, where)
		inspect.Page(t, ctx, q.Text)
		talk.Answer(i+1, "x")
	}
}

// labels are the words of pages that ship.
var labels = func() web.Words {
	screens, err := content.Shipped().Screens()
	if err != nil {
		panic(err)
	}
	return web.WordsOf(func(key string, _ ...any) string { return screens[key] })
}()

// Steps are put in order by their arrows and by dragging, and sent as numbers.
func TestOrderInABrowser(t *testing.T) {
	ctx := inspect.Browser(t)
	talk := web.NewTalk(t.Context())
	s := httptest.NewUnstartedServer(nil)
	s.Config.Handler = web.Handler(talk, web.Options{Key: "secret", Hosts: []string{s.Listener.Addr().String()}, Words: labels})
	s.Start()
	defer s.Close()
	answer := make(chan string, 1)
	go func() {
		text, _ := talk.Ask(page.Prompt{Text: "In which order?", Takes: page.InOrder{Steps: []string{"close", "open", "wind back", "feed"}}})
		answer <- text
	}()
	inspect.Open(t, ctx, s.URL+"/?key=secret")
	inspect.Evaluated[int](t, ctx, `document.querySelector('li [data-way="1"]').click(), 0`) // 2 1 3 4
	heard := inspect.Evaluated[string](t, ctx, `document.querySelector("[data-place]").textContent`)
	if heard != "close: place 2 of 4" {
		t.Error(heard)
	}
	at := inspect.Evaluated[[]float64](t, ctx, `[".order li:nth-child(4) .grip", ".order li:nth-child(1) .grip"].flatMap(s => { const r = document.querySelector(s).getBoundingClientRect(); return [r.x + 9, r.y + 9]; })`)
	for _, m := range []input.DispatchMouseEventParams{{Type: input.DispatchMouseEventTypeMousePressed, X: at[0], Y: at[1], Button: input.MouseButtonLeft, ClickCount: 1}, {Type: input.DispatchMouseEventTypeMouseMoved, X: at[2], Y: at[3], Button: input.MouseButtonLeft}, {Type: input.DispatchMouseEventTypeMouseReleased, X: at[2], Y: at[3], Button: input.MouseButtonLeft, ClickCount: 1}} {
		if _, err := chromedp.Call(ctx, input.DispatchMouseEvent, m); err != nil {
			t.Fatal(err)
		}
	}
	inspect.Evaluated[int](t, ctx, `document.querySelector("button.primary").click(), 0`)
	if got := <-answer; got != "4 2 1 3" {
		t.Errorf("the order is %q", got)
	}
	talk.End()
}
