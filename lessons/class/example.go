package class

import (
	"fmt"
	"reflect"
	"slices"

	"scratchpass/quiz/set"
)

// Example is a question with the numbers that the wall shows, which nobody had who was there when
// it was asked first. They follow from the room's events alone, so that every program that serves
// the room, and one started again, shows the same. Where there are too few numbers, the first are
// taken.
func (r *Room) Example(n, place int) (set.Item, error) {
	a := r.Sets[n]
	chain, err := a.chain(place)
	if err != nil {
		return set.Item{}, err
	}
	there := 0 // when the first of the chain was asked: the others go on with its numbers
	for _, at := range chain {
		if n, ok := a.upTo[at]; ok && (there == 0 || n < there) {
			there = n
		}
	}
	return a.example(place, chain, r.order[:there])
}

// own reports whether nobody in the room has the numbers of the example.
func (r *Room) own(n int, it set.Item) (bool, error) {
	var ids []string
	for _, p := range r.Came() {
		ids = append(ids, p.ID)
	}
	had, err := r.Sets[n].had(it, ids)
	return !had, err
}

// mostExamples is how many examples are looked at for one whose numbers nobody has.
const mostExamples = 12

// example is an item of the first of a few sheets that are nobody's in which no question that hangs
// together with this one has the numbers of any of these people.
func (q *Questions) example(place int, chain []int, people []string) (set.Item, error) {
	if len(people) == 0 {
		return q.Item(OnTheWall, place)
	}
	key := fmt.Sprint(chain[0], " ", len(people)) // people only come to it
	q.mu.Lock()
	id, found := q.examples[key]
	q.mu.Unlock()
	if !found {
		var err error
		if id, err = q.free(chain, people); err != nil {
			return set.Item{}, err
		}
		q.mu.Lock()
		q.examples[key] = id
		q.mu.Unlock()
	}
	return q.Item(id, place)
}

// free is the sheet that has numbers of its own at all places of a chain.
func (q *Questions) free(chain []int, people []string) (string, error) {
	for try := range mostExamples {
		id := OnTheWall
		if try > 0 {
			id = fmt.Sprint(OnTheWall, "-", try)
		}
		free := true
		for _, place := range chain {
			first, err := q.Item(OnTheWall, place)
			if err != nil {
				return "", err
			}
			it, err := q.Item(id, place)
			if err != nil {
				return "", err
			}
			had, err := q.had(it, people)
			if err != nil {
				return "", err
			}
			free = free && !had && it.Problem.Task == first.Problem.Task // its title stands in the table
		}
		if free {
			return id, nil
		}
	}
	return OnTheWall, nil
}

// had reports whether anyone has a question with the numbers of an example.
func (q *Questions) had(example set.Item, people []string) (bool, error) {
	for _, id := range people {
		it, err := q.Item(id, example.Place)
		if err != nil {
			return false, err
		}
		if it.Problem.Task == example.Problem.Task && reflect.DeepEqual(it.Problem.Values.Givens(), example.Problem.Values.Givens()) {
			return true, nil
		}
	}
	return false, nil
}

// chain are the places whose questions hang together with that of a place, in their order: one
// follows from another.
func (q *Questions) chain(place int) ([]int, error) {
	items, err := q.Items(OnTheWall)
	if err != nil {
		return nil, err
	}
	chain := []int{place}
	for more := true; more; {
		more = false
		for _, it := range items {
			for _, from := range it.From {
				if slices.Contains(chain, from) != slices.Contains(chain, it.Place) {
					chain, more = append(chain, from, it.Place), true
				}
			}
		}
	}
	slices.Sort(chain)
	return slices.Compact(chain), nil
}
