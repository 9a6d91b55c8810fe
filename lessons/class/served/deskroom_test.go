package served

import (
	"context"
	"fmt"
	"io"
	"net/http"
	"net/http/httptest"
	"net/url"
	"path/filepath"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"scratchpass/content"
	"scratchpass/lessons/class"
	"scratchpass/lessons/class/journal"
	"scratchpass/lessons/face/web"
	"scratchpass/lessons/internal/scripted"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/set"
)

// deskBlueprint has questions of all kinds, and asks how sure someone is.
const deskBlueprint = `set: first-thread
title: Before your first thread
units: in
sure: true
rules: {feedback: %s}
slots:
- {name: travel, tasks: [compound-travel]}
- {tasks: [infeed-left], takes: {total: travel}}
- {tasks: [dial-past-a-turn]}
- {tasks: [thread-dial-line], level: 2}
- {tasks: [when-to-leave-compound]}
- {tasks: [no-cloth-on-turning-work]}
- {tasks: [one-full-pass]}
- {tasks: [ready-to-start, withdraw-inside, missed-the-line], count: 3}
`

// deskNames are those on the class list.
var deskNames = []string{"Ada Brink", "Ben Corrie", "Cato Dahl", "Dilys Ennis", "Emeka Faro", "Freya Gunn", "Goran Hlavac", "Hana Ito", "Idris Jory", "Jana Kestrel", "Kofi Lunde", "Łucja Moor",
	"Mina Noble", "Nils Orme", "Oona Pryce", "Piet Quill", "Quin Rask", "Rosa Silt", "Søren Tarn", "Tove Ulm", "Ugo Vance", "Vera Wick", "Wim Yarrow", "Zoë Zander"}

// deskRoom is a room that is served, with its instructor.
type deskRoom struct {
	t      *testing.T
	server *Server
	live   *class.Live
	url    string
	key    string
	client *http.Client // the instructor's browser; follows no redirect
	after  *atomic.Int64
}

const deskKey = "the-instructor's-key"

func newDeskRoom(t *testing.T, feedback string, way class.Way, people int) *deskRoom {
	t.Helper()
	return newDeskRoomOf(t, fmt.Sprintf(deskBlueprint, feedback), way, people)
}

func newDeskRoomOf(t *testing.T, blueprint string, way class.Way, people int) *deskRoom {
	t.Helper()
	s, err := sitting.NewSession(&scripted.Face{}, content.Shipped(), machine.Imperial, machine.InchLathe, nil)
	if err != nil {
		t.Fatal(err)
	}
	j, err := journal.Open(filepath.Join(t.TempDir(), "lesson.class"))
	if err != nil {
		t.Fatal(err)
	}
	r := &deskRoom{t: t, key: deskKey, after: &atomic.Int64{}}
	begin := time.Date(2026, 11, 26, 9, 0, 0, 0, time.UTC)
	clock := func() time.Time { return begin.Add(time.Duration(r.after.Add(int64(time.Millisecond)))) }
	hall := class.NewHall(j, func(class.Head) class.Maker {
		return class.MakerOf(set.Secret("a secret that stands in a test"), s.Library, s.Tasks, func(string) (machine.Lathe, error) { return machine.InchLathe, nil })
	}, clock, func(err error) { t.Error(err) })
	head := class.Head{Code: "ACDEFH", Title: "Before your first thread", Key: deskKey}
	for i, name := range deskNames[:people] {
		head.Roster = append(head.Roster, class.Apprentice{ID: fmt.Sprint("p", i), Name: name})
	}
	if r.live, err = hall.Begin(context.Background(), head, blueprint, way); err != nil {
		t.Fatal(err)
	}
	web_ := httptest.NewUnstartedServer(nil)
	host := web_.Listener.Addr().String()
	r.server = New(hall, Options{Hosts: []string{host}, Words: web.WordsOf(s.Say), Session: s, Clock: clock, Address: host, Fail: func(err error) { t.Error(err) }})
	web_.Config.Handler = r.server.Handler()
	web_.Start()
	t.Cleanup(func() { r.server.Stop(); web_.Close(); _ = j.Close() })
	r.url, r.client = web_.URL, &http.Client{CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }}
	return r
}

func (r *deskRoom) event(e class.Event) {
	r.t.Helper()
	if err := r.live.Do(context.Background(), e); err != nil {
		r.t.Fatal(err)
	}
}

// come lets people of the class list in.
func (r *deskRoom) come(from, to int) {
	r.t.Helper()
	for i := from; i < to; i++ {
		r.event(class.Event{Kind: class.Joined, Who: fmt.Sprint("p", i), Text: fmt.Sprint("phone ", i)})
		r.server.presence.heard(fmt.Sprint("phone ", i), r.server.o.Clock())
	}
}

// answers answers a question for someone: with the key, or the error-th common error, or with
// something that nobody knows.
func (r *deskRoom) answers(who, place, way int, sure answer.Certainty) {
	r.t.Helper()
	e := class.Event{Kind: class.Answered, Who: fmt.Sprint("p", who), Place: place, Certainty: sure}
	r.live.See(func(room *class.Room) {
		e.Set = room.Now
		it, err := room.Asking().Item(e.Who, place)
		if err != nil {
			r.t.Fatal(err)
		}
		known := it.Problem.Expected.Errors
		switch {
		case way == 0:
			e.Text = it.Words.KeyNumber(it.Problem)
		case way < 0 && it.Problem.Task.Kind.Guessable():
			e.Text = "1"
		case way < 0:
			e.Text = "7.77"
		case len(known) > 0:
			e.Text = it.Words.Numbered(it.Problem, known[(way-1)%len(known)].Response)
		default:
			e.Text = fmt.Sprint(way)
		}
	})
	r.event(e)
}

// page fetches one of the instructor's pages.
func (r *deskRoom) page(path string) (status int, body string) {
	r.t.Helper()
	return r.send("GET", path, nil, "desk-ACDEFH="+r.key)
}

// do does something as the instructor, by a form.
func (r *deskRoom) do(form ...string) (status int, body string) {
	r.t.Helper()
	values := url.Values{}
	for i := 0; i < len(form); i += 2 {
		values.Set(form[i], form[i+1])
	}
	return r.send("POST", "/desk/ACDEFH/do", values, "desk-ACDEFH="+r.key)
}

func (r *deskRoom) send(method, path string, form url.Values, cookie string) (status int, body string) {
	r.t.Helper()
	q, err := http.NewRequestWithContext(r.t.Context(), method, r.url+path, strings.NewReader(form.Encode()))
	if err != nil {
		r.t.Fatal(err)
	}
	if form != nil {
		q.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	}
	q.Header.Set("Cookie", cookie)
	a, err := r.client.Do(q)
	if err != nil {
		r.t.Fatal(err)
	}
	defer a.Body.Close()
	text, err := io.ReadAll(a.Body)
	if err != nil {
		r.t.Fatal(err)
	}
	return a.StatusCode, string(text)
}

// deskState is a room in a state that its pages are looked at in.
type deskState struct {
	name string
	dark bool // looked at in the dark, too; all states are when pictures are made
	make func(t *testing.T) *deskRoom
}

// lesson is a class of 24 in the middle of a lesson, all together.
func deskLesson(t *testing.T, feedback string) *deskRoom {
	r := newDeskRoom(t, feedback, class.Together, 24)
	r.come(0, 23)
	for place := range 6 {
		r.event(class.Event{Kind: class.Opened, Place: place})
		for who := range 22 - place%3 {
			sure, way := answer.Fairly, 0
			switch (who*7 + place*5) % 11 {
			case 1, 2:
				way = 1
			case 3:
				way = 2
			case 4:
				way = -1
			}
			if place == 5 && who == 4 {
				way, sure = 1, answer.Bet
			}
			if who%5 == 2 && place > 3 && way == 0 {
				continue
			}
			r.answers(who, place, way, sure)
		}
		if place < 5 {
			r.event(class.Event{Kind: class.Locked})
			r.event(class.Event{Kind: class.Showed, Place: place, N: 1})
		}
	}
	return r
}

// deskTroubled is that class with all that someone can need an instructor for.
func deskTroubled(t *testing.T) *deskRoom {
	r := deskLesson(t, "end")
	r.server.o.Further = []Further{{"Five questions on dials", "set: dials", class.Ticket}}
	r.event(class.Event{Kind: class.Called, Who: "p9"})
	r.event(class.Event{Kind: class.Joined, Who: "p3", Text: "another phone"})
	r.event(class.Event{Kind: class.Joined, Who: "visitor-a", Text: "phone v", Name: "Zoe from the tool room"})
	r.event(class.Event{Kind: class.Longer, Who: "p6", N: 10})
	r.event(class.Event{Kind: class.Hinted, Who: "p12", Place: 5})
	r.after.Add(int64(40 * time.Second))
	r.answers(17, 4, 0, answer.Fairly) // after it was closed
	r.event(class.Event{Kind: class.Answered, Who: "p7", Place: 5, Text: "abc, I think"})
	r.after.Add(int64(5 * time.Minute))
	for i := range 14 {
		r.server.presence.heard(fmt.Sprint("phone ", i), r.server.o.Clock())
	}
	return r
}

// step goes on so many steps.
func (r *deskRoom) step(n int) *deskRoom {
	r.t.Helper()
	for range n {
		if status, body := r.do("do", "next"); status != http.StatusSeeOther {
			r.t.Fatal(status, body)
		}
	}
	return r
}

// ownPace is a class at their own pace, or at the end of a lesson.
func deskOwnPace(t *testing.T, way class.Way) *deskRoom {
	r := newDeskRoom(t, "end", way, 24)
	r.come(0, 24)
	r.do("do", "until", "n", "20")
	for who := range 24 {
		for place := range who % 11 {
			r.answers(who, place, (who+place)%4-1, answer.Fairly)
		}
	}
	for i, text := range []string{"why not start the pass at any mark", "the second infeed", "which way the dial goes when I back off"} {
		if way == class.Ticket {
			r.event(class.Event{Kind: class.Unclear, Who: fmt.Sprint("p", i*4), Text: text})
		}
	}
	return r
}

var deskStates = []deskState{
	{"empty", false, func(t *testing.T) *deskRoom { return newDeskRoom(t, "end", class.Together, 24) }},
	{"troubled", true, deskTroubled},
	{"closed", false, func(t *testing.T) *deskRoom { return deskLesson(t, "end").step(1) }},
	{"came", true, func(t *testing.T) *deskRoom { return deskLesson(t, "end").step(2) }},
	{"worked", true, func(t *testing.T) *deskRoom {
		r := deskLesson(t, "end")
		r.do("do", "look", "place", "0")
		return r.step(4)
	}},
	{"numbers", false, func(t *testing.T) *deskRoom {
		r := deskLesson(t, "end")
		r.do("do", "look", "place", "0")
		return r
	}},
	{"question", false, func(t *testing.T) *deskRoom {
		r := newDeskRoom(t, "end", class.Together, 24)
		r.come(0, 24)
		return r.step(1)
	}},
	{"order", false, func(t *testing.T) *deskRoom { return deskLesson(t, "end").step(4) }},
	{"own-pace", false, func(t *testing.T) *deskRoom { return deskOwnPace(t, class.OwnPace) }},
	{"ticket", true, func(t *testing.T) *deskRoom { return deskOwnPace(t, class.Ticket) }},
	{"sets", false, func(t *testing.T) *deskRoom {
		r := deskLesson(t, "end")
		r.do("do", "again", "place", "0")
		return r
	}},
	{"paused", false, func(t *testing.T) *deskRoom {
		r := deskLesson(t, "end")
		r.do("do", "pause")
		return r
	}},
	{"ended", false, func(t *testing.T) *deskRoom {
		r := deskLesson(t, "end")
		r.do("do", "end", "sure", "yes")
		return r
	}},
}
