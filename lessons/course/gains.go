package course

import (
	"strings"
	"time"

	"scratchpass/lessons/page"
	"scratchpass/lessons/schedule"
	"scratchpass/lessons/sitting"
)

// gained is what the record says at the end of a sitting.
type gained struct {
	Shown    []string `json:"shown"`    // newly shown today
	Tomorrow []string `json:"tomorrow"` // what comes back until tomorrow is over
}

// Gains tells, a line each, what today has gained and what is due tomorrow. Nothing where
// no record is kept.
func Gains(st *sitting.Sitting) (page.Page, error) {
	if st.Book == nil {
		return nil, nil
	}
	g, err := sitting.Fact(st, func() (gained, error) {
		of, _, err := st.Book.Summaries()
		if err != nil {
			return gained{}, err
		}
		items := Order(st.Library, st.System)
		now := st.Now()
		tomorrow := time.Date(now.Year(), now.Month(), now.Day()+2, 0, 0, 0, 0, now.Location()).Add(-time.Second)
		return gained{schedule.ShownOn(items, of, now), schedule.Wanted(items, of, tomorrow)}, nil
	})
	if err != nil {
		return nil, err
	}
	today, tomorrow := st.Say("gains-none"), st.Say("gains-tomorrow-none")
	if len(g.Shown) > 0 {
		today = st.Say("gains-shown", "tasks", Titles(st.Session, g.Shown, len(g.Shown)))
	}
	if len(g.Tomorrow) > 0 {
		tomorrow = st.Say("gains-tomorrow", "tasks", Titles(st.Session, g.Tomorrow, mostTomorrow))
	}
	return page.Page{page.Paragraph{Text: today}, page.Paragraph{Text: tomorrow}}, nil
}

// mostTomorrow is how many of the tasks of tomorrow are named.
const mostTomorrow = 3

// Titles are the titles of tasks in a row, so many of them by name.
func Titles(s *sitting.Session, names []string, most int) string {
	var all []string
	for _, name := range names[:min(most, len(names))] {
		if w, err := s.Words(name); err == nil { // a task without words has no title to tell
			all = append(all, w.Task.Title)
		}
	}
	said := strings.Join(all, "; ")
	if more := len(names) - most; more > 0 {
		said += " " + s.Say("gains-more", "n", more)
	}
	return said
}
