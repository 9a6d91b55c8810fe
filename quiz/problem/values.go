package problem

import (
	"fmt"
	"strings"

	"scratchpass/calc"
	"scratchpass/quiz/machine"
)

// InputType is the kind of thing an input is.
type InputType int

// What an input can be.
const (
	InputLength InputType = iota
	InputAngle
	InputTPI
	InputCount
	InputPlain     // a number without a unit
	InputWord      // one of a few words
	InputCuts      // a list of feeds; 0 is a spring pass
	InputThread    // a designation
	InputLeadScrew // a lead screw: threads per inch, or its pitch in mm on a metric lathe
)

// Input is one thing that a task starts from.
type Input struct {
	Name   string // as on the command line: "tool-flat"
	Symbol string // as in a formula: "f"
	Type   InputType
	Low    float64 // least and largest value, held units (inches, degrees)
	High   float64
	Words  []string // of an InputWord: what may stand here
	Group  string   // inputs of one group are alternatives: exactly one is given
	Extra  bool     // may be left out: other inputs then tell, or no step uses it

	In *machine.Unit // the unit it is shown in, whatever those of the problem; nil for that of its type
}

// Unit returns the unit the input is shown in.
func (in Input) Unit(s machine.System) machine.Unit {
	if in.In != nil {
		return *in.In
	}
	switch in.Type {
	case InputLength, InputCuts:
		return s.Length()
	case InputAngle:
		return machine.DegreeUnit
	case InputTPI:
		return machine.TPIUnit
	case InputCount:
		return machine.CountUnit
	case InputLeadScrew:
		if s == machine.Metric {
			return machine.Unit{Name: "mm pitch", Factor: 1}
		}
		return machine.TPIUnit
	}
	return machine.PlainUnit
}

// ThreadInputs are the three ways a task is told its thread.
var ThreadInputs = []Input{
	{Name: "tpi", Symbol: "n", Type: InputTPI, Low: 2, High: 80, Group: "thread"},
	{Name: "pitch", Symbol: "P", Type: InputLength, Low: 0.0125, High: 0.5, Group: "thread"},
	{Name: "thread", Symbol: "thread", Type: InputThread, Group: "thread"},
}

// value is what stands for one input.
type value struct {
	set    bool
	x      float64
	list   []float64
	word   string
	thread calc.Designation
}

// Values are the numbers of one problem.
type Values struct {
	System machine.System

	inputs  []Input
	values  []value
	words   [][2]string // further words for the prompt, by name
	phrases [][2]string // names in the prompt that stand for a phrase
}

// NewValues returns empty values for the inputs of a task.
func NewValues(inputs []Input, s machine.System) Values {
	return Values{System: s, inputs: inputs, values: make([]value, len(inputs))}
}

func (v *Values) at(name string) int {
	for i := range v.inputs {
		if v.inputs[i].Name == name {
			return i
		}
	}
	// A task that asks for an input it does not declare is a mistake in that task;
	// the tests over all tasks run into it at once.
	panic(fmt.Sprintf("problem: the task has no input %q", name))
}

// Set sets a number by the name of its input, in held units.
func (v *Values) Set(name string, x float64) {
	i := v.at(name)
	v.values[i].x, v.values[i].set = x, true
}

// SetLength sets a length.
func (v *Values) SetLength(name string, l calc.Length) { v.Set(name, l.Inches()) }

// SetWord sets a word.
func (v *Values) SetWord(name, word string) {
	i := v.at(name)
	v.values[i].word, v.values[i].set = word, true
}

// SetCuts sets a list of feeds; a 0 is a spring pass.
func (v *Values) SetCuts(name string, feeds []float64) {
	i := v.at(name)
	v.values[i].list, v.values[i].set = feeds, true
}

// SetThread sets a designation.
func (v *Values) SetThread(name string, d calc.Designation) {
	i := v.at(name)
	v.values[i].thread, v.values[i].set = d, true
}

// Say gives the prompt a further word.
func (v *Values) Say(name, text string) { v.words = append(v.words, [2]string{name, text}) }

// Phrase lets a name in the prompt stand for a phrase of content.
func (v *Values) Phrase(name, phrase string) { v.phrases = append(v.phrases, [2]string{name, phrase}) }

// PhraseFor returns the key of the phrase behind a name in a prompt: what the draw
// said, or ${told-GROUP} for the input of a group that was given, whose phrase is
// told-GROUP-INPUT.
func (v *Values) PhraseFor(name string) (key string, ok bool) {
	for _, p := range v.phrases {
		if p[0] == name {
			return p[1], true
		}
	}
	if group, ok := strings.CutPrefix(name, "told-"); ok {
		for i, in := range v.inputs {
			if in.Group == group && v.values[i].set {
				return name + "-" + in.Name, true
			}
		}
	}
	return "", false
}

// Situation is the situation of a decision: the first input that is a word. It is empty
// for tasks that have none.
func (v *Values) Situation() string {
	for i, in := range v.inputs {
		if in.Type == InputWord {
			return v.values[i].word
		}
	}
	return ""
}

// Has reports whether an input was given; one that the task does not have was not.
func (v *Values) Has(name string) bool {
	for i := range v.inputs {
		if v.inputs[i].Name == name {
			return v.values[i].set
		}
	}
	return false
}

// X returns a number in held units.
func (v *Values) X(name string) float64 { return v.values[v.at(name)].x }

// Length returns a length.
func (v *Values) Length(name string) calc.Length { return calc.Inches(v.X(name)) }

// Angle returns an angle.
func (v *Values) Angle(name string) calc.Angle { return calc.Degrees(v.X(name)) }

// Count returns a whole number.
func (v *Values) Count(name string) int { return int(calc.Round(v.X(name), 0)) }

// Word returns a word.
func (v *Values) Word(name string) string { return v.values[v.at(name)].word }

// Feeds returns a list of feeds.
func (v *Values) Feeds(name string) []float64 { return v.values[v.at(name)].list }

// Cuts returns a list of feeds as passes.
func (v *Values) Cuts(name string) []calc.Cut {
	feeds := v.Feeds(name)
	cuts := make([]calc.Cut, len(feeds))
	for i, f := range feeds {
		cuts[i].Feed = calc.Inches(f)
	}
	return cuts
}

// Thread returns a designation.
func (v *Values) Thread(name string) calc.Designation { return v.values[v.at(name)].thread }

// Pitch returns the pitch of the thread, whichever way it was told.
func (v *Values) Pitch() calc.Length {
	switch {
	case v.Has("tpi"):
		return calc.Inch.Times(1 / v.X("tpi"))
	case v.Has("pitch"):
		return v.Length("pitch")
	}
	return v.Thread("thread").Pitch
}

// Given is one input of a problem as it is shown.
type Given struct {
	Name, Symbol, Value, Unit string
}

// Givens lists what the problem gives, in the order of the task's inputs.
func (v *Values) Givens() []Given {
	var all []Given
	for i, in := range v.inputs {
		if v.values[i].set {
			all = append(all, Given{in.Name, in.Symbol, v.bare(i), in.Unit(v.System).Name})
		}
	}
	return all
}

// bare prints a value without its unit.
func (v *Values) bare(i int) string {
	in, val := v.inputs[i], v.values[i]
	switch in.Type {
	case InputWord:
		return val.word
	case InputThread:
		return val.thread.String()
	case InputCuts:
		return v.joinFeeds(val.list, " + ", "")
	}
	return in.Unit(v.System).Exact(val.x)
}

// joinFeeds prints feeds; spring passes as the word for them, or not at all without one.
func (v *Values) joinFeeds(feeds []float64, between, spring string) string {
	var parts []string
	for _, f := range feeds {
		switch {
		case f != 0:
			parts = append(parts, v.System.Length().Exact(f))
		case spring != "":
			parts = append(parts, spring)
		}
	}
	return strings.Join(parts, between)
}

// Symbol returns the printed value behind a symbol, for formulas.
func (v *Values) Symbol(symbol string) (string, bool) {
	for i, in := range v.inputs {
		if in.Symbol == symbol && v.values[i].set {
			return v.bare(i), true
		}
	}
	return "", false
}

// PromptWord returns what stands for ${name} in a prompt: an input by its symbol
// or its name, with its unit, or one of the further words. spring is the word for a spring
// pass among feeds.
func (v *Values) PromptWord(name, spring string) (string, bool) {
	for _, w := range v.words {
		if w[0] == name {
			return w[1], true
		}
	}
	for i, in := range v.inputs {
		if (in.Symbol == name || in.Name == name) && v.values[i].set {
			switch {
			case in.In != nil: // its unit is behind it, whatever it is
				return in.In.WithName(v.bare(i)), true
			case in.Type == InputCuts:
				return v.joinFeeds(v.values[i].list, ", ", spring) + " (" + v.System.String() + ")", true
			case in.Type == InputTPI, in.Type == InputCount, in.Type == InputPlain:
				return v.bare(i), true
			}
			return in.Unit(v.System).WithName(v.bare(i)), true
		}
	}
	return "", false
}
