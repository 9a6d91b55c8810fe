package wording_test

import (
	"encoding/json"
	"maps"
	"slices"
	"strings"
	"testing"

	"scratchpass/content"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
	"scratchpass/quiz/wording"
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

// Beside a question stands a figure with what the question gives, or letters. What is asked
// for is never on it: not the number, nor a word that only the right option has.
func TestDrawings(t *testing.T) {
	labels, err := content.Shipped().Drawings()
	if err != nil {
		t.Fatal(err)
	}
	drawn := 0
	for _, task := range tasks.All() {
		w := words(t, task.Name)
		if w.Task.Drawing == "" {
			continue
		}
		drawn++
		for _, s := range []machine.System{machine.Imperial, machine.Metric} {
			for level := problem.Level(1); level <= 3 && task.Allows(s); level++ {
				for seed := uint32(1); seed <= 20; seed++ {
					p, err := problem.New(task, problem.NewCode(task.Name, level, s, seed, machine.DefaultLathe(s)))
					if err != nil {
						t.Fatal(err)
					}
					keepsAnswer(t, w, p, labels)
				}
			}
		}
	}
	if drawn < 80 {
		t.Errorf("%d tasks with a drawing", drawn)
	}
	w := words(t, "dial-past-a-turn")
	w.Task.Drawing = "no such drawing"
	if _, err := w.Drawing(remake(t, "dial-past-a-turn@1-0001"), labels); err == nil {
		t.Error("a drawing that is not there was drawn")
	}
	w.Task.Drawing = "dial-face"
	if d, err := w.Drawing(remake(t, "single-depth@1-0001"), labels); d != nil || err != nil {
		t.Errorf("a task without a dial draws %v, %v", d, err)
	}
}

// keepsAnswer wants a figure that does not print the answer.
func keepsAnswer(t *testing.T, w *wording.Words, p *problem.Problem, labels map[string]content.DrawingWords) {
	t.Helper()
	d, err := w.Drawing(p, labels)
	if err != nil || d == nil {
		t.Errorf("%s: %v, %v", p.Code, d, err)
		return
	}
	texts := []string{d.Title, d.Twin}
	for _, l := range d.Labels {
		texts = append(texts, l.Text)
	}
	if strings.Contains(d.Twin, "${") {
		t.Errorf("%s: the twin has an open place: %s", p.Code, d.Twin)
	}
	e := &p.Expected
	key := e.Unit.Fixed(e.Key.X)
	given := slices.Contains(slices.Collect(maps.Values(p.Values.Facts().Shown)), key) // then the question has it too
	for _, text := range texts {
		for _, said := range strings.FieldsFunc(text, func(r rune) bool { return !strings.ContainsRune("0123456789.", r) }) {
			if strings.Trim(said, ".") == key && strings.Contains(key, ".") && !given {
				t.Errorf("%s: the answer %s is on the drawing: %s", p.Code, key, text)
			}
		}
		if strings.HasSuffix(text, "= "+key) && !given {
			t.Errorf("%s: the answer %s is on the drawing: %s", p.Code, key, text)
		}
	}
	if right, wrong := named(w.Options(p), e, texts[2:]); right != "" && !wrong {
		t.Errorf("%s: of the options only the right one says %q, as the drawing does", p.Code, right)
	}
}

// named is a label that no option has but the right one, and whether there is one that only
// wrong options have: then the figure names both.
func named(options []string, e *answer.Expected, labels []string) (right string, wrong bool) {
	if len(e.Key.Keys) != 1 {
		return "", false
	}
	for _, text := range labels {
		var have []string
		for i, option := range options {
			if strings.Contains(strings.ToLower(option), strings.ToLower(text)) {
				have = append(have, e.Options[i])
			}
		}
		switch {
		case len(text) < 4 || len(have) == 0:
		case slices.Equal(have, e.Key.Keys):
			right = text
		case !slices.Contains(have, e.Key.Keys[0]):
			wrong = true
		}
	}
	return right, wrong
}
