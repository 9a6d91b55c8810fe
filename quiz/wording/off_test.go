package wording_test

import (
	"encoding/json"
	"strings"
	"testing"

	"scratchpass/content"
	"scratchpass/quiz/wording"
)

// An answer that is accepted though it is off says by how much; the printed key, however
// it is written, says nothing more.
func TestFeedbackOfAnAnswerThatIsOff(t *testing.T) {
	for _, row := range []struct{ code, given, verdict, off string }{
		{"single-depth@1-7f3a", "KEY", "Right: KEY.", ""},
		{"single-depth@1-7f3a", "+0.0003", "Right: KEY. You gave GIVEN. Close enough: 0.0003 in high.", `[{"number":1,"value":0.0003,"unit":"in"}]`},
		{"single-depth@1-7f3a", "-0.0003", "Right: KEY. You gave GIVEN. Close enough: 0.0003 in low.", `[{"number":1,"value":-0.0003,"unit":"in"}]`},
		{"side-clearance@1-7f3a", "+0.1", "Right: KEY. You gave GIVEN. Close enough: 0.10 degrees more.", `[{"number":1,"value":0.1,"unit":"deg"}]`},
		{"side-clearance@1-7f3a", "-0.1", "Right: KEY. You gave GIVEN. Close enough: 0.10 degrees less.", `[{"number":1,"value":-0.1,"unit":"deg"}]`},
		{"cross-slide-return@1-7f3a", "+0.0002", "Right: KEY. You gave GIVEN. Close enough: number 2 is 0.0002 in high.", `[{"number":2,"value":0.0002,"unit":"in"}]`},
	} {
		p := remake(t, row.code)
		w, err := wording.Load(content.Shipped(), p.Task.Name)
		if err != nil {
			t.Fatal(err)
		}
		r := p.Task.Kind.Typed(&p.Expected, p.Expected.Key)
		by := map[string]float64{"KEY": 0, "+0.0003": 0.0003, "-0.0003": -0.0003, "+0.1": 0.1, "-0.1": -0.1, "+0.0002": 0.0002}[row.given]
		if len(r.Xs) > 1 {
			r.Xs[1] += by
		} else {
			r.X += by
		}
		m := p.MarkResponse(r)
		want := strings.NewReplacer("KEY", w.KeyText(p), "GIVEN", w.Shown(p, r)).Replace(row.verdict)
		if got := w.Feedback(p, m).Line(); got != want {
			t.Errorf("%s %s: %q, want %q", row.code, row.given, got, want)
		}
		text, err := json.Marshal(w.MarkDocument(p, "what was typed", m))
		if err != nil {
			t.Fatal(err)
		}
		if row.off == "" && strings.Contains(string(text), `"off"`) || !strings.Contains(string(text), row.off) {
			t.Errorf("%s %s: %s, want %s", row.code, row.given, text, row.off)
		}
	}
	p := remake(t, "single-depth@1-7f3a")
	w, err := wording.Load(content.Shipped(), p.Task.Name)
	if err != nil {
		t.Fatal(err)
	}
	for _, known := range p.Expected.Errors { // wrong, or right by another convention: the two numbers stand there
		m := p.MarkResponse(known.Response)
		if doc := w.MarkDocument(p, "", m); doc.Off != nil || strings.Contains(doc.Feedback, "Close enough") {
			t.Errorf("%s: %+v", known.Name, doc)
		}
	}
}
