package web

import (
	"regexp"
	"strings"
)

// What errors say to who sits at a terminal: options, commands, and notes about them in brackets.
var (
	typedNote    = regexp.MustCompile(` ?\([^()]*(--[a-z]|scratchpass )[^()]*\)`)
	typedOption  = regexp.MustCompile(`--([a-z][a-z-]*)`)
	typedCommand = regexp.MustCompile(`\bscratchpass ([a-z])`)
)

// Problem is an error as a page says it. Fields there are called as the options are at a terminal,
// without hyphens; commands can't be typed there, and a note that tells one is left out. So each
// error is worded once, and a page tells nobody to type what it does not take.
func Problem(err error) string {
	text := typedNote.ReplaceAllString(err.Error(), "")
	text = typedOption.ReplaceAllStringFunc(text, func(o string) string { return strings.ReplaceAll(strings.TrimPrefix(o, "--"), "-", " ") })
	return typedCommand.ReplaceAllString(text, "$1")
}
