package mastery_test

import (
	"fmt"
	"testing"
	"time"

	"scratchpass/lessons/mastery"
)

// shownAfter is how many right answers in a row, each of which would have shown all the common
// errors, it takes after some mistakes until a whole run is shown.
func shownAfter(r mastery.Rule, mistakes ...string) int {
	var s mastery.State
	item := 0
	add := func(a mastery.Answer) {
		item += 10 // others lie between
		a.Item, a.Key, a.Errors = item, fmt.Sprint(item), r.Errors
		a.Moment = mastery.MomentOf(time.Unix(1_700_000_000+int64(item), 0).UTC())
		s = s.Add(r, a)
	}
	for _, name := range mistakes {
		add(mastery.Answer{Mistake: name})
	}
	for n := 1; n < 40; n++ {
		if add(mastery.Answer{Right: true}); s.Days > 0 {
			return n
		}
	}
	return 0
}

// The rule, at the edges of its figures.
func TestHowManyInARow(t *testing.T) {
	errors := func(n int) (names []string) {
		for i := range n {
			names = append(names, fmt.Sprint("error-", i))
		}
		return names
	}
	for _, row := range []struct {
		rule     mastery.Rule
		mistakes []string
		want     int
		why      string
	}{
		{mastery.Rule{}, nil, 3, "nothing can go wrong by name"},
		{mastery.Rule{Errors: errors(1)}, nil, 3, "odds of 1 to 4, halved twice, would do; three is the least"},
		{mastery.Rule{Errors: errors(4)}, nil, 4, "odds of 1 to 1, halved four times"},
		{mastery.Rule{Errors: errors(8)}, nil, 4, "all of them together at most 1 to 1"},
		{mastery.Rule{Errors: errors(1)}, []string{"error-0"}, 8, "64 times 1 to 4"},
		{mastery.Rule{Errors: errors(1)}, []string{"error-0", "error-0"}, 11, "512 times at most"},
		{mastery.Rule{Errors: errors(1)}, []string{""}, 3, "a slip of the pen: 1 to 4 of the error and 1 to 2 of not knowing"},
		{mastery.Rule{Errors: errors(1)}, []string{"", ""}, 4, "two of them: 1 to 4 and 1 to 1"},
		{mastery.Rule{Errors: errors(2), Seldom: errors(1)}, []string{"error-0", "error-1"}, 8, "64 times 1 to 8 and 64 times 1 to 4: 24 to 1"},
		{mastery.Rule{Errors: errors(2), Seldom: errors(2)}, []string{"error-0", "error-1"}, 8, "64 times 1 to 8, twice: 16 to 1"},
		{mastery.Rule{Errors: errors(2), Seldom: errors(2)}, []string{"error-0"}, 7, "64 times 1 to 8, and 1 to 8"},
		{mastery.Rule{Choice: true, Errors: errors(1)}, nil, 5, "five is the least of options"},
		{mastery.Rule{Choice: true, Errors: errors(1)}, []string{"error-0"}, 6, "8 times 1 to 4, to half of the odds, since one day is enough"},
		{mastery.Rule{Choice: true, SafetyCritical: true, Errors: errors(1)}, []string{"error-0"}, 5, "to the odds: another day is asked for"},
	} {
		if got := shownAfter(row.rule, row.mistakes...); got != row.want {
			t.Errorf("%+v after %q: %d in a row, want %d: %s", row.rule, row.mistakes, got, row.want, row.why)
		}
	}
}

// A record from elsewhere with more mistakes than any task has does not make a state grow.
func TestMistakesAreBounded(t *testing.T) {
	var s mastery.State
	for i := range 50 {
		s = s.Add(mastery.Rule{}, mastery.Answer{Mistake: fmt.Sprint("mistake-", i)})
	}
	if len(s.Mistakes) != 32+1 || s.Mistakes[""] != 50-32 {
		t.Errorf("%d mistakes are told apart, and %d have no name", len(s.Mistakes)-1, s.Mistakes[""])
	}
}

// Neither an hour that passes midnight nor another zone makes two days of one.
func TestLaterOnAnotherPlacesDate(t *testing.T) {
	zone := func(hours int) *time.Location { return time.FixedZone("", hours*3600) }
	at := func(hour int, place *time.Location) mastery.Moment {
		return mastery.MomentOf(time.Date(2026, 11, 26, hour, 0, 0, 0, time.UTC).In(place))
	}
	for _, row := range []struct {
		first, second mastery.Moment
		want          bool
		why           string
	}{
		{at(8, time.UTC), at(17, time.UTC), false, "one date"},
		{at(8, zone(-12)), at(17, zone(14)), true, "in the evening and the next morning, at either place"},
		{at(8, time.UTC), at(17, zone(14)), false, "one date at the first place"},
		{at(8, zone(-12)), at(17, time.UTC), false, "one date at the second"},
		{at(8, zone(-12)), at(30, zone(14)), true, "a day later, wherever one looks"},
		{at(8, zone(2)), at(24, zone(3)), true, "summer time begins over night"},
		{at(20, zone(2)), at(26, zone(2)), false, "six hours are no night"},
	} {
		if got := row.second.Later(row.first, 1); got != row.want {
			t.Errorf("%+v after %+v: %v, because: %s", row.second, row.first, got, row.why)
		}
	}
}
