package answer

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"
)

// Several is all of the options that fit, and no other.
var Several Kind = several{}

type several struct{ common }

func (several) Name() string           { return "several" }
func (several) Accept(v Visitor) error { return v.Several() }
func (several) Worded() bool           { return true }

// What people write for all and for none of the options.
var (
	sayAll  = []string{"all", "all marks", "all of them", "all the marks", "any", "any mark", "any of them"}
	sayNone = []string{"none", "no mark", "no marks", "none of them"}
)

// span is a run of numbers: 1-8, 1 to 8.
var span = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`(\d+)\s*(?:-|\x{2013}|\bto\b)\s*(\d+)`) })

// remark is a word in brackets: 2, 4, 6, 8 (even).
var remark = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`\([a-z ]+\)`) })

func (several) Read(e *Expected, text string) (Response, error) {
	const want = "want-several"
	said := strings.ToLower(strings.Trim(text, " ."))
	switch {
	case len(text) > longest:
		return Response{}, unread(text, want)
	case slices.Contains(sayAll, said):
		return OptionsResponse(slices.Clone(e.Options)...), nil
	case slices.Contains(sayNone, said):
		return Response{}, nil
	}
	if remark().MatchString(said) && span().MatchString(said) { // 1-8 (odd): not all of them
		return Response{}, unread(text, want)
	}
	said = strings.ReplaceAll(remark().ReplaceAllString(said, ""), "/", " ")
	said = bareNumbers(said)
	if n, err := strconv.Atoi(strings.TrimSpace(said)); err == nil && n > len(e.Options) && len(e.Options) < 10 {
		said = strings.Join(strings.Split(strings.TrimSpace(said), ""), " ") // 2468
	}
	var keys []string
	for _, item := range list(span().ReplaceAllString(said, "$1-$2")) {
		more, ok := e.spanned(item)
		if !ok {
			return Response{}, unread(text, want)
		}
		keys = append(keys, more...)
	}
	if len(keys) == 0 {
		return Response{}, unread(text, want)
	}
	return OptionsResponse(keys...), nil
}

// spanned are the options of one item of a list: one, or all from one to another.
func (e *Expected) spanned(item string) (keys []string, ok bool) {
	if key, whole := e.pick(item); whole { // the key of an option may have a hyphen
		return []string{key}, true
	}
	first, last, isSpan := strings.Cut(item, "-")
	from, ok := e.pick(first)
	if !isSpan || !ok {
		return nil, false
	}
	to, ok := e.pick(last)
	i, j := slices.Index(e.Options, from), slices.Index(e.Options, to)
	if !ok || j <= i {
		return nil, false
	}
	return e.Options[i : j+1], true
}

// OnlyMissing reports whether a response to a question for several options has nothing in it
// that does not fit, and lacks some that do.
func (e *Expected) OnlyMissing(r Response) bool {
	return e.Kind == Several && !slices.ContainsFunc(r.Keys, func(key string) bool { return !slices.Contains(e.Key.Keys, key) }) && !e.Right(r)
}

func (several) Same(_ *Expected, x, y Response, _ float64) bool {
	return slices.Equal(sortedSet(x.Keys), sortedSet(y.Keys))
}

func (several) Print(e *Expected, r Response) []string {
	chosen := Several.Chosen(e, r)
	if chosen == nil {
		return []string{"none"}
	}
	for i, option := range chosen {
		chosen[i] = e.Number(option)
	}
	return []string{strings.Join(chosen, ", ")}
}

func (several) Chosen(e *Expected, r Response) []string {
	var chosen []string
	for _, option := range e.Options {
		if slices.Contains(r.Keys, option) {
			chosen = append(chosen, option)
		}
	}
	return chosen
}

// Others are what someone might choose who knows no better: all, none, every other one,
// and just those that do not fit.
func (several) Others(e *Expected) []Response {
	var odd, even, rest []string
	for i, option := range e.Options {
		if i%2 == 0 {
			odd = append(odd, option)
		} else {
			even = append(even, option)
		}
		if !slices.Contains(e.Key.Keys, option) {
			rest = append(rest, option)
		}
	}
	return []Response{OptionsResponse(e.Options...), OptionsResponse(), OptionsResponse(odd...), OptionsResponse(even...), OptionsResponse(rest...)}
}
