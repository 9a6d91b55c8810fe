package schedule_test

import (
	"time"

	"github.com/open-spaced-repetition/go-fsrs/v3"

	"scratchpass/lessons/mastery"
	"scratchpass/lessons/record"
)

// answered is a task with so many answers since anything was shown, the newest of them
// right in a row.
func answered(answers, inARow int) record.Summary {
	return record.Summary{State: mastery.State{Answers: answers, Since: answers, Missed: uint16(1<<(answers-inARow)-1) << inARow & 1023, Run: mastery.Run{Length: inARow}}, Last: now.Add(-time.Hour)}
}

// shown is a task that was mastered and is due after a time.
func shown(dueIn time.Duration) record.Summary {
	return record.Summary{State: mastery.State{Answers: 5, Days: 2, Mastered: true, Held: true}, Card: fsrs.Card{Due: now.Add(dueIn)}, Last: now.AddDate(0, 0, -9)}
}

// shownOn is a task that a whole run was shown of on a day, and that is not mastered yet.
func shownOn(day int) record.Summary {
	s := answered(4, 1)
	s.Days, s.Shown = 1, mastery.Moment{Unix: now.Unix() - int64(today-day)*24*3600, Day: day}
	return s
}

// alike is a task that a whole run was shown of on a day, after one mistake was made so
// often.
func alike(times, day int) record.Summary {
	s := shownOn(day)
	s.Mistakes = map[string]int{"double": times}
	return s
}

// takenBack is a task that was shown, until a mistake took that back.
func takenBack() record.Summary {
	s := shown(240 * time.Hour)
	s.Days, s.Held, s.Wrong = 0, false, mastery.MomentOf(now.Add(-time.Hour))
	return s
}

// notHeld is a task that was shown so long ago, on one day, and whose card says that it is
// due far from now.
func notHeld(ago time.Duration) record.Summary {
	s := shown(240 * time.Hour)
	s.Held, s.Shown = false, mastery.MomentOf(now.Add(-ago))
	return s
}

// wrongSince is a task that was shown and held long ago, and answered wrong so long ago.
func wrongSince(ago time.Duration) record.Summary {
	s := notHeld(30 * 24 * time.Hour)
	s.Wrong = mastery.MomentOf(now.Add(-ago))
	return s
}

// stuck is a task with ten wrong answers, the last so long ago.
func stuck(ago time.Duration) record.Summary {
	s := answered(10, 0)
	s.Last = now.Add(-ago)
	return s
}

// dueNow is a task whose card says that it is due.
func dueNow(s record.Summary) record.Summary {
	s.Card.Due = now
	return s
}
