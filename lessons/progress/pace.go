package progress

import (
	"math"
	"time"

	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
)

// A pace is told from so many answers on so many days, with so many tasks shown. Source:
// this project; with fewer one evening more or less would change it by half.
const (
	paceAnswers = 30
	paceDays    = 3
	paceShown   = 3
)

// Pace is how fast a learner has come on, of the days that the chart goes back.
type Pace struct {
	Known    bool // from enough answers
	Shown    int  // tasks of a first thread that were shown
	Days     int  // with answers
	Missing  int  // tasks not shown yet
	Evenings int  // of the same pace until the rest is shown, and one on which the last is held
}

// PaceOf works the pace out.
func PaceOf(r *record.Record, ready schedule.Readiness, now time.Time) (Pace, error) {
	since := now.AddDate(0, 0, -chartDays)
	of, _, err := r.Summaries()
	if err != nil {
		return Pace{}, err
	}
	days, err := r.Days(since)
	if err != nil {
		return Pace{}, err
	}
	answers := 0
	for _, d := range days {
		answers += d.Answers
	}
	shown := 0
	for _, names := range [][]string{ready.SafetyCriticalShown, ready.CoreShown, ready.NotHeld} {
		for _, name := range names {
			if of[name].Shown.Unix >= since.Unix() {
				shown++
			}
		}
	}
	return pace(answers, len(days), shown, len(ready.SafetyCriticalOpen)+len(ready.CoreOpen), len(ready.NotHeld)), nil
}

func pace(answers, days, shown, missing, notHeld int) Pace {
	p := Pace{Known: answers >= paceAnswers && days >= paceDays && shown >= paceShown, Shown: shown, Days: days, Missing: missing}
	if !p.Known {
		return p
	}
	p.Evenings = int(math.Ceil(float64(missing) * float64(days) / float64(shown)))
	if missing+notHeld > 0 {
		p.Evenings++
	}
	return p
}
