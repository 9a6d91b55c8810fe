package content

import (
	"slices"
	"strings"
)

// FindTerms returns the names of the terms that a word leads to, best first: the
// term itself, one that it is another name of, one that has it in its name, and
// those that use it in what they mean. An empty word finds all, by name.
// Hyphens may stand for spaces, which saves quotes on a command line.
func FindTerms(terms map[string]Term, word string) []string {
	word = strings.ToLower(strings.TrimSpace(word))
	if word == "" {
		return sortedKeys(terms)
	}
	found := findTerms(terms, word)
	if len(found) == 0 {
		found = findTerms(terms, strings.ReplaceAll(word, "-", " "))
	}
	for _, ending := range []string{"s", "es"} { // of several: "gibs" means "gib"
		one, plural := strings.CutSuffix(word, ending)
		if plural && !named(terms, word, found) && named(terms, one, findTerms(terms, one)) {
			return findTerms(terms, one)
		}
	}
	return found
}

// named reports whether the first of the terms found is called by the word itself.
func named(terms map[string]Term, word string, found []string) bool {
	same := func(name string) bool { return strings.EqualFold(name, word) }
	return len(found) > 0 && (same(found[0]) || slices.ContainsFunc(terms[found[0]].Also, same))
}

func findTerms(terms map[string]Term, word string) []string {
	rank := func(name string, t Term) int {
		switch {
		case strings.ToLower(name) == word:
			return 1
		case slices.ContainsFunc(t.Also, func(also string) bool { return strings.ToLower(also) == word }):
			return 2
		case strings.Contains(strings.ToLower(name), word):
			return 3
		case slices.ContainsFunc(t.Also, func(also string) bool { return strings.Contains(strings.ToLower(also), word) }):
			return 4
		case strings.Contains(strings.ToLower(t.Means), word):
			return 5
		}
		return 0
	}
	var found []string
	for _, name := range sortedKeys(terms) {
		if rank(name, terms[name]) > 0 {
			found = append(found, name)
		}
	}
	slices.SortStableFunc(found, func(a, b string) int { return rank(a, terms[a]) - rank(b, terms[b]) })
	if len(found) > 0 && rank(found[0], terms[found[0]]) == 1 { // the term itself: what uses the word is of no interest
		found = slices.DeleteFunc(found, func(name string) bool { return rank(name, terms[name]) > 3 })
	}
	return found
}
