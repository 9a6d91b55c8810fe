package served_test

import (
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"
	"time"

	"scratchpass/lessons/school"
	"scratchpass/lessons/school/oneroster"
	"scratchpass/lessons/school/oneroster/onerostertest"
	"scratchpass/lessons/school/served"
)

// An instructor fetches the class list by hand; it is there at all nodes, and rooms begin with it. When
// the service fails the list from before stays, and the page says so.
func TestFetchedList(t *testing.T) {
	c := newCampus(t)
	a, b := c.node(t), c.node(t)
	teacher := a.token("Cato", "teach-2")
	const group = "/groups/turning-2"
	has(t, a.page(teacher, group), "The class list was not fetched yet", `action="/groups/turning-2/list"`)
	c.service.Fail(func(*http.Request) onerostertest.Failure { return onerostertest.Failure{Status: 403} })
	a.sends(teacher, group+"/list")
	has(t, b.page(teacher, group), "The class list was not fetched yet", "gives no token: it says &#34;403 Forbidden&#34;", "people come into rooms as visitors")
	c.service.Fail(nil)
	if to := a.sends(teacher, group+"/list"); to != group {
		t.Error(to)
	}
	today := time.Now().UTC().Format(time.DateOnly)
	has(t, b.page(teacher, group), "3 on the class list", "The class list is of "+today)
	has(t, b.page(teacher, "/desk/"+b.room(teacher, "turning-2")), "Given2 Family2")
	c.service.Fail(func(r *http.Request) onerostertest.Failure {
		if r.URL.Path == "/token" {
			return onerostertest.Failure{}
		}
		return onerostertest.Failure{Status: 403, Body: `{"imsx_codeMajor": "failure", "imsx_severity": "error", "imsx_description": "<b>no more</b>"}`}
	})
	b.sends(teacher, group+"/list")
	page := a.page(teacher, group)
	has(t, page, "3 on the class list", "The class list is of "+today, "It could not be fetched at "+today, "says 403 (&#34;&lt;b&gt;no more", "Until it can, the list from before is used")
	has(t, a.page(teacher, "/desk/"+a.room(teacher, "turning-2")), "Given2 Family2")
	c.service.Fail(nil)
	a.sends(teacher, group+"/list")
	if page := b.page(teacher, group); strings.Contains(page, "could not be fetched") {
		t.Error(page)
	}
	if len(a.fetched) != 3 || len(b.fetched) != 1 || b.fetched[0].Err == nil {
		t.Error(a.fetched, b.fetched)
	}
	if status, page, _ := a.ask(a.token("Dora", "teach-1"), "/groups/turning-1/list", url.Values{}); status != http.StatusConflict || !strings.Contains(page, "is not fetched from a service") {
		t.Error(status, page)
	}
	if strings.Contains(a.page(a.token("Dora", "teach-1"), "/groups/turning-1"), "/list\"") {
		t.Error("the list of a file is to be fetched")
	}
}

// Marks go to the book of grades from a room's page; who is on no list is left out by name, what the
// book refuses is told of each, and a sending that broke off is sent again. It is noted each time.
func TestSendMarks(t *testing.T) {
	c := newCampus(t)
	n := c.node(t)
	teacher := n.token("Cato", "teach-1")
	code := n.room(teacher, "turning-1")
	n.phone(code, "Ada Brook")
	n.phone(code, "Zed", "visitor", "yes")
	room := "/groups/turning-1/rooms/" + code
	has(t, n.page(teacher, room), `action="`+room+`/send/0"`, "Send to the book of grades")
	send := func(want int, texts ...string) {
		t.Helper()
		status, page, _ := n.ask(teacher, room+"/send/0", url.Values{})
		if status != want {
			t.Error(status)
		}
		has(t, page, texts...)
	}
	send(http.StatusOK, "Marks in the book: 2", "on no class list", "<li>Zed</li>")
	book := c.service.Book()
	send(http.StatusOK, "Marks in the book: 2")
	if again := c.service.Book(); len(again) != len(book) || len(book) != 4 {
		t.Error("sent twice, it is twice in the book: ", again)
	}
	c.service.Class("17", onerostertest.Student{ID: "a1", Given: "Ada", Family: "Brook"})
	send(http.StatusOK, "Marks in the book: 1", "Marks that the book refused", "Ben Carr: the OneRoster service says 404 unknownobject", "Send it again")
	c.service.Fail(func(r *http.Request) onerostertest.Failure {
		if strings.Contains(r.URL.Path, "/results/") {
			return onerostertest.Failure{Status: 429, Retry: "999"}
		}
		return onerostertest.Failure{}
	})
	send(http.StatusBadGateway, "Not sent yet: 2. It broke off: the OneRoster service says 429", "Send it again in a while")
	c.service.Fail(nil)
	for _, path := range []string{room + "/send/7", room + "/send/x", "/groups/turning-1/rooms/ACDEFH/send/0"} {
		if status, _, _ := n.ask(teacher, path, url.Values{}); status != http.StatusNotFound {
			t.Error(path, status)
		}
	}
	entries, err := n.audit.Before(t.Context(), 0, 10)
	notes := 0
	for _, e := range entries {
		if e.Did == school.GaveOut && e.About == code && e.Name == "Cato" {
			notes++
		}
	}
	if err != nil || notes != 4 {
		t.Error(entries, err)
	}
	if len(n.sent) != 4 || n.sent[3].Broke == nil {
		t.Error(n.sent)
	}
}

// What is counted of lists and marks names no group and nobody.
func TestCountsLists(t *testing.T) {
	r := served.NewRunning(func() int { return 0 })
	r.Fetched(oneroster.Fetched{Group: "turning-1", People: 28})
	r.Fetched(oneroster.Fetched{Group: "turning-1", Err: oneroster.ErrAway})
	r.Sent(oneroster.Sent{Taken: 27, Unsent: 2, Refused: []oneroster.Refused{{Name: "Ada"}}, Broke: oneroster.ErrAway})
	w := httptest.NewRecorder()
	r.Handler().ServeHTTP(w, httptest.NewRequest(http.MethodGet, "/metrics", nil))
	has(t, w.Body.String(), `scratchpass_lists_fetched_total{how="well"} 1`, `scratchpass_lists_fetched_total{how="failed"} 1`,
		`scratchpass_marks_sent_total{how="taken"} 27`, `scratchpass_marks_sent_total{how="refused"} 1`, `scratchpass_marks_sent_total{how="unsent"} 2`)
	if strings.Contains(w.Body.String(), "Ada") || strings.Contains(w.Body.String(), "turning") {
		t.Error(w.Body.String())
	}
}

// A room has the hour and the day that the clock on the wall had, on pages and in what is given out: of
// an evening in another part of the world, in Greenwich it is another day.
func TestTimesAreThoseOfThePlace(t *testing.T) {
	before := time.Local
	t.Cleanup(func() { time.Local = before })
	off := 12 * time.Hour
	if time.Now().UTC().Hour() < 12 {
		off = -off
	}
	time.Local = time.FixedZone("there", int(off/time.Second))
	c := newCampus(t)
	n := c.node(t)
	teacher := n.token("Cato", "teach-1")
	day := time.Now().Format(time.DateOnly)
	code := n.room(teacher, "turning-1")
	n.sends(teacher, "/groups/turning-1/rooms", "do", "keep", "blueprint", "set: s\ntitle: S\nunits: in\nslots:\n- {tasks: [compound-travel]}\n")
	has(t, n.page(teacher, "/groups/turning-1"), `<span class="aside when">`+day, "kept by Cato, "+day)
	room := "/groups/turning-1/rooms/" + code
	has(t, n.page(teacher, room), `<p class="aside">`+day)
	has(t, n.page(teacher, room+"/results/0"), ","+day+",")
	if status, page, _ := n.ask(teacher, room+"/send/0", url.Values{}); status != http.StatusOK {
		t.Fatal(status, page)
	}
	scores := 0
	for path, text := range c.service.Book() {
		if strings.Contains(path, "results") {
			has(t, string(text), `"scoreDate":"`+day+`"`)
			scores++
		}
	}
	if scores != 2 {
		t.Error(c.service.Book())
	}
}
