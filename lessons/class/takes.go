package class

import (
	"slices"
	"time"
)

// Takes reports whether an answer of someone to a question is in time. What can hurt someone is
// never cut off by a clock.
func (r *Room) Takes(p *Person, q Question, at time.Time) bool {
	if r.Ended { // what came has been told
		return false
	}
	a := r.Sets[q.Set]
	switch {
	case a.told[q.Place]:
		return false
	case a.Way == Together:
		return a.Open == q.Place && !a.Locked
	case a.Locked:
		return false
	}
	ends, timed := r.Ends(p, q.Set)
	return !timed || !at.After(ends) || a.Critical(p.ID, q.Place)
}

// lateBy is how long after its question took answers for the last time an answer came; 0 for one
// in time, or to a question that was never open.
func (r *Room) lateBy(p *Person, q Question, at time.Time) time.Duration {
	if r.Takes(p, q, at) {
		return 0
	}
	a := r.Sets[q.Set]
	var since []time.Time
	if stopped, ok := a.stopped[q.Place]; ok {
		since = append(since, stopped)
	}
	if ends, timed := r.Ends(p, q.Set); timed && at.After(ends) && a.Way != Together {
		since = append(since, ends)
	}
	if !r.ended.IsZero() && (r.Ended || a.told[q.Place]) {
		since = append(since, r.ended)
	}
	if len(since) == 0 {
		return 0
	}
	return max(0, at.Sub(slices.MinFunc(since, time.Time.Compare)))
}

// lock closes the question at hand, or where all go at their own pace the set, which tells what
// came of all its questions.
func (a *Asking) lock(e Event) {
	a.Locked, a.closed[a.Open] = true, true
	if a.Way == Together {
		a.stop(a.Open, e.At)
		return
	}
	for place := range a.Places() {
		a.stop(place, e.At)
		a.told[place] = a.told[place] || !a.Never()
	}
}

// free opens what is closed again: the question at hand, or the set. What was told takes no
// answers for all that.
func (a *Asking) free(e Event) {
	a.Locked = false
	if a.Open >= 0 {
		a.put[a.Open] = true
	}
	for place := range a.Places() {
		if a.Way == Together && place != a.Open {
			a.stop(place, e.At)
		} else if !a.told[place] {
			delete(a.stopped, place)
		}
	}
}

// stop notes when a question took answers for the last time, if it is not noted yet.
func (a *Asking) stop(place int, at time.Time) {
	if _, ok := a.stopped[place]; !ok && place >= 0 {
		a.stopped[place] = at
	}
}

// end ends the lesson. Phones tell then what came of all that was asked: those questions stay
// told if the lesson is opened again.
func (r *Room) end(e Event) {
	if !r.Ended {
		r.ended = e.At
	}
	r.Ended = true
	for n, a := range r.Sets {
		for place := range a.Places() {
			if !a.Never() && (a.Way != Together || a.been[place] || r.anyAnswered(Question{n, place})) {
				a.told[place] = true
			}
		}
	}
}

func (r *Room) anyAnswered(q Question) bool {
	return slices.ContainsFunc(r.Everyone(), func(p *Person) bool {
		_, ok := p.Answers[q]
		return ok
	})
}
