package content

import (
	"slices"
	"strings"

	"github.com/agnivade/levenshtein"
)

// DidYouMean words the nearest of the names to a word that is none of them, for the end
// of an error; it is empty when none is near.
func DidYouMean(word string, names []string) string {
	near := nearest(word, names)
	if len(near) == 0 || len(near) == len(names) && len(names) > 1 { // all of them is no guess
		return ""
	}
	return "; did you mean " + strings.Join(near, ", ") + "?"
}

// meant is DidYouMean where one name differs from the word in a letter or two: then it is
// that one.
func meant(word string, names []string) string {
	if near := misspelt(word, names); near != "" {
		return "; did you mean " + near + "?"
	}
	return DidYouMean(word, names)
}

// misspelt is the name that a word differs from in a letter or two; empty for none.
func misspelt(word string, names []string) string {
	for _, name := range names {
		if len(word) < 40 && levenshtein.ComputeDistance(word, name) <= 2 {
			return name
		}
	}
	return ""
}

// nearest returns up to three names that are most like a word: those that contain it
// first, then by edit distance.
func nearest(word string, names []string) []string {
	if len(word) > 60 {
		word = word[:60]
	}
	near := slices.Clone(names)
	far := func(name string) int {
		if strings.EqualFold(word, name) {
			return 0
		}
		d := levenshtein.ComputeDistance(word, name)
		if d >= max(len(word), len(name)) { // nothing in common
			return 1000
		}
		if word != "" && strings.Contains(name, word) {
			d -= 100
		}
		return d
	}
	slices.SortStableFunc(near, func(a, b string) int { return far(a) - far(b) })
	near = near[:min(3, len(near))]
	for len(near) > 0 { // the third-best guess may be no guess
		last := far(near[len(near)-1])
		if last <= len(word)/2+1 && (len(near) == 1 || last < max(2*far(near[0]), 1)) {
			break
		}
		near = near[:len(near)-1]
	}
	return near
}
