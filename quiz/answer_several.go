package quiz

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"
)

// several is all of the options that fit, and no other.
type several struct{}

var _ Kind = several{}

func (several) Name() string { return "several" }

// What people write for all and for none of the options.
var (
	sayAll  = []string{"all", "all marks", "all of them", "all the marks", "any", "any mark", "any of them"}
	sayNone = []string{"none", "no mark", "no marks", "none of them"}
)

// span is a run of numbers: 1-8, 1 to 8.
var span = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`(\d+)\s*(?:-|\x{2013}|\bto\b)\s*(\d+)`) })

// remark is a word in brackets: 2, 4, 6, 8 (even).
var remark = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`\([a-z ]+\)`) })

func (several) Read(a *Answer, text string) (Reply, error) {
	want := "the numbers of all that fit with commas between them, such as 1, 3, or all, or none"
	said := strings.ToLower(strings.Trim(text, " ."))
	switch {
	case len(text) > 200:
		return Reply{}, unread(text, want)
	case slices.Contains(sayAll, said):
		return Reply{Keys: slices.Clone(a.Options)}, nil
	case slices.Contains(sayNone, said):
		return Reply{}, nil
	}
	if remark().MatchString(said) && span().MatchString(said) { // 1-8 (odd): not all of them
		return Reply{}, unread(text, want)
	}
	said = strings.ReplaceAll(remark().ReplaceAllString(said, ""), "/", " ")
	if n, err := strconv.Atoi(strings.TrimSpace(said)); err == nil && n > len(a.Options) && len(a.Options) < 10 {
		said = strings.Join(strings.Split(strings.TrimSpace(said), ""), " ") // 2468
	}
	var keys []string
	for _, item := range list(span().ReplaceAllString(said, "$1-$2")) {
		first, last, isSpan := strings.Cut(item, "-")
		if _, whole := a.pick(item); whole { // the key of an option may have a hyphen
			first, isSpan = item, false
		}
		key, ok := a.pick(first)
		if !ok {
			return Reply{}, unread(text, want)
		}
		if !isSpan {
			keys = append(keys, key)
			continue
		}
		end, ok := a.pick(last)
		i, j := slices.Index(a.Options, key), slices.Index(a.Options, end)
		if !ok || j <= i {
			return Reply{}, unread(text, want)
		}
		keys = append(keys, a.Options[i:j+1]...)
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
