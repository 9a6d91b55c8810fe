package quiz

import (
	"errors"
	"fmt"
	"io/fs"
	"slices"
	"strconv"
	"strings"

	"scratchpass/content"
)

// Words are the texts that the problems of one task are asked and marked with.
type Words struct {
	Task    content.TaskWords
	Phrases map[string]string
	Symbols map[string]string // shared ones; those of the task stand in front
	Safety  map[string]content.Caution
}

// LoadWords reads the words of a task.
func LoadWords(lib *content.Library, task string) (*Words, error) {
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
func (w *Words) fill(p *Problem, text string) (string, []string) {
	var known func(name string) (string, bool)
	depth := 0
	known = func(name string) (string, bool) {
		if v, ok := p.Values.PromptWord(name); ok {
			return v, true
		}
		text, ok := "", false
		switch name {
		case "case":
			text, ok = w.Task.Cases[p.Values.Case()]
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
func (w *Words) Ask(p *Problem) (text string, unknown []string) {
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
func (w *Words) question(p *Problem) (text string, unknown []string) {
	level := p.Code.Level
	if level == 0 {
		level = NumbersGiven
	}
	prompt, ok := "", false
	for l := level; l >= 1 && !ok; l-- { // a level without words of its own asks like the one below
		prompt, ok = w.Task.Ask[int(l)]
	}
	return w.fill(p, strings.TrimSpace(prompt))
}

// Options returns the texts of the options, in the order of the problem.
func (w *Words) Options(p *Problem) []string {
	texts := make([]string, len(p.Answer.Options))
	for i, key := range p.Answer.Options {
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
func (w *Words) Expects(p *Problem) string {
	name := p.Answer.Kind.Name()
	phrase, ok := w.Phrases["expects-"+name+"-"+p.Answer.Unit.Name] // where the unit matters
	if !ok {
		phrase = w.Phrases["expects-"+name]
	}
	text, _ := w.fill(p, phrase)
	return text
}

// ShownAnswer prints a reply in words: a number with its unit, an option with its
// text, steps in order one a line.
func (w *Words) ShownAnswer(p *Problem, r Reply) string {
	switch p.Answer.Kind.(type) {
	case several:
		if len(w.Task.Options) == 0 || len(r.Keys) == 0 {
			break
		}
		var texts []string
		for _, key := range p.Answer.Options {
			if slices.Contains(r.Keys, key) {
				text, _ := w.fill(p, w.Task.Options[key])
				texts = append(texts, "\""+strings.TrimSuffix(text, ".")+"\"")
			}
		}
		return strings.Join(texts, ", ")
	case choice:
		texts := make([]string, len(r.Keys))
		for i, key := range r.Keys {
			text, _ := w.fill(p, w.Task.Options[key])
			texts[i] = "\"" + strings.TrimSuffix(text, ".") + "\""
		}
		return strings.Join(texts, ", ")
	}
	return p.Shown(r)
}

// KeyText prints the key in words.
func (w *Words) KeyText(p *Problem) string {
	switch p.Answer.Kind.(type) {
	case choice, several:
		return w.ShownAnswer(p, p.Answer.Key)
	}
	return p.Answer.Text()
}
