package set

import (
	"hash/fnv"
	"maps"
	"math"
	"slices"

	"scratchpass/quiz/problem"
)

// side is the half of a question's answers that a seat draws from. Neighbours in a roster have
// different ones, so that no number that is asked for is the same on both sheets.
type side int

const (
	anySide side = iota // drawn without a roster, and all sheets of earlier versions
	oneSide
	otherSide
)

var allSides = []side{anySide, oneSide, otherSide}

// other is the side of a neighbour.
func (s side) other() side { return oneSide + otherSide - s }

// Seat tells the maker in which order apprentices sit: each draws from another half of the
// answers than the one before. The code of a sheet tells its half, so a roster that is put in
// another order later finds the sheets again: see adopt.
func (m *Maker) Seat(class []Apprentice) {
	m.sides = make(map[string]side, len(class))
	next := oneSide
	for _, a := range class {
		m.sides[a.ID] = next
		next = next.other()
	}
}

// adopt takes the sides that the codes of sheets tell, whatever the roster is like by now. It
// returns those of whom two sheets are there.
func (m *Maker) adopt(class []Apprentice, codes map[string]bool) (twice []Apprentice) {
	for _, a := range class {
		var there []side
		for _, s := range allSides {
			if codes[m.codeOn(a.ID, s)] {
				there = append(there, s)
			}
		}
		switch len(there) {
		case 0:
		case 1:
			m.take(a.ID, there[0])
		default:
			twice = append(twice, a)
		}
	}
	return twice
}

func (m *Maker) take(who string, s side) {
	if m.sides == nil {
		m.sides = map[string]side{}
	}
	m.sides[who] = s
}

// halves are the two halves of the answers to a question.
type halves struct {
	parted bool            // false where there is nothing to part
	middle float64         // of one number: between the halves, in held units
	of     map[string]side // of other answers
}

// halvesOf parts the answers of some problems of a question. A number is parted at the widest
// gap in the middle third, any other answer one by one.
func halvesOf(problems []*problem.Problem) halves {
	if len(problems) == 0 {
		return halves{}
	}
	kind := problems[0].Task.Kind
	if kind.Guessable() || kind.OneKey() { // a decision is no number, and there are few
		return halves{}
	}
	if !kind.OneNumber() {
		h := halves{of: map[string]side{}}
		for _, p := range problems {
			h.of[meaning(p)] = anySide
		}
		next := oneSide
		for _, answer := range slices.Sorted(maps.Keys(h.of)) {
			h.of[answer] = next
			next = next.other()
		}
		h.parted = len(h.of) > 1
		return h
	}
	var keys []float64
	for _, p := range problems {
		low, high, _ := p.Expected.Bounds()
		if math.IsInf(low, 0) || math.IsInf(high, 0) {
			low, high = p.Expected.Key.X, p.Expected.Key.X
		}
		keys = append(keys, (low+high)/2)
	}
	slices.Sort(keys)
	h, gap := halves{}, 0.0
	for i := range len(keys) - 1 {
		inMiddle := i+1 >= len(keys)/3 && i+1 <= len(keys)-len(keys)/3
		if wide := keys[i+1] - keys[i]; wide > gap && inMiddle {
			h.parted, h.middle, gap = true, (keys[i]+keys[i+1])/2, wide
		}
	}
	if !h.parted && keys[0] < keys[len(keys)-1] { // most of them are one number
		i := slices.IndexFunc(keys, func(x float64) bool { return x > keys[0] })
		h.parted, h.middle = true, (keys[i-1]+keys[i])/2
	}
	return h
}

// holds reports whether a problem is of a half. Of a number all that is right must lie there:
// what is right for one neighbour is wrong for the other.
func (h halves) holds(s side, p *problem.Problem) bool {
	if s == anySide || !h.parted {
		return true
	}
	if h.of != nil {
		answer := meaning(p)
		its, seen := h.of[answer]
		if !seen {
			sum := fnv.New32a()
			sum.Write([]byte(answer)) // a hash takes everything
			its = oneSide + side(sum.Sum32()%2)
		}
		return its == s
	}
	low, high, _ := p.Expected.Bounds()
	if s == oneSide {
		return max(high, p.Expected.Key.X) < h.middle
	}
	return min(low, p.Expected.Key.X) > h.middle
}
