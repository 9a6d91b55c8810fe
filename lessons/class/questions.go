package class

import (
	"fmt"
	"slices"
	"sync"

	"scratchpass/content"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/set"
	"scratchpass/quiz/tasks"
)

// Apprentice is one of a roster.
type Apprentice = set.Apprentice

// Questions are a set as it is asked in a room: everybody's own problems, and their marks.
type Questions struct {
	Blueprint *set.Blueprint
	Text      string // as it was written
	Maker     *set.Maker

	mu    sync.Mutex
	items map[string][]set.Item // by id

	examples map[string]string // whose numbers the wall shows
}

// MakerOf makes sets with a class secret and the words and tasks of a library; a lathe that a
// blueprint names was read by the caller.
func MakerOf(secret set.Secret, lib *content.Library, of tasks.Set, lathe func(string) (machine.Lathe, error)) Maker {
	return func(blueprint string, people []string) (*Questions, error) {
		b, err := set.ParseBlueprint("blueprint", []byte(blueprint), of, lathe)
		if err != nil {
			return nil, err
		}
		m, err := set.NewMaker(b, secret, lib)
		if err != nil {
			return nil, err
		}
		class := make([]Apprentice, len(people))
		for i, id := range people {
			class[i] = Apprentice{ID: id}
		}
		m.Seat(class)
		return &Questions{Blueprint: b, Text: blueprint, Maker: m, items: map[string][]set.Item{}, examples: map[string]string{}}, nil
	}
}

// Places is how many questions there are.
func (q *Questions) Places() int { return q.Blueprint.Items() }

// AtOnce reports whether each answer is told at once.
func (q *Questions) AtOnce() bool {
	return q.Blueprint.Rules.Feedback == "" || q.Blueprint.Rules.Feedback == "at-once"
}

// Never reports whether nothing is told of the answers.
func (q *Questions) Never() bool { return q.Blueprint.Rules.Feedback == "never" }

// Telling is when phones tell what came of an answer.
type Telling string

// The times to tell it. What a blueprint asks for is done where people go at their own pace;
// where all go together the instructor shows it, unless it is never told.
const (
	TellsShown  Telling = "together"
	TellsAtOnce Telling = "at-once"
	TellsAtEnd  Telling = "end"
	TellsNever  Telling = "never"
)

// Tells is when phones tell what came of an answer if the set is run a way.
func (q *Questions) Tells(w Way) Telling {
	switch {
	case q.Never():
		return TellsNever
	case w == Together:
		return TellsShown
	case q.AtOnce():
		return TellsAtOnce
	}
	return TellsAtEnd
}

// mostTicket is how many questions fit the end of a lesson.
const mostTicket = 5

// WayOf is how a set is best run after another: few questions that ask how sure someone is are
// for the end of a lesson; all else is run as the first set was.
func WayOf(b *set.Blueprint, first Way) Way {
	if b.Sure && b.Items() <= mostTicket {
		return Ticket
	}
	return first
}

// Items are someone's questions in the order of their sheet. They are made once.
func (q *Questions) Items(id string) ([]set.Item, error) {
	q.mu.Lock()
	defer q.mu.Unlock()
	if items, ok := q.items[id]; ok {
		return items, nil
	}
	items, err := q.Maker.Items(id)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", id, err)
	}
	q.items[id] = items
	return items, nil
}

// Item is someone's question at a place of the blueprint.
func (q *Questions) Item(id string, place int) (set.Item, error) {
	items, err := q.Items(id)
	if err != nil {
		return set.Item{}, err
	}
	i := slices.IndexFunc(items, func(it set.Item) bool { return it.Place == place })
	if i < 0 {
		return set.Item{}, fmt.Errorf("%s has no question at place %d", id, place)
	}
	return items[i], nil
}

// Critical reports whether someone's question is about what can hurt someone.
func (q *Questions) Critical(id string, place int) bool {
	it, err := q.Item(id, place)
	return err == nil && it.Problem.Task.SafetyCritical
}

// marked is a result, and the last event about someone that is in it.
type marked struct {
	seq    int64
	result set.Result
}

// Marked is what came of someone's answers to a set; those that came late count for nothing
// until the instructor lets them. It is marked again only after something has happened.
func (r *Room) Marked(p *Person, n int) (set.Result, error) {
	if m, ok := p.marked[n]; ok && m.seq == p.seq {
		return m.result, nil
	}
	q := r.Sets[n]
	items, err := q.Items(p.ID)
	if err != nil {
		return set.Result{}, err
	}
	given := map[int]set.Given{}
	for _, it := range items {
		if a, ok := p.Answers[Question{n, it.Place}]; ok && !a.Late {
			given[it.Number] = set.Given{Code: q.Maker.Code(p.ID), Item: it.Number, Text: a.Text, Certainty: a.Certainty}
		}
	}
	result := q.Maker.MarkSheet(Apprentice{ID: p.ID, Name: p.Name}, items, given)
	p.marked[n] = marked{p.seq, result}
	return result, nil
}
