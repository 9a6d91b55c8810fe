package content

import (
	"errors"
	"io/fs"
	"maps"
	"os"
	"slices"
)

// TaskWords are the words of one task.
type TaskWords struct {
	Title string         `yaml:"title"`
	Skill string         `yaml:"skill"`
	Ask   map[int]string `yaml:"ask"`
	Hint  string         `yaml:"hint"`

	Cases    map[string]string `yaml:"cases,omitempty"`
	Options  map[string]string `yaml:"options,omitempty"`
	Readings []string          `yaml:"readings,omitempty"`
	Because  map[string]string `yaml:"because,omitempty"`

	Slips      map[string]string   `yaml:"slips"`
	FollowUps  map[string]FollowUp `yaml:"follow_ups,omitempty"`
	AtTheLathe string              `yaml:"at_the_lathe"`
	Safety     []string            `yaml:"safety,omitempty"`
	Symbols    map[string]string   `yaml:"symbols,omitempty"`
}

// FollowUp is a question that tells apart the causes of one wrong number.
type FollowUp struct {
	Ask    string  `yaml:"ask"`
	Causes []Cause `yaml:"causes"`
}

// Cause is one cause: what the learner says, and what is said to that.
type Cause struct {
	Name string `yaml:"name"`
	Said string `yaml:"said"`
	Then string `yaml:"then"`
}

// Lesson is one lesson.
type Lesson struct {
	Name     string   `yaml:"-"`
	Title    string   `yaml:"title"`
	Minutes  int      `yaml:"minutes"`
	Goals    []string `yaml:"goals"`
	RestsOn  []string `yaml:"rests_on,omitempty"`
	Why      string   `yaml:"why"`
	Cautions []string `yaml:"cautions,omitempty"`
	Parts    []Part   `yaml:"parts"`
	Check    Check    `yaml:"check"`
	Sources  []string `yaml:"sources,omitempty"`
}

// Part explains one thing and practises the task that goes with it.
type Part struct {
	Title   string  `yaml:"title"`
	Explain []Block `yaml:"explain"`
	Task    string  `yaml:"task"`
	Level   int     `yaml:"level,omitempty"`
	Whole   int     `yaml:"whole,omitempty"`
}

// Block is one of a paragraph, a drawing or a caution.
type Block struct {
	Text    string `yaml:"text,omitempty"`
	Drawing string `yaml:"drawing,omitempty"`
	Caution string `yaml:"caution,omitempty"`
}

// Check is the mixed check at the end of a lesson.
type Check struct {
	Tasks []string `yaml:"tasks"`
	Level int      `yaml:"level,omitempty"`
}

// Caution is a safety note.
type Caution struct {
	Title  string `yaml:"title"`
	Text   string `yaml:"text"`
	Source string `yaml:"source,omitempty"`
}

// Term is an entry of the glossary.
type Term struct {
	Means string   `yaml:"means"`
	See   []string `yaml:"see,omitempty"`
	Also  []string `yaml:"also,omitempty"`
}

// Source is where a figure or a rule comes from.
type Source struct {
	Title string `yaml:"title"`
	For   string `yaml:"for"`
}

// DrawingWords are the words of a drawing.
type DrawingWords struct {
	Title  string            `yaml:"title"`
	Twin   string            `yaml:"twin"`
	Labels map[string]string `yaml:"labels,omitempty"`
}

// Safety returns the cautions by key.
func (l *Library) Safety() (map[string]Caution, error) { return merged[Caution](l, "safety.yaml") }

// Terms returns the glossary.
func (l *Library) Terms() (map[string]Term, error) { return merged[Term](l, "terms.yaml") }

// Sources returns where figures and rules come from, by key.
func (l *Library) Sources() (map[string]Source, error) { return merged[Source](l, "sources.yaml") }

// Symbols returns what the letters in formulas mean.
func (l *Library) Symbols() (map[string]string, error) { return merged[string](l, "symbols.yaml") }

// Phrases returns the sentences that many tasks share.
func (l *Library) Phrases() (map[string]string, error) { return merged[string](l, "phrases.yaml") }

// Screens returns what the program itself says.
func (l *Library) Screens() (map[string]string, error) { return merged[string](l, "screens.yaml") }

// Drawings returns the words of the drawings.
func (l *Library) Drawings() (map[string]DrawingWords, error) {
	return merged[DrawingWords](l, "drawings.yaml")
}

// merged reads a shared list from every folder that has it; an entry in front
// replaces one of the same key behind.
func merged[V any](l *Library, name string) (map[string]V, error) {
	all := map[string]V{}
	for i := len(l.folders) - 1; i >= 0; i-- {
		entries, err := read[map[string]V](&Library{l.folders[i : i+1]}, name)
		if err != nil && !errors.Is(err, fs.ErrNotExist) {
			return nil, err
		}
		maps.Copy(all, entries)
	}
	return all, nil
}

// Fill replaces ${name} in a text by its value. Names that have no value are
// returned too, sorted; in the text they stay as they were.
func Fill(text string, values func(name string) (string, bool)) (filled string, unknown []string) {
	filled = os.Expand(text, func(name string) string {
		if v, ok := values(name); ok {
			return v
		}
		unknown = append(unknown, name)
		return "${" + name + "}"
	})
	slices.Sort(unknown)
	return filled, slices.Compact(unknown)
}

// Names lists the ${name}s that a text asks for, sorted.
func Names(text string) []string {
	_, all := Fill(text, func(string) (string, bool) { return "", false })
	return all
}
