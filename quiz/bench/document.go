package bench

import (
	"slices"

	"scratchpass/calc"
	"scratchpass/content"
)

// Document is the whole result of a rehearsal, as JSON shows it. Lengths are in the
// unit of the lathe's dials.
type Document struct {
	Job      string            `json:"job"`
	Thread   string            `json:"thread"`
	Lathe    string            `json:"lathe"`
	Unit     string            `json:"unit"`
	Seconds  float64           `json:"seconds"`
	Over     bool              `json:"over"`
	Events   []EventDocument   `json:"events"`
	Passes   []PassDocument    `json:"passes"`
	Mistakes []MistakeDocument `json:"mistakes"`
	Tests    []TestDocument    `json:"tests"`
	Part     PartDocument      `json:"part"`
	Practise []string          `json:"practise"`
	Back     int               `json:"taken_back"`
	Margins  []MarginDocument  `json:"margins"`
}

// MarginDocument is what was left at the end of a pass when the carriage stood.
type MarginDocument struct {
	Pass    int     `json:"pass"`
	Event   int     `json:"event"`
	Left    float64 `json:"left"`
	Seconds float64 `json:"seconds"`
	RPM     float64 `json:"rpm"`
}

// EventDocument is one event and what came of it.
type EventDocument struct {
	N        int      `json:"n"`
	At       float64  `json:"at"`
	Event    string   `json:"event"`
	Happened []string `json:"happened"`
}

// PassDocument is one pass.
type PassDocument struct {
	N         int     `json:"n"`
	Mark      int     `json:"mark"`
	Start     int     `json:"start"` // from 1
	Hand      string  `json:"hand"`
	Compound  float64 `json:"compound"`
	Straight  float64 `json:"straight"`
	Set       float64 `json:"set"`
	Depth     float64 `json:"depth"`
	Beside    float64 `json:"beside"`
	To        float64 `json:"to"`
	ChipWidth float64 `json:"chip_width"`
	Chip      float64 `json:"chip"`
	Spring    bool    `json:"spring"`
	Chatter   bool    `json:"chatter"`
}

// MistakeDocument is one mistake with what it would have done.
type MistakeDocument struct {
	Name     string   `json:"name"`
	Event    int      `json:"event"`
	Pass     int      `json:"pass"`
	What     string   `json:"what"`
	Part     string   `json:"part"`
	Tool     string   `json:"tool"`
	You      string   `json:"you"`
	Practise []string `json:"practise"`
	Safety   []string `json:"safety"`
	Back     bool     `json:"taken_back"` // its move was taken back
}

// TestDocument is one try of the fit.
type TestDocument struct {
	What   string `json:"what"`
	Result string `json:"result"`
}

// SpoilDocument is what made the part scrap, and the move that did it.
type SpoilDocument struct {
	Reason  string `json:"reason"`
	Event   int    `json:"event"`
	Mistake string `json:"mistake"` // that was made there; empty for none
}

// PartDocument is the part. A pitch diameter that is not there yet is null.
type PartDocument struct {
	Verdict string   `json:"verdict"` // fits, binds or scrap; empty while the rehearsal goes on
	Reasons []string `json:"reasons"`

	Spoiled       []SpoilDocument `json:"spoiled"` // which moves made it scrap, the first of each reason
	PitchDiameter *float64        `json:"pitch_diameter"`
	AtTheEnd      *float64        `json:"pitch_diameter_at_the_end"`
	Max           float64         `json:"max"`
	Min           float64         `json:"min"`
}

// Document returns the result with its words. job is the name of the job.
func (r Replayed) Document(job string, words content.BenchWords) Document {
	b := r.Bench
	all := slices.Concat(b.Mistakes, r.TakenBack)
	u := b.Job.System().Length()
	shown := func(l calc.Length) float64 { return calc.Round(l.Inches()*u.Factor, u.Places+2) }
	d := Document{
		Job: job, Thread: b.Job.Thread.String(), Lathe: b.Job.Lathe.Name, Unit: u.Name, Seconds: calc.Round(b.Clock, 2), Over: b.Over,
		Events: []EventDocument{}, Passes: []PassDocument{}, Mistakes: []MistakeDocument{}, Tests: []TestDocument{}, Practise: append([]string{}, b.Job.Practise(all, words)...), Back: r.Undone, Margins: []MarginDocument{},
	}
	for i, e := range b.Log {
		happened := []string{}
		for _, h := range e.Happened {
			happened = append(happened, h.Text(words))
		}
		d.Events = append(d.Events, EventDocument{i + 1, calc.Round(e.At, 2), e.Event.Write(b.Job.System()), happened})
	}
	for _, p := range b.Passes {
		d.Passes = append(d.Passes, PassDocument{p.N, p.Mark, p.Start + 1, p.Hand.String(), shown(p.Compound), shown(p.Straight), shown(p.Set), shown(p.Depth), shown(p.Shift), shown(p.To),
			shown(p.Width), shown(p.Thickness), p.Spring, p.Chatter})
	}
	for i, m := range all {
		w := b.Job.WordsOf(m, words)
		fill := func(text string) string { return filled(text, m.Facts) }
		d.Mistakes = append(d.Mistakes, MistakeDocument{string(m.Name), m.Event, m.Pass, fill(w.What), fill(w.Part), fill(w.Tool), fill(w.You),
			append([]string{}, b.Job.about(w.Practise, words.OnlyFor)...), append([]string{}, b.Job.Cautions(m.Name, words)...), i >= len(b.Mistakes)})
	}
	for _, m := range b.Margins {
		d.Margins = append(d.Margins, MarginDocument{m.Pass, m.Event, shown(m.Left), calc.Round(m.Seconds, 2), m.RPM})
	}
	for _, t := range b.Tests {
		d.Tests = append(d.Tests, TestDocument(t))
	}
	d.Part = PartDocument{Reasons: []string{}, Spoiled: []SpoilDocument{}, Max: shown(b.Job.Limits.Pitch.Max), Min: shown(b.Job.Limits.Pitch.Min)}
	if b.Outcome != nil {
		d.Part.Verdict = string(b.Outcome.Verdict)
		d.Part.Reasons = append(d.Part.Reasons, b.Outcome.Reasons...)
	}
	for _, s := range b.Spoiled {
		d.Part.Spoiled = append(d.Part.Spoiled, SpoilDocument{s.Reason, s.Event, string(s.Cause)})
	}
	if e, ok := b.PitchDiameter(); ok {
		x := shown(e)
		d.Part.PitchDiameter = &x
	}
	if e, ok := b.PitchAtEnd(); ok {
		x := shown(e)
		d.Part.AtTheEnd = &x
	}
	return d
}

// about leaves out tasks and cautions that are not about such a job.
func (j Job) about(names []string, only content.OnlyFor) []string {
	return slices.DeleteFunc(slices.Clone(names), func(name string) bool {
		return j.Side != calc.Inside && slices.Contains(only.Inside, name) ||
			j.Side == calc.Inside && slices.Contains(only.Outside, name) ||
			!j.KeepClosed() && slices.Contains(only.KeptClosed, name)
	})
}

// Cautions are the keys of the cautions that belong to a mistake at this job.
func (j Job) Cautions(mistake MistakeName, words content.BenchWords) []string {
	return j.about(words.Mistakes[string(mistake)].Safety, words.OnlyFor)
}

// Practise lists the tasks that mistakes point to, the first first, each once.
func (j Job) Practise(mistakes []Mistake, words content.BenchWords) []string {
	var tasks []string
	for _, m := range mistakes {
		for _, t := range j.about(m.Words(words).Practise, words.OnlyFor) {
			if !slices.Contains(tasks, t) {
				tasks = append(tasks, t)
			}
		}
	}
	return tasks
}

// Text words what happened.
func (h Happening) Text(words content.BenchWords) string {
	if name, ok := h.Mistake(); ok {
		return filled(words.Mistakes[string(name)].What, h.Facts)
	}
	return filled(words.Says[h.Name], h.Facts)
}

func filled(text string, facts Facts) string {
	out, _ := content.Fill(text, func(name string) (string, bool) { v, ok := facts[name]; return v, ok })
	return out
}
