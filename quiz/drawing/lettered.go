package drawing

import (
	"scratchpass/content"
)

// lettered are the drawings whose labels are letters alone, so that they fit any numbers.
var lettered = []string{"both-flanks", "compound-triangle", "thread-profile"}

// Lettered lists the drawings that can stand beside a problem with numbers of its own.
func Lettered() []string { return append([]string{}, lettered...) }

// WithLetters returns one of those drawings; its twin has no figures.
func WithLetters(name string, words map[string]content.DrawingWords) (Drawing, error) {
	d, err := Named(name, words)
	d.Twin = words[name].Letters
	return d, err
}
