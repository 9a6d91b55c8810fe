package progress

import (
	"fmt"
	"strings"

	"scratchpass/lessons/page"
	"scratchpass/lessons/record"
)

// So many rehearsals of a job are told of by their mistakes, the last ones, and so many where
// all must fit one line; so long a name does.
const (
	mostCounts  = 6
	shortCounts = 2
	shortName   = 20
)

// counts says how many mistakes there were in each of so many, such as "8, then 3".
func (j Rehearsed) counts(say func(phrase string, pairs ...any) string, most int) (said string) {
	for i, n := range j.Mistakes[max(0, len(j.Mistakes)-most):] {
		if i == 0 {
			said = fmt.Sprint(n)
			continue
		}
		said = say("rehearsed-then", "before", said, "n", n)
	}
	return said
}

// shortened is a name of so many letters at most: that of a job may be a path, whose end tells
// more.
func shortened(name string, most int) string {
	if letters := []rune(name); len(letters) > most {
		return "..." + string(letters[len(letters)-most+3:])
	}
	return name
}

// line is a job in one line.
func (j Rehearsed) line(w Speaker) string {
	return w.Say("rehearsed-line", "job", w.Job(j.Job), "n", j.Times, "mistakes", j.counts(w.Say, mostCounts), "verdict", w.Say("rehearsed-"+string(j.Verdict)), "date", j.Date)
}

// short tells of all in one or two lines.
func (r Rehearsals) short(b *builder) {
	switch {
	case len(r.Done) > 0:
		j := r.Done[0]
		b.line("rehearsed-short", "n", len(r.Done), "job", shortened(j.Job, shortName), "mistakes", j.counts(b.Say, shortCounts))
	case len(r.Begun) > 0:
		b.line("rehearsed-short-begun", "job", shortened(r.Begun[0].Job, shortName), "date", r.Begun[0].Date)
	}
}

// whole lists them all.
func (r Rehearsals) whole(b *builder) {
	if len(r.Done) > 0 {
		b.line("rehearsed-title")
		for _, j := range r.Done {
			b.item(j.line(b.Speaker))
		}
	}
	for _, j := range r.Begun {
		b.item(b.Say("rehearsed-begun", "job", b.Job(j.Job), "date", j.Date))
	}
	if len(r.Done) > 0 && !b.OnPages {
		b.line("rehearsed-more")
	}
}

// runs tells of each rehearsal, the last ones.
func (j Rehearsed) runs(b *builder) {
	first := max(0, len(j.Runs)-mostCounts)
	for i, run := range j.Runs[first:] {
		line := b.Say("rehearsed-run", "n", first+i+1, "date", run.Date, "mistakes", run.Mistakes, "verdict", b.Say("rehearsed-"+string(run.Verdict)))
		if len(run.Back) > 0 {
			var names []string
			for _, name := range run.Back {
				names = append(names, b.Mistake(name))
			}
			line += " " + b.Say("rehearsed-run-back", "mistakes", strings.Join(names, ", "))
		}
		if run.Closest != (record.Way{}) {
			line += " " + b.Say("rehearsed-run-closest", "way", b.Way(run.Closest.Inches), "seconds", fmt.Sprintf("%.1f", run.Closest.Seconds))
		}
		b.item(line)
	}
}

// Page tells all there is of the jobs of one name.
func (r Rehearsals) Page(name string, w Speaker) page.Page {
	b := builder{Speaker: w, page: page.Page{page.Heading{Text: w.Say("rehearsed-of", "job", w.Job(name))}}}
	if len(r.Done)+len(r.Begun) == 0 {
		b.line("rehearsed-none", "job", name)
	}
	for i, j := range r.Done {
		if i > 0 {
			b.gap()
		}
		if len(r.Done) > 1 {
			b.line("rehearsed-thread", "thread", j.Thread)
		}
		b.line("rehearsed-times", "n", j.Times, "date", j.Date, "verdict", w.Say("rehearsed-"+string(j.Verdict)))
		b.line("rehearsed-mistakes", "mistakes", j.counts(w.Say, mostCounts), "clean", j.Faultless)
		j.runs(&b)
		if len(j.Again) > 0 {
			b.line("rehearsed-again")
			for _, m := range j.Again {
				b.item(w.Say("rehearsed-again-line", "mistake", w.Mistake(m.Mistake), "n", m.Times, "of", j.Times))
			}
		}
		for _, at := range j.Room {
			b.line("rehearsed-room", "rpm", fmt.Sprintf("%g", at.RPM), "most", fmt.Sprintf("%.1f", at.Most.Seconds), "mostway", w.Way(at.Most.Inches),
				"least", fmt.Sprintf("%.1f", at.Least.Seconds), "leastway", w.Way(at.Least.Inches))
		}
	}
	for _, j := range r.Begun {
		b.line("rehearsed-begun-this", "thread", j.Thread, "date", j.Date)
	}
	return append(b.page, page.Gap{}, page.Aside{Text: w.Say("rehearsed-means")})
}
