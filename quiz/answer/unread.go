package answer

import (
	"errors"
	"strings"

	"scratchpass/calc"
)

// UnreadError says that a text is no answer of the kind that was asked for.
type UnreadError struct {
	Got  string // what was typed; empty when nothing was
	Want Want
}

// Want names what would be understood: a phrase, and the values of the names in it.
type Want struct {
	Phrase string // such as "want-in": a length, with examples
	Values [][2]string
}

// Value returns the value of a name in the phrase.
func (w Want) Value(name string) (string, bool) {
	for _, v := range w.Values {
		if v[0] == name {
			return v[1], true
		}
	}
	return "", false
}

// Error is for programs; what a learner reads is worded from Got and Want.
func (e *UnreadError) Error() string {
	if e.Got == "" {
		return "nothing was typed (" + e.Want.Phrase + ")"
	}
	return "can't read " + calc.Quoted(e.Got) + " (" + e.Want.Phrase + ")"
}

// longest is the most of a text that is looked at for an answer.
const longest = 200

func unread(text, phrase string, values ...string) error {
	e := &UnreadError{Want: Want{Phrase: phrase}}
	if strings.TrimSpace(text) != "" {
		e.Got = text
	}
	for i := 0; i+1 < len(values); i += 2 {
		e.Want.Values = append(e.Want.Values, [2]string{values[i], values[i+1]})
	}
	return e
}

// unreadOf is the error as what it is.
func unreadOf(err error, text string) *UnreadError {
	var e *UnreadError
	if errors.As(err, &e) {
		return e
	}
	return &UnreadError{Got: text} // no kind returns another error; a test holds them to it
}
