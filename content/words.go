package content

import (
	"errors"
	"fmt"
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
	Drawing    string              `yaml:"drawing,omitempty"` // on a printed sheet
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
	Special  bool     `yaml:"special,omitempty"` // a first thread does not need it
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

// FillPairs is Fill from pairs of name and value, as they are printed.
func FillPairs(text string, pairs ...any) string {
	filled, _ := Fill(text, func(name string) (string, bool) {
		for i := 0; i+1 < len(pairs); i += 2 {
			if pairs[i] == name {
				return fmt.Sprint(pairs[i+1]), true
			}
		}
		return "", false
	})
	return filled
}

// Job is a threading job to rehearse, as it is written down. Sizes carry their unit.
type Job struct {
	Title     string     `yaml:"title"`
	Story     string     `yaml:"story"`
	Thread    string     `yaml:"thread"`
	Side      string     `yaml:"side,omitempty"`         // outside or inside, where the thread has no class to tell
	Material  string     `yaml:"material,omitempty"`     // what the work is made of; mild-steel where it does not say
	Lathe     string     `yaml:"lathe,omitempty"`        // inch or metric, one that ships; else the learner's own
	Blank     string     `yaml:"blank,omitempty"`        // outside: the diameter before threading
	Bore      string     `yaml:"bore,omitempty"`         // inside: the bore before threading
	Length    string     `yaml:"length"`                 // of the thread
	End       string     `yaml:"end"`                    // shoulder, bottom or chuck: what the tool would meet
	Gap       string     `yaml:"gap"`                    // clear run from the end of the thread to that
	Ahead     string     `yaml:"ahead,omitempty"`        // how far tool, bar or holder stand ahead of the tip, towards the headstock
	Shank     string     `yaml:"shank,omitempty"`        // diameter of what lies behind the thread, where it is no usual relief
	Towards   string     `yaml:"towards,omitempty"`      // headstock or tailstock: the way of the tool in the cut; else the usual of its hand
	GearsLeft string     `yaml:"gears_left,omitempty"`   // the lead that the last user left the gears at, such as 9 TPI: a fault to find
	Hold      string     `yaml:"hold"`                   // chuck or centres
	Nose      string     `yaml:"spindle_nose,omitempty"` // screwed or locked, where the job tells it and not the lathe
	StandsOut string     `yaml:"stands_out"`             // the work out of the jaws, or the bar out of its holder
	Bar       string     `yaml:"bar,omitempty"`          // inside: diameter of the bar
	Reach     string     `yaml:"reach,omitempty"`        // inside: how far the tool stands out of the bar
	Flat      string     `yaml:"flat,omitempty"`         // on the tip of the tool
	Taper     string     `yaml:"taper,omitempty"`        // of a taper pipe thread: attachment, or none where the lathe has none
	Round     string     `yaml:"nose,omitempty"`         // radius of a round tip, instead of a flat
	Surprises []Surprise `yaml:"surprises,omitempty"`    // what happens on the way
}

// Surprise is something that happens after so many passes.
type Surprise struct {
	After int    `yaml:"after"`
	What  string `yaml:"what"` // called-away or line-past
}

// BenchWords are the words of the rehearsal bench.
type BenchWords struct {
	Says     map[string]string       `yaml:"says"`     // what happens, by name
	Mistakes map[string]MistakeWords `yaml:"mistakes"` // what went wrong, by name
	Moves    map[string]MoveWords    `yaml:"moves"`    // what can be done, by its first word
	OnlyFor  OnlyFor                 `yaml:"only_for,omitempty"`
}

// OnlyFor lists tasks and cautions that are about some jobs alone: a mistake at another
// job does not lead to them.
type OnlyFor struct {
	Inside     []string `yaml:"inside,omitempty"`      // an inside thread
	Outside    []string `yaml:"outside,omitempty"`     // an outside thread
	KeptClosed []string `yaml:"kept_closed,omitempty"` // a half-nut that stays closed to the end
}

// MistakeWords say what a mistake was, and what it would have done.
type MistakeWords struct {
	Title    string   `yaml:"title"`
	What     string   `yaml:"what"`
	Part     string   `yaml:"part,omitempty"` // what it does to the part
	Tool     string   `yaml:"tool,omitempty"` // to tool and lathe
	You      string   `yaml:"you,omitempty"`  // to you
	Inside   InABore  `yaml:"inside,omitempty"`
	Practise []string `yaml:"practise"` // tasks
	Safety   []string `yaml:"safety,omitempty"`
}

// InABore is what is worded otherwise where the thread is in a bore; empty where it is not.
type InABore struct {
	Part string `yaml:"part,omitempty"`
	You  string `yaml:"you,omitempty"`
}

// MoveWords say how a move is written and what it does.
type MoveWords struct {
	Write  string `yaml:"write"`
	Metric string `yaml:"write_mm,omitempty"` // where the dials are metric
	Does   string `yaml:"does"`
}

// Bench returns the words of the rehearsal bench.
func (l *Library) Bench() (BenchWords, error) { return read[BenchWords](l, "bench.yaml") }

// JobNames lists the jobs to rehearse, in order, without their numbers.
func (l *Library) JobNames() []string {
	var names []string
	for _, file := range l.names("jobs") {
		names = append(names, lessonName(file))
	}
	return names
}

// Job returns a job by its name.
func (l *Library) Job(name string) (Job, error) {
	for _, file := range l.names("jobs") {
		if lessonName(file) == name {
			return read[Job](l, "jobs/"+file+".yaml")
		}
	}
	return Job{}, &fs.PathError{Op: "job", Path: name, Err: fs.ErrNotExist}
}
