package class_test

import (
	"math/rand/v2"
	"reflect"
	"testing"
	"time"

	"scratchpass/lessons/class"
)

// kinds are all kinds of events.
var kinds = []class.Kind{class.Ran, class.Turned, class.Freed, class.Opened, class.Locked, class.Showed, class.Until, class.Paused, class.Resumed, class.Longer, class.Let, class.Refused, class.Renamed, class.Merged, class.Removed,
	class.Shut, class.Unshut, class.Counted, class.Seen, class.Ended, class.Goes, class.Linked, class.Joined, class.Joined, class.Answered, class.Answered, class.Answered, class.Hinted, class.Called, class.Unclear, class.Keeps,
	class.Benched, class.Moved, class.Moved, class.Moved, class.Moved, class.Moved, class.Nudged, class.Halted}

// anyEvent is an event of any kind, with fields that may or may not fit.
func anyEvent(random *rand.Rand) class.Event {
	pick := func(all ...string) string { return all[random.IntN(len(all))] }
	return class.Event{Kind: kinds[random.IntN(len(kinds))], Who: pick("1", "2", "3", "visitor-a", "visitor-b", "nobody", ""), Set: random.IntN(3) - 1, Place: random.IntN(6) - 1, N: random.IntN(5) - 1,
		Text: pick("phone 0", "phone 1", "x", "y", "0.05", "1", "2", "own-pace", "together", "ticket", "", begin.Add(time.Minute).Format(time.RFC3339)), Name: pick("", "Zoe", "Ada Brink", "Yan")}
}

// anyRound is an event of a bench round: one begins, or someone makes a move, as often as not
// where their lathe stands.
func anyRound(t *testing.T, r room, random *rand.Rand, e class.Event) class.Event {
	switch e.Kind {
	case class.Benched:
		e.Text, e.N, e.Name = jobText(t, screw), random.IntN(4), []string{"", class.WithHints}[random.IntN(2)]
	case class.Moved:
		e.Text = append(append([]string{"jump", "pass 0.01", "done", "note x"}, aPass...), aCrash...)[random.IntN(4+len(aPass)+len(aCrash))]
		if _, n := r.Round(); n >= 0 && r.Person(e.Who) != nil && random.IntN(2) == 0 {
			e.Set, e.N = n, len(r.Work(r.Person(e.Who), n).Moves)
		}
	}
	return e
}

// Whatever events come in whatever order, a room never breaks: a phone has one name, a name one
// phone, and what everyone sees can be worked out.
func TestAnyEvents(t *testing.T) {
	for seed := range uint64(60) {
		random := rand.New(rand.NewPCG(seed, 1))
		r := newRoom(t, []string{"end", "at-once", "never"}[seed%3], class.Ways[seed/3%3])
		var all []class.Event
		for range 150 {
			e := anyRound(t, r, random, anyEvent(random))
			e.Seq, e.At = r.Seq+1, begin.Add(time.Duration(r.Seq)*time.Second)
			if err := r.Apply(e); err != nil {
				t.Fatalf("seed %d: %+v: %v", seed, e, err)
			}
			all = append(all, e)
		}
		phones := map[string]string{}
		for _, p := range r.Everyone() {
			if p.Device == "" {
				continue
			}
			if other, twice := phones[p.Device]; twice {
				t.Errorf("seed %d: %s and %s have one phone", seed, other, p.ID)
			}
			phones[p.Device] = p.ID
			if h := r.Holder(p.Device); h != p {
				t.Errorf("seed %d: the phone of %s is %v's", seed, p.ID, h)
			}
			if _, err := r.At(p, random.IntN(4)-1, begin.Add(time.Hour)); err != nil {
				t.Errorf("seed %d: %s sees nothing: %v", seed, p.ID, err)
			}
		}
		if _, err := r.Standing(r.Now, begin, func(string) bool { return false }); err != nil {
			t.Error(err)
		}
		if _, err := r.Wall(); err != nil {
			t.Error(err)
		}
		for n, round := range r.Rounds {
			class.SpreadOf(r.RoundStanding(n, begin, func(string) bool { return false }))
			if _, at := r.Round(); n != at && !round.Closed {
				t.Errorf("seed %d: round %d goes on, and %d is at hand", seed, n, at)
			}
		}
		again := newRoom(t, []string{"end", "at-once", "never"}[seed%3], class.Ways[seed/3%3])
		for _, e := range all {
			if err := again.Apply(e); err != nil {
				t.Fatal(err)
			}
		}
		for i, p := range r.Everyone() {
			if q := again.Everyone()[i]; !reflect.DeepEqual(p.Answers, q.Answers) || !reflect.DeepEqual(p.Works, q.Works) || p.Device != q.Device || p.Name != q.Name || r.Version(p, begin) != again.Version(q, begin) {
				t.Errorf("seed %d: made again, %s is another", seed, p.ID)
			}
		}
	}
}
