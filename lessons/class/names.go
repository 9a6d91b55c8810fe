package class

import (
	"strings"

	"scratchpass/content"
)

// mostName is how many letters a visitor's name may have.
const mostName = 40

// Named is someone on the roster by what they typed: their name, their id, or the code of
// their paper strip in the room's first set; nil for nobody. Capitals and spaces do not matter.
func (r *Room) Named(text string) *Person {
	said := plainName(text)
	if said == "" {
		return nil
	}
	for _, a := range r.Head.Roster {
		if plainName(a.Name) == said || plainName(a.ID) == said {
			return r.Person(a.ID)
		}
	}
	if len(r.Sets) == 0 {
		return nil
	}
	code := codeOf(text)
	for _, a := range r.Head.Roster {
		if codeOf(r.Sets[0].Maker.Code(a.ID)) == code {
			return r.Person(a.ID)
		}
	}
	return nil
}

// NickName is a visitor's name as it is kept; empty for one that can't be: nothing in it, or
// that of someone here.
func (r *Room) NickName(text string) string {
	name := strings.Join(strings.Fields(content.Printable(text)), " ")
	if letters := []rune(name); len(letters) > mostName {
		name = string(letters[:mostName])
	}
	if r.Named(name) != nil {
		return ""
	}
	for _, p := range r.people {
		if plainName(p.Name) == plainName(name) {
			return ""
		}
	}
	return name
}

func plainName(text string) string { return strings.ToLower(strings.Join(strings.Fields(text), " ")) }

// codeOf is the code of a sheet without what is typed between its letters.
func codeOf(text string) string {
	return strings.Map(func(r rune) rune {
		if r >= '0' && r <= '9' || r >= 'A' && r <= 'Z' {
			return r
		}
		return -1
	}, strings.ToUpper(text))
}
