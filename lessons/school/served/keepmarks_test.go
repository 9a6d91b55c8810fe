package served_test

import (
	"context"
	"encoding/json"
	"fmt"
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"sync"
	"testing"
	"time"

	"scratchpass/lessons/school"
	"scratchpass/quiz/problem"
)

// keepsMarks has a node keep what came of rooms in which nothing has happened for a while.
func keepsMarks(t *testing.T, n *node) {
	t.Helper()
	if _, err := n.db.ExecContext(t.Context(), "UPDATE events SET at_ms = at_ms - 120000"); err != nil {
		t.Fatal(err)
	}
	tick := make(chan time.Time)
	ctx, stop := context.WithCancel(t.Context())
	var keeping sync.WaitGroup
	keeping.Go(func() { n.server.KeepMarks(ctx, tick) })
	tick <- time.Now()
	tick <- time.Now() // it takes the second once it is done with the first
	stop()
	keeping.Wait()
}

// otherDraws makes a room one that a program began which draws other numbers.
func otherDraws(t *testing.T, n *node, code string) {
	t.Helper()
	var text string
	if err := n.db.QueryRowContext(t.Context(), "SELECT head FROM rooms WHERE code = $1", code).Scan(&text); err != nil {
		t.Fatal(err)
	}
	var head map[string]any
	if err := json.Unmarshal([]byte(text), &head); err != nil {
		t.Fatal(err)
	}
	head["draws"] = problem.Draws - 1
	changed, err := json.Marshal(head)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := n.db.ExecContext(t.Context(), "UPDATE rooms SET head = $2 WHERE code = $1", code, string(changed)); err != nil {
		t.Fatal(err)
	}
}

// What came of a room is kept a while after the last thing that happened in it, and again when it goes
// on. A later version of the program, which draws other numbers, gives out the very same.
func TestMarksAreKept(t *testing.T) {
	c := newCampus(t)
	n := c.node(t)
	teacher := n.token("Cato", "teach-1")
	code := n.room(teacher, "turning-1")
	ada := n.phone(code, "Ada Brook")
	group := "/groups/turning-1"
	marks := school.Marks{DB: n.db}
	if _, err := marks.Of(t.Context(), code); err != school.ErrNoMarks {
		t.Error(err)
	}
	keepsMarks(t, n)
	has(t, n.page(teacher, group), "People: 1")
	if strings.Contains(n.page(teacher, group), "· ended") {
		t.Error("it has not ended")
	}
	if behind, err := marks.Behind(t.Context(), school.Wanted{Groups: []string{"turning-1"}, Draws: problem.Draws, Before: time.Now(), Most: 9}); len(behind) != 0 || err != nil {
		t.Error(behind, err)
	}
	n.sends(teacher, "/desk/"+code+"/do", "do", "next")
	status, page := ada.do(n, http.MethodPost, "/r/"+code+"/answer", url.Values{"set": {"0"}, "place": {"0"}, "answer": {"0.05"}})
	if status >= http.StatusBadRequest {
		t.Fatal(status, page)
	}
	n.sends(teacher, "/desk/"+code+"/do", "do", "end", "sure", "yes")
	keepsMarks(t, n)
	has(t, n.page(teacher, group), "People: 1", "· ended")
	room := group + "/rooms/" + code
	files := map[string]string{room: "", room + "/results/0": "", room + "/grades/0": ""}
	for path := range files {
		files[path] = n.page(teacher, path)
	}
	otherDraws(t, n, code)
	later := c.node(t)
	for path, want := range files {
		if got := later.page(teacher, path); strings.Contains(path, "/0") && got != want {
			t.Errorf("%s: %s, and it was %s", path, got, want)
		}
	}
	has(t, later.page(teacher, group), "People: 1", "· ended")
	keepsMarks(t, later) // and what it can't work out it leaves alone
	if got := later.page(teacher, room+"/grades/0"); got != files[room+"/grades/0"] {
		t.Error(got)
	}
	if status, _, _ := later.ask(later.token("Other", "teach-2"), "/groups/turning-2/rooms/"+code, nil); status != http.StatusNotFound {
		t.Error("another group gives it out: ", status)
	}
}

// To keep what came of rooms, a node opens none of them: of all rooms of many years it would hold too many.
func TestKeepingMarksOpensNoRoom(t *testing.T) {
	c := newCampus(t)
	n, later := c.node(t), c.node(t)
	code := n.room(n.token("Cato", "teach-1"), "turning-1")
	n.phone(code, "Ada Brook")
	keepsMarks(t, later)
	if came, err := (school.Marks{DB: n.db}).Of(t.Context(), code); came.Came != 1 || err != nil {
		t.Error(came, err)
	}
	if open := later.hall.Opened(); open != 0 {
		t.Errorf("%d rooms are open", open)
	}
}

// A room that another version of the program began goes on at that one, with its own scripts; where it
// does not run, people are told what has to be done.
func TestRoomOfAnEarlierVersion(t *testing.T) {
	c := newCampus(t)
	n := c.node(t)
	teacher := n.token("Cato", "teach-1")
	code, stays := n.room(teacher, "turning-1"), n.room(teacher, "turning-1")
	otherDraws(t, n, code)
	alone := c.node(t)
	for _, path := range []string{"/r/" + code, "/desk/" + code, "/wall/" + code} {
		if status, page, _ := alone.ask(teacher, path, nil); status != http.StatusServiceUnavailable || !strings.Contains(page, "An earlier version") {
			t.Error(path, status, page)
		}
	}
	if status, _, _ := alone.ask(teacher, "/groups/turning-1/rooms/"+code, nil); status != http.StatusServiceUnavailable {
		t.Error("nothing was kept, and it gives: ", status)
	}
	c.earlier = http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		w.Header().Set("Content-Security-Policy", "its own")
		fmt.Fprint(w, "earlier ", r.Method, " ", r.URL.RequestURI())
	})
	both := c.node(t)
	for _, path := range []string{"/r/" + code, "/r/" + strings.ToLower(code) + "/events", "/desk/" + code + "/part", "/static/room.js?v=another"} {
		status, page, head := both.ask(teacher, path, nil)
		if status != http.StatusOK || page != "earlier GET "+path || len(head.Values("Content-Security-Policy")) != 1 || head.Get("Content-Security-Policy") != "its own" {
			t.Error(path, status, page, head)
		}
	}
	page := both.page(teacher, "/r/"+stays)
	has(t, page, "/static/room.js?v=")
	if strings.HasPrefix(page, "earlier") {
		t.Error("a room of this version went to the earlier one")
	}
	script := page[strings.Index(page, "/static/room.js?v="):]
	script = script[:strings.Index(script, `"`)]
	if status, text, _ := both.ask("", script, nil); status != http.StatusOK || strings.HasPrefix(text, "earlier") {
		t.Error("its script went to the earlier one: ", status)
	}
	r := httptest.NewRequest(http.MethodGet, "https://"+host+"/static/room.js", nil) // of a page that was kept from before
	w := httptest.NewRecorder()
	both.handler.ServeHTTP(w, r)
	if w.Code != http.StatusOK || strings.HasPrefix(w.Body.String(), "earlier") {
		t.Error(w.Code)
	}
}

// A node that stops ends the streams that it passes on from an earlier version, as it ends its own: else
// it would wait for them, and end with an error.
func TestStreamOfAnEarlierVersionEnds(t *testing.T) {
	begun, ended := make(chan struct{}), make(chan struct{})
	t.Run("a node stops", func(t *testing.T) {
		c := newCampus(t)
		n := c.node(t)
		code := n.room(n.token("Cato", "teach-1"), "turning-1")
		otherDraws(t, n, code)
		c.earlier = http.HandlerFunc(func(_ http.ResponseWriter, r *http.Request) {
			close(begun)
			<-r.Context().Done()
			close(ended)
		})
		both := c.node(t)
		go both.handler.ServeHTTP(httptest.NewRecorder(), httptest.NewRequest(http.MethodGet, "https://"+host+"/r/"+code+"/events", nil))
		<-begun
	})
	select {
	case <-ended:
	case <-time.After(10 * time.Second):
		t.Error("the stream goes on")
	}
}
