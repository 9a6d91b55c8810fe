package page

import "strings"

// The words that can be typed instead of an answer.
const (
	WordHelp   = "help"
	WordRepeat = "repeat"
	WordHint   = "hint"
	WordLook   = "look"
	WordPass   = "pass"
	WordStop   = "stop"
)

// Anywhere are the words that may be typed instead of any answer.
var Anywhere = []string{WordHint, WordLook, WordRepeat, WordHelp, WordPass, WordStop}

// Aid reports whether a word asks for something and is no answer.
func Aid(word string) bool {
	return word == WordHint || word == WordLook || word == WordRepeat || word == WordHelp
}

// Typed returns the word that was typed instead of an answer, if one of these was. A
// question mark asks for help.
func Typed(reply string, words []string) (string, bool) {
	word := strings.ToLower(strings.TrimSpace(reply))
	if word == "?" {
		word = WordHelp
	}
	for _, w := range words {
		if word == w {
			return w, true
		}
	}
	return "", false
}
