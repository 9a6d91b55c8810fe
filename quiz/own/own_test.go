package own_test

import (
	"errors"
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"scratchpass/content"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/arithmetic"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/own"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/wording"
)

var seeds = flag.Int("seeds", 300, "problems of each example that are tried")

// folder is a library with one question.
func folder(text string) *content.Library {
	return content.Reading("mine", fstest.MapFS{"questions/my-question.yaml": {Data: []byte(text)}})
}

// read reads a question as a task.
func read(text string) (*problem.Task, *content.Question, error) {
	q, err := folder(text).Question("my-question")
	if err != nil {
		return nil, nil, err
	}
	t, err := own.Task("my-question", &q)
	return t, &q, err
}

func example(t *testing.T, kind string) string {
	t.Helper()
	text, err := content.ExampleQuestion(kind)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// Every problem of every example: the key is marked right, each mistake as that mistake, a
// code makes the same problem again, and nothing in it is without a value.
func TestExamples(t *testing.T) {
	for _, kind := range own.Kinds {
		text := example(t, kind)
		task, q, err := read(text)
		if err != nil {
			t.Fatalf("%s: %v", kind, err)
		}
		if found := own.Examine(task, q); len(found) > 0 {
			t.Errorf("%s: %v", kind, found)
		}
		w, err := wording.Load(folder(text), "my-question")
		if err != nil {
			t.Fatal(err)
		}
		keys := map[string]bool{}
		for seed := range uint32(*seeds) {
			for level := problem.NumbersGiven; level <= problem.OnTheJob; level++ {
				keys[holds(t, task, w, problem.NewCode(task.Name, level, machine.Imperial, seed, machine.InchLathe))] = true
			}
		}
		if kind == "number" && len(keys) < 20 {
			t.Errorf("only %d answers", len(keys))
		}
	}
}

// holds looks at one problem and returns its key.
func holds(t *testing.T, task *problem.Task, w *wording.Words, code problem.Code) string {
	t.Helper()
	p, err := problem.New(task, code)
	if err != nil {
		t.Fatal(err)
	}
	again, err := problem.New(task, code)
	if err != nil || w.PaperKey(again) != w.PaperKey(p) || !slices.Equal(again.Expected.Options, p.Expected.Options) {
		t.Errorf("%s makes %q and %q", code, w.PaperKey(p), w.PaperKey(again))
	}
	prompt, unknown := w.Ask(p)
	if len(unknown) > 0 || !strings.HasPrefix(prompt, "Instructor's question. ") || strings.Contains(prompt, "${") {
		t.Errorf("%s asks %q, unknown %q", code, prompt, unknown)
	}
	if m := p.Mark(typed(p, p.Expected.Key)); m.Verdict != answer.Right || m.Points != 1 {
		t.Errorf("%s: the key %q is %s", code, typed(p, p.Expected.Key), m.Verdict)
	}
	for _, known := range p.Expected.Errors {
		if m := p.MarkResponse(p.Expected.Kind.Typed(&p.Expected, known.Response)); m.Error != known.Name || m.Correct() {
			t.Errorf("%s: %s is marked %s %q", code, known.Name, m.Verdict, m.Error)
		}
	}
	for i, s := range p.Working.Steps {
		if strings.TrimSpace(p.Working.Line(i)) == "" || w.Means(s.Symbol) == "" {
			t.Errorf("%s: step %d is %q, and %q means nothing", code, i, p.Working.Line(i), s.Symbol)
		}
	}
	return w.KeyText(p)
}

func typed(p *problem.Problem, r answer.Response) string {
	if p.Expected.Kind.Numeric() {
		return p.Expected.Show(r)
	}
	return strings.Join(p.Expected.Kind.Print(&p.Expected, r), "")
}

// The example for a number, against arithmetic that is written out here.
func TestNumberIsRight(t *testing.T) {
	task, _, err := read(example(t, "number"))
	if err != nil {
		t.Fatal(err)
	}
	for seed := range uint32(200) {
		p, err := problem.New(task, problem.NewCode(task.Name, 1, machine.Imperial, seed, machine.InchLathe))
		if err != nil {
			t.Fatal(err)
		}
		l, n, v := p.Values.X("L"), p.Values.X("n"), p.Values.X("v")
		if l < 1 || l > 4 || math.Mod(l, 0.25) != 0 || v < 60 || v > 140 || math.Mod(v, 5) != 0 || !slices.Contains([]float64{8, 10, 12, 14, 16, 20}, n) {
			t.Fatalf("%s draws %v %v %v", p.Code, l, n, v)
		}
		if want := 60 * l * n / v; math.Abs(p.Expected.Key.X-want) > 1e-9 {
			t.Errorf("%s: %v, want %v", p.Code, p.Expected.Key.X, want)
		}
	}
}

const number = `title: t
skill: s
kind: number
ask: How much is ${a} by ${b}?
inputs:
  a: {from: 1, to: 9, step: 0.5, unit: mm, means: one}
  b: {list: [2, 3, 5], means: two}
answer: {symbol: x, formula: a * b, unit: mm, means: both}
mistakes:
  sum: {formula: a + b + 20, say: no}
at_the_lathe: bad
`

// Lengths in millimetres are numbers in millimetres in the formula, and are asked in metric
// problems alone.
func TestMillimetres(t *testing.T) {
	task, _, err := read(number)
	if err != nil {
		t.Fatal(err)
	}
	if task.Allows(machine.Imperial) || !task.Allows(machine.Metric) {
		t.Errorf("asked in %v", task.Systems)
	}
	p, err := problem.New(task, problem.NewCode(task.Name, 1, machine.Metric, 5, machine.MetricLathe))
	if err != nil {
		t.Fatal(err)
	}
	a, b := p.Values.X("a")*25.4, p.Values.X("b")
	if math.Abs(p.Expected.Key.X*25.4-a*b) > 1e-9 || !strings.HasSuffix(p.Expected.Text(), " mm") {
		t.Errorf("%v by %v is %s", a, b, p.Expected.Text())
	}
	if m := p.Mark(fmt.Sprintf("%.5f in", a*b/25.4)); m.Verdict != answer.Right {
		t.Errorf("in inches it is %s", m.Verdict)
	}
}

// A limit takes nothing beyond it, and on its safe side what room allows.
func TestLimit(t *testing.T) {
	task, _, err := read(strings.NewReplacer("means: both", "limit: at-most, room: 5, ruins: high, means: both", "a + b + 20", "a * b * 3").Replace(number))
	if err != nil {
		t.Fatal(err)
	}
	for seed := range uint32(50) {
		p, err := problem.New(task, problem.NewCode(task.Name, 1, machine.Metric, seed, machine.MetricLathe))
		if err != nil {
			t.Fatal(err)
		}
		for by, want := range map[float64]answer.Verdict{0.97: answer.Right, 0.9: answer.SafeWrong, 1.01: answer.ScrapWrong} {
			if m := p.MarkResponse(answer.NumberResponse(p.Expected.Key.X * by)); m.Verdict != want && m.Error == "" {
				t.Errorf("%s: %v of the limit is %s", p.Code, by, m.Verdict)
			}
		}
	}
}

// What is wrong with a question is said with its line.
func TestWrongQuestions(t *testing.T) {
	choice := "title: t\nskill: s\nkind: choice\nask: q\noptions:\n  a: one\n  b: two\nright: [a]\nmistakes:\n  b: {say: no}\nat_the_lathe: x\n"
	several := "title: t\nskill: s\nkind: several\nask: q\noptions:\n  a: one\n  b: two\n  c: three\nright: [a, b]\nmistakes:\n  m: {gives: [a], say: no}\nat_the_lathe: x\n"
	order := "title: t\nskill: s\nkind: order\nask: q\noptions:\n  a: one\n  b: two\n  c: three\nright: [a, b, c]\nmistakes:\n  m: {gives: [b, a, c], say: no}\nat_the_lathe: x\n"
	for _, good := range []string{number, choice, several, order} {
		if task, q, err := read(good); err != nil || len(own.Examine(task, q)) > 0 {
			t.Fatalf("%v in\n%s", err, good)
		}
	}
	for _, row := range []struct{ base, from, to, want string }{
		{number, "kind: number", "kind: nummer", `:3: kind "nummer": give one of choice, several, order, number; did you mean number?`},
		{number, "title: t", "titel: t", `:1: unknown key "titel"`},
		{number, "skill: s", "skill: s\nskill: s", `the key "skill" stands twice`},
		{number, "step: 0.5", "step: soon", "a text stands where a number is wanted"},
		{number, "step: 0.5", "step: 0", "in steps above 0"},
		{number, "to: 9", "to: 1", "up to a larger one"},
		{number, "from: 1, ", "", "a range has from, to and step"},
		{number, "from: 1", "list: [1], from: 1", "give from, to and step, or a list"},
		{number, "step: 0.5", "step: 0.0000001", "give 2 to 100000"},
		{number, "step: 0.5", "stepp: 0.5", "did you mean step?"},
		{number, "[2, 3, 5]", "[2, .inf]", "give plain numbers"},
		{number, "means: two", "means: ''", "means is missing"},
		{number, "${b}", "${c}", "has ${c}, which is no input; the inputs are a, b"},
		{choice, "ask: q", "ask: q ${e}", "ask has ${e}, and the question has no inputs: write the number itself"},
		{number, "formula: a * b", "formula: m = a x b", "formula of x: \"m = a x b\" can't be worked out: leave m = out"},
		{number, "formula: a * b", "formula: a b", "formula of x: \"a b\" can't be worked out: times is written *"},
		{several, "gives: [a]", "gives: [b, a]", "the mistake m gives what is right"},
		{number, " by ${b}", "", ":7: the question never tells ${b}"},
		{number, "formula: a * b", "formula: a * c", `:8: formula of x: "a * c" can't be worked out: "c" is not known`},
		{number, "formula: a * b", "formula: a *", "can't be worked out"},
		{number, "formula: a * b", "formula: ''", "the formula is empty"},
		{number, "symbol: x", "symbol: a", "has a meaning already"},
		{number, "symbol: x", "symbol: cos", "has a meaning of its own"},
		{number, "unit: mm, means: both", "unit: bars, means: both", "decimals is missing"},
		{number, "means: both", "means: both, decimals: 9", "decimals 9: give 0 to 6"},
		{number, "means: both", "means: both, tolerance: 0.0001", "tolerance 0.0001: with 3 decimals give at least 0.00075"},
		{number, "means: both", "means: both, limit: atmost", "give at-most or at-least; did you mean at-most"},
		{number, "means: both", "means: both, room: 5", "room belongs to a limit"},
		{number, "means: both", "means: both, ruins: up", "give high or low"},
		{number, "means: both}", "means: both}\nsteps: [{symbol: y, formula: a, means: z}]", "no formula uses y"},
		{number, "formula: a + b + 20", "gives: [a]", "which belongs to options"},
		{number, "formula: a + b + 20", "formula: a + q", ":10: the mistake sum: "},
		{number, "say: no", "say: no $5", "it is shown as it stands"},
		{number, "answer: {symbol: x, formula: a * b, unit: mm, means: both}\n", "", "answer is missing"},
		{number, "at_the_lathe", "options: {a: b}\nat_the_lathe", "options, right and either belong to"},
		{choice, "right: [a]", "right: [c]", `right: no option is called "c"; they are a, b`},
		{choice, "right: [a]", "right: [a, b]", "give the one option that is right"},
		{choice, "  b: {say: no}", "  c: {say: no}", "the wrong option b has no mistake of its name"},
		{choice, "  b: {say: no}", "  b: {say: no}\n  a: {say: no}", "a is the right option"},
		{choice, "  b: two\n", "", "options: there are 1: give 2 to 9"},
		{choice, "{say: no}", "{say: no, formula: 1}", "has a formula, which belongs to kind: number"},
		{choice, "mistakes:", "answer: {symbol: x, formula: '1', means: y}\nmistakes:", "answer and steps belong to kind: number"},
		{several, "right: [a, b]", "right: []", "right: give the options that are right"},
		{several, "right: [a, b]", "right: [a, a]", "a stands twice"},
		{several, "gives: [a]", "gives: [d]", `no option is called "d"`},
		{several, "mistakes:\n  m: {gives: [a], say: no}", "mistakes: {}", "mistakes is missing"},
		{order, "right: [a, b, c]", "right: [a, b]", "right: give all 3 steps"},
		{order, "gives: [b, a, c]", "gives: [b]", "of an order all of them"},
		{order, "mistakes:", "either: [[a]]\nmistakes:", "either: give pairs of steps"},
		{several, "mistakes:", "either: [[a, b]]\nmistakes:", "either belongs to kind: order"},
	} {
		text := strings.Replace(row.base, row.from, row.to, 1)
		if text == row.base {
			t.Fatalf("%q does not stand in the question", row.from)
		}
		_, _, err := read(text)
		var found content.Findings
		if strings.Contains(row.want, "formula of") && strings.Contains(err.Error(), "no formula uses") {
			t.Errorf("%q: said twice: %v", row.to, err)
		}
		if !errors.As(err, &found) || !strings.Contains(err.Error(), row.want) || !strings.HasPrefix(found[0].File, "mine/questions/") {
			t.Errorf("%q instead of %q: %v, want %q", row.to, row.from, err, row.want)
		}
	}
}

// What only many draws show: no value, a mistake that is none, too few problems.
func TestExamine(t *testing.T) {
	for _, row := range []struct{ from, to, want string }{
		{"formula: a * b", "formula: a / (b - 5)", "draws there is no answer"},
		{"formula: a * b", "formula: sqrt(a - 5) * b", "draws there is no answer"},
		{"formula: a + b + 20", "formula: b * a", "sum gives the answer in 600"},
		{"formula: a + b + 20", "formula: 1 / (b - b)", "the mistake sum has no value in any of 600 draws"},
		{"  sum:", "  other: {formula: a + b + 20.0001, say: no}\n  sum:", "other gives the same as sum in 600"},
		{"{from: 1, to: 9, step: 0.5,", "{list: [4],", "with 3 different sets of numbers: give at least 6"},
	} {
		text := strings.Replace(number, row.from, row.to, 1)
		task, q, err := read(text)
		if err != nil {
			t.Errorf("%q: %v", row.to, err)
			continue
		}
		found := own.Examine(task, q)
		if len(found) == 0 || !strings.Contains(found.Error(), row.want) || found[0].Line == 0 {
			t.Errorf("%q: %v, want %q", row.to, found, row.want)
		}
	}
}

// A length that is given has as many decimals as the numbers it is drawn from, or as many as
// the file says. It changes no number.
func TestGivenDecimals(t *testing.T) {
	for _, row := range []struct{ from, to, want string }{
		{"from: 1, to: 9, step: 0.5, unit: mm", "from: 8, to: 14, step: 0.5, unit: in", `^[0-9]+\.[05] in$`},
		{"from: 1, to: 9, step: 0.5, unit: mm", "from: 8, to: 14, step: 1, unit: in", `^[0-9]+ in$`},
		{"from: 1, to: 9, step: 0.5, unit: mm", "list: [0.125, 2, 0.5, 1, 3, 4], unit: in", `^[0-9]\.[0-9]{3} in$`},
		{"from: 1, to: 9, step: 0.5, unit: mm", "from: 8, to: 14, step: 0.5, unit: in, decimals: 3", `^[0-9]+\.[05]00 in$`},
		{"from: 1, to: 9, step: 0.5, unit: mm", "from: 8, to: 14, step: 0.5, unit: bars", `^[0-9]+(\.5)? bars$`},
		{"from: 1, to: 9, step: 0.5, unit: mm", "from: 8, to: 14, step: 0.5, unit: bars, decimals: 2", `^[0-9]+\.[05]0 bars$`},
	} {
		text := strings.NewReplacer(row.from, row.to, "formula: a * b, unit: mm", "formula: a * b, unit: bars, decimals: 3", "unit: mm, means: both", "unit: bars, decimals: 3, means: both").Replace(number)
		task, _, err := read(text)
		if err != nil {
			t.Errorf("%s: %v", row.to, err)
			continue
		}
		for seed := range uint32(20) {
			p, err := problem.Once(task, problem.NewCode(task.Name, 1, machine.Imperial, seed, machine.InchLathe))
			if err != nil {
				t.Fatal(err)
			}
			if said, _ := p.Values.PromptWord("a", ""); !regexp.MustCompile(row.want).MatchString(said) {
				t.Errorf("%s: %q, want %s", row.to, said, row.want)
			}
		}
	}
	if _, _, err := read(strings.Replace(number, "step: 0.5", "step: 0.5, decimals: 0", 1)); err == nil || !strings.Contains(err.Error(), "decimals 0: its numbers have 1, so give 1 to 9") {
		t.Errorf("fewer decimals than there are: %v", err)
	}
	first, _, _ := read(number)
	if more, _, err := read(strings.Replace(number, "step: 0.5", "step: 0.5, decimals: 3", 1)); err != nil || more.Mark != first.Mark {
		t.Errorf("decimals that are shown change the numbers: %v", err)
	}
}

// What either allows is no mistake, and a pair that a step holds apart says nothing.
func TestEither(t *testing.T) {
	base := example(t, "order")
	for _, row := range []struct{ from, to, want string }{
		{"gives: [stop, back, try, clean, note]", "gives: [stop, clean, back, try, note]", "32: the mistake not-cleaned gives an order that is right, for either lets its steps stand so"},
		{"gives: [stop, back, try, clean, note]", "gives: [stop, back, clean, try, note]", "the mistake not-cleaned gives what is right"},
		{"gives: [stop, back, try, clean, note]", "gives: [clean, back, stop, try, note]", "gives the same as"},
		{"- [back, clean]", "- [clean, note]", "either: clean and note never stand side by side, for try stands between them"},
		{"- [back, clean]", "- [note, back]", "never stand side by side"},
		{"- [back, clean]", "- [back, note]\n  - [try, note]\n  - [clean, note]", ""},
		{"- [back, clean]", "- [back, note]\n  - [try, note]", "back and note never stand side by side, for clean stands"},
	} {
		text := strings.Replace(base, row.from, row.to, 1)
		if text == base {
			t.Fatalf("%q does not stand in the example", row.from)
		}
		task, q, err := read(text)
		if err == nil {
			if found := own.Examine(task, q); len(found) > 0 {
				err = found
			}
		}
		if (err == nil) != (row.want == "") || err != nil && (!strings.Contains(err.Error(), row.want) || strings.Contains(err.Error(), "wider range")) {
			t.Errorf("%q: %v, want %q", row.to, err, row.want)
		}
	}
}

// A tolerance is counted from the answer as it is printed, on both sides, and covers the one
// that is not rounded: with 0.0003 the answer 0.0054 takes 0.0051 to 0.0057.
func TestToleranceIsEven(t *testing.T) {
	text := strings.NewReplacer("a * b, unit: mm", "a / 7, unit: in, tolerance: 0.0003", "a + b + 20", "a", "by ${b}", "", "  b: {list: [2, 3, 5], means: two}\n", "", "step: 0.5, unit: mm", "step: 0.05, unit: in").Replace(number)
	task, _, err := read(text)
	if err != nil {
		t.Fatal(err)
	}
	for seed := range uint32(300) {
		p, err := problem.New(task, problem.NewCode(task.Name, 1, machine.Imperial, seed, machine.InchLathe))
		if err != nil {
			t.Fatal(err)
		}
		low, high, _ := p.Expected.Bounds()
		printed := math.Round(p.Expected.Key.X*1e4) / 1e4
		if low > p.Expected.Key.X-0.0003+1e-12 || high < p.Expected.Key.X+0.0003-1e-12 {
			t.Fatalf("%s: %v to %v does not cover %v", p.Code, low, high, p.Expected.Key.X)
		}
		for by, want := range map[int]bool{-4: false, -3: true, 3: true, 4: false} {
			given := fmt.Sprintf("%.4f", printed+float64(by)/1e4)
			if got := p.Mark(given).Verdict == answer.Right; got != want {
				t.Fatalf("%s: %s for %.4f (%v) is right: %v", p.Code, given, printed, p.Expected.Key.X, got)
			}
		}
		if want := fmt.Sprintf("%.4f to %.4f in", printed-0.0003, printed+0.0003); p.Expected.Kind.Accepts(&p.Expected) != want {
			t.Fatalf("%s: accepts %s, want %s", p.Code, p.Expected.Kind.Accepts(&p.Expected), want)
		}
	}
}

// Another formula gives another mark, other words do not.
func TestMark(t *testing.T) {
	first, _, _ := read(number)
	for from, differs := range map[string]bool{"title: t": false, "say: no": false, "means: one": false, "at_the_lathe: bad": false, "a * b,": true, "step: 0.5": true, "[2, 3, 5]": true, "a + b + 20": true} {
		to := map[bool]string{true: strings.NewReplacer("0.5", "0.25", "*", "/", "5]", "7]", "20", "30").Replace(from), false: from + "s"}[differs]
		other, _, err := read(strings.Replace(number, from, to, 1))
		if err != nil || (other.Mark != first.Mark) != differs {
			t.Errorf("%q to %q: %v, %v", from, to, err, !differs)
		}
	}
}

// The list of fields and functions has all of them.
func TestListed(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("..", "..", "content", "examples", "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	listed := map[string]bool{}
	for _, word := range regexp.MustCompile(`[a-z_]+`).FindAllString(string(text), -1) {
		listed[word] = true
	}
	for _, name := range arithmetic.FormulaNames() {
		if !listed[name] {
			t.Errorf("the function %s is not listed", name)
		}
	}
	for _, of := range []any{content.Question{}, content.QuestionInput{}, content.QuestionStep{}, content.QuestionAnswer{}, content.QuestionMistake{}} {
		for i := range reflect.TypeOf(of).NumField() {
			if key, _, _ := strings.Cut(reflect.TypeOf(of).Field(i).Tag.Get("yaml"), ","); key != "" && !listed[key] {
				t.Errorf("the field %s is not listed", key)
			}
		}
	}
}

// An input has a name besides its letter, by which a drawing finds it.
func TestNames(t *testing.T) {
	text := strings.NewReplacer("means: one}", "means: one, name: pitch}", "at_the", "drawing: thread-profile\nat_the").Replace(number)
	task, _, err := read(text)
	if err != nil || task.Inputs[0].Name != "pitch" || task.Inputs[0].Symbol != "a" {
		t.Fatalf("%v %+v", err, task)
	}
	for name, want := range map[string]string{"b": "called b already", "seed": "an option of the program", "Two Words": "small letters"} {
		if _, _, err := read(strings.Replace(text, "means: two}", "means: two}\n  c: {list: [1], name: "+name+", means: x}", 1)); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// Whatever stands in a file, it is refused or makes problems that can be marked.
func FuzzQuestion(f *testing.F) {
	f.Add(number)
	for _, kind := range own.Kinds {
		text, err := content.ExampleQuestion(kind)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(string(text))
	}
	f.Add("kind: order\noptions: {a: b, c: d}\nright: [a, a]\neither: [[]]\nmistakes: {m: {gives: [c, a]}}\n")
	f.Fuzz(func(t *testing.T, text string) {
		task, _, err := read(text)
		if err != nil {
			if err.Error() == "" {
				t.Error("refused without a word")
			}
			return
		}
		system := machine.Imperial
		if !task.Allows(system) {
			system = task.Systems[0]
		}
		p, err := problem.New(task, problem.NewCode(task.Name, 1, system, 1, machine.DefaultLathe(system)))
		if err != nil {
			return
		}
		if m := p.MarkResponse(p.Expected.Key); m.Verdict != answer.Right {
			t.Errorf("the key is %s", m.Verdict)
		}
		w, err := wording.Load(folder(text), "my-question")
		if err != nil {
			t.Fatal(err)
		}
		if _, unknown := w.Ask(p); len(unknown) > 0 {
			t.Errorf("unknown in the question: %q", unknown)
		}
		w.Document(p, true)
	})
}
