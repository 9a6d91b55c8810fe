package quiz

import (
	"slices"
	"strings"
)

// several is all of the options that fit, and no other.
type several struct{}

var _ Kind = several{}

func (several) Name() string { return "several" }

func (several) Read(a *Answer, text string) (Reply, error) {
	want := "the numbers of all that fit with commas between them, such as 1, 3, or all, or none"
	var keys []string
	for _, item := range list(text) {
		if strings.EqualFold(item, "none") && len(list(text)) == 1 {
			return Reply{}, nil
		}
		if strings.EqualFold(item, "all") && len(list(text)) == 1 {
			return Reply{Keys: slices.Clone(a.Options)}, nil
		}
		key, ok := a.pick(item)
		if !ok {
			return Reply{}, unread(text, want)
		}
		keys = append(keys, key)
	}
	if len(keys) == 0 {
		return Reply{}, unread(text, want)
	}
	return Reply{Keys: keys}, nil
}

func (several) Same(_ *Answer, x, y Reply, _ float64) bool {
	return slices.Equal(sortedSet(x.Keys), sortedSet(y.Keys))
}

func sortedSet(keys []string) []string {
	return slices.Compact(slices.Sorted(slices.Values(keys)))
}

func (several) Show(a *Answer, r Reply) string {
	var numbers []string
	for _, option := range a.Options {
		if slices.Contains(r.Keys, option) {
			numbers = append(numbers, a.number(option))
		}
	}
	if numbers == nil {
		return "none"
	}
	return strings.Join(numbers, ", ")
}
