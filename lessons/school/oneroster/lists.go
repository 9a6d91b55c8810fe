package oneroster

import (
	"cmp"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"net/http"
	"net/url"
	"regexp"
	"strconv"
	"strings"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/quiz/set"
)

// Limits of a class.
const (
	mostPeople  = 2000
	pageRows    = 100 // people asked for at a time
	longestID   = 80  // letters
	longestName = 120
)

// reference is how the standard names one thing in another.
type reference struct {
	Href string `json:"href"`
	ID   string `json:"sourcedId"`
	Type string `json:"type"`
}

// Class is a class of a school.
type Class struct {
	ID     string
	School string // the sourcedId of whose it is
}

// Class is the class with a sourcedId.
func (s *Service) Class(ctx context.Context, id string) (Class, error) {
	_, text, err := s.ask(ctx, http.MethodGet, rostering+"/classes/"+url.PathEscape(id), readLists, nil)
	var no *Refusal
	if errors.As(err, &no) && no.Status == http.StatusNotFound {
		return Class{}, fmt.Errorf("the OneRoster service has no class %s: %w", calc.Quoted(id), err)
	}
	if err != nil {
		return Class{}, err
	}
	return parseClass(id, text)
}

func parseClass(id string, text []byte) (Class, error) {
	var read struct {
		Class struct {
			ID     string    `json:"sourcedId"`
			Status string    `json:"status"`
			School reference `json:"school"`
		} `json:"class"`
	}
	if err := json.Unmarshal(text, &read); err != nil {
		return Class{}, fmt.Errorf("the OneRoster service: the class can't be read: %w", err)
	}
	switch c := read.Class; {
	case c.ID != id:
		return Class{}, fmt.Errorf("the OneRoster service: asked for the class %s, it gives %s", calc.Quoted(id), calc.Quoted(shortened(c.ID)))
	case gone(c.Status):
		return Class{}, fmt.Errorf("the OneRoster service: the class %s is to be deleted", calc.Quoted(id))
	case c.School.ID == "":
		return Class{}, fmt.Errorf("the OneRoster service: the class %s has no school", calc.Quoted(id))
	default:
		return Class{id, c.School.ID}, nil
	}
}

// gone reports whether a status says that something is not there any more; inactive is a word of
// older forms of the standard.
func gone(status string) bool {
	return strings.EqualFold(status, "tobedeleted") || strings.EqualFold(status, "inactive")
}

// Students are those of a class who are there still, in the order of the service.
func (s *Service) Students(ctx context.Context, class string) ([]set.Apprentice, error) {
	if _, err := s.Class(ctx, class); err != nil {
		return nil, err
	}
	l := list{seen: map[string]bool{}, ids: map[string]bool{}, total: -1}
	for {
		path := fmt.Sprintf("%s/classes/%s/students?limit=%d&offset=%d&sort=sourcedId&orderBy=asc", rostering, url.PathEscape(class), pageRows, l.rows)
		head, text, err := s.ask(ctx, http.MethodGet, path, readLists, nil)
		if err != nil {
			return nil, err
		}
		page, err := parsePage(text)
		if err != nil {
			return nil, err
		}
		if on, err := l.add(page, totalOf(head)); err != nil || !on {
			return l.people, err
		}
	}
}

// totalOf is how many there are in all, as the head of a page says; -1 where it does not.
func totalOf(head http.Header) int {
	if n, err := strconv.Atoi(head.Get("X-Total-Count")); err == nil && n >= 0 {
		return n
	}
	if links := strings.Join(head.Values("Link"), ","); links != "" && !nextLink.MatchString(links) {
		return 0 // there are links, and none leads on
	}
	return -1
}

var nextLink = regexp.MustCompile(`(?i)\brel="?next\b`)

// user is someone as the service has them.
type user struct {
	ID        string `json:"sourcedId"`
	Status    string `json:"status"`
	Enabled   any    `json:"enabledUser"` // "true" or "false"; some give a truth value
	Given     string `json:"givenName"`
	Family    string `json:"familyName"`
	Preferred string `json:"preferredFirstName"`
	Last      string `json:"preferredLastName"`
}

func (u user) isThere() bool {
	return !gone(u.Status) && !strings.EqualFold(fmt.Sprint(u.Enabled), "false")
}

func parsePage(text []byte) ([]user, error) {
	var read struct {
		Users *[]user `json:"users"`
	}
	if err := json.Unmarshal(text, &read); err != nil {
		return nil, fmt.Errorf("the OneRoster service: a page of people can't be read: %w", err)
	}
	if read.Users == nil {
		return nil, errors.New("the OneRoster service: a page of people has no users")
	}
	return *read.Users, nil
}

// list is a list that comes page by page.
type list struct {
	people []set.Apprentice
	seen   map[string]bool // sourcedIds
	ids    map[string]bool // ids of people, in small letters
	rows   int             // that came
	total  int             // that there are, as pages before said; -1 where none did
}

// add adds a page; on says that there are more. total is how many there are in all, -1 where that is
// not said: then the list ends with the first page that has nobody new.
func (l *list) add(page []user, total int) (on bool, err error) {
	fresh := false
	for _, u := range page {
		l.rows++
		if l.seen[u.ID] {
			continue
		}
		l.seen[u.ID], fresh = true, true
		if !u.isThere() {
			continue
		}
		a := person(u.ID, cmp.Or(u.Preferred, u.Given), cmp.Or(u.Last, u.Family))
		if why := l.wrong(a); why != "" {
			return false, fmt.Errorf("the OneRoster service: person %d of the list: %s", l.rows, why)
		}
		l.people = append(l.people, a)
	}
	before := l.total
	if l.total = total; total < 0 {
		l.total, total = before, before
	}
	switch {
	case before != total && before >= 0 && l.rows > len(page):
		return false, errors.New("the OneRoster service: the class was changed between two pages of its list: fetch it again")
	case l.rows > mostPeople:
		return false, fmt.Errorf("the OneRoster service: the class has more than %d people", mostPeople)
	case total < 0:
		return fresh, nil
	case l.rows >= total && len(l.seen) >= total:
		return false, nil
	case !fresh: // it came to its end, or the list was changed between two pages
		return false, fmt.Errorf("the OneRoster service: of %d people it gives %d: fetch the list again", total, len(l.seen))
	}
	return true, nil
}

// person is someone on a list, with an id and names from outside.
func person(id, given, family string) set.Apprentice {
	clean := func(text string) string { return strings.Join(strings.Fields(content.Printable(text)), " ") }
	return set.Apprentice{ID: id, Name: clean(given + " " + family)}
}

// wrong is what is wrong with someone who is to be put on the list; empty for nothing. No name is in
// it: it is logged.
func (l *list) wrong(a set.Apprentice) string {
	key := strings.ToLower(a.ID)
	switch {
	case a.ID == "":
		return "no sourcedId"
	case a.ID != strings.TrimSpace(content.Printable(a.ID)):
		return "a sourcedId with spaces round it, or with letters that can't be printed"
	case a.Name == "":
		return "no name"
	case len([]rune(a.ID)) > longestID:
		return fmt.Sprintf("a sourcedId may have %d letters here", longestID)
	case len([]rune(a.Name)) > longestName:
		return fmt.Sprintf("a name may have %d letters", longestName)
	case l.ids[key]:
		return "another has the same sourcedId"
	}
	l.ids[key] = true
	return ""
}
