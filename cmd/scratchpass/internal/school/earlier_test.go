package school

import (
	"bufio"
	"bytes"
	"context"
	"fmt"
	"io"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"

	"scratchpass/lessons/postgres"
	"scratchpass/lessons/postgres/postgrestest"
	"scratchpass/lessons/school"
	"scratchpass/quiz/problem"
)

// Requests go on as they came: under the name that browsers know, with what was sent, and with where
// they came from as a proxy before has said it, or else as it is seen here. What comes back a piece at a
// time comes on so.
func TestEarlier(t *testing.T) {
	told := make(chan struct{})
	old := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.URL.Path == "/r/ACDEFH/events" {
			w.Header().Set("Content-Type", "text/event-stream")
			fmt.Fprint(w, "data: 1\n\n")
			_ = http.NewResponseController(w).Flush()
			<-told // until the first piece has arrived
			return
		}
		body, _ := io.ReadAll(r.Body)
		fmt.Fprint(w, r.Method, " ", r.URL.RequestURI(), " ", r.Host, " ", r.Header["X-Forwarded-For"], " ", string(body))
	}))
	defer old.Close()
	for _, row := range []struct {
		name   string
		behind bool
		said   []string
		want   string
	}{
		{"behind a proxy", true, []string{"1.2.3.4, 10.0.0.7"}, "[1.2.3.4, 10.0.0.7]"},
		{"behind one that says nothing", true, nil, "[192.0.2.1]"},
		{"open to all, who may say what they like", false, []string{"1.2.3.4"}, "[192.0.2.1]"},
	} {
		r := httptest.NewRequest(http.MethodPost, "https://threads.example.school/r/ACDEFH/answer?at=1", strings.NewReader("answer=0.05"))
		if row.said != nil {
			r.Header["X-Forwarded-For"] = row.said
		}
		w := httptest.NewRecorder()
		earlier(old.URL, row.behind, func(err error) { t.Error(err) }).ServeHTTP(w, r)
		if want := "POST /r/ACDEFH/answer?at=1 threads.example.school " + row.want + " answer=0.05"; w.Body.String() != want {
			t.Errorf("%s: %s, want %s", row.name, w.Body, want)
		}
	}
	between := httptest.NewServer(earlier(old.URL, false, func(err error) { t.Error(err) }))
	defer between.Close()
	got, err := http.Get(between.URL + "/r/ACDEFH/events")
	if err != nil {
		t.Fatal(err)
	}
	line, err := bufio.NewReader(got.Body).ReadString('\n')
	close(told)
	got.Body.Close()
	if line != "data: 1\n" || err != nil {
		t.Error(line, err)
	}
}

// One that does not run is told of, and the browser may try again.
func TestEarlierIsAway(t *testing.T) {
	gone := httptest.NewServer(http.NotFoundHandler())
	gone.Close()
	var why error
	w := httptest.NewRecorder()
	earlier(gone.URL, false, func(err error) { why = err }).ServeHTTP(w, httptest.NewRequest(http.MethodGet, "/r/ACDEFH", nil))
	if w.Code != http.StatusBadGateway || w.Header().Get("Retry-After") == "" || why == nil {
		t.Error(w.Code, w.Header(), why)
	}
	left, leave := context.WithCancel(t.Context())
	leave()
	earlier(gone.URL, false, func(err error) { t.Error("told of a phone that has gone: ", err) }).
		ServeHTTP(httptest.NewRecorder(), httptest.NewRequest(http.MethodGet, "/r/ACDEFH", nil).WithContext(left))
	if earlier("", false, nil) != nil {
		t.Error("there is one where none was named")
	}
	for _, address := range []string{"127.0.0.1:8461", "ftp://127.0.0.1", "http://", "http://a/b", "http://me@a", "http://a?b"} {
		if _, err := earlierAt(address); err == nil || !strings.Contains(err.Error(), fmt.Sprintf("%q", address)) {
			t.Errorf("%s: %v", address, err)
		}
	}
}

// Rooms that an earlier version began and that have not ended are told of; what came of those of this
// version is not read, however many years of them there are.
func TestTellOpen(t *testing.T) {
	db, err := postgres.Open(t.Context(), postgrestest.Address(t))
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	for code, room := range map[string]struct {
		group string
		draws int
		came  string
	}{
		"OPEN": {"g", problem.Draws - 1, `{"ended": false, "came": 2}`}, "ENDED": {"g", problem.Draws - 1, `{"ended": true, "came": 2}`},
		"ELSE": {"of no settings", problem.Draws - 1, "not read"}, "OURS": {"g", problem.Draws, "not read"},
	} {
		head := fmt.Sprintf(`{"code": %q, "group": %q, "draws": %d}`, code, room.group, room.draws)
		if _, err := db.ExecContext(t.Context(), "INSERT INTO rooms (code, began_ms, head, of_group) VALUES ($1, 1, $2, $3)", code, head, room.group); err != nil {
			t.Fatal(err)
		}
		if _, err := db.ExecContext(t.Context(), "INSERT INTO marks (room, seq, came) VALUES ($1, 1, $2)", code, room.came); err != nil {
			t.Fatal(err)
		}
	}
	var out bytes.Buffer
	err = tellOpen(t.Context(), school.Settings{Departments: []school.Department{{Groups: []school.Group{{Name: "g"}}}}}, db, &out)
	if err != nil || !strings.Contains(out.String(), "have not ended: 1 (OPEN)") {
		t.Error(err, out.String())
	}
}
