package answer_test

import (
	"math/rand/v2"
	"slices"
	"testing"

	"scratchpass/quiz/answer"
)

// permutations are all orders of some steps.
func permutations(steps []string) [][]string {
	if len(steps) < 2 {
		return [][]string{slices.Clone(steps)}
	}
	var all [][]string
	for i := range steps {
		rest := slices.Delete(slices.Clone(steps), i, i+1)
		for _, p := range permutations(rest) {
			all = append(all, append([]string{steps[i]}, p...))
		}
	}
	return all
}

// keeps reports whether an order keeps every pair of the key that is not named as free: the
// rule said once more, by places.
func keeps(key, order []string, free [][2]string) bool {
	place := map[string]int{}
	for i, step := range order {
		place[step] = i
	}
	for i, a := range key {
		for _, b := range key[i+1:] {
			named := slices.Contains(free, [2]string{a, b}) || slices.Contains(free, [2]string{b, a})
			if !named && place[a] > place[b] {
				return false
			}
		}
	}
	return true
}

// Every order that keeps the pairs that are not free is right, and no other is. What is the
// same by SameOrders is the same by the mark, and Follow gives an order that is right and,
// for one that is right, just that one.
func TestFreeSteps(t *testing.T) {
	steps := []string{"a", "b", "c", "d", "e", "f"}
	draw := rand.New(rand.NewPCG(1, 2))
	for range 60 {
		key := steps[:2+draw.IntN(5)]
		var free [][2]string
		for i, a := range key {
			for _, b := range key[i+1:] {
				if draw.IntN(5) == 0 {
					free = append(free, [2]string{a, b})
				}
			}
		}
		e := answer.Expected{Kind: answer.Order, Key: answer.OptionsResponse(key...), Options: key, Free: free}
		same := e.SameOrders(e.Key)
		right := 0
		for _, order := range permutations(key) {
			r := answer.OptionsResponse(order...)
			want := keeps(key, order, free)
			if want {
				right++
			}
			if got := e.Right(r); got != want {
				t.Fatalf("key %v, free %v: %v is right: %v, want %v", key, free, order, got, want)
			}
			along := e.Follow(e.Key, r)
			if !e.Right(along) || want && !slices.Equal(along.Keys, order) {
				t.Fatalf("key %v, free %v: along with %v goes %v", key, free, order, along.Keys)
			}
		}
		if len(same) != right && right < 24 {
			t.Errorf("key %v, free %v: %d orders are listed, %d are right", key, free, len(same), right)
		}
		for _, r := range same {
			if !e.Right(r) {
				t.Errorf("key %v, free %v: %v is listed and not right", key, free, r.Keys)
			}
		}
	}
}

// An order with too few or other steps is none of them, and what is offered is never right.
func TestOfferedOrderIsWrong(t *testing.T) {
	e := answer.Expected{Kind: answer.Order, Key: answer.OptionsResponse("a", "b", "c"), Options: []string{"a", "b", "c"}, Free: [][2]string{{"b", "a"}}}
	for _, keys := range [][]string{nil, {"a", "b"}, {"a", "b", "x"}, {"a", "c", "b"}} {
		if e.Right(answer.OptionsResponse(keys...)) {
			t.Errorf("%v is right", keys)
		}
	}
	for _, order := range permutations(e.Key.Keys) {
		offered := answer.Order.Offer(&e, func([]string) []string { return slices.Clone(order) })
		if e.Right(answer.OptionsResponse(offered...)) {
			t.Errorf("shuffled to %v, %v is offered", order, offered)
		}
	}
}
