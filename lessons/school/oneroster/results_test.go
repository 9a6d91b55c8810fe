package oneroster_test

import (
	"encoding/json"
	"net/http"
	"reflect"
	"slices"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"scratchpass/lessons/school/oneroster"
	"scratchpass/lessons/school/oneroster/onerostertest"
	"scratchpass/quiz/set"
)

// marks are those of three of a class: final, waiting for the instructor, and not handed in.
func marks() oneroster.Marks {
	return oneroster.Marks{Room: "https://threads.example.school/r/ACDEFH", Set: 1, Class: "17", Title: "Compound & dial", Date: time.Date(2026, 11, 27, 9, 30, 0, 0, time.UTC), Of: []set.Result{
		{ID: "person-0000", Name: "Given0 Family0", Points: 7.5, Of: 10, Handed: true}, {ID: "person-0001", Name: "Given1 Family1", Points: 3, Of: 10, Handed: true, Open: 1}, {ID: "person-0002", Of: 10}}}
}

func (o *office) book(change func(*onerostertest.Server)) oneroster.Book {
	o.t.Helper()
	r := o.node()
	if change != nil {
		change(o.service)
	}
	return oneroster.Book{Service: r.Service, DB: o.db, Clock: o.clock}
}

// of is what stands in the book, by kind of thing.
func (o *office) of(kind string) (all []map[string]any) {
	o.t.Helper()
	for path, text := range o.service.Book() {
		if !strings.HasPrefix(path, kind+"/") {
			continue
		}
		var box map[string]map[string]any
		if err := json.Unmarshal(text, &box); err != nil {
			o.t.Fatal(err)
		}
		for _, what := range box {
			all = append(all, what)
		}
	}
	slices.SortFunc(all, func(a, b map[string]any) int {
		name := func(m map[string]any) string {
			s, _ := m["student"].(map[string]any)
			id, _ := s["sourcedId"].(string)
			return id
		}
		return strings.Compare(name(a), name(b))
	})
	return all
}

// What is sent is a line item of the set with a result each; sent again it is the same to the byte, and
// a mark that is another now has the date of its change.
func TestSend(t *testing.T) {
	o := newOffice(t)
	b := o.book(nil)
	if s := b.Send(t.Context(), marks()); !reflect.DeepEqual(s, oneroster.Sent{Taken: 3}) {
		t.Fatalf("%+v", s)
	}
	items, results := o.of("lineItems"), o.of("results")
	if len(items) != 1 || len(results) != 3 || len(o.of("categories")) != 1 {
		t.Fatal(items, results)
	}
	item := items[0]
	if item["title"] != "Compound & dial" || item["resultValueMax"] != 10.0 || item["dueDate"] != "2026-11-27T09:30:00Z" || item["school"].(map[string]any)["sourcedId"] != "our-school" {
		t.Error(item)
	}
	for i, want := range []struct {
		state, missing, incomplete string
		score                      any
	}{{"fully graded", "false", "false", 7.5}, {"partially graded", "false", "true", nil}, {"not submitted", "true", "false", nil}} {
		r := results[i]
		if r["scoreStatus"] != want.state || r["missing"] != want.missing || r["incomplete"] != want.incomplete || r["score"] != want.score || r["scoreDate"] != "2026-11-27" || r["dateLastModified"] != "2026-11-27T09:00:00.000Z" ||
			r["lineItem"].(map[string]any)["sourcedId"] != item["sourcedId"] {
			t.Errorf("%+v", r)
		}
		if strings.Contains(r["sourcedId"].(string), "person") {
			t.Error("a result tells whose it is: ", r["sourcedId"])
		}
	}
	before := o.service.Book()
	o.later(time.Hour)
	if s := o.book(nil).Send(t.Context(), marks()); s.Taken != 3 { // by another node
		t.Errorf("%+v", s)
	}
	if !reflect.DeepEqual(before, o.service.Book()) || len(o.service.Puts()) != 10 {
		t.Error("sent again it is another: ", o.service.Puts())
	}
	m := marks()
	m.Of[0].Points = 8
	if s := b.Send(t.Context(), m); s.Taken != 3 {
		t.Errorf("%+v", s)
	}
	changed := o.of("results")
	if len(changed) != 3 || changed[0]["score"] != 8.0 || changed[0]["dateLastModified"] != "2026-11-27T10:00:00.000Z" || !reflect.DeepEqual(changed[1:], results[1:]) {
		t.Error(changed)
	}
	other := marks()
	other.Set = 0
	b.Send(t.Context(), other)
	if len(o.of("lineItems")) != 2 || len(o.of("results")) != 6 || len(o.of("categories")) != 1 {
		t.Error("another set is not another line item: ", o.service.Puts())
	}
}

// A category that the settings name is taken as it is.
func TestSendUnderTheirCategory(t *testing.T) {
	o := newOffice(t)
	o.book(nil).Send(t.Context(), marks()) // makes one
	theirs := o.of("categories")[0]["sourcedId"].(string)
	settings := o.service.Settings()
	settings.Category = theirs
	service, err := oneroster.New(settings, time.Now)
	if err != nil {
		t.Fatal(err)
	}
	if s := (oneroster.Book{Service: service, DB: o.db, Clock: o.clock}).Send(t.Context(), marks()); s.Taken != 3 || strings.Count(strings.Join(o.service.Puts(), " "), "categories/") != 1 {
		t.Errorf("%+v %v", s, o.service.Puts())
	}
}

// What the service refuses is told of each person; the others are taken.
func TestSendRefused(t *testing.T) {
	o := newOffice(t)
	m := marks()
	m.Of = append(m.Of, set.Result{ID: "b2", Name: "Ben Carr", Of: 10}, set.Result{ID: "c3", Of: 10})
	s := o.book(nil).Send(t.Context(), m)
	if s.Taken != 3 || s.Unsent != 0 || s.Broke != nil || len(s.Refused) != 2 || s.Refused[0].Name != "Ben Carr" || s.Refused[1].Name != "c3" || s.Refused[0].Why.Code != "unknownobject" || !strings.Contains(s.Refused[0].Why.Says, "no student b2") {
		t.Errorf("%+v", s)
	}
}

// A sending that breaks off says how many are not sent, and is made good by the next; nothing is
// doubled by it.
func TestSendBreaksOff(t *testing.T) {
	m := marks()
	m.Of = nil
	for _, p := range onerostertest.Students(28) {
		m.Of = append(m.Of, set.Result{ID: p.ID, Of: 10, Handed: true, Points: 5})
	}
	last := newOffice(t)
	for name, row := range map[string]struct {
		f    onerostertest.Failure
		only string // of paths with this in them
		from int64  // from this request on
		want string
		most int // taken at most
	}{
		"in the middle": {onerostertest.Failure{Cut: true}, "/results/", 10, "out of reach", 12},
		"broken":        {onerostertest.Failure{Status: 500}, "/results/", 10, "says 500", 12},
		"busy for long": {onerostertest.Failure{Status: 429, Retry: "3600"}, "/results/", 10, "says 429", 12},
		"signed off":    {onerostertest.Failure{Status: 401}, "/results/", 10, "says 401", 12},
		"no line item":  {onerostertest.Failure{Status: 403}, "/lineItems/", 0, "the line item: the OneRoster service says 403", 0},
		"no category":   {onerostertest.Failure{Status: 422}, "/categories/", 0, "the category: the OneRoster service says 422", 0},
		"no class":      {onerostertest.Failure{Status: 404}, "/classes/", 0, `has no class "17"`, 0},
		"no token":      {onerostertest.Failure{Status: 401, Body: `{"error": "invalid_client"}`}, "/token", 0, "gives no token", 0},
	} {
		t.Run(name, func(t *testing.T) {
			o := officeOn(t, last.db)
			var n atomic.Int64
			b := o.book(func(s *onerostertest.Server) {
				s.Fail(func(r *http.Request) onerostertest.Failure {
					if strings.Contains(r.URL.Path, row.only) && n.Add(1) > row.from {
						return row.f
					}
					return onerostertest.Failure{}
				})
			})
			s := b.Send(t.Context(), m)
			if s.Broke == nil || !strings.Contains(s.Broke.Error(), row.want) || s.Taken+s.Unsent != 28 || s.Taken > row.most || s.Taken != len(o.of("results")) || len(s.Refused) > 0 {
				t.Errorf("%+v, %d in the book", s, len(o.of("results")))
			}
			o.service.Fail(nil)
			if s := b.Send(t.Context(), m); s.Taken != 28 || s.Broke != nil || len(o.of("results")) != 28 {
				t.Errorf("again: %+v", s)
			}
		})
	}
	o := last
	b := o.book(nil)
	if err := o.db.Close(); err != nil {
		t.Fatal(err)
	}
	if s := b.Send(t.Context(), m); s.Broke == nil || s.Unsent != 28 || len(o.service.Puts()) > 0 {
		t.Errorf("without a database: %+v", s)
	}
}
