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
	items := list(arrow().ReplaceAllString(text, "$1 ")) // 6-4-1, 6 > 4 > 1
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

func (order) Same(_ *Expected, x, y Response, _ float64) bool { return slices.Equal(x.Keys, y.Keys) }

func (order) Print(e *Expected, r Response) []string {
	numbers := make([]string, len(r.Keys))
	for i, key := range r.Keys {
		numbers[i] = e.Number(key)
	}
	return []string{strings.Join(numbers, " ")}
}

// Offer offers the steps, never in the right order.
func (order) Offer(e *Expected, shuffle func([]string) []string) []string {
	if shuffle == nil {
		return slices.Sorted(slices.Values(e.Key.Keys))
	}
	steps := shuffle(e.Key.Keys)
	if slices.Equal(steps, e.Key.Keys) { // never hand out the key
		steps[0], steps[1] = steps[1], steps[0]
	}
	return steps
}
