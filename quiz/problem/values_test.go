package problem_test

import (
	"fmt"
	"strings"
	"testing"

	"scratchpass/calc"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
)

// everyInput has an input of each type.
var everyInput = append([]problem.Input{
	{Name: "blank", Symbol: "d", Type: problem.InputLength, Low: 0.1, High: 2},
	{Name: "angle", Symbol: "a", Type: problem.InputAngle, Low: 0, High: 45},
	{Name: "teeth", Symbol: "T", Type: problem.InputCount, Low: 8, High: 96},
	{Name: "share", Symbol: "r", Type: problem.InputPlain, Low: -1, High: 1},
	{Name: "kind", Symbol: "kind", Type: problem.InputWord, Words: []string{"past", "lost"}},
	{Name: "cuts", Symbol: "cuts", Type: problem.InputCuts, Low: 0, High: 0.1},
	{Name: "screw", Symbol: "N", Type: problem.InputLeadScrew, Low: 1, High: 20, Extra: true},
}, problem.ThreadInputs...)

// read reads inputs as they are typed: "blank=0.5; angle=29.5".
func read(t *testing.T, inputs []problem.Input, s machine.System, pairs string) problem.Values {
	t.Helper()
	v := problem.NewValues(inputs, s)
	for _, pair := range strings.Split(pairs, "; ") {
		name, text, _ := strings.Cut(pair, "=")
		if err := v.Read(name, text); err != nil {
			t.Fatal(err)
		}
	}
	return v
}

// What is typed for each type of input, and how a problem then shows it.
func TestInputsAreShown(t *testing.T) {
	v := read(t, everyInput, machine.Imperial, "blank=0.4985; angle=29°30'; teeth=32; share=-0.5; kind=lost; cuts=0.006, s,0.0055; screw=8; thread=1/2-13 UNC-2A")
	mm := read(t, everyInput, machine.Metric, "blank=12.7; cuts=0.15,s; screw=3; pitch=1.5")
	for _, c := range []struct {
		v                    *problem.Values
		name, symbol, prompt string
	}{
		{&v, "d", "0.4985", "0.4985 in"}, {&v, "blank", "", "0.4985 in"}, {&v, "a", "29.5", "29.5 degrees"}, {&v, "T", "32", "32"}, {&v, "r", "-0.5", "-0.5"},
		{&v, "kind", "lost", "lost"}, {&v, "cuts", "0.0060 + 0.0055", "0.0060, spring pass, 0.0055 (in)"}, {&v, "N", "8", "8 TPI"}, {&v, "thread", "1/2-13 UNC-2A", "1/2-13 UNC-2A"},
		{&v, "P", "", ""}, {&v, "nothing", "", ""},
		{&mm, "d", "12.700", "12.700 mm"}, {&mm, "cuts", "0.150", "0.150, spring pass (mm)"}, {&mm, "N", "3", "3 mm pitch"}, {&mm, "P", "1.500", "1.500 mm"}, {&mm, "a", "", ""},
	} {
		prompt, ok := c.v.PromptWord(c.name, "spring pass")
		if prompt != c.prompt || ok != (c.prompt != "") {
			t.Errorf("%s in a prompt is %q, %v, want %q", c.name, prompt, ok, c.prompt)
		}
		symbol, ok := c.v.Symbol(c.name)
		if symbol != c.symbol || ok != (c.symbol != "") {
			t.Errorf("%s in a formula is %q, %v, want %q", c.name, symbol, ok, c.symbol)
		}
	}
	if got := fmt.Sprint(v.Givens()); got != "[{blank d 0.4985 in} {angle a 29.5 deg} {teeth T 32 } {share r -0.5 } {kind kind lost } {cuts cuts 0.0060 + 0.0055 in} {screw N 8 TPI} {thread thread 1/2-13 UNC-2A }]" {
		t.Error("given:", got)
	}
	if got, _ := v.PromptWord("cuts", ""); got != "0.0060, 0.0055 (in)" {
		t.Errorf("without a word for a spring pass: %q", got)
	}
}

// Values give back what they were given, by the name of the input.
func TestValuesAreHeld(t *testing.T) {
	v := problem.NewValues(everyInput, machine.Imperial)
	for _, in := range everyInput {
		if v.Has(in.Name) {
			t.Errorf("%s is given before it was", in.Name)
		}
	}
	v.SetLength("blank", 0.5)
	v.Set("angle", 29.5)
	v.Set("teeth", 31.9999999)
	v.SetCuts("cuts", []float64{0.006, 0})
	if v.Length("blank") != 0.5 || v.Angle("angle") != 29.5 || v.Count("teeth") != 32 || v.Word("kind") != "" || v.Situation() != "" || len(v.Feeds("cuts")) != 2 {
		t.Errorf("held %v", v.Givens())
	}
	if cuts := v.Cuts("cuts"); cuts[0].Feed != 0.006 || cuts[1].Feed != 0 {
		t.Errorf("cuts %v", cuts)
	}
	v.SetWord("kind", "past")
	if v.Situation() != "past" || !v.Has("kind") || v.Has("no such input") {
		t.Errorf("situation %q", v.Situation())
	}
	plain := problem.NewValues(problem.ThreadInputs, machine.Imperial)
	if got := plain.Situation(); got != "" {
		t.Errorf("a task without words is about %q", got)
	}
	defer func() {
		if r := fmt.Sprint(recover()); !strings.Contains(r, `no input "feed"`) {
			t.Errorf("an input that the task has not: %s", r)
		}
	}()
	v.X("feed")
}

// The pitch is the pitch, whichever way the thread was told.
func TestPitchOfValues(t *testing.T) {
	for told, want := range map[string]calc.Length{"tpi=8": 0.125, "pitch=0.125": 0.125, "thread=1-8 UNC": 0.125, "thread=M12x1.5": calc.Millimetres(1.5)} {
		v := read(t, problem.ThreadInputs, machine.Imperial, told)
		if got := v.Pitch(); !calc.Within(got.Inches(), want.Inches(), 1e-12) {
			t.Errorf("%s: pitch %v, want %v", told, got, want)
		}
	}
}

// What the draw said comes before inputs of the same name, and phrases are found by what
// was told.
func TestWordsOfADraw(t *testing.T) {
	v := read(t, everyInput, machine.Imperial, "blank=0.5; tpi=8")
	v.Say("blank", "half an inch")
	v.Say("blank", "said too late")
	if got, _ := v.PromptWord("blank", ""); got != "half an inch" {
		t.Errorf("said %q", got)
	}
	if got, _ := v.Symbol("d"); got != "0.5000" {
		t.Errorf("the formula has %q", got)
	}
	v.Phrase("job", "job-tie-rod")
	for name, want := range map[string]string{"job": "job-tie-rod", "told-thread": "told-thread-tpi", "told-angle": "", "blank": ""} {
		if got, ok := v.PhraseFor(name); got != want || ok != (want != "") {
			t.Errorf("%s stands for %q, %v, want %q", name, got, ok, want)
		}
	}
}

// What can't be taken for an input, and what is told then. The limits of a range are in it.
func TestInputsThatAreRefused(t *testing.T) {
	for _, c := range []struct {
		s                machine.System
		name, text, want string
	}{
		{0, "blank", "0.1", ""}, {0, "blank", "2", ""}, {0, "blank", "0.0999", `--blank: can't use "0.0999": give 0.1000 to 2.0000 in`}, {0, "blank", "2.0001", "give 0.1000 to 2.0000 in"},
		{0, "blank", "2.54 mm", ""}, {0, "blank", "wide", "--blank: can't read"}, {0, "blank", "", "--blank"},
		{1, "blank", "2.54", ""}, {1, "blank", "2.53", "give 2.540 to 50.800 mm"}, {1, "blank", "0.1 in", ""},
		{0, "angle", "45", ""}, {0, "angle", "45.01", "give 0 to 45 degrees"}, {0, "angle", "-0.01", "give 0 to 45 degrees"}, {0, "angle", "right", "--angle"},
		{0, "teeth", "8", ""}, {0, "teeth", "96", ""}, {0, "teeth", "32.5", "give 8 to 96"}, {0, "teeth", "97", "give 8 to 96"},
		{0, "share", "-1", ""}, {0, "share", "1.1", "give -1 to 1"},
		{0, "kind", "past", ""}, {0, "kind", "Past", `--kind: can't use "Past": give past or lost`},
		{0, "cuts", "0.006", ""}, {0, "cuts", "s", ""}, {0, "cuts", "0.006,spring", ""}, {0, "cuts", "0.006,", `can't use "": give feeds with commas between them, s for a spring pass, such as 0.006,0.005,s`},
		{0, "cuts", "0", "such as 0.006"}, {0, "cuts", "0.2", "such as 0.006"}, {1, "cuts", "9", "such as 0.15,0.12,s"},
		{0, "cuts", strings.Repeat("0.001,", 199) + "0.001", ""}, {0, "cuts", strings.Repeat("s,", 200) + "s", "--cuts: 201 passes: give at most 200"},
		{0, "thread", "M12x1.75-6g", ""}, {0, "thread", "half inch", "--thread"},
		{0, "screw", "21", "give 1 to 20 TPI"}, {1, "screw", "21", "give 1 to 20 mm pitch"},
	} {
		v := problem.NewValues(everyInput, c.s)
		err := v.Read(c.name, c.text)
		if (err == nil) != (c.want == "") || err != nil && !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s %.20q: %v, want %q", c.name, c.text, err, c.want)
		}
		if v.Has(c.name) != (err == nil) {
			t.Errorf("%s %.20q is set: %v", c.name, c.text, v.Has(c.name))
		}
	}
	if got := everyInput[len(everyInput)-1].Wants(machine.Imperial); got != "a thread such as 1/2-13 UNC-2A or M12x1.75-6g" {
		t.Errorf("of a thread is wanted %q", got)
	}
}

// Of a group exactly one is given, and of the rest all but what may be left out.
func TestCheckOfValues(t *testing.T) {
	inputs := append([]problem.Input{everyInput[0], {Name: "spare", Type: problem.InputLength, High: 1, Extra: true}}, problem.ThreadInputs...)
	for given, want := range map[string]string{
		"blank=0.5; tpi=8": "", "blank=0.5; pitch=0.1; spare=0.1": "",
		"tpi=8":                       "--blank is missing: give 0.1000 to 2.0000 in",
		"blank=0.5":                   "the thread is missing: give one of --tpi, --pitch, --thread",
		"blank=0.5; tpi=8; pitch=0.1": "--pitch: another input has already told the thread; give one of them",
	} {
		v := read(t, inputs, machine.Imperial, given)
		if err := v.Check(); (err == nil) != (want == "") || err != nil && err.Error() != want {
			t.Errorf("%s: %v, want %q", given, err, want)
		}
	}
}
