package served_test

import (
	"fmt"
	"html"
	"net/http"
	"strings"
	"testing"
	"time"

	"scratchpass/lessons/class"
	"scratchpass/quiz/answer"
)

// kindsOfAnswers asks for every kind of answer; the second question follows from the first.
const kindsOfAnswers = `set: phones
title: Before your first thread
units: in
%s
slots:
- {name: travel, tasks: [compound-travel]}
- {tasks: [infeed-left], takes: {total: travel}}
- {tasks: [blank-diameter]}
- {tasks: [cross-slide-return]}
- {tasks: [no-cloth-on-turning-work]}
- {tasks: [ready-to-start]}
- {tasks: [one-full-pass]}
- {tasks: [inch-designation]}
`

const questions = 8 // of it

func withRules(rules string) string { return fmt.Sprintf(kindsOfAnswers, rules) }

// has fails where a page lacks a text.
func has(t *testing.T, page string, texts ...string) {
	t.Helper()
	for _, text := range texts {
		if !strings.Contains(page, text) {
			t.Errorf("no %q in %s", text, page)
		}
	}
}

// A whole class is played, and in all that phones are sent stand no names, ids and answers of
// others, no codes of problems and sheets, no key of the private link, no secret; and no right
// answer before it is told.
func TestNothingOfOthersReachesAPhone(t *testing.T) {
	class5 := people(5)
	s := openShop(t, class.Head{Roster: class5}, withRules("sure: true\nrules: {feedback: end, shuffle: true}"), class.Together)
	never := map[string]string{privateKey: "the key of the link", secretText: "the secret"}
	own := make([]map[string]string, len(class5)) // what stands on the phone of each, and on no other
	keys := map[string]bool{}
	for i, a := range class5 {
		own[i] = map[string]string{a.Name: "a name", a.ID: "an id"}
		s.see(func(r *class.Room) { never[r.Sets[0].Maker.Code(a.ID)] = "the code of a sheet" })
		for place := range questions {
			it := s.item(a.ID, 0, place)
			never[it.Problem.Code.String()] = "the code of a problem"
			if it.Problem.Task.Kind == answer.Quantity {
				keys[s.right(a.ID, 0, place)] = true
			}
		}
	}
	told, phones := false, make([]*phone, len(class5))
	for i := range class5 {
		phones[i] = s.phone()
		phones[i].got = func(r *http.Response, body string) {
			body = fmt.Sprint(r.Header) + body
			for text, what := range never {
				if strings.Contains(body, text) {
					t.Errorf("%s: %s, %s", r.Request.URL, what, text)
				}
			}
			for j := range class5 {
				for text, what := range own[j] {
					if j != i && strings.Contains(body, text) {
						t.Errorf("%s: %s of another, %s", r.Request.URL, what, text)
					}
				}
			}
			for key := range keys {
				if !told && strings.Contains(body, key) {
					t.Errorf("%s: a right answer, %s", r.Request.URL, key)
				}
			}
		}
		phones[i].comesIn(class5[i].Name)
	}
	look := func(p *phone) {
		p.get("")
		p.get("seat")
		p.get("?at=3")
	}
	for place := range questions {
		s.do("open", "place", fmt.Sprint(place))
		for i, p := range phones {
			look(p)
			for _, word := range []string{"help", "hint", "look", "repeat", "= 1/3", "? pitch", ""} {
				p.answers(place, word)
			}
			given := fmt.Sprintf("0.7%d9%d", i, place)
			own[i][given] = "an answer"
			p.answers(place, given, "sure", "bet")
			p.post("call")
			look(p)
		}
		s.do("lock")
		for _, p := range phones {
			look(p)
		}
	}
	s.do("pause")
	look(phones[0])
	s.do("resume")
	told = true
	s.do("show", "place", "1", "n", "3")
	look(phones[1])
	s.do("end")
	for _, p := range phones {
		look(p)
	}
	wall, _ := phones[0].get("/wall/" + roomCode)
	desk, _ := phones[0].get("/desk/" + roomCode)
	file, _ := phones[0].get("/desk/" + roomCode + "/answers/0")
	if wall != http.StatusForbidden || desk != http.StatusForbidden || file != http.StatusForbidden {
		t.Error("a phone sees what is the instructor's: ", wall, desk, file)
	}
	if len(s.fails) > 0 {
		t.Error(s.fails)
	}
}

// A room code is read in small letters, with spaces, from the wall and from the QR code. Who tries
// codes is slowed down, also with a cookie that they have made up; who has a name is not.
func TestRoomCodes(t *testing.T) {
	s := openShop(t, class.Head{Roster: people(2)}, withRules(""), class.Together)
	p := s.phone()
	for _, path := range []string{"/ACDEFH", "/acdefh", "/r/acdefh", "/r/ACDEFH/", "/?code=acd+efh", "/?code=ACD-EFH"} {
		if status, page := p.get(path); status != http.StatusOK || !strings.Contains(page, `action="/r/ACDEFH/join"`) {
			t.Error(path, status, page)
		}
	}
	for _, path := range []string{"/favicon.ico", "/apple-touch-icon.png", "/robots.txt", "/x", "/?code=x"} { // asked for by browsers, not by who tries codes
		for range 20 {
			if status, _ := p.get(path); status != http.StatusNotFound {
				t.Error(path, status)
			}
		}
	}
	p.comesIn("Ona01 Zquill01")
	thief, found := s.phone(), 0
	for i := range 40 {
		code := fmt.Sprintf("AAAA%c%c", "ACDEFHJK"[i%8], "ACDEFHJK"[i/8])
		r, err := http.NewRequest(http.MethodGet, s.base+"/r/"+code, nil)
		if err != nil {
			t.Fatal(err)
		}
		r.Header.Set("Cookie", "room-"+code+"=x; room-"+roomCode+"=x")
		answer, err := thief.c.Do(r)
		if err != nil {
			t.Fatal(err)
		}
		answer.Body.Close()
		if answer.StatusCode != http.StatusTooManyRequests {
			found++
		}
	}
	if found > 11 {
		t.Error(found, " codes were tried, each with a cookie that was made up")
	}
	for _, who := range []*phone{thief, s.phone()} {
		if status, _ := who.get(""); status != http.StatusTooManyRequests {
			t.Error("who has tried many codes finds the room: ", status)
		}
	}
	if status, page := p.get(""); status != http.StatusOK || !strings.Contains(page, `id="seat"`) {
		t.Error("a phone with a name is shut out by what others tried: ", status)
	}
}

// A name is taken by one phone; a second waits. When the answer to the first is lost, or the
// phone goes to someone else and comes back, nobody waits.
func TestComingIn(t *testing.T) {
	class3 := append(people(3), class.Apprentice{ID: "t1", Name: "José O'Neil"}, class.Apprentice{ID: "t2", Name: "Twin"}, class.Apprentice{ID: "t3", Name: "Twin"})
	s := openShop(t, class.Head{Roster: class3}, withRules("rules: {feedback: end}"), class.OwnPace)
	p := s.phone()
	p.get("")
	s.cut.Store(1)
	if status, _ := p.post("join", "name", "ona01 zquill01"); status != 0 {
		t.Fatal("the answer was not lost: ", status)
	}
	has(t, p.comesIn("Ona01 Zquill01"), `id="seat"`, "Ona01 Z.")
	p.answers(0, "0.05")

	second := s.phone()
	has(t, second.comesIn("Ona01 Zquill01"), "data-waits")
	s.see(func(r *class.Room) {
		if n := len(r.Person("idzq-01").Claims); n != 1 {
			t.Fatal(n, " wait")
		}
	})
	_, door := second.post("leave")
	has(t, door, `name="name"`)
	s.see(func(r *class.Room) {
		if n := len(r.Person("idzq-01").Claims); n != 0 {
			t.Error("who has gone still waits")
		}
	})
	has(t, second.comesIn("José O’Neil"), `id="seat"`) // as a phone writes it
	third := s.phone()
	has(t, third.comesIn("twin"), "Two people here are called twin")
	has(t, third.comesIn("t3"), `id="seat"`)

	p.post("leave") // the phone goes to someone else
	has(t, p.comesIn("Ona02 Zquill02"), "Ona02 Z.")
	p.post("leave")
	_, page := p.get("")
	has(t, page, `name="name"`)
	p.comesIn("Ona01 Zquill01")
	if _, page := p.get("?at=0"); !strings.Contains(page, `value="0.05"`) {
		t.Error("who comes back is not where they were: ", page)
	}

	visitor := s.phone()
	has(t, visitor.comesIn("Zoe"), "find you by Zoe", `name="visitor"`)
	for range 2 { // twice
		_, page = visitor.post("join", "name", "Zoe", "visitor", "yes")
		has(t, page, `id="seat"`)
	}
	has(t, s.phone().comesIn("idzq-03"), "find you by idzq-03") // who counts up learns no name
	for range 8 {                                               // nobody can shut out others by asking often
		s.phone().comesIn("Ona01 Zquill01")
	}
	has(t, second.comesIn("José O'Neil"), `id="seat"`)
	s.see(func(r *class.Room) {
		if n := len(r.Person("idzq-01").Claims); n != 5 {
			t.Error(n, " wait for one name")
		}
		if n := len(r.People()); n != 7 {
			t.Error(n, " people")
		}
	})
	s.do("shut")
	has(t, s.phone().comesIn("Ona03 Zquill03"), "Nobody new comes in now")
}

// Who types a part of their name comes in, or is asked; the phone is sent no last name that was not
// typed on it.
func TestNearNamesAtTheDoor(t *testing.T) {
	s := openShop(t, class.Head{Roster: []class.Apprentice{{ID: "idzq-1", Name: "Cato Enis"}, {ID: "idzq-2", Name: "Dilys Enis"}, {ID: "idzq-3", Name: "Jon Smith"}, {ID: "idzq-4", Name: "John Smith"}}}, withRules(""), class.Together)
	silent := func(page string) string {
		t.Helper()
		for _, text := range []string{"Enis", "Smith"} {
			if strings.Contains(page, text) {
				t.Errorf("%s in %s", text, page)
			}
		}
		return page
	}
	p := s.phone()
	has(t, silent(p.comesIn("Cato")), "Are you Cato E.?", `name="is"`, `name="visitor"`)
	_, page := p.post("join", "name", "Cato", "is", "yes")
	has(t, silent(page), `id="seat"`, "Cato E.")
	has(t, silent(s.phone().comesIn("Dilys E")), `id="seat"`, "Dilys E.")
	has(t, silent(s.phone().comesIn("Jo")), "find you by Jo. Type your first name and the first letter", `name="visitor"`)
	has(t, s.phone().comesIn("Jom Smith"), "fits more than one person", `name="visitor"`)
	page = s.phone().comesIn("Enis")
	if strings.Contains(page, "Cato") || strings.Contains(page, "Dilys") {
		t.Error("a last name tells the first ones: ", page)
	}
	// What to type is said before a visitor's way in, which says what it means.
	how, visitor := strings.Index(page, "Type your first name and the first letter of your last name"), strings.Index(page, "your answers are then not in the marks")
	if how < 0 || visitor < how || strings.Index(page, `name="visitor"`) < visitor {
		t.Error("how to come in: ", how, visitor, page)
	}
	has(t, silent(s.phone().comesIn("Kato")), "Are you Cato E.?")
	_, page = s.phone().post("join", "name", "Zoe", "is", "yes")
	has(t, page, "find you by Zoe")
}

// What is said at the door is there: codes on sheets only where sheets can be, a class list only
// where there is one.
func TestTheDoorSpeaksOfWhatThereIs(t *testing.T) {
	for _, c := range []struct {
		head  class.Head
		says  []string
		hides []string
	}{
		{class.Head{Roster: people(2), Sheets: true}, []string{"Your name", "class list", "sheet with a code"}, nil},
		{class.Head{Roster: people(2)}, []string{"Your name", "class list"}, []string{"a sheet", "code of"}},
		{class.Head{}, []string{"What are you called here?"}, []string{"class list", "a sheet", "code of"}},
	} {
		s := openShop(t, c.head, withRules(""), class.Together)
		p := s.phone()
		_, door := p.get("")
		page := p.comesIn("Zoe")
		has(t, door, c.says...)
		for _, text := range c.hides {
			if strings.Contains(door+page, text) {
				t.Errorf("%+v: it speaks of a %s: %s", c.head, text, door+page)
			}
		}
		if in := strings.Contains(page, `id="seat"`); in != (c.head.Roster == nil) {
			t.Errorf("%+v: a visitor is in: %v", c.head, in)
		}
	}
}

// The steps of an order stand once on a page, where they are put in order; without a script too.
func TestStepsStandOnce(t *testing.T) {
	s := openShop(t, class.Head{Roster: people(1)}, withRules("rules: {feedback: end}"), class.OwnPace)
	p := s.phone()
	p.comesIn("Ona01 Zquill01")
	it := s.item("idzq-01", 0, 6)
	steps := it.Words.Options(it.Problem)
	if len(steps) < 3 {
		t.Fatal("no steps in ", it.Problem.Task.Name)
	}
	for _, given := range []string{"", s.right("idzq-01", 0, 6)} {
		if given != "" {
			p.answers(6, given)
		}
		_, page := p.get("?at=6")
		for _, step := range steps {
			if n := strings.Count(page, ">"+html.EscapeString(step)+"<"); n != 1 {
				t.Errorf("after %q: %q stands %d times in %s", given, step, n, page)
			}
		}
	}
}

// Names that the instructor lets stand on phones are tapped; who is in stands there no more.
func TestListedNames(t *testing.T) {
	s := openShop(t, class.Head{Roster: people(2), Listed: true}, withRules(""), class.Together)
	p, tag := s.phone(), ""
	s.see(func(r *class.Room) { tag = r.Tag("idzq-02") })
	_, page := p.get("")
	has(t, page, "Ona01 Zquill01", "Ona02 Zquill02", tag)
	_, page = p.post("join", "who", tag)
	has(t, page, `id="seat"`, "Ona02 Z.")
	if _, page := s.phone().get(""); strings.Contains(page, "Ona02") {
		t.Error("who is in is still listed")
	}
}

// What is sent twice counts once, what was open under another name or for another set is no
// answer here, and no size or shape of a form breaks anything.
func TestForms(t *testing.T) {
	s := openShop(t, class.Head{Roster: people(2)}, withRules("sure: true\nrules: {feedback: end}"), class.OwnPace)
	p := s.phone()
	p.comesIn("Ona01 Zquill01")
	var tag, other string
	s.see(func(r *class.Room) { tag, other = r.Tag("idzq-01"), r.Tag("idzq-02") })

	_, page := p.answers(0, "0.0641") // how sure is asked once
	has(t, page, `value="0.0641"`, `name="asked"`)
	if _, ok := s.kept("idzq-01", 0, 0); ok {
		t.Error("it was kept before it was asked how sure")
	}
	for range 2 {
		_, page = p.answers(0, "0.0641", "asked", "yes", "who", tag)
		has(t, page, "Your answer is kept: 0.0641")
	}
	if a, _ := s.kept("idzq-01", 0, 0); a.Changed != 0 || a.Text != "0.0641" {
		t.Error("sent twice: ", a)
	}
	p.answers(0, "0.0642", "sure", "bet", "who", tag)
	if a, _ := s.kept("idzq-01", 0, 0); a.Changed != 1 || a.Certainty != answer.Bet {
		t.Error("changed: ", a)
	}
	_, page = p.answers(0, "0.07", "word", "hint", "sure", "guess") // what was typed stays
	has(t, page, `value="0.07"`)
	if a, _ := s.kept("idzq-01", 0, 0); a.Text != "0.0642" {
		t.Error("a word that helps is an answer: ", a)
	}
	_, page = p.answers(1, "1/0 of a turn")
	has(t, page, `id="aid" role="status"><p>`)
	_, page = p.answers(1, "0.1")
	has(t, page, "you answered 0.0642")

	for _, form := range [][]string{{"set", "1", "place", "0", "answer", "1"}, {"set", "-1", "place", "0", "answer", "1"}, {"set", "0", "place", "99", "answer", "1"}, {"set", "0", "place", "-1", "answer", "1"},
		{"answer", "1"}, {"set", "x", "place", "0"}, {}} {
		if status, page := p.post("answer", form...); status != http.StatusBadRequest || !strings.Contains(page, "not asked here any more") || strings.Contains(page, "idzq") {
			t.Error(form, status, page)
		}
	}
	if status, _ := p.answers(2, "1", "who", other, "sure", "bet"); status != http.StatusConflict {
		t.Error("an answer of someone else: ", status)
	}
	if _, ok := s.kept("idzq-01", 0, 2); ok {
		t.Error("it was taken")
	}
	if status, _ := p.answers(2, strings.Repeat("9", 20_000)); status != http.StatusBadRequest {
		t.Error("a form that is too large: ", status)
	}
	p.answers(4, strings.Repeat("7 ", 4000), "asked", "yes")
	if a, ok := s.kept("idzq-01", 0, 4); ok && len(a.Text) > 200 {
		t.Error("an answer of ", len(a.Text), " bytes")
	}
	if status, page := p.get("answer"); status != http.StatusOK || !strings.Contains(page, `id="seat"`) {
		t.Error("the address of the form, opened again: ", status)
	}
	if status, _ := s.phone().answers(0, "1"); status != http.StatusForbidden {
		t.Error("who has no name answers: ", status)
	}
	s.do("end")
	p.answers(0, "0.0643", "sure", "bet")
	if a, _ := s.kept("idzq-01", 0, 0); a.Text != "0.0642" {
		t.Error("an answer counts after all was told: ", a)
	}
}

// A phone that floods is slowed; the others notice nothing.
func TestAPhoneThatFloods(t *testing.T) {
	s := openShop(t, class.Head{Roster: people(2)}, withRules("rules: {feedback: end}"), class.OwnPace)
	flood, calm := s.phone(), s.phone()
	flood.comesIn("Ona01 Zquill01")
	calm.comesIn("Ona02 Zquill02")
	slowed, before := 0, int64(0)
	s.see(func(r *class.Room) { before = r.Seq })
	for i := range 120 {
		if status, _ := flood.answers(0, fmt.Sprint("0.", i)); status == http.StatusTooManyRequests {
			slowed++
		}
		flood.answers(0, "hint")
		flood.post("call")
	}
	if slowed < 60 {
		t.Error("only ", slowed, " of 120 were slowed")
	}
	if status, page := calm.answers(0, "0.05"); status != http.StatusOK {
		t.Error("another phone: ", status, page)
	}
	s.see(func(r *class.Room) {
		if n := r.Seq - before; n > 80 {
			t.Error(n, " events")
		}
	})
}

// A phone without a name has no stream; one whose name goes to another is told so, and its stream
// ends.
func TestStreamsOfPhones(t *testing.T) {
	s := openShop(t, class.Head{Roster: people(2)}, withRules(""), class.Together)
	r, err := http.NewRequest(http.MethodGet, s.base+"/r/"+roomCode+"/events", nil)
	if err != nil {
		t.Fatal(err)
	}
	r.Header.Set("Cookie", "room-"+roomCode+"=made-up")
	answer, err := http.DefaultTransport.RoundTrip(r)
	if err != nil {
		t.Fatal(err)
	}
	answer.Body.Close()
	if answer.StatusCode != http.StatusForbidden {
		t.Error("a phone without a name has a stream: ", answer.Status)
	}
	p := s.phone()
	p.comesIn("Ona01 Zquill01")
	stream := make(chan string)
	go func() {
		_, body := p.get("events")
		stream <- body
	}()
	second := s.phone()
	second.comesIn("Ona01 Zquill01")
	device := ""
	s.see(func(r *class.Room) { device = r.Person("idzq-01").Claims[0] })
	s.do("let", "who", "idzq-01", "device", device)
	select {
	case body := <-stream:
		if !strings.HasSuffix(strings.TrimSpace(body), "data: nobody") {
			t.Error(body)
		}
	case <-time.After(time.Minute):
		t.Error("the stream goes on")
	}
	if _, page := second.get(""); !strings.Contains(page, `id="seat"`) {
		t.Error("who was let in is not in")
	}
}
