package answer

import (
	"slices"
	"strconv"
)

// Choice is one of several options.
var Choice Kind = choice{}

type choice struct{ common }

func (choice) Name() string           { return "choice" }
func (choice) Accept(v Visitor) error { return v.Choice() }
func (choice) Guessable() bool        { return true }
func (choice) OneKey() bool           { return true }
func (choice) Worded() bool           { return true }

func (choice) Read(e *Expected, text string) (Response, error) {
	key, ok := e.pick(text)
	if !ok {
		return Response{}, unread(text, "want-choice", "n", strconv.Itoa(len(e.Options)))
	}
	return OptionsResponse(key), nil
}

func (choice) Same(_ *Expected, x, y Response, _ float64) bool {
	return len(x.Keys) == 1 && len(y.Keys) == 1 && x.Keys[0] == y.Keys[0]
}

func (choice) Print(e *Expected, r Response) []string { return []string{e.Number(r.Keys[0])} }

func (choice) Chosen(_ *Expected, r Response) []string { return r.Keys }

// Offer offers the right option and what the common errors choose.
func (choice) Offer(e *Expected, shuffle func([]string) []string) []string {
	keys := []string{e.Key.Keys[0]}
	for _, known := range e.Errors {
		keys = append(keys, known.Response.Keys[0])
	}
	slices.Sort(keys)
	keys = slices.Compact(keys)
	if shuffle != nil {
		return shuffle(keys)
	}
	return keys
}
