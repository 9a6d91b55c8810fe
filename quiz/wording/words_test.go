package wording_test

import (
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"scratchpass/content"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
	"scratchpass/quiz/wording"
)

// own are words of a task written for a test, with the shipped phrases or others.
func own(t *testing.T, task, words, phrases string) *wording.Words {
	t.Helper()
	own := fstest.MapFS{"tasks/" + task + ".yaml": {Data: []byte("title: T\nskill: s\nhint: h\nat_the_lathe: l\nslips: {}\n" + words)}}
	if phrases != "" {
		own["phrases.yaml"] = &fstest.MapFile{Data: []byte(phrases)}
	}
	w, err := wording.Load(content.Reading("own", own), task)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// A task without words, or with words that can't be read, is an error that says which.
func TestLoadErrors(t *testing.T) {
	if _, err := wording.Load(content.Shipped(), "no-such-task"); err == nil || err.Error() != "the task no-such-task has no words: write tasks/no-such-task.yaml" {
		t.Errorf("%v", err)
	}
	for file, want := range map[string]string{"tasks/single-depth.yaml": "single-depth.yaml", "phrases.yaml": "phrases.yaml", "symbols.yaml": "symbols.yaml", "safety.yaml": "safety.yaml"} {
		lib := content.Reading("own", fstest.MapFS{file: {Data: []byte("title: [")}})
		if _, err := wording.Load(lib, "single-depth"); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v", file, err)
		}
	}
}

// A level without a prompt of its own asks like the one below it; options and readings
// stand below in their order.
func TestAsk(t *testing.T) {
	at := func(task string, level problem.Level) *problem.Problem {
		tk, err := (tasks.Set{}).Find(task)
		if err != nil {
			t.Fatal(err)
		}
		p, err := problem.New(tk, problem.NewCode(task, level, machine.Imperial, 7, machine.InchLathe))
		if err != nil {
			t.Fatal(err)
		}
		return p
	}
	w := own(t, "single-depth", "ask:\n  1: one ${P}${n}\n  3: three\n", "")
	for level, want := range map[problem.Level]string{1: "one", 2: "one", 3: "three"} {
		if got := w.Question(at("single-depth", level)); !strings.HasPrefix(got, want) {
			t.Errorf("level %d asks %q", level, got)
		}
	}
	p := at("single-depth", 2)
	p.Code = problem.Code{} // someone's own numbers have no level
	if got := w.Question(p); !strings.HasPrefix(got, "one") {
		t.Errorf("own numbers are asked as %q", got)
	}
	_, unknown := w.Ask(at("single-depth", 1))
	if len(unknown) != 1 { // it is told by one of the two
		t.Errorf("unknown names: %q", unknown)
	}
	choice := own(t, "square-the-tool", "ask:\n  1: Which?\noptions:\n  compound: by the compound\n  toolpost: by the post\n  chuck: by the chuck\n  ground: badly ground\n  half-degree: half a degree\n", "")
	text, unknown := choice.Ask(at("square-the-tool", 1))
	lines := strings.Split(text, "\n")
	if len(lines) != 6 || lines[0] != "Which?" || len(unknown) != 0 {
		t.Fatalf("asks %q", text)
	}
	for i, key := range at("square-the-tool", 1).Expected.Options {
		if want := string(rune('1'+i)) + ") " + choice.Task.Options[key]; lines[1+i] != want {
			t.Errorf("line %d is %q, want %q", 1+i, lines[1+i], want)
		}
	}
	row := own(t, "cross-slide-return", "ask:\n  1: What\nreadings: ['back at ${cuts}?', 'then ${nothing}?']\n", "spring-pass: again\n")
	text, unknown = row.Ask(at("cross-slide-return", 1))
	if !strings.Contains(text, "\n1) back at 0.00") || !strings.Contains(text, ", again") || !strings.HasSuffix(text, "\n2) then ${nothing}?") || !slices.Equal(unknown, []string{"nothing"}) {
		t.Errorf("asks %q with %q unknown", text, unknown)
	}
	if labels := row.ReadingLabels(at("cross-slide-return", 1)); len(labels) != 2 || !strings.HasPrefix(labels[0], "back at 0.00") {
		t.Errorf("labels %q", labels)
	}
	marks := at("thread-dial-line", 1)
	if got := words(t, "thread-dial-line").Options(marks); !slices.Equal(got, marks.Expected.Options) {
		t.Errorf("marks of a dial are named %q", got)
	}
}

// A name in a text is a value of the problem, what the draw said, the situation, or a
// phrase, which may hold names in its turn but not itself.
func TestNamesInTexts(t *testing.T) {
	p := remake(t, "square-the-tool@1-0001") // the compound
	const phrases = "job-valve-stem: a stem\njob-adjusting-screw: a screw\njob-tie-rod: a rod\nouter: <${inner}>\ninner: <${found}>\ntight-in: a thousandth\ntight-mm: 0.02 mm\nround: <${round}>\nunfilled: <${nothing}>\n"
	for text, want := range map[string]string{
		"${found}": "compound", "${case}": "the slide", "${outer}": "<<compound>>", "${tight}": "a thousandth", "${job}": "a ",
		"${round}": "${round}", "${unfilled}": "${unfilled}", "${nothing}": "${nothing}", "no name": "no name",
	} {
		w := own(t, "square-the-tool", "cases: {compound: the slide}\nask:\n  1: '"+text+"'\n", phrases)
		got, unknown := w.Ask(p)
		if !strings.HasPrefix(got, want) || (len(unknown) > 0) != strings.Contains(got, "${") {
			t.Errorf("%s becomes %q, %q unknown, want %q", text, got, unknown, want)
		}
	}
	mm := remake(t, "square-the-tool@1m-0001")
	if got, _ := own(t, "square-the-tool", "ask: {1: '${tight}'}\n", phrases).Ask(mm); !strings.HasPrefix(got, "0.02 mm\n") {
		t.Errorf("in millimetres: %q", got)
	}
}

// A symbol of the task stands in front of the shared one of the same letter.
func TestMeans(t *testing.T) {
	w := own(t, "single-depth", "symbols: {P: a pitch of this task}\nask: {1: x}\n", "")
	for symbol, want := range map[string]string{"P": "a pitch of this task", "h": words(t, "single-depth").Symbols["h"], "unknown": ""} {
		if got := w.Means(symbol); got != want {
			t.Errorf("%s means %q, want %q", symbol, got, want)
		}
	}
	if w.Means("h") == "" {
		t.Error("h means nothing")
	}
}

// What to type is said for the kind, and for the unit where that matters; on paper it is
// written.
func TestExpects(t *testing.T) {
	for code, want := range map[string][2]string{
		"single-depth@1-0001":        {"Answer in inches, such as 0.1234 or 123.4 thou.", "Write one number."},
		"single-depth@1m-0001":       {"Answer in millimetres, such as 1.234.", "Write one number."},
		"gear-ratio@1-0001":          {"Answer with a number, such as 2.5.", "Write one number."},
		"carriage-speed@1m-0001":     {"Answer in millimetres per second, such as 6.5.", "Write one number."},
		"blank-diameter@1-0001":      {"Answer in inches, such as 0.4900. Any size inside the limits is right.", "Write one size. Any inside the limits is right."},
		"cross-slide-return@1-0001":  {"Answer with the readings in order and a space between them.", "Write one reading on each line."},
		"square-the-tool@1-0001":     {"Answer with the number of one line.", "Write the number of one line."},
		"one-full-pass@1-0001":       {"Answer with the numbers in the right order and a space between them.", "Write the numbers in the right order, with spaces between them."},
		"metric-designation@1m-0001": {"Answer in that order with commas between the parts, such as 10, 1.5, external.", "Write all parts in that order, with commas between them."},
	} {
		p := remake(t, code)
		w := words(t, p.Task.Name)
		if got := [2]string{w.Expects(p), w.PaperExpects(p)}; got != want {
			t.Errorf("%s: %q, want %q", code, got, want)
		}
	}
	w := words(t, "single-depth")
	delete(w.Phrases, "paper-quantity")
	if p := remake(t, "single-depth@1-0001"); w.PaperExpects(p) != w.Expects(p) {
		t.Errorf("without words for paper: %q", w.PaperExpects(p))
	}
}

// Responses and keys in words: readings with their word between, options with their text
// or their number, a dial's marks as they are.
func TestShownResponses(t *testing.T) {
	for _, c := range []struct {
		code                    string
		r                       func(p *problem.Problem) answer.Response
		shown, numbered         string
		key, keyNumber, onPaper string
	}{
		{"cross-slide-return@1-0001", func(*problem.Problem) answer.Response { return answer.NumbersResponse(0.004, 0.0055) },
			"0.0040 then 0.0055 in", "0.0040 then 0.0055 in", "0.0050 then 0.0060 in", "0.0050 then 0.0060 in", "0.0050 then 0.0060 in"},
		{"square-the-tool@1-0001", func(p *problem.Problem) answer.Response { return answer.OptionsResponse(p.Expected.Options[1]) },
			`"The point is not ground to 60 degrees"`, "2", `"The tool was lined up with the compound, not the work"`, "1", "1) The tool was lined up with the compound, not the work"},
		{"thread-dial-line@1-0001", func(*problem.Problem) answer.Response { return answer.OptionsResponse("3", "1") },
			"1, 3", "1, 3", "3, 11", "3, 11", "3, 11"},
		{"thread-dial-line@1-0001", func(*problem.Problem) answer.Response { return answer.OptionsResponse() },
			"none", "none", "3, 11", "3, 11", "3, 11"},
		{"blank-diameter@1-0001", func(*problem.Problem) answer.Response { return answer.NumberResponse(0.98125) },
			"0.9813 in", "0.9813 in", "0.9830 to 0.9980 in", "0.9830 to 0.9980 in", "0.9830 to 0.9980 in"},
	} {
		p := remake(t, c.code)
		w := words(t, p.Task.Name)
		r := c.r(p)
		got := [5]string{w.Shown(p, r), w.Numbered(p, r), w.KeyText(p), w.KeyNumber(p), w.PaperKey(p)}
		if want := [5]string{c.shown, c.numbered, c.key, c.keyNumber, c.onPaper}; got != want {
			t.Errorf("%s: %q, want %q", c.code, got, want)
		}
	}
}

// Of an order the first step that stands elsewhere is marked, and no other.
func TestMoves(t *testing.T) {
	p := remake(t, "one-full-pass@1-0001")
	w := words(t, p.Task.Name)
	key := p.Expected.Key.Keys
	swapped := slices.Clone(key)
	swapped[2], swapped[3] = swapped[3], swapped[2]
	for name, c := range map[string]struct {
		given  []string
		marked int
	}{"right": {key, -1}, "two swapped": {swapped, 2}, "nothing": {nil, -1}, "only the first": {key[:1], -1}} {
		lines := w.Moves(p, answer.OptionsResponse(c.given...))
		for i, line := range lines {
			if strings.Contains(line, "(You gave ") != (i == c.marked) || strings.Contains(line, "..") || strings.Contains(line, "?") || !strings.HasPrefix(line, p.Expected.Number(key[i])+") ") {
				t.Errorf("%s: line %d is %q", name, i, line)
			}
		}
	}
	f := w.Feedback(p, p.MarkResponse(answer.OptionsResponse(swapped...)))
	if len(f.Working) != len(key) || !strings.Contains(f.Working[2], "(You gave "+p.Expected.Number(key[3])+" here: ") {
		t.Errorf("the working of a wrong order: %q", f.Working)
	}
}

// Who passes is told the answer and the way to it, and no wrong turning.
func TestFeedbackOfAPass(t *testing.T) {
	p := remake(t, "single-depth@1-0001")
	w := words(t, p.Task.Name)
	f := w.Feedback(p, answer.Mark{Verdict: answer.Wrong, Passed: true})
	if f.Answer != "The answer is "+p.Expected.Text()+"." || f.Verdict != "No answer given." || f.Reason != "" || len(f.Working) == 0 || f.Lathe != "" {
		t.Errorf("%+v", f)
	}
	travel := remake(t, "compound-travel@1-0001")
	for _, c := range []struct {
		of    *problem.Problem
		given float64
		says  string
	}{
		{p, 9, "That is many times off. Check the decimal point, the unit, and what was asked for."},
		{p, 0.00001, "That is many times off. Check the decimal point, the unit, and what was asked for."},
		{travel, 9, "That is many times off. Check the decimal point, the unit, pitch or threads per inch, the angle, and what was asked for."},
	} {
		if far := words(t, c.of.Task.Name).Feedback(c.of, c.of.MarkResponse(answer.NumberResponse(c.given))); far.Reason != c.says {
			t.Errorf("far off: %q", far.Reason)
		}
	}
	unit := w.Feedback(p, p.MarkResponse(answer.NumberResponse(p.Expected.Key.X*1000)))
	if !strings.HasPrefix(unit.Reason, "The number is right, its unit is not.") {
		t.Errorf("another unit: %q", unit.Reason)
	}
	marks := remake(t, "thread-dial-line@1-0003")
	several := words(t, marks.Task.Name).Feedback(marks, marks.MarkResponse(answer.OptionsResponse(marks.Expected.Options[0], marks.Expected.Options[1], marks.Expected.Options[4])))
	if !strings.Contains(several.Reason, "At least one of these does not fit.") {
		t.Errorf("%s: of several: %q, key %s", marks.Code, several.Reason, marks.Expected.Text())
	}
}
