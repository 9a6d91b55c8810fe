// Package wording puts problems, answers and marks into the words of content: the
// question, what is told about an answer, and the same as JSON.
package wording

import (
	"errors"
	"fmt"
	"io/fs"
	"strconv"
	"strings"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
)

// Words are the texts that the problems of one task are asked and marked with.
type Words struct {
	Task    content.TaskWords
	Phrases map[string]string
	Symbols map[string]string // shared ones; those of the task stand in front
	Safety  map[string]content.Caution
}

// Load reads the words of a task.
func Load(lib *content.Library, task string) (*Words, error) {
	var w Words
	var err [4]error
	w.Task, err[0] = lib.Task(task)
	w.Phrases, err[1] = lib.Phrases()
	w.Symbols, err[2] = lib.Symbols()
	w.Safety, err[3] = lib.Safety()
	if errors.Is(err[0], fs.ErrNotExist) {
		return nil, fmt.Errorf("the task %s has no words: write tasks/%s.yaml", task, task)
	}
	return &w, errors.Join(err[:]...)
}

// Means says what a symbol stands for.
func (w *Words) Means(symbol string) string {
	if m, ok := w.Task.Symbols[symbol]; ok {
		return m
	}
	return w.Symbols[symbol]
}

// fill puts the problem's values into a text. The names it knows are the inputs
// by symbol or name, what the draw said, ${told-thread} and the like for how an
// input was told, ${case} for the situation, and the phrases.
func (w *Words) fill(p *problem.Problem, text string) (string, []string) {
	var known func(name string) (string, bool)
	depth := 0
	known = func(name string) (string, bool) {
		if v, ok := p.Values.PromptWord(name, w.Phrases["spring-pass"]); ok {
			if said, has := w.Phrases["word-"+v]; has { // what a code calls outside, the trade calls external
				return said, true
			}
			return v, true
		}
		text, ok := "", false
		switch name {
		case "case":
			text, ok = w.Task.Cases[p.Values.Situation()]
		default:
			if key, has := p.Values.PhraseFor(name); has {
				name = key
			}
			if text, ok = w.Phrases[name]; !ok { // a figure that has its own words in each system of units
				text, ok = w.Phrases[name+"-"+p.Values.System.String()]
			}
		}
		if !ok || depth > 3 { // phrases may use values and phrases, but not themselves
			return "", false
		}
		depth++
		defer func() { depth-- }()
		inner, missing := content.Fill(text, known)
		return inner, missing == nil
	}
	return content.Fill(text, known)
}

// Ask returns the question, with its options or readings below it. unknown lists
// the names in the text that this problem has no value for.
func (w *Words) Ask(p *problem.Problem) (text string, unknown []string) {
	text, unknown = w.question(p)
	for i, option := range w.Options(p) {
		if len(w.Task.Options) == 0 {
			break // marks of a dial: the question has said how many there are
		}
		text += "\n" + strconv.Itoa(i+1) + ") " + option
	}
	for i, label := range w.Task.Readings {
		label, more := w.fill(p, label)
		text += "\n" + strconv.Itoa(i+1) + ") " + label
		unknown = append(unknown, more...)
	}
	return text, unknown
}

// question returns what is asked, without the numbered lines below it.
func (w *Words) question(p *problem.Problem) (text string, unknown []string) {
	level := p.Code.Level
	if level == 0 {
		level = problem.NumbersGiven
	}
	prompt, ok := "", false
	for l := level; l >= 1 && !ok; l-- { // a level without words of its own asks like the one below
		prompt, ok = w.Task.Ask[int(l)]
	}
	return w.fill(p, strings.TrimSpace(prompt))
}

// Options returns the texts of the options, in the order of the problem.
func (w *Words) Options(p *problem.Problem) []string {
	texts := make([]string, len(p.Expected.Options))
	for i, key := range p.Expected.Options {
		text, ok := w.Task.Options[key]
		if !ok {
			text = key // marks of a dial are named by themselves
		}
		texts[i], _ = w.fill(p, text)
	}
	return texts
}

// Expects says what to type, for the end of a prompt: "answer in inches, such as
// 0.0556".
func (w *Words) Expects(p *problem.Problem) string {
	name := p.Expected.Kind.Name()
	if p.Task.Stage == problem.Own && p.Expected.Kind.OneNumber() {
		if text, ok := w.expectsOwn(p.Expected.Unit); ok {
			return text
		}
	}
	phrase, ok := w.Phrases["expects-"+name+"-"+p.Expected.Unit.Name] // where the unit matters
	if !ok {
		phrase = w.Phrases["expects-"+name]
	}
	text, _ := w.fill(p, phrase)
	return text
}

// expectsOwn says what to type for a number whose unit and decimals an instructor chose. It
// is not ok where they are the usual ones.
func (w *Words) expectsOwn(u machine.Unit) (text string, ok bool) {
	for _, usual := range []machine.Unit{machine.InchUnit, machine.MMUnit, machine.DegreeUnit, machine.TPIUnit, machine.RPMUnit} {
		if u == usual {
			return "", false
		}
	}
	phrase := "own-expects"
	if u.Name == "" {
		phrase += "-plain"
	}
	if u.Places < 2 {
		phrase += "-" + strconv.Itoa(u.Places)
	}
	return content.FillPairs(w.Phrases[phrase], "unit", u.Name, "decimals", u.Places), true
}

// Shown prints a response in words: a number with its unit, an option with its text,
// steps in order as their numbers.
func (w *Words) Shown(p *problem.Problem, r answer.Response) string {
	if text, ok := w.chosen(p, r); ok {
		return text
	}
	return w.Numbered(p, r)
}

// Numbered prints a response: of options their numbers.
func (w *Words) Numbered(p *problem.Problem, r answer.Response) string {
	return p.Expected.Join(w.inWords(p.Expected.PrintGiven(r)), w.Phrases["between-readings"])
}

// KeyText prints the right response in words.
func (w *Words) KeyText(p *problem.Problem) string {
	if text, ok := w.chosen(p, p.Expected.Key); ok {
		return text
	}
	return w.KeyNumber(p)
}

// KeyNumber prints the right response: of options their numbers.
func (w *Words) KeyNumber(p *problem.Problem) string {
	key := p.Expected.Join(w.inWords(p.Expected.PrintKey()), w.Phrases["between-readings"])
	for _, pair := range p.Expected.Free { // the key is one of the orders that are right
		key += content.FillPairs(w.Phrases["key-either"], "a", p.Expected.Number(pair[0]), "b", p.Expected.Number(pair[1]))
	}
	return key
}

// inWords puts the trade's word for each name that stands in a printed response, as in
// the parts of a callout.
func (w *Words) inWords(parts []string) []string {
	said := make([]string, len(parts))
	for i, part := range parts {
		fields := strings.Split(part, ", ")
		for j, field := range fields {
			if word, ok := w.Phrases["word-"+field]; ok {
				fields[j] = word
			}
		}
		said[i] = strings.Join(fields, ", ")
	}
	return said
}

// PaperKey is the right response as it is looked for on paper: of one option the number
// first.
func (w *Words) PaperKey(p *problem.Problem) string {
	if p.Task.Kind.Guessable() {
		return w.KeyNumber(p) + ") " + strings.Trim(w.KeyText(p), "\"")
	}
	return w.KeyNumber(p)
}

// chosen are the texts of the options that a response chose; ok is false where it chose
// none that has words.
func (w *Words) chosen(p *problem.Problem, r answer.Response) (text string, ok bool) {
	keys := p.Task.Kind.Chosen(&p.Expected, r)
	if len(keys) == 0 || len(w.Task.Options) == 0 {
		return "", false
	}
	texts := make([]string, len(keys))
	for i, key := range keys {
		text, _ := w.fill(p, w.Task.Options[key])
		texts[i] = "\"" + strings.TrimSuffix(text, ".") + "\""
	}
	return strings.Join(texts, ", "), true
}

// Unread says why a text was not taken for an answer, and what would be.
func (w *Words) Unread(u *answer.UnreadError) string {
	want, _ := content.Fill(w.Phrases[u.Want.Phrase], u.Want.Value)
	if u.Got == "" {
		return content.FillPairs(w.Phrases["unread-nothing"], "want", want)
	}
	return content.FillPairs(w.Phrases["unread-text"], "got", calc.Quoted(u.Got), "want", want)
}
