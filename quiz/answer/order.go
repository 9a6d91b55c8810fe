package answer

import (
	"regexp"
	"slices"
	"strings"
	"sync"
)

// Order is steps put in their order.
var Order Kind = order{}

type order struct{ common }

func (order) Name() string           { return "order" }
func (order) Accept(v Visitor) error { return v.Order() }
func (order) OneKey() bool           { return true }
func (order) InOrder() bool          { return true }
func (order) Worded() bool           { return true }

// arrow is what people write between two steps.
var arrow = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(\d\)?)\s*(?:->|[->\x{2013}\x{2192}]|\bthen\b)\s*`)
})

func (order) Read(e *Expected, text string) (Response, error) {
	items := list(arrow().ReplaceAllString(bareNumbers(text), "$1 ")) // 6-4-1, 6 > 4 > 1
	if n := len(e.Options); len(items) == 1 && len(items[0]) == n && n < 10 {
		items = strings.Split(items[0], "") // 6412753
	}
	var keys []string
	for _, item := range items {
		key, ok := e.pick(item)
		if !ok || slices.Contains(keys, key) {
			return Response{}, unread(text, "want-order", "example", orderExample(len(e.Options)))
		}
		keys = append(keys, key)
	}
	if len(keys) != len(e.Options) {
		return Response{}, unread(text, "want-order", "example", orderExample(len(e.Options)))
	}
	return OptionsResponse(keys...), nil
}

func orderExample(n int) string {
	numbers := []string{"2", "1"}
	for i := 3; i <= n; i++ {
		numbers = append(numbers, string(rune('0'+i%10)))
	}
	return strings.Join(numbers[:min(n, len(numbers))], " ")
}

// Same reports whether two orders differ in nothing but steps that are free of each other:
// all other pairs stand the same way round in both.
func (order) Same(e *Expected, x, y Response, _ float64) bool {
	if len(x.Keys) != len(y.Keys) {
		return false
	}
	for i, step := range y.Keys {
		at := slices.Index(x.Keys, step)
		if at < 0 {
			return false
		}
		for _, later := range y.Keys[i+1:] {
			if !e.free(step, later) && slices.Index(x.Keys, later) < at {
				return false
			}
		}
	}
	return true
}

// free reports whether two steps may stand either way round.
func (e *Expected) free(a, b string) bool {
	return slices.Contains(e.Free, [2]string{a, b}) || slices.Contains(e.Free, [2]string{b, a})
}

// Follow returns the order that does the same as an order and goes along with what was
// given for as long as it can: it takes the given step where all that must come before it
// is done, else the next of its own. A step that is free then is no mistake in it.
func (e *Expected) Follow(r, given Response) Response {
	left := slices.Clone(r.Keys)
	ready := func(step string) bool {
		at := slices.Index(left, step)
		return at >= 0 && !slices.ContainsFunc(left[:at], func(before string) bool { return !e.free(before, step) })
	}
	var steps []string
	for i := range r.Keys {
		next := left[0]
		if i < len(given.Keys) && ready(given.Keys[i]) {
			next = given.Keys[i]
		}
		steps = append(steps, next)
		left = slices.DeleteFunc(left, func(step string) bool { return step == next })
	}
	return OptionsResponse(steps...)
}

// mostAlike is how many orders SameOrders returns at most: a task with more would name
// too many free steps to be printed or exported.
const mostAlike = 24

// SameOrders returns all orders that do the same as one, itself first.
func (e *Expected) SameOrders(r Response) []Response {
	found := []Response{r}
	for i := 0; i < len(found) && len(found) < mostAlike; i++ {
		for j := 0; j+1 < len(r.Keys); j++ {
			steps := slices.Clone(found[i].Keys)
			steps[j], steps[j+1] = steps[j+1], steps[j]
			known := slices.ContainsFunc(found, func(o Response) bool { return slices.Equal(o.Keys, steps) })
			if e.free(steps[j], steps[j+1]) && !known {
				found = append(found, OptionsResponse(steps...))
			}
		}
	}
	return found
}

func (order) Print(e *Expected, r Response) []string {
	numbers := make([]string, len(r.Keys))
	for i, key := range r.Keys {
		numbers[i] = e.Number(key)
	}
	return []string{strings.Join(numbers, " ")}
}

// Others are the key with two steps that follow each other the wrong way round.
func (order) Others(e *Expected) []Response {
	var all []Response
	for i := 0; i+1 < len(e.Key.Keys); i++ {
		steps := slices.Clone(e.Key.Keys)
		steps[i], steps[i+1] = steps[i+1], steps[i]
		if r := OptionsResponse(steps...); !e.Right(r) {
			all = append(all, r)
		}
	}
	return all
}

// Offer offers the steps, never in the right order.
func (order) Offer(e *Expected, shuffle func([]string) []string) []string {
	if shuffle == nil {
		return slices.Sorted(slices.Values(e.Key.Keys))
	}
	steps := shuffle(e.Key.Keys)
	for i := 0; i+1 < len(steps) && Order.Same(e, OptionsResponse(steps...), e.Key, 0); i++ { // never hand out the key
		steps[i], steps[i+1] = steps[i+1], steps[i]
	}
	return steps
}
