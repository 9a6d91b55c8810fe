package served

import (
	"fmt"
	"net/http"
	"net/url"
	"regexp"
	"slices"
	"strings"
	"testing"

	"scratchpass/lessons/class"
)

// Nothing of the instructor's is reached without the key, by any path or method, with a wrong
// key or that of another room; the key is seen in the address once.
func TestDeskNeedsTheKey(t *testing.T) {
	r := newDeskRoom(t, "end", class.Together, 3)
	for pattern := range r.server.deskPaths() {
		method, path, _ := strings.Cut(pattern, " ")
		path = strings.NewReplacer("{code}", "ACDEFH", "{id}", "p0", "{n}", "0").Replace(path)
		for _, method := range []string{method, "GET", "HEAD", "POST", "PUT", "DELETE", "PATCH"} {
			for _, cookie := range []string{"", "desk-ACDEFH=wrong", "desk-ACDEFH=", "desk-OTHER=" + deskKey, "room-ACDEFH=" + deskKey} {
				for _, query := range []string{"", "?key=", "?key=wrong"} {
					r.server.limits = newLimits(false) // guesses are slowed down, which is another test
					status, body := r.send(method, path+query, url.Values{"do": {"end"}, "sure": {"yes"}}, cookie)
					if status != http.StatusForbidden && status != http.StatusMethodNotAllowed || strings.Contains(body, "Ada") {
						t.Errorf("%s %s with %q: %d", method, path+query, cookie, status)
					}
				}
			}
		}
	}
	r.live.See(func(room *class.Room) {
		if room.Ended || room.Seq != 1 {
			t.Error("something was done without the key")
		}
	})
	if status, _ := r.send("GET", "/desk/ACDEFH/do?do=end&sure=yes", nil, "desk-ACDEFH="+deskKey); status != http.StatusMethodNotAllowed {
		t.Error("something is done by GET: ", status)
	}
}

// actCase is something that the instructor does, what comes of it in the room, or with what
// words it is refused.
type actCase struct {
	form  []string
	does  func(*class.Room) bool
	wants string // of a refusal
}

// Every act does what it says, and refuses what can't be meant, in words, on the page.
func TestDeskActs(t *testing.T) {
	q := class.Question{}
	person := func(id string, is func(*class.Person) bool) func(*class.Room) bool {
		return func(r *class.Room) bool { return is(r.Person(id)) }
	}
	set := func(is func(*class.Asking) bool) func(*class.Room) bool {
		return func(r *class.Room) bool { return is(r.Asking()) }
	}
	cases := []actCase{
		{[]string{"do", "back"}, nil, "no step to take"},
		{[]string{"do", "lock"}, nil, "nothing open"},
		{[]string{"do", "next", "from", "0.3.n.0"}, nil, "gone on meanwhile"},
		{[]string{"do", "next", "from", "0.-1.n.0"}, set(func(a *class.Asking) bool { return a.Open == 0 && !a.Locked }), ""},
		{[]string{"do", "lock"}, set(func(a *class.Asking) bool { return a.Locked }), ""},
		{[]string{"do", "unlock"}, nil, "nothing closed"},
		{[]string{"do", "show", "place", "0", "n", "1"}, set(func(a *class.Asking) bool { return a.Shown(0) == 1 }), ""},
		{[]string{"do", "show", "place", "0", "n", "some"}, nil, `show "some"`},
		{[]string{"do", "counts"}, set(func(a *class.Asking) bool { return a.Counted(0) }), ""},
		{[]string{"do", "back"}, set(func(a *class.Asking) bool { return a.Shown(0) == 0 && a.Locked }), ""},
		{[]string{"do", "open", "place", "1"}, set(func(a *class.Asking) bool { return a.Open == 1 && !a.Locked }), ""},
		{[]string{"do", "open", "place", "77"}, nil, `"77"`},
		{[]string{"do", "open", "place", "one"}, nil, `"one"`},
		{[]string{"do", "open", "place", "0", "set", "5"}, nil, `set "5"`},
		{[]string{"do", "look", "place", "0"}, set(func(a *class.Asking) bool { return a.Open == 0 && a.Locked }), ""},
		{[]string{"do", "way", "way", "sideways"}, nil, `"sideways"`},
		{[]string{"do", "way", "way", "own-pace"}, set(func(a *class.Asking) bool { return a.Way == class.OwnPace }), ""},
		{[]string{"do", "open", "place", "0"}, nil, "all go together"},
		{[]string{"do", "until", "n", "20"}, set(func(a *class.Asking) bool { return !a.Until.IsZero() }), ""},
		{[]string{"do", "until", "n", "0"}, nil, `"0" minutes`},
		{[]string{"do", "until", "n", "601"}, nil, `"601" minutes`},
		{[]string{"do", "until", "n", "soon"}, nil, `"soon" minutes`},
		{[]string{"do", "endless"}, set(func(a *class.Asking) bool { return a.Until.IsZero() }), ""},
		{[]string{"do", "lock", "sure", "yes"}, set(func(a *class.Asking) bool { return a.Locked && a.Told(3) }), ""},
		{[]string{"do", "lock"}, nil, "nothing open"},
		{[]string{"do", "unlock"}, nil, "what came was told"},
		{[]string{"do", "start", "n", "1"}, nil, `further set "1"`},
		{[]string{"do", "start", "n", "0", "way", "sideways"}, nil, `"sideways"`},
		{[]string{"do", "start", "n", "0", "way", "own-pace"}, set(func(a *class.Asking) bool { return a.Way == class.OwnPace && a.Never() && a.Places() == 10 }), ""},
		{[]string{"do", "start", "n", "0"}, nil, "asked already"},
		{[]string{"do", "lock"}, set(func(a *class.Asking) bool { return a.Locked }), ""}, // it tells nothing, so nothing is asked first
		{[]string{"do", "unlock"}, set(func(a *class.Asking) bool { return !a.Locked }), ""},
		{[]string{"do", "turn", "set", "0"}, func(r *class.Room) bool { return r.Now == 0 && len(r.Sets) == 2 }, ""},
		{[]string{"do", "pause"}, func(r *class.Room) bool { return r.Paused }, ""},
		{[]string{"do", "resume"}, func(r *class.Room) bool { return !r.Paused }, ""},
		{[]string{"do", "shut"}, func(r *class.Room) bool { return r.Shut }, ""},
		{[]string{"do", "unshut"}, func(r *class.Room) bool { return !r.Shut }, ""},
		{[]string{"do", "longer", "who", "p0", "n", "10"}, person("p0", func(p *class.Person) bool { return p.Extra.Minutes() == 10 }), ""},
		{[]string{"do", "longer", "who", "p0", "n", "-1"}, nil, `"-1" minutes`},
		{[]string{"do", "longer", "who", "nobody", "n", "1"}, nil, `"nobody"`},
		{[]string{"do", "let", "who", "p1", "device", "a stranger's"}, nil, "no such phone"},
		{[]string{"do", "refuse", "who", "p1", "device", "second"}, person("p1", func(p *class.Person) bool { return len(p.Claims) == 1 }), ""},
		{[]string{"do", "let", "who", "p1", "device", "third"}, person("p1", func(p *class.Person) bool { return p.Device == "third" }), ""},
		{[]string{"do", "rename", "who", "p0", "name", "Ada B."}, person("p0", func(p *class.Person) bool { return p.Name == "Ada B." }), ""},
		{[]string{"do", "rename", "who", "p0", "name", "ben  corrie"}, nil, `"ben corrie"`},
		{[]string{"do", "rename", "who", "p0", "name", " "}, nil, "name \"\""},
		{[]string{"do", "seen", "who", "p0"}, person("p0", func(p *class.Person) bool { return !p.Calls }), ""},
		{[]string{"do", "count", "who", "p2", "place", "0"}, person("p2", func(p *class.Person) bool { return !p.Answers[q].Late }), ""},
		{[]string{"do", "count", "who", "p2", "place", "0"}, nil, "no late answer to question 1"},
		{[]string{"do", "merge", "who", "p0", "with", "p1", "sure", "yes"}, nil, "only a visitor"},
		{[]string{"do", "merge", "who", "visitor-a", "with", "nobody", "sure", "yes"}, nil, `"nobody"`},
		{[]string{"do", "merge", "who", "visitor-a", "with", "visitor-b", "sure", "yes"}, nil, "is a visitor"},
		{[]string{"do", "merge", "who", "visitor-a", "with", "p2", "sure", "yes"}, person("visitor-a", func(p *class.Person) bool { return p.ID == "p2" }), ""},
		{[]string{"do", "remove", "who", "p2", "sure", "yes"}, person("p2", func(p *class.Person) bool { return p.Removed }), ""},
		{[]string{"do", "ask", "task", "single-depth", "level", "2"}, set(func(a *class.Asking) bool { return a.Places() == 1 && a.Open == 0 && a.Way == class.Together }), ""},
		{[]string{"do", "ask", "task", "singel-depth", "level", "2"}, nil, `"singel-depth"`},
		{[]string{"do", "ask", "task", "", "level", "2"}, nil, "no task was given"},
		{[]string{"do", "ask", "task", "single-depth", "level", "many"}, nil, "level 0"},
		{[]string{"do", "again", "set", "0", "place", "3"}, func(r *class.Room) bool { return len(r.Sets) == 4 && r.Now == 3 }, ""},
		{[]string{"do", "again", "set", "0", "place", "30"}, nil, `"30"`},
		{[]string{"do", "turn", "set", "0"}, func(r *class.Room) bool { return r.Now == 0 && len(r.Sets) == 4 }, ""},
		{[]string{"do", "turn", "set", "4"}, nil, `set "4"`},
		{[]string{"do", "leave"}, nil, "no bench round"},
		{[]string{"do", "bench", "job", "adjusting-screw", "pass", "3"}, func(r *class.Room) bool { return len(r.Rounds) == 1 }, ""},
		{[]string{"do", "leave", "sure", "yes"}, func(r *class.Room) bool { at, _ := r.Round(); return at == nil && r.Rounds[0].Closed }, ""},
		{[]string{"do", "merge", "who", "visitor-b", "with", "", "sure", "yes"}, nil, "nobody was chosen"},
		{[]string{"do", "end", "sure", "yes"}, func(r *class.Room) bool { return r.Ended }, ""},
		{[]string{"do", "reopen"}, func(r *class.Room) bool { return !r.Ended }, ""},
		{[]string{"do", "dance"}, nil, `"dance"`},
		{[]string{}, nil, `""`},
	}
	r := newDeskRoom(t, "end", class.Together, 3)
	r.server.o.Further = []Further{{"At the end", strings.Replace(fmt.Sprintf(deskBlueprint, "never"), "first-thread", "second", 1), class.Ticket}}
	r.come(0, 3)
	r.answers(2, 0, 0, "") // before it was opened
	for _, e := range []class.Event{{Kind: class.Called, Who: "p0"}, {Kind: class.Joined, Who: "p1", Text: "second"}, {Kind: class.Joined, Who: "p1", Text: "third"},
		{Kind: class.Joined, Who: "visitor-a", Text: "v", Name: "Zoe"}, {Kind: class.Joined, Who: "visitor-b", Text: "w", Name: "Yan"}} {
		r.event(e)
	}
	tried := map[string]bool{}
	for _, c := range cases {
		if len(c.form) > 1 && c.wants == "" {
			tried[c.form[1]] = true
		}
		before := r.seq()
		status, body := r.do(c.form...)
		switch {
		case c.wants != "":
			if said := text(body); status != http.StatusBadRequest || !strings.Contains(said, c.wants) || !strings.Contains(said, "That was not done") || r.seq() != before {
				t.Errorf("%q: %d, and no %q; events %d to %d", c.form, status, c.wants, before, r.seq())
			}
		case status != http.StatusSeeOther:
			t.Errorf("%q: %d %s", c.form, status, body)
		default:
			r.live.See(func(room *class.Room) {
				if !c.does(room) {
					t.Errorf("%q did not do it", c.form)
				}
			})
		}
	}
	for name := range acts {
		if !tried[name] {
			t.Errorf("%s was not tried", name)
		}
	}
}

func (r *deskRoom) seq() (n int64) {
	r.live.See(func(room *class.Room) { n = room.Seq })
	return n
}

// text is what a page says, without its tags.
func text(page string) string {
	page = regexp.MustCompile(`<[^>]*>`).ReplaceAllString(page, "")
	return strings.NewReplacer("&#34;", `"`, "&#39;", "'", "&amp;", "&").Replace(page)
}

// What can't be taken back is asked about once, on a page, and not done before.
func TestDeskAsksOnce(t *testing.T) {
	r := newDeskRoom(t, "end", class.Together, 3)
	r.event(class.Event{Kind: class.Joined, Who: "visitor-a", Text: "v", Name: "Zoe"})
	r.event(class.Event{Kind: class.Ran, Text: "own-pace"})
	for _, c := range []struct {
		form  []string
		wants []string
	}{
		{[]string{"do", "end"}, []string{"End the lesson for all?"}},
		{[]string{"do", "lock"}, []string{"Close these questions for all?", "be opened again"}},
		{[]string{"do", "remove", "who", "p1"}, []string{"Remove Ben Corrie", `value="p1"`}},
		{[]string{"do", "merge", "who", "visitor-a", "with", "p2"}, []string{"visitor Zoe the same person as Cato Dahl", `value="visitor-a"`, `value="p2"`}},
	} {
		before := r.seq()
		status, body := r.do(c.form...)
		for _, want := range append(c.wants, `name="sure" value="yes"`) {
			if status != http.StatusOK || !strings.Contains(body, want) || r.seq() != before {
				t.Errorf("%q: %d, and no %s", c.form, status, want)
			}
		}
	}
	if len(asksFirst) != 6 {
		t.Error("not all are tried")
	}
}

// In every state each page is whole, says nothing that has no words, and shows no button for
// what would be refused at once.
func TestDeskPages(t *testing.T) {
	for _, state := range deskStates {
		t.Run(state.name, func(t *testing.T) {
			r := state.make(t)
			for _, path := range []string{"/desk/ACDEFH", "/desk/ACDEFH/part", "/desk/ACDEFH/person/p4", "/desk/ACDEFH/person/p4/part", "/wall/ACDEFH", "/wall/ACDEFH/part"} {
				status, body := r.page(path)
				if status != http.StatusOK || strings.Contains(body, "${") || strings.Contains(body, "<no value>") || strings.Contains(text(body), "class-") {
					t.Errorf("%s: %d, or words are missing:\n%s", path, status, text(body))
				}
				if strings.HasSuffix(path, "part") == strings.Contains(body, "</html>") {
					t.Error(path, ": a part is a page, or a page a part")
				}
				if strings.HasPrefix(path, "/wall") && slices.ContainsFunc(deskNames, func(name string) bool { return strings.Contains(body, name) }) {
					t.Error("a name is on the wall: ", text(body))
				}
				if strings.Contains(body, deskKey) {
					t.Error(path, ": the key is on the page")
				}
			}
			_, desk := r.page("/desk/ACDEFH")
			for _, b := range regexp.MustCompile(`<button name="do" value="(\w+)"`).FindAllStringSubmatch(desk, -1) {
				if _, ok := acts[b[1]]; !ok && b[1] != "ask" && b[1] != "again" && b[1] != "start" && b[1] != "bench" {
					t.Errorf("a button does %q, which nothing does", b[1])
				}
			}
			for does, refused := range map[string]bool{"pause": strings.Contains(state.name, "paused"), "next": state.name == "ended" || state.name == "paused", "reopen": state.name != "ended", "endless": state.name != "own-pace" && state.name != "ticket"} {
				if refused && strings.Contains(desk, fmt.Sprintf(`value="%s"`, does)) {
					t.Errorf("there is a button for %s", does)
				}
			}
		})
	}
}

// Who has a part already is told so, and is not sent it again.
func TestDeskPartsAreKept(t *testing.T) {
	r := newDeskRoom(t, "end", class.Together, 3)
	fetch := func(tag string) *http.Response {
		q, err := http.NewRequestWithContext(t.Context(), "GET", r.url+"/wall/ACDEFH/part", nil)
		if err != nil {
			t.Fatal(err)
		}
		q.Header.Set("Cookie", "desk-ACDEFH="+deskKey)
		q.Header.Set("If-None-Match", tag)
		a, err := r.client.Do(q)
		if err != nil {
			t.Fatal(err)
		}
		_ = a.Body.Close()
		return a
	}
	first := fetch("")
	r.event(class.Event{Kind: class.Renamed, Who: "p0", Text: "Ada B."}) // nothing that the wall shows
	same := fetch(first.Header.Get("ETag"))
	if same.StatusCode != http.StatusNotModified || same.Header.Get("X-Version") == first.Header.Get("X-Version") {
		t.Error("the same wall was sent again: ", same.StatusCode, same.Header.Get("X-Version"))
	}
	r.do("do", "next")
	if other := fetch(first.Header.Get("ETag")); other.StatusCode != http.StatusOK {
		t.Error("another wall was not sent: ", other.StatusCode)
	}
}

// The wall shows what came of five answers, and of four only how many they are.
func TestTheWallOfFew(t *testing.T) {
	r := newDeskRoom(t, "end", class.Together, 6)
	r.come(0, 6)
	r.step(1)
	for who := range 4 {
		r.answers(who, 0, who%2, "")
	}
	r.step(2)
	few := "What came of each stands on the phones alone."
	if _, wall := r.page("/wall/ACDEFH"); !strings.Contains(wall, few) || strings.Contains(wall, `class="bars"`) || strings.Contains(text(wall), "2 of 4") {
		t.Error("of four answers: ", text(wall))
	}
	r.answers(4, 0, 0, "") // late: until it is let, it hides nobody
	if _, wall := r.page("/wall/ACDEFH"); !strings.Contains(wall, few) {
		t.Error("of four answers, and a late one: ", text(wall))
	}
	r.do("do", "count", "who", "p4", "place", "0")
	if _, wall := r.page("/wall/ACDEFH"); strings.Contains(wall, few) || !strings.Contains(text(wall), "3 of 5") {
		t.Error("of five answers: ", text(wall))
	}
}
