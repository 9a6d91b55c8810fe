package quiz

import (
	"regexp"
	"slices"
	"strings"
	"sync"
)

// order is steps put in their order.
type order struct{}

var _ Kind = order{}

func (order) Name() string { return "order" }

// arrow is what people write between two steps.
var arrow = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`(\d\)?)\s*(?:->|[->\x{2013}\x{2192}]|\bthen\b)\s*`) })

func (order) Read(a *Answer, text string) (Reply, error) {
	want := "the numbers of all the steps in order, such as " + inOrderExample(len(a.Options))
	items := list(arrow().ReplaceAllString(text, "$1 ")) // 6-4-1, 6 > 4 > 1
	if n := len(a.Options); len(items) == 1 && len(items[0]) == n && n < 10 {
		items = strings.Split(items[0], "") // 6412753
	}
	var keys []string
	for _, item := range items {
		key, ok := a.pick(item)
		if !ok || slices.Contains(keys, key) {
			return Reply{}, unread(text, want)
		}
		keys = append(keys, key)
	}
	if len(keys) != len(a.Options) {
		return Reply{}, unread(text, want)
	}
	return Reply{Keys: keys}, nil
}

func inOrderExample(n int) string {
	numbers := []string{"2", "1"}
	for i := 3; i <= n; i++ {
		numbers = append(numbers, string(rune('0'+i%10)))
	}
	return strings.Join(numbers[:min(n, len(numbers))], " ")
}

func (order) Same(_ *Answer, x, y Reply, _ float64) bool { return slices.Equal(x.Keys, y.Keys) }

func (order) Show(a *Answer, r Reply) string {
	numbers := make([]string, len(r.Keys))
	for i, key := range r.Keys {
		numbers[i] = a.number(key)
	}
	return strings.Join(numbers, " ")
}
