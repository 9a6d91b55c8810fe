package set

import "slices"

// MarkSheet marks the answers of one apprentice to the questions of their sheet, as Each marks
// a class: an answer that follows rightly from a wrong one before it costs nothing more. given
// are their answers by the printed number.
func (m *Maker) MarkSheet(a Apprentice, items []Item, given map[int]Given) Result {
	o := owner{m.Code(a.ID), ""}
	k := &Marker{maker: m, class: []Apprentice{a}, given: map[owner]map[int]Given{o: given}}
	return k.sheet(a, "", items)
}

// FollowsFrom are the numbers of the questions on a sheet whose answers a question takes, in
// their order.
func FollowsFrom(items []Item, it Item) []int {
	var from []int
	for _, other := range items {
		for _, place := range it.From {
			if place == other.Place {
				from = append(from, other.Number)
				break
			}
		}
	}
	return from
}

// Worth is how many points the question at a place is worth.
func (m *Maker) Worth(place int) float64 { return m.Blueprint.Slots[m.places[place].slot].Points }

// TasksAt are the tasks that a question of the set may be of: one, or those of a mixed slot.
func (m *Maker) TasksAt(place int) []string { return slices.Clone(m.places[place].tasks) }
