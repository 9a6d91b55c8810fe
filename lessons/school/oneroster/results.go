package oneroster

import (
	"cmp"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"net/http"
	"net/url"
	"slices"
	"strconv"
	"sync"
	"time"

	"github.com/google/uuid"

	"scratchpass/lessons/postgres"
	"scratchpass/quiz/set"
)

// Marks are the marks of a set that are to go to the school's book of grades.
type Marks struct {
	Room  string // the address of the set's room: what is sent has its ids from it
	Set   int    // which set of the room, from 0
	Class string // the sourcedId of the class
	Title string
	Date  time.Time // of the scores, where they were made
	Of    []set.Result
}

// Sent is what came of sending marks.
type Sent struct {
	Taken   int
	Refused []Refused
	Unsent  int   // of whom nothing is known, because the sending broke off
	Broke   error // why it did; nil where it did not
}

// Refused is someone whose mark the service did not take.
type Refused struct {
	ID, Name string
	Why      *Refusal
}

// Book is a school's book of grades.
type Book struct {
	Service *Service
	DB      *postgres.DB
	Clock   func() time.Time
}

// atATime is how many marks are under way at once: a class goes in seconds, and no service is flooded.
const atATime = 4

// entry is what all things of the standard have.
type entry struct {
	ID     string `json:"sourcedId"`
	Status string `json:"status"`
	At     string `json:"dateLastModified"`
}

type category struct {
	entry
	Title string `json:"title"`
}

type lineItem struct {
	entry
	Title    string    `json:"title"`
	Assigned string    `json:"assignDate"`
	Due      string    `json:"dueDate"`
	Class    reference `json:"class"`
	School   reference `json:"school"`
	Category reference `json:"category"`
	Least    float64   `json:"resultValueMin"`
	Most     float64   `json:"resultValueMax"`
}

type result struct {
	entry
	LineItem   reference `json:"lineItem"`
	Student    reference `json:"student"`
	Class      reference `json:"class"`
	State      string    `json:"scoreStatus"`
	Score      *float64  `json:"score,omitempty"`
	Date       string    `json:"scoreDate"`
	InProgress string    `json:"inProgress"`
	Incomplete string    `json:"incomplete"`
	Late       string    `json:"late"`
	Missing    string    `json:"missing"`
}

// id is the sourcedId of something of ours: the same for the same thing whenever and from wherever it
// is sent, and nobody can be told from it (RFC 9562, version 5).
func id(parts ...string) string {
	name := uuid.NameSpaceURL
	for _, p := range parts {
		name = uuid.NewSHA1(name, []byte(p))
	}
	return name.String()
}

// Send sends marks to the book. What is sent again is the same again, to the date of its last change,
// unless a mark is another now; so a sending that broke off is just begun anew.
func (b Book) Send(ctx context.Context, m Marks) (s Sent) {
	s.Unsent = len(m.Of)
	item, err := b.open(ctx, m)
	if err != nil {
		s.Broke = err
		return s
	}
	var mu sync.Mutex
	next := 0
	take := func() (set.Result, bool) {
		mu.Lock()
		defer mu.Unlock()
		if s.Broke != nil || next == len(m.Of) {
			return set.Result{}, false
		}
		next++
		return m.Of[next-1], true
	}
	var sending sync.WaitGroup
	for range atATime {
		sending.Go(func() {
			for r, more := take(); more; r, more = take() {
				err := b.put(ctx, m, item, r)
				mu.Lock()
				s.came(r, err)
				mu.Unlock()
			}
		})
	}
	sending.Wait()
	place := func(r Refused) int { return slices.IndexFunc(m.Of, func(of set.Result) bool { return of.ID == r.ID }) }
	slices.SortFunc(s.Refused, func(a, b Refused) int { return place(a) - place(b) })
	return s
}

// came notes what came of one mark. What the service says of someone is about them; of who sends, or
// that it can't be had, is about all.
func (s *Sent) came(r set.Result, err error) {
	var no *Refusal
	switch {
	case err == nil:
		s.Taken++
		s.Unsent--
	case errors.As(err, &no) && no.Status < http.StatusInternalServerError && no.Status != http.StatusUnauthorized && no.Status != http.StatusTooManyRequests:
		s.Refused = append(s.Refused, Refused{r.ID, cmp.Or(r.Name, r.ID), no})
		s.Unsent--
	default:
		s.Broke = cmp.Or(s.Broke, err)
	}
}

// open makes the line item of a set, and what it hangs on.
func (b Book) open(ctx context.Context, m Marks) (string, error) {
	class, err := b.Service.Class(ctx, m.Class)
	if err != nil {
		return "", err
	}
	filed := b.Service.o.Category
	if filed == "" {
		filed = id(b.Service.o.Client, "category")
		if err := b.write(ctx, "categories", "category", &category{entry: entry{ID: filed}, Title: "Scratchpass"}); err != nil {
			return "", fmt.Errorf("the category: %w", err)
		}
	}
	most := 0.0
	for _, r := range m.Of {
		most = max(most, r.Of)
	}
	item := &lineItem{entry: entry{ID: id(m.Room, strconv.Itoa(m.Set))}, Title: m.Title, Assigned: m.Date.UTC().Format(time.RFC3339), Due: m.Date.UTC().Format(time.RFC3339),
		Class: b.to("class", rostering+"/classes/", m.Class), School: b.to("org", rostering+"/orgs/", class.School), Category: b.to("category", gradebook+"/categories/", filed), Most: most}
	if err := b.write(ctx, "lineItems", "lineItem", item); err != nil {
		return "", fmt.Errorf("the line item: %w", err)
	}
	return item.ID, nil
}

// to names one thing in another.
func (b Book) to(kind, path, id string) reference {
	return reference{b.Service.o.Address + path + url.PathEscape(id), id, kind}
}

// put puts someone's mark. There is a score only where it is final.
func (b Book) put(ctx context.Context, m Marks, item string, r set.Result) error {
	open := r.Open > 0
	p := &result{entry: entry{ID: id(item, r.ID)}, LineItem: b.to("lineItem", gradebook+"/lineItems/", item), Student: b.to("user", rostering+"/users/", r.ID),
		Class: b.to("class", rostering+"/classes/", m.Class), Date: m.Date.Format(time.DateOnly), InProgress: "false", Late: "false",
		Incomplete: strconv.FormatBool(r.Handed && open), Missing: strconv.FormatBool(!r.Handed)}
	switch {
	case !r.Handed:
		p.State = "not submitted"
	case open:
		p.State = "partially graded"
	default:
		p.State, p.Score = "fully graded", &r.Points
	}
	return b.write(ctx, "results", "result", p)
}

// dated is something with a date of its last change.
type dated interface{ self() *entry }

func (e *entry) self() *entry { return e }

// write puts something at its sourcedId. Its last change is when it first was as it is now.
func (b Book) write(ctx context.Context, path, name string, what dated) error {
	e := what.self()
	e.Status = "active"
	text, err := json.Marshal(what)
	if err != nil {
		return err
	}
	sum := sha256.Sum256(text)
	at, err := b.since(ctx, e.ID, hex.EncodeToString(sum[:]))
	if err != nil {
		return err
	}
	e.At = at.UTC().Format("2006-01-02T15:04:05.000Z")
	_, _, err = b.Service.ask(ctx, http.MethodPut, gradebook+"/"+path+"/"+e.ID, writeMarks, map[string]any{name: what})
	return err
}

// since is when something was first sent as it is now, which a sum of it tells.
func (b Book) since(ctx context.Context, id, sum string) (time.Time, error) {
	var at int64
	err := b.DB.QueryRowContext(ctx, `INSERT INTO sent AS s (id, sum, at_ms) VALUES ($1, $2, $3)
ON CONFLICT (id) DO UPDATE SET sum = $2, at_ms = CASE WHEN s.sum = $2 THEN s.at_ms ELSE $3 END RETURNING at_ms`, id, sum, b.Clock().UnixMilli()).Scan(&at)
	return time.UnixMilli(at), err
}
