package schedule_test

import (
	"maps"
	"reflect"
	"slices"
	"testing"
	"time"

	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
	"scratchpass/quiz/answer"
)

// at is a time of day on a day, counted from the first of January 2026.
func at(day, hour, minute int) time.Time {
	return time.Date(2026, 1, 1+day, hour, minute, 0, 0, time.UTC)
}

// right, wrong and hinted are answers to a task of which the fold knows nothing more.
func right(when time.Time) record.Answer {
	return record.Answer{At: when, Task: "t", Verdict: answer.Right}
}
func wrong(when time.Time) record.Answer {
	return record.Answer{At: when, Task: "t", Verdict: answer.Wrong}
}
func hinted(when time.Time) record.Answer {
	a := right(when)
	a.Hint = true
	return a
}

// folded is what answers come to, oldest first, with so many other items between.
func folded(between int, answers ...record.Answer) record.Summary {
	fold := schedule.Fold(nil)
	var s record.Summary
	for i, a := range answers {
		s = fold(s, a, 1+i*(1+between))
	}
	return s
}

// A record keeps moments to the millisecond, so no more of one may count.
func TestFoldCountsMilliseconds(t *testing.T) {
	fine, kept := right(at(0, 9, 0).Add(1_999_999)), right(at(0, 9, 0).Add(1_000_000))
	if a, b := folded(0, fine), folded(0, kept); !reflect.DeepEqual(a, b) {
		t.Errorf("%+v\n%+v", a, b)
	}
}

func TestFoldCountsErrors(t *testing.T) {
	for _, row := range []struct {
		verdict   answer.Verdict
		slip      string
		certainty answer.Certainty
		slips     map[string]int
		sureWrong bool
		why       string
	}{
		{answer.KnownError, "double", answer.NotAsked, map[string]int{"double": 1}, false, "a common error has a name"},
		{answer.KnownError, "double", answer.Bet, map[string]int{"double": 1}, true, "the part would have been bet on it"},
		{answer.KnownError, "double", answer.Fairly, map[string]int{"double": 1}, false, "fairly sure is not a bet"},
		{answer.KnownError, "double", answer.Guess, map[string]int{"double": 1}, false, "nor is a guess"},
		{answer.Wrong, "", answer.Bet, nil, true, "wrong without a name"},
		{answer.ScrapWrong, "", answer.Bet, nil, true, "wrong on the side that ruins the part"},
		{answer.SafeWrong, "half", answer.Bet, nil, true, "a part of what is right has a name and is no error to count"},
		{answer.WrongUnit, "", answer.Bet, nil, true, "the part would not have fitted"},
		{answer.Right, "", answer.Bet, nil, false, "a bet that is won"},
		{answer.Convention, "sixth", answer.Bet, nil, false, "another convention is right, and no error"},
	} {
		a := record.Answer{At: at(0, 9, 0), Task: "t", Verdict: row.verdict, Slip: row.slip, Certainty: row.certainty}
		s := folded(0, a)
		if !maps.Equal(s.Slips, row.slips) || s.SureWrong.Equal(a.At) != row.sureWrong || s.SureWrong.IsZero() == row.sureWrong {
			t.Errorf("%s %q %q: errors %v, sure but wrong at %v: %s", row.verdict, row.slip, row.certainty, s.Slips, s.SureWrong, row.why)
		}
	}
}

func TestFoldAddsUp(t *testing.T) {
	double, half := wrong(at(0, 9, 0)), wrong(at(0, 9, 1))
	double.Verdict, double.Slip, double.Seconds = answer.KnownError, "double", 30
	half.Verdict, half.Slip, half.Seconds, half.Certainty = answer.KnownError, "half", 12.5, answer.Bet
	fold := schedule.Fold(nil)
	before := fold(record.Summary{}, double, 1)
	s := fold(fold(before, double, 2), half, 3)
	if want := map[string]int{"double": 2, "half": 1}; !maps.Equal(s.Slips, want) {
		t.Errorf("errors %v", s.Slips)
	}
	if s.Answers != 3 || s.Right != 0 || s.Seconds != 72.5 || !s.Last.Equal(half.At) || !s.SureWrong.Equal(half.At) {
		t.Errorf("%+v", s)
	}
	if s = fold(s, right(at(0, 9, 2)), 4); !s.SureWrong.Equal(half.At) || !s.Last.Equal(at(0, 9, 2)) {
		t.Errorf("a right answer later does not take back that a bet was lost: %+v", s)
	}
	if before.Slips["double"] != 1 || len(before.Slips) != 1 {
		t.Errorf("the summary before was written to: %v", before.Slips)
	}
}

func TestFoldKeepsWhenARunWasLastShown(t *testing.T) {
	one, two, three := right(at(0, 9, 0)), right(at(0, 9, 10)), right(at(0, 9, 20))
	for _, row := range []struct {
		answers []record.Answer
		want    time.Time
		why     string
	}{
		{[]record.Answer{one, two}, time.Time{}, "two are no run"},
		{[]record.Answer{one, two, three}, three.At, "shown by the third"},
		{[]record.Answer{one, two, three, right(at(0, 9, 30)), wrong(at(0, 9, 40))}, three.At, "what comes after is no whole run"},
		{[]record.Answer{one, two, three, right(at(3, 9, 0)), right(at(3, 9, 1)), right(at(4, 9, 0))}, at(4, 9, 0), "shown again"},
	} {
		if got := folded(5, row.answers...).LastShown; !got.Equal(row.want) {
			t.Errorf("last shown %v, want %v: %s", got, row.want, row.why)
		}
	}
}

// What spaces reviews is what someone still knows on another day: the first answer to a
// task on each day, and no other.
func TestFoldSpacesByTheFirstAnswerOfADay(t *testing.T) {
	east := time.FixedZone("", 10*3600)
	for _, row := range []struct {
		answers []record.Answer
		reviews uint64
		lapses  uint64
		last    int // which of the answers was reviewed last
		why     string
	}{
		{[]record.Answer{right(at(0, 9, 0))}, 1, 0, 0, "the first of all"},
		{[]record.Answer{right(at(0, 9, 0)), right(at(0, 9, 1))}, 1, 0, 0, "the second on a day shows nothing about remembering"},
		{[]record.Answer{right(at(0, 9, 0)), wrong(at(0, 23, 59))}, 1, 0, 0, "nor does a wrong one later on that day"},
		{[]record.Answer{right(at(0, 23, 59)), right(at(1, 0, 0))}, 2, 0, 1, "another day begins at midnight"},
		{[]record.Answer{right(at(0, 9, 0)), right(at(0, 9, 1)), right(at(1, 9, 0))}, 2, 0, 2, "the first of the next day"},
		{[]record.Answer{right(at(0, 9, 0)), wrong(at(4, 9, 0)), right(at(4, 9, 1))}, 2, 1, 1, "forgotten, and found again on the same day"},
		{[]record.Answer{right(at(0, 23, 0).In(east)), right(at(1, 1, 0).In(east))}, 1, 0, 0, "one day where the learner is, two in Greenwich"},
		{[]record.Answer{right(at(0, 13, 59).In(east)), right(at(0, 14, 0).In(east))}, 2, 0, 1, "midnight where the learner is"},
	} {
		card := folded(0, row.answers...).Card
		if card.Reps != row.reviews || card.Lapses != row.lapses || !card.LastReview.Equal(row.answers[row.last].At) {
			t.Errorf("%d reviews, %d forgotten, the last at %v: %s", card.Reps, card.Lapses, card.LastReview, row.why)
		}
	}
}

// The days until a review are those of FSRS with its default weights, 90 % to be
// remembered, nothing left to chance. Another version of the library that gives others
// moves the reviews of every learner, so it shows here.
func TestFoldDaysUntilReview(t *testing.T) {
	due := func(answers ...record.Answer) int {
		s := folded(0, answers...)
		gap := s.Card.Due.Sub(answers[len(answers)-1].At)
		if gap%(24*time.Hour) != 0 {
			t.Errorf("due after %v, which is not whole days", gap)
		}
		return int(gap / (24 * time.Hour))
	}
	forgotten, helped, known := due(wrong(at(0, 9, 0))), due(hinted(at(0, 9, 0))), due(right(at(0, 9, 0)))
	if got := []int{forgotten, helped, known}; !slices.Equal(got, []int{1, 2, 3}) {
		t.Errorf("a new task wrong, right with a hint, right: due after %v days", got)
	}
	// Right whenever it is due: further and further apart, at most four months. The library
	// puts what was known well a day behind what was known barely, which makes 120 days 121.
	var answers []record.Answer
	var gaps []int
	for day := range 8 {
		when := at(0, 9, 0)
		if day > 0 {
			when = answers[day-1].At.AddDate(0, 0, gaps[day-1])
		}
		answers = append(answers, right(when))
		gaps = append(gaps, due(answers...))
	}
	if want := []int{3, 11, 35, 101, 121, 121, 121, 121}; !slices.Equal(gaps, want) {
		t.Errorf("due after %v days", gaps)
	}
}
