package class

import (
	"crypto/sha256"
	"encoding/hex"
	"slices"
	"strings"

	"golang.org/x/text/unicode/norm"

	"scratchpass/content"
)

// The most that a room has of what anyone may make.
const (
	mostName     = 40  // letters in a visitor's name
	mostVisitors = 100 // in a room
)

// Named is someone on the roster by what they typed: their name, or the code of their paper
// strip in the room's first set; nil for nobody. Capitals, spaces and the ways to write an
// accent or an apostrophe do not matter. twice says that two have that name: they come in by
// their codes, or their ids. Who has a name alone is not found by the id: ids are counted up,
// and names would be learned from them.
func (r *Room) Named(text string) (p *Person, twice bool) {
	said := plainName(text)
	if said == "" {
		return nil, false
	}
	times := map[string]int{}
	for _, a := range r.Head.Roster {
		times[plainName(a.Name)]++
	}
	if times[said] > 1 {
		return nil, true
	}
	for _, a := range r.Head.Roster {
		name := plainName(a.Name)
		if name == said || plainName(a.ID) == said && (name == "" || times[name] > 1) {
			return r.Person(a.ID), false
		}
	}
	return r.byCode(text), false
}

// byCode is who has the sheet with a code in the room's first set; nil for nobody.
func (r *Room) byCode(text string) *Person {
	code := codeOf(text)
	if len(r.Sets) == 0 || code == "" {
		return nil
	}
	for _, a := range r.Head.Roster {
		if codeOf(r.Sets[0].Maker.Code(a.ID)) == code {
			return r.Person(a.ID)
		}
	}
	return nil
}

// Tagged is someone by their tag; nil for nobody.
func (r *Room) Tagged(tag string) *Person {
	for _, id := range r.order {
		if r.Tag(id) == tag {
			return r.Person(id)
		}
	}
	return nil
}

// Tag stands for a person on phones: it says nothing of who it is to whoever finds it there.
func (r *Room) Tag(id string) string {
	sum := sha256.Sum256([]byte(r.Head.Key + "\x00" + id))
	return hex.EncodeToString(sum[:9])
}

// NickName is a visitor's name as it is kept; empty for one that can't be: nothing in it, that
// of someone here or on the roster, or one visitor too many.
func (r *Room) NickName(text string) string {
	name := strings.Join(strings.Fields(content.Printable(text)), " ")
	if letters := []rune(name); len(letters) > mostName {
		name = string(letters[:mostName])
	}
	said := plainName(name)
	taken := func(a Apprentice) bool { return plainName(a.Name) == said || plainName(a.ID) == said }
	if slices.ContainsFunc(r.Head.Roster, taken) || r.called(name) || r.byCode(name) != nil || r.visitors() >= mostVisitors {
		return ""
	}
	return name
}

// called reports whether anyone in the room has a name.
func (r *Room) called(name string) bool {
	for _, p := range r.people {
		if plainName(p.Name) == plainName(name) {
			return true
		}
	}
	return false
}

func (r *Room) visitors() int {
	n := 0
	for _, p := range r.people {
		if p.Visitor {
			n++
		}
	}
	return n
}

// plainName is a name without what does not matter: phones put in other apostrophes than
// computers, and write an accent as a letter of its own or not.
func plainName(text string) string {
	text = strings.NewReplacer("’", "'", "‘", "'", "`", "'", "´", "'", "‐", "-", "‑", "-", "–", "-").Replace(text) // before norm: ´ falls apart there
	return strings.ToLower(strings.Join(strings.Fields(norm.NFKC.String(text)), " "))
}

// codeOf is the code of a sheet without what is typed between its letters.
func codeOf(text string) string {
	return strings.Map(func(r rune) rune {
		if r >= '0' && r <= '9' || r >= 'A' && r <= 'Z' {
			return r
		}
		return -1
	}, strings.ToUpper(text))
}
