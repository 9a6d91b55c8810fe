package class

import (
	"slices"
	"strings"
	"unicode"

	"github.com/agnivade/levenshtein"
	"golang.org/x/text/unicode/norm"
)

// Near is who on the roster may be meant by a name that is none there as it was typed. Phones
// learn no name from it: of what was not typed, they get one letter.
type Near struct {
	Person  *Person // nil for nobody, and where several fit
	Several bool
	Sure    bool // all that was typed is theirs, their first name and the beginning of the last too
}

// farOff is how many letters of a name may be other ones: one, and two in a long name.
func farOff(name string) int {
	if len(name) < 10 {
		return 1
	}
	return 2
}

// Near finds who may be meant. A first name with the beginning of the last one is someone's: Cato E
// for Cato Enis. A first name alone, or a slip of the finger in what is theirs, is to be asked about. A
// last name alone is not: the question would tell the first one.
func (r *Room) Near(text string) Near {
	typed := nameWords(text)
	if len(typed) == 0 {
		return Near{}
	}
	var begins, first, like, slips []*Person
	for _, a := range r.Head.Roster {
		words, p := nameWords(a.Name), r.Person(a.ID)
		if len(words) == 0 || p == nil {
			continue
		}
		said, is := strings.Join(typed, " "), strings.Join(words, " ")
		switch {
		case len(typed) > 1 && typed[0] == words[0] && begin(words[1:], typed[1:]):
			begins = append(begins, p)
		case len(typed) == 1 && typed[0] == words[0]:
			first = append(first, p)
		case len(typed) > 1 && levenshtein.ComputeDistance(said, is) <= farOff(is):
			like = append(like, p)
		case slip(typed[0], words[0]) && begin(words[1:], typed[1:]):
			slips = append(slips, p)
		}
	}
	for _, found := range [][]*Person{begins, first, like, slips} {
		if len(found) == 1 {
			return Near{Person: found[0], Sure: len(begins) == 1}
		}
		if len(found) > 1 {
			return Near{Several: true}
		}
	}
	return Near{}
}

// slip reports whether a first name may have been typed with one wrong letter. Of two letters, one is
// no name any more.
func slip(typed, name string) bool {
	return min(len([]rune(typed)), len([]rune(name))) > 2 && levenshtein.ComputeDistance(typed, name) <= 1
}

// begin reports whether letters are the beginnings of words, in their order; words may be left
// out, as the de of a name.
func begin(words, letters []string) bool {
	for _, l := range letters {
		i := slices.IndexFunc(words, func(w string) bool { return strings.HasPrefix(w, l) })
		if i < 0 {
			return false
		}
		words = words[i+1:]
	}
	return true
}

// nameWords are the words of a name, the first name first, without accents, points and capitals:
// Enis, Cato and Cato Enis are one.
func nameWords(name string) []string {
	if last, first, ok := strings.Cut(name, ","); ok {
		name = first + " " + last
	}
	plain := strings.Map(func(c rune) rune {
		if unicode.Is(unicode.Mn, c) || c == '.' {
			return -1
		}
		return c
	}, norm.NFD.String(plainName(name)))
	return strings.Fields(plain)
}

// Short is a person's name as their own phone shows it: no more of the last name than its first
// letter, for who typed a part of it has not said the rest. What a visitor chose stays.
func (p *Person) Short() string {
	if p.Visitor {
		return p.Name
	}
	name := p.Name
	if last, first, ok := strings.Cut(name, ","); ok {
		name = first + " " + last
	}
	words := strings.Fields(name)
	if len(words) < 2 {
		return p.Name
	}
	letter := []rune(words[len(words)-1])[0]
	return words[0] + " " + string(unicode.ToUpper(letter)) + "."
}
