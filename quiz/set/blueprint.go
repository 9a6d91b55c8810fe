// Package set serves an instructor: a blueprint gives each apprentice problems of their
// own, with sheets and keys; answers come back, are marked, and show what the class got
// wrong. Every number is a keyed hash of the class secret, the set and the apprentice:
// nothing is kept between making and marking.
package set

import (
	"encoding/json"
	"fmt"
	"path/filepath"
	"regexp"
	"strings"
	"time"
	"unicode/utf8"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/quiz/files"
	"scratchpass/quiz/handout"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
)

// Blueprint is a set as an instructor writes it down.
type Blueprint struct {
	Set    string   `yaml:"set" json:"set"` // a short name; another name gives other numbers
	Title  string   `yaml:"title" json:"-"`
	Units  string   `yaml:"units" json:"units"`               // in or mm; a slot may have others
	Lathe  string   `yaml:"lathe,omitempty" json:"-"`         // a lathe file beside the blueprint; else the one that ships. Not its name but the lathe tells the numbers
	Paper  string   `yaml:"paper,omitempty" json:"-"`         // A4 or Letter
	Duplex bool     `yaml:"duplex,omitempty" json:"-"`        // each sheet begins on a page of its own when printed on both sides
	Layout string   `yaml:"layout,omitempty" json:"-"`        // compact, in two columns, or roomy, with squares to work in
	Date   string   `yaml:"date,omitempty" json:"-"`          // 2026-12-01: printed, and in the documents
	Time   string   `yaml:"time,omitempty" json:"-"`          // printed: "40 minutes"
	Notes  []string `yaml:"notes,omitempty" json:"-"`         // printed on each sheet: what is allowed, how exact
	Sure   bool     `yaml:"sure,omitempty" json:"-"`          // each question asks how sure someone is
	Comma  bool     `yaml:"decimal_comma,omitempty" json:"-"` // in answers a comma stands before the decimals
	Rules  Rules    `yaml:"rules,omitempty" json:"rules"`
	Slots  []Slot   `yaml:"slots" json:"slots"`

	system machine.System
	lathe  machine.Lathe
	of     tasks.Set // that its slots may ask
}

// Rules are how alike the apprentices' problems are.
type Rules struct {
	Unlike  bool `yaml:"unlike,omitempty" json:"unlike,omitempty"`   // numbers may differ in steps and digits
	Shuffle bool `yaml:"shuffle,omitempty" json:"shuffle,omitempty"` // each apprentice has the questions in another order

	// Conventions is what an answer is worth that is right by another published
	// convention than the one the question names: full, half or none.
	Conventions string `yaml:"conventions,omitempty" json:"-"`

	// Feedback is when a learning system tells what was wrong: at-once, end or never.
	Feedback string `yaml:"feedback,omitempty" json:"-"`
}

// conventionCosts is the share of the points that another convention costs.
var conventionCosts = map[string]float64{"": 0, "full": 0, "half": 0.5, "none": 1}

// Slot is one or more questions of one kind.
type Slot struct {
	Name   string            `yaml:"name,omitempty" json:"name,omitempty"` // for other slots to follow from
	Tasks  []string          `yaml:"tasks,omitempty" json:"tasks,omitempty"`
	Stage  string            `yaml:"stage,omitempty" json:"stage,omitempty"` // instead of tasks: all of a stage
	Level  int               `yaml:"level,omitempty" json:"level,omitempty"`
	Units  string            `yaml:"units,omitempty" json:"units,omitempty"` // in or mm, where they are not the blueprint's
	Count  int               `yaml:"count,omitempty" json:"count,omitempty"`
	Worth  *float64          `yaml:"points,omitempty" json:"-"` // points as written; left out is 1
	Points float64           `yaml:"-" json:"-"`
	Mix    bool              `yaml:"mix,omitempty" json:"mix,omitempty"` // each apprentice may get another of the tasks
	Takes  map[string]string `yaml:"takes,omitempty" json:"takes,omitempty"`
}

// The largest sets that are made.
const (
	mostItems = 60
	mostSlots = 60
)

// The longest texts of a blueprint, in letters, besides the title, which is as long as any, and how many notes and tasks of a slot.
const (
	mostTime  = 100
	mostNote  = 500
	mostNotes = 20
	mostNamed = 80 // a slot's name
	mostTasks = 100
)

var setName = regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)

// ReadBlueprint reads a blueprint strictly and reports all that is wrong with it.
func ReadBlueprint(path string, of tasks.Set) (*Blueprint, error) {
	text, err := files.Read(path, files.MostWords)
	if err != nil {
		return nil, err
	}
	return ParseBlueprint(path, text, of, LatheBeside(path))
}

// LatheBeside reads the lathe file that a blueprint names: it lies beside the blueprint.
func LatheBeside(blueprint string) func(file string) (machine.Lathe, error) {
	return func(file string) (machine.Lathe, error) {
		if !filepath.IsAbs(file) {
			file = filepath.Join(filepath.Dir(blueprint), file)
		}
		return machine.ReadLathe(file)
	}
}

// ParseBlueprint is ReadBlueprint for a text; name stands in front of what is wrong, and
// of are the tasks that it may ask, and lathe reads the lathe file that it names.
func ParseBlueprint(name string, text []byte, of tasks.Set, lathe func(string) (machine.Lathe, error)) (*Blueprint, error) {
	b := Blueprint{of: of}
	if err := content.Decode(name, text, &b); err != nil {
		return nil, err
	}
	var wrong faults
	say := func(format string, args ...any) {
		wrong.add(fmt.Errorf("%s: "+format, append([]any{name}, args...)...))
	}
	if !setName.MatchString(b.Set) || len(b.Set) > 40 {
		say("set %s: give a short name of small letters, figures and hyphens, such as week-3", calc.Quoted(b.Set))
	}
	if strings.TrimSpace(b.Title) == "" {
		say("title is missing: it stands on every sheet")
	}
	b.lengths(say)
	var err error
	if b.system, err = machine.ParseSystem(b.Units); err != nil {
		say("%w", err)
	}
	b.lathe = machine.DefaultLathe(b.system)
	if b.Lathe != "" {
		l, err := lathe(b.Lathe)
		switch {
		case err != nil:
			say("lathe: %w", err)
		case !dialsFit(l, b.system):
			say("lathe %s has dials in other units than units: %s", calc.Quoted(b.Lathe), b.Units)
		default:
			b.lathe = l
		}
	}
	if b.Paper == "" {
		b.Paper = string(handout.A4)
	}
	if b.Paper != string(handout.A4) && b.Paper != string(handout.Letter) {
		say("paper %s: give A4 or Letter", calc.Quoted(b.Paper))
	}
	if b.Layout == "" {
		b.Layout = string(handout.Compact)
	}
	if b.Layout != string(handout.Compact) && b.Layout != string(handout.Roomy) {
		say("layout %s: give compact or roomy", calc.Quoted(b.Layout))
	}
	if _, err := time.Parse(time.DateOnly, b.Date); b.Date != "" && err != nil {
		say("date %s: give a day such as 2026-12-01", calc.Quoted(b.Date))
	}
	if _, ok := conventionCosts[b.Rules.Conventions]; !ok {
		say("rules: conventions %s: give full, half or none", calc.Quoted(b.Rules.Conventions))
	}
	if _, ok := tellings[b.Rules.Feedback]; !ok {
		say("rules: feedback %s: give at-once, end or never", calc.Quoted(b.Rules.Feedback))
	}
	if len(b.Slots) == 0 || len(b.Slots) > mostSlots {
		say("slots: there are %d: give 1 to %d", len(b.Slots), mostSlots)
	}
	for i := range b.Slots[:min(len(b.Slots), mostSlots)] { // each is compared with those above it
		b.slot(i, say)
	}
	if n := b.Items(); n > mostItems {
		say("%d questions: give at most %d", n, mostItems)
	}
	return &b, wrong.err()
}

// lengths checks that what is printed has a fit length: each sheet has it, and to lay a
// very long one out takes long.
func (b *Blueprint) lengths(say func(string, ...any)) {
	within := func(what, text string, most int) {
		if n := utf8.RuneCountInString(text); n > most {
			say("%s has %d letters: give at most %d", what, n, most)
		}
	}
	within("time", b.Time, mostTime)
	if len(b.Notes) > mostNotes {
		say("notes: there are %d: give at most %d", len(b.Notes), mostNotes)
	}
	for i, note := range b.Notes[:min(len(b.Notes), mostNotes)] {
		within(fmt.Sprintf("note %d", i+1), note, mostNote)
	}
	for i, s := range b.Slots[:min(len(b.Slots), mostSlots)] {
		within(fmt.Sprintf("slot %d: its name", i+1), s.Name, mostNamed)
		if len(s.Tasks) > mostTasks {
			say("slot %d: there are %d tasks: give at most %d", i+1, len(s.Tasks), mostTasks)
		}
	}
}

// choices are the tasks a slot may ask.
func (b *Blueprint) choices(s Slot) []string {
	if s.Stage == "" {
		return s.Tasks
	}
	var names []string
	for _, t := range b.of.OfStage(problem.Stage(s.Stage)) {
		if t.Allows(b.unitsOf(s)) {
			names = append(names, t.Name)
		}
	}
	return names
}

// Items is how many questions a sheet has.
func (b *Blueprint) Items() int {
	n := 0
	for _, s := range b.Slots {
		n += s.Count
	}
	return n
}

// Points is what a sheet is worth.
func (b *Blueprint) Points() float64 {
	sum := 0.0
	for _, s := range b.Slots {
		sum += s.Points * float64(s.Count)
	}
	return sum
}

// identity is what the numbers of a set depend on: its name, units, lathe, rules and
// slots, and how this program draws. Titles and notes may be mended without giving other numbers.
func (b *Blueprint) identity() []byte {
	text, err := json.Marshal(b) // the keys of maps come sorted
	if err != nil {
		panic("set: a blueprint is plain data: " + err.Error())
	}
	return append(append(append(text, b.lathe.Code()...), fmt.Sprintf(" draws %d", problem.Draws)...), b.own()...)
}

// own marks the instructor's own questions that the slots ask: with another formula the
// numbers are others. It is empty where none is asked.
func (b *Blueprint) own() string {
	marks := ""
	for _, s := range b.Slots {
		for _, name := range b.choices(s) {
			if t, err := b.of.Find(name); err == nil && t.Mark != "" {
				marks += " " + name + " " + t.Mark
			}
		}
	}
	return marks
}
