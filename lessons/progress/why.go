package progress

import (
	"cmp"
	"slices"
	"time"

	"scratchpass/lessons/mastery"
	"scratchpass/lessons/page"
	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
)

// Why is what was answered to one task, and what is missing until it is shown.
type Why struct {
	Task     string      `json:"task"`
	Answers  int         `json:"answers"`
	Right    int         `json:"right"`
	Shown    bool        `json:"shown"`
	Held     bool        `json:"held"`               // on a later day, with no mistake since
	Run      int         `json:"right_in_a_row"`     // in the run at hand
	Mistakes []SlipCount `json:"mistakes"`           // those with a name, the most frequent first
	Unnamed  int         `json:"mistakes_unnamed"`   // that fit no common error
	Missing  *Missing    `json:"missing,omitempty"`  // nothing when it is shown
	HoldFrom string      `json:"hold_from,omitzero"` // the date from which a right answer holds what was shown
}

// Missing is what a task still wants.
type Missing struct {
	Right      int      `json:"right_in_a_row"`      // right answers still to come, the last after five other questions or a night
	Situations []string `json:"situations"`          // that must still come up
	Errors     []string `json:"slips"`               // common errors that must have a chance to show
	OtherKey   bool     `json:"other_answer"`        // another answer must be right once
	From       string   `json:"from,omitempty"`      // the date from which the run counts; any time where it is empty
	Again      bool     `json:"again"`               // then the same again on another day
	DaysLater  int      `json:"days_later,omitzero"` // at least so many days later
}

// WhyOf tells of one task. Dates are those of the place that now carries.
func WhyOf(it schedule.Item, s record.Summary, now time.Time) Why {
	w := Why{Task: it.Task, Answers: s.Answers, Right: s.Right, Shown: s.Mastered, Held: s.Held, Run: s.Run.Length, Mistakes: []SlipCount{}, Unnamed: s.Mistakes[""]}
	for name, times := range s.Mistakes {
		if name != "" {
			w.Mistakes = append(w.Mistakes, SlipCount{it.Task, name, times})
		}
	}
	slices.SortFunc(w.Mistakes, func(a, b SlipCount) int {
		return cmp.Or(cmp.Compare(b.Times, a.Times), cmp.Compare(a.Slip, b.Slip))
	})
	m, missing := it.Missing(s)
	switch {
	case missing:
		w.Missing = &Missing{m.Right, append([]string{}, m.Situations...), append([]string{}, m.Errors...), m.OtherKey, "", m.Days > 0, 0}
		if m.LaterRun {
			w.Missing.From = m.Later.From(m.Rest, now.Location()).Format(time.DateOnly)
		}
		if m.Days > 0 {
			w.Missing.DaysLater = m.Rest
		}
	case !s.Held:
		last := s.Shown
		if s.Wrong.Unix > last.Unix {
			last = s.Wrong
		}
		w.HoldFrom = last.From(1, now.Location()).Format(time.DateOnly)
	}
	return w
}

// Whys tells of every task that was begun and is not shown, in the order of the items.
func Whys(items []schedule.Item, of map[string]record.Summary, now time.Time) []Why {
	all := []Why{}
	for _, it := range items {
		if s := of[it.Task]; s.Answers > 0 && !s.Mastered {
			all = append(all, WhyOf(it, s, now))
		}
	}
	return all
}

// So much of a long list fits one screen.
const (
	whyTasks    = 7
	whyMistakes = 3
	whyErrors   = 1
)

// Page words it, on one screen of 80 by 24.
func (y Why) Page(w Speaker) page.Page {
	heading := "why-title"
	switch {
	case y.Shown && y.Missing != nil:
		heading = "why-title-again"
	case y.Shown:
		heading = "why-title-shown"
	}
	text := page.Page{page.Heading{Text: w.Say(heading, "task", w.Title(y.Task))}}
	line := func(phrase string, pairs ...any) { text = append(text, page.Paragraph{Text: w.Say(phrase, pairs...)}) }
	item := func(said string) { text = append(text, page.Item{Text: said}) }
	sum := "why-sum"
	switch {
	case y.Answers == 0:
		sum = "why-none"
	case y.Unnamed > 0:
		sum = "why-sum-unnamed"
	}
	line(sum, "n", y.Answers, "right", y.Right, "wrong", y.Answers-y.Right, "unnamed", y.Unnamed)
	if len(y.Mistakes) > 0 {
		line("why-mistakes")
		for _, m := range y.Mistakes[:min(whyMistakes, len(y.Mistakes))] {
			item(w.times(m))
		}
	}
	switch {
	case y.Missing != nil:
		line("why-missing")
		for _, said := range y.Missing.lines(w, y) {
			item(said)
		}
	case y.HoldFrom != "":
		line("why-hold", "date", y.HoldFrom)
	default:
		line("why-held")
	}
	return append(text, page.Gap{}, page.Aside{Text: w.Say("why-rule")})
}

// times tells how often a mistake was made.
func (w Speaker) times(m SlipCount) string {
	slip := w.Slip(m.Task, m.Slip)
	if m.Slip == schedule.WrongUnit {
		slip = w.Say("why-unit")
	}
	if slip == "" { // the task no longer knows it
		slip = w.Say("why-forgotten")
	}
	if m.Times == 1 {
		return w.Say("why-once", "slip", slip)
	}
	return w.Say("why-times", "times", m.Times, "slip", slip)
}

// lines tells what is missing, a line each.
func (m *Missing) lines(w Speaker, y Why) []string {
	var said []string
	add := func(phrase string, pairs ...any) { said = append(said, w.Say(phrase, pairs...)) }
	if m.From != "" {
		add("why-from", "date", m.From)
	}
	if m.Right == 1 {
		add("why-one", "apart", mastery.Apart)
	} else {
		add("why-right", "n", m.Right, "apart", mastery.Apart)
	}
	if n := len(m.Situations); n == 1 {
		add("why-situation")
	} else if n > 1 {
		add("why-situations", "n", n)
	}
	if m.OtherKey {
		add("why-other")
	}
	if y.Run > 0 { // before, every question brings something
		for _, name := range m.Errors[:min(whyErrors, len(m.Errors))] {
			add("why-error", "slip", w.Slip(y.Task, name))
		}
	}
	switch {
	case m.Again && m.DaysLater > 1:
		add("why-again-later", "n", m.DaysLater)
	case m.Again:
		add("why-again")
	}
	return said
}

// WhysPage words the list, on one screen of 80 by 24.
func WhysPage(all []Why, w Speaker) page.Page {
	text := page.Page{page.Heading{Text: w.Say("whys-title")}}
	if len(all) == 0 {
		return append(text, page.Paragraph{Text: w.Say("whys-none")})
	}
	for _, y := range all[:min(whyTasks, len(all))] {
		text = append(text, page.Item{Text: w.Say("whys-line", "title", w.Title(y.Task), "task", y.Task, "reason", y.Missing.short(w))})
	}
	if more := len(all) - whyTasks; more > 0 {
		text = append(text, page.Paragraph{Text: w.Say("whys-more", "n", more)})
	}
	return append(text, page.Gap{}, page.Paragraph{Text: w.Say("whys-how")}, page.Aside{Text: w.Say("why-rule")})
}

// short tells what is missing in a few words.
func (m *Missing) short(w Speaker) string {
	said := w.Say("whys-one")
	if m.Right > 1 {
		said = w.Say("whys-right", "n", m.Right)
	}
	switch {
	case m.From != "":
		return w.Say("whys-from", "right", said, "date", m.From)
	case m.Again:
		return w.Say("whys-again", "right", said)
	}
	return said
}
