package wording_test

import (
	"encoding/json"
	"strings"
	"testing"

	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
)

// The JSON of a problem as others read it: with the key, and without a trace of it.
func TestProblemDocument(t *testing.T) {
	p := remake(t, "compound-travel@1-0001")
	w := words(t, p.Task.Name)
	asked, err := json.Marshal(w.Document(p, false))
	if err != nil {
		t.Fatal(err)
	}
	for _, key := range []string{`"answer"`, `"steps"`, `"slips"`, p.Expected.Unit.Fixed(p.Expected.Key.X)} {
		if strings.Contains(string(asked), key) {
			t.Errorf("without the key there is %s in %s", key, asked)
		}
	}
	doc := w.Document(p, true)
	e := &p.Expected
	if doc.Task != "compound-travel" || doc.Code != "compound-travel@1-0001" || len(doc.Steps) != len(p.Working.Steps) || len(doc.Slips) != len(e.Errors) || len(doc.Given) != len(p.Values.Givens()) {
		t.Errorf("%+v", doc)
	}
	last := doc.Steps[len(doc.Steps)-1]
	if last.Value != doc.Answer.Value || last.Formula != "h / cos(a)" || last.Means == "" || last.Unit != "in" || !strings.HasPrefix(last.With, "0.0") {
		t.Errorf("the last step: %+v", last)
	}
	if a := doc.Answer; a.Kind != "quantity" || a.Unit != "in" || *a.Low >= e.Key.X || *a.High <= e.Key.X {
		t.Errorf("the answer: %+v", a)
	}
	if doc.Slips[0].Name != "no-angle" || doc.Slips[0].Value != e.Unit.Fixed(e.Errors[0].Response.X) {
		t.Errorf("the first common error: %+v", doc.Slips[0])
	}
	own, err := problem.FromValues(p.Task, p.Values, machine.InchLathe)
	if err != nil {
		t.Fatal(err)
	}
	if doc := w.Document(own, true); doc.Code != "" {
		t.Errorf("own numbers have the code %q", doc.Code)
	}
}

// What is right beside the key is a number in the unit shown, and null where an answer is
// none.
func TestBoundsInDocuments(t *testing.T) {
	for code, want := range map[string]string{
		"blank-diameter@1-0001":     `{"kind":"limits","value":"0.9905","unit":"in","low":0.983,"high":0.998}`,
		"cross-slide-return@1-0001": `{"kind":"readings","value":"0.0050 then 0.0060","unit":"in","low":null,"high":null}`,
		"square-the-tool@1-0001":    `{"kind":"choice","value":"1","unit":"","low":null,"high":null}`,
	} {
		p := remake(t, code)
		text, err := json.Marshal(words(t, p.Task.Name).Document(p, true).Answer)
		if err != nil || string(text) != want {
			t.Errorf("%s: %s, %v, want %s", code, text, err, want)
		}
	}
	mm := remake(t, "single-depth@1m-0001")
	a := words(t, "single-depth").Document(mm, true).Answer
	if low := mm.Expected.Unit.Fixed(*a.Low / 25.4); low == "" || *a.Low < 0.1 || *a.High-*a.Low > 0.1 || a.Unit != "mm" {
		t.Errorf("in millimetres: %v to %v %s", *a.Low, *a.High, a.Unit)
	}
	if critical := remake(t, "dial-past-a-turn@1-0001"); len(words(t, critical.Task.Name).Document(critical, false).Safety) == 0 {
		t.Error("a task that can hurt someone has no caution in its JSON")
	}
}

// The JSON of a mark has the verdict, the points and the feedback as one text.
func TestMarkDocument(t *testing.T) {
	p := remake(t, "compound-travel@1-0001")
	w := words(t, p.Task.Name)
	typed := p.Expected.Show(p.Expected.Errors[0].Response)
	m := p.Mark(typed)
	doc := w.MarkDocument(p, typed, m)
	if doc.Code != p.Code.String() || doc.Given != typed || doc.Verdict != answer.KnownError || doc.Slip != "no-angle" || doc.Points != 0 || doc.Feedback != w.Feedback(p, m).Text() {
		t.Errorf("%+v", doc)
	}
	text, err := json.Marshal(doc)
	if err != nil || !strings.Contains(string(text), `"verdict":"slip","slip":"no-angle","points":0`) {
		t.Errorf("%s, %v", text, err)
	}
}
