package rehearsal

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"scratchpass/lessons/page"
	"scratchpass/lessons/record"
	"scratchpass/quiz/bench"
)

// before are the rehearsals of the same job that were brought to their end, the oldest first.
func (s Flow) before(r *Rehearsal) ([]record.Rehearsal, error) {
	if s.Book == nil {
		return nil, nil
	}
	all, err := s.Book.Rehearsals()
	return slices.DeleteFunc(all, func(x record.Rehearsal) bool { return x.Job != r.Name || x.JobSum != r.sum() }), err
}

// debriefWith is the debrief with what is other than the last time, before its caution.
func (s Flow) debriefWith(r *Rehearsal, before []record.Rehearsal) page.Page {
	text := s.Debrief(r.Bench, r.words, r.TakenBack)
	if len(before) == 0 || r.Bench.Outcome == nil {
		return text
	}
	since := s.sinceLast(before[len(before)-1], entry(r, s.Clock()), r)
	return slices.Insert(text, len(text)-1, since...)
}

// mostTitles is how many mistakes are named in a line.
const mostTitles = 3

// sinceLast says in two lines what became of the mistakes of the last time, and of the room
// that passes left by the clock.
func (s Flow) sinceLast(last, now record.Rehearsal, r *Rehearsal) page.Page {
	line := s.Say("bench-since", "date", last.At.Format(time.DateOnly), "then", last.MistakesMade(), "now", now.MistakesMade())
	if last.Live && now.Live && last.Room.Passes > 0 && now.Room.Passes > 0 {
		line += " " + s.Say("bench-since-room", "then", fmt.Sprintf("%.1f", last.Room.Shortest.Seconds), "now", fmt.Sprintf("%.1f", now.Room.Shortest.Seconds))
	}
	text := page.Page{page.Gap{}, page.Paragraph{Text: line}}
	var gone, again []string
	for _, m := range last.Mistakes {
		if slices.ContainsFunc(now.Mistakes, func(k record.MistakeMade) bool { return k.Name == m.Name }) {
			again = append(again, m.Name)
		} else {
			gone = append(gone, m.Name)
		}
	}
	var parts []string
	if len(gone) > 0 {
		parts = append(parts, s.Say("bench-since-gone", "mistakes", s.mistakeTitles(gone, r)))
	}
	if len(again) > 0 {
		parts = append(parts, s.Say("bench-since-again", "mistakes", s.mistakeTitles(again, r)))
	}
	if len(parts) > 0 {
		text = append(text, page.Paragraph{Text: strings.Join(parts, " ")})
	}
	return text
}

// mistakeTitles names mistakes in a row.
func (s Flow) mistakeTitles(names []string, r *Rehearsal) string {
	var titles []string
	for _, name := range names[:min(mostTitles, len(names))] {
		titles = append(titles, strings.ToLower(bench.Mistake{Name: bench.MistakeName(name)}.Words(r.words).Title))
	}
	said := strings.Join(titles, ", ")
	if more := len(names) - mostTitles; more > 0 {
		said += " " + s.Say("gains-more", "n", more)
	}
	return said
}

// mostShown is how many of the last moves are told to who goes on.
const mostShown = 8

// lastMoves tells the last moves of a rehearsal that is gone on with, and what came of them:
// under a panel they are the beginning of its log.
func (s Flow) lastMoves(r *Rehearsal) page.Page {
	log := r.Bench.Log
	if len(log) == 0 {
		return nil
	}
	text := page.Page{page.Aside{Text: s.Say("bench-last-moves")}}
	for i := max(0, len(log)-mostShown); i < len(log); i++ {
		text = append(text, page.Paragraph{Text: moveLine(r.Bench, i, i+1, r.words)})
	}
	return text
}
