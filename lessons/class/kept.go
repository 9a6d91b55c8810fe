package class

import (
	"scratchpass/lessons/record"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/answer"
)

// LeftOut is how many answers no record can take, and why.
type LeftOut struct {
	Late   int // it came after its question was closed, and was not let count
	Hangs  int // its question took the answer to another
	Unread int
}

// ForRecord are the answers of someone as their record keeps them. An answer to a question that
// followed from another one is left out: its problem can't be made again from its code. So is
// what came late and what can't be read. left is how many those are, each for its first reason.
func (r *Room) ForRecord(p *Person, version func(task string) string) (all []record.Answer, left LeftOut) {
	for n, q := range r.Sets {
		items, err := q.Items(p.ID)
		if err != nil {
			continue // they were made before they were answered
		}
		for _, it := range items {
			a, ok := p.Answers[Question{n, it.Place}]
			if !ok {
				continue
			}
			m := sitting.MarkOf(it.Problem, a.Text)
			switch {
			case a.Late:
				left.Late++
				continue
			case len(it.From) > 0:
				left.Hangs++
				continue
			case m.Verdict == answer.Unread:
				left.Unread++
				continue
			}
			all = append(all, record.Answer{At: a.At, Task: it.Problem.Task.Name, Code: it.Problem.Code.String(), Given: a.Text, Verdict: m.Verdict, Slip: m.Error, Points: m.Points,
				Certainty: a.Certainty, Hint: p.Hints[Question{n, it.Place}], Situation: it.Problem.Values.Situation(), Key: it.Problem.Expected.Text(), Content: version(it.Problem.Task.Name)})
		}
	}
	return all, left
}

// Of is all that a room has of one person: their events, in order. The tokens of phones are left
// out, and so is what others did.
func Of(events []Event, ids map[string]bool) []Event {
	var all []Event
	for _, e := range events {
		if !ids[e.Who] {
			continue
		}
		switch e.Kind {
		case Joined, Let, Refused, Left:
			e.Text = ""
		}
		all = append(all, e)
	}
	return all
}

// IDs are the ids under which someone is in the room: their own, and those of who was made one
// with them.
func (r *Room) IDs(p *Person) map[string]bool {
	ids := map[string]bool{}
	for _, other := range r.Everyone() {
		if r.Person(other.ID) == p {
			ids[other.ID] = true
		}
	}
	return ids
}
