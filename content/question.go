package content

import (
	"strings"

	"gopkg.in/yaml.v3"
)

// Question is an instructor's own question: its words and its numbers in one file, so that
// it can be written without a change to the program. What its formulas mean is for those
// who work them out.
type Question struct {
	Title string `yaml:"title"`
	Skill string `yaml:"skill"`
	Kind  string `yaml:"kind"` // choice, several, order or number
	Ask   string `yaml:"ask"`
	Hint  string `yaml:"hint,omitempty"`

	Inputs map[string]QuestionInput `yaml:"inputs,omitempty"` // by the letter that the words and formulas use

	Steps  []QuestionStep  `yaml:"steps,omitempty"`  // number: on the way to the answer
	Answer *QuestionAnswer `yaml:"answer,omitempty"` // number

	Options map[string]string `yaml:"options,omitempty"` // choice, several, order: by name
	Right   []string          `yaml:"right,omitempty"`   // the names that are right, of an order in their order
	Either  [][]string        `yaml:"either,omitempty"`  // order: pairs of steps that may stand either way round

	Mistakes   map[string]QuestionMistake `yaml:"mistakes"`
	AtTheLathe string                     `yaml:"at_the_lathe"`
	Safety     []string                   `yaml:"safety,omitempty"`
	Drawing    string                     `yaml:"drawing,omitempty"`

	file file
}

// QuestionInput is a number that is drawn: from a range in steps, or from a list.
type QuestionInput struct {
	From *float64  `yaml:"from,omitempty"`
	To   *float64  `yaml:"to,omitempty"`
	Step *float64  `yaml:"step,omitempty"`
	List []float64 `yaml:"list,omitempty"`
	Unit string    `yaml:"unit,omitempty"`

	Decimals *int `yaml:"decimals,omitempty"` // shown; left out those of a length are as many as its numbers have

	Name  string `yaml:"name,omitempty"` // as drawings, work and blueprints call it: pitch; left out the letter
	Means string `yaml:"means"`
}

// QuestionStep is a line of the working before the answer.
type QuestionStep struct {
	Symbol  string `yaml:"symbol"`
	Formula string `yaml:"formula"`
	Unit    string `yaml:"unit,omitempty"`
	Means   string `yaml:"means"`
}

// QuestionAnswer is how the number is worked out, and how far from it is still right.
type QuestionAnswer struct {
	Symbol    string   `yaml:"symbol"`
	Formula   string   `yaml:"formula"`
	Unit      string   `yaml:"unit,omitempty"`
	Decimals  *int     `yaml:"decimals,omitempty"`
	Tolerance *float64 `yaml:"tolerance,omitempty"` // in the unit of the answer
	Limit     string   `yaml:"limit,omitempty"`     // at-most or at-least
	Room      float64  `yaml:"room,omitempty"`      // of a limit: percent of it that are right on its safe side
	Ruins     string   `yaml:"ruins,omitempty"`     // high or low: which way of being wrong ruins the part
	Means     string   `yaml:"means"`
}

// QuestionMistake is a known way of going wrong: what it gives, and what is said to it.
type QuestionMistake struct {
	Formula string   `yaml:"formula,omitempty"` // number
	Gives   []string `yaml:"gives,omitempty"`   // several, order
	Say     string   `yaml:"say"`
}

// ExampleQuestion is the file of an example of a kind of question, for someone to change.
func ExampleQuestion(kind string) ([]byte, error) {
	return embedded.ReadFile("examples/" + kind + ".yaml")
}

// QuestionNames lists the instructor's own questions.
func (l *Library) QuestionNames() []string { return l.names("questions") }

// Question returns an instructor's own question.
func (l *Library) Question(name string) (Question, error) {
	where := "questions/" + name + ".yaml"
	q, err := read[Question](l, where)
	if err == nil {
		q.file, err = l.find(where)
	}
	return q, err
}

// InputsAsWritten are the letters of the inputs, in the order of the file.
func (q *Question) InputsAsWritten() []string {
	var root yaml.Node
	if yaml.Unmarshal(q.file.text, &root) != nil || len(root.Content) == 0 {
		return nil
	}
	top := root.Content[0].Content
	for i := 0; i+1 < len(top); i += 2 {
		if top[i].Value != "inputs" {
			continue
		}
		var letters []string
		for j := 0; j < len(top[i+1].Content); j += 2 {
			letters = append(letters, top[i+1].Content[j].Value)
		}
		return letters
	}
	return nil
}

// At says that something is wrong with the question, where in its file the text stands;
// with an empty text of the file as a whole.
func (q *Question) At(text, wrong string) Finding {
	f := Finding{File: q.file.where, Text: wrong}
	if text != "" {
		f.Line = lines(q.file.text)(text)
	}
	return f
}

// paragraphs joins the lines of a text as they were typed: a blank line parts paragraphs, and
// a line that begins with a hyphen stands by itself.
func paragraphs(text string) string {
	var out []string
	joined := false // whether the next line goes on with the last one
	for _, line := range strings.Split(strings.TrimSpace(text), "\n") {
		line = strings.TrimSpace(line)
		switch {
		case line == "":
			joined = false
		case joined && !strings.HasPrefix(line, "- "):
			out[len(out)-1] += " " + line
		default:
			out = append(out, line)
			joined = true
		}
	}
	return strings.Join(out, "\n")
}

// words are the words of a question as those of a task, marked as the instructor's own.
func (q *Question) words(phrases map[string]string) TaskWords {
	w := TaskWords{Title: FillPairs(phrases["own-title"], "title", q.Title), Skill: q.Skill,
		Ask: map[int]string{1: FillPairs(phrases["own-ask"], "ask", paragraphs(q.Ask))}, Hint: paragraphs(q.Hint), Options: map[string]string{},
		Slips: map[string]string{}, Symbols: map[string]string{}, AtTheLathe: paragraphs(q.AtTheLathe), Safety: q.Safety, Drawing: q.Drawing}
	for name, text := range q.Options {
		w.Options[name] = paragraphs(text)
	}
	for name, m := range q.Mistakes {
		w.Slips[name] = paragraphs(m.Say)
	}
	for symbol, in := range q.Inputs {
		w.Symbols[symbol] = in.Means
	}
	for _, s := range q.Steps {
		w.Symbols[s.Symbol] = s.Means
	}
	if q.Answer != nil {
		w.Symbols[q.Answer.Symbol] = q.Answer.Means
	}
	return w
}
