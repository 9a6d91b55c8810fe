package served_test

import (
	"fmt"
	"net/http"
	"regexp"
	"slices"
	"strings"
	"testing"

	"scratchpass/lessons/class"
)

// aPass is the third pass of the adjusting screw by hand.
var aPass = []string{"cross to 0", "compound in 0.006", "close on 1", "run", "cross out 0.2", "open", "return"}

// works is what someone did in the first round.
func (s *shop) works(id string) (w class.Work) {
	s.see(func(r *class.Room) { w = r.Work(r.Person(id), 0) })
	return w
}

// moves sends a move for the lathe as it stands.
func (p *phone) moves(id, text string, more ...string) (int, string) {
	n := len(p.s.works(id).Moves)
	return p.post("move", append([]string{"round", "0", "moves", fmt.Sprint(n), "answer", text}, more...)...)
}

// openRound is a room of some people in which the third pass is rehearsed.
func openRound(t *testing.T, n int, more ...string) (*shop, []class.Apprentice) {
	t.Helper()
	roster := people(n)
	s := openShop(t, class.Head{Roster: roster}, fmt.Sprintf(three, "rules: {feedback: end}"), class.Together)
	s.do("bench", append([]string{"job", "adjusting-screw", "pass", "3"}, more...)...)
	return s, roster
}

// A phone goes through a pass: it is shown the lathe, makes moves by their names and numbers, is
// told what is wrong with others, and in the end what came and how the pass goes.
func TestAPassOnAPhone(t *testing.T) {
	s, roster := openRound(t, 1)
	id := roster[0].ID
	p := s.phone()
	page := p.comesIn(roster[0].Name)
	has(t, page, "Pass 3 of 19", `data-scene="bench"`, `class="panel"`, "3. Cut: compound in 0.0060", "after it marks", "Adjusting screw")
	for _, refused := range []struct{ text, says string }{
		{"jump", "Not done: can&#39;t read &#34;jump&#34;"},
		{"cross in", "Not done: can&#39;t read"},
		{"pass 0.004", "Not done: here the pass is made move by move"},
		{"done", "Not done: here the pass is made move by move"},
		{"hint", "Not done: can&#39;t read"},
		{strings.Repeat("note x", 2000), "Not done: can&#39;t read"},
	} {
		if status, page := p.moves(id, refused.text); status != http.StatusOK || !strings.Contains(page, refused.says) || len(s.works(id).Moves) != 0 {
			t.Errorf("%.20q: %d %s", refused.text, status, page)
		}
	}
	_, page = p.moves(id, "cross in") // what was typed stays, to be put right
	has(t, page, `id="typed" name="answer" value="cross in"`)
	for word, says := range map[string]string{"help": "close the half-nut", "card": "Card of", "repeat": "3. Cut: compound in"} {
		_, page := p.moves(id, "", "word", word)
		if !strings.Contains(page, `id="aid"`) || word != "card" && !strings.Contains(page, says) {
			t.Errorf("%s: %s", word, page)
		}
	}
	number := func(move string) string {
		_, page := p.get("")
		found := regexp.MustCompile(`name="move" value="(\d+)" formnovalidate>` + regexp.QuoteMeta(move)).FindStringSubmatch(page)
		if found == nil {
			t.Fatal(move, " is not offered: ", page)
		}
		return found[1]
	}
	_, page = p.moves(id, number("compound in ...")) // how much is still to be said
	has(t, page, `value="compound in "`, "how much?")
	p.moves(id, "0.006", "move", number("compound in ...")) // and is said beside it
	_, page = p.get("")
	has(t, page, "<p>3. Cut: compound in 0.0060", "in all 0.0210") // what is to be done stays in sight
	if field, moves := strings.Index(page, `id="typed"`), strings.Index(page, `class="moves"`); field < 0 || moves < field {
		t.Error("the moves stand before the field")
	}
	_, page = p.moves(id, "help")
	for _, none := range []string{"file", "deburr", "knurl", "test no-go", "gears"} {
		if strings.Contains(page, `item">`+none) {
			t.Errorf("help has a move of no pass, %s: %s", none, page)
		}
	}
	p.moves(id, "cross to 0")
	_, page = p.moves(id, number("close</button>"), "answer", "0.2") // it takes no figure
	has(t, page, "half-nut")
	if got := moved(s.works(id)); !slices.Equal(got, []string{"compound in 0.006", "cross to 0", "close"}) {
		t.Fatal(got)
	}
	for _, text := range []string{"run", "cross out 0.2", "open", "return"} {
		p.moves(id, text)
	}
	_, page = p.get("")
	has(t, page, `data-scene="bench-over"`, "The pass is made", "Others still work at it")
	if strings.Contains(page, "How the pass goes") || strings.Contains(page, `action="/r/`+roomCode+`/move"`) {
		t.Error("how it goes is told too early, or another move is asked for")
	}
	_, page = p.moves(id, "cross in 0.1")
	has(t, page, "Not done: your pass is over.")
	s.do("next")
	_, page = p.get("")
	has(t, page, `data-scene="bench-told"`)
	if strings.Contains(page, "How the pass goes") || strings.Contains(page, "compound in 0.006") {
		t.Error("the phone tells the pass before the wall does")
	}
	for range 3 { // what came, and two moves
		s.do("next")
	}
	_, page = p.get("")
	has(t, page, "How the pass goes", "cross to 0", "compound in 0.006")
	if strings.Contains(page, "close on 1") {
		t.Error("the phone is ahead of the wall")
	}
	_, page = p.post("move", "round", "0", "moves", "7", "answer", "cross in 0.1")
	has(t, page, "Not done: the round takes no more moves.")
	if status, _ := p.post("move", "round", "x"); status != http.StatusBadRequest {
		t.Error("a form that is none: ", status)
	}
	s.do("turn", "set", "0")
	_, page = p.get("")
	has(t, page, "Wait for the first question")
	s.do("end")
	_, page = p.get("")
	has(t, page, "Pass 3 of 19", "The pass is made")
	if len(s.fails) > 0 {
		t.Error(s.fails)
	}
}

func moved(w class.Work) (all []string) {
	for _, e := range w.Moves {
		all = append(all, e.Text)
	}
	return all
}

// A move that was kept without a word of it counts once; one for a lathe as it stood before is
// not made, and that is said.
func TestMovesCountOnce(t *testing.T) {
	s, roster := openRound(t, 2)
	id := roster[0].ID
	p := s.phone()
	page := p.comesIn(roster[0].Name)
	key := regexp.MustCompile(`name="key" value="(\w+)"`).FindStringSubmatch(page)[1]
	for range 3 {
		p.post("move", "round", "0", "moves", "0", "answer", "cross to 0", "key", key)
	}
	if status, body := p.send(http.MethodPost, "move", map[string][]string{"round": {"0"}, "moves": {"0"}, "answer": {"cross to 0"}, "key": {key}}, "application/json"); status != http.StatusOK || !strings.Contains(body, `"saved":true`) {
		t.Error("sent again, a script is told: ", status, body)
	}
	_, page = p.post("move", "round", "0", "moves", "0", "answer", "cross out 0.2", "key", "another")
	has(t, page, "Not done: the lathe has gone on since you saw it")
	other := s.phone()
	other.comesIn(roster[1].Name)
	other.post("move", "round", "0", "moves", "0", "answer", "cross to 0", "key", key) // another's key is no one else's
	if a, b := moved(s.works(id)), moved(s.works(roster[1].ID)); len(a) != 1 || len(b) != 1 {
		t.Error(a, b)
	}
	s.restart(nil)
	if a := moved(s.works(id)); len(a) != 1 {
		t.Error("after a restart: ", a)
	}
	_, page = p.moves(id, "compound in 0.006")
	has(t, page, "Wound in 0.0060 in")
	stranger := s.phone()
	if status, _ := stranger.post("move", "round", "0", "moves", "0", "answer", "run"); status != http.StatusForbidden {
		t.Error("who has no name moves: ", status)
	}
}

// A hint is given where the round has them, and is counted.
func TestHintsAtTheBench(t *testing.T) {
	s, roster := openRound(t, 1, "hints", "yes")
	p := s.phone()
	has(t, p.comesIn(roster[0].Name), `name="word" value="hint"`)
	_, page := p.moves(roster[0].ID, "", "word", "hint")
	has(t, page, "Look at both dials")
	if w := s.works(roster[0].ID); w.Hints != 1 || len(w.Moves) != 0 {
		t.Error(w.Hints, len(w.Moves))
	}
}

// Nothing that others do at the bench, nor their names, reaches a phone or the wall; a phone is
// not told of it either.
func TestNothingOfOthersFromTheBench(t *testing.T) {
	s, roster := openRound(t, 6)
	phones := make([]*phone, len(roster))
	for i := range phones {
		phones[i] = s.phone()
		phones[i].comesIn(roster[i].Name)
		phones[i].got = func(r *http.Response, body string) {
			for j, other := range roster {
				if j != i && (strings.Contains(body, other.Name) || strings.Contains(body, other.ID) || strings.Contains(body, fmt.Sprint("my-note-", j))) {
					t.Errorf("%s: something of %s", r.Request.URL, other.Name)
				}
			}
		}
	}
	version := func(id string) (v string) {
		s.see(func(r *class.Room) { v = r.Version(r.Person(id), s.clock()) })
		return v
	}
	for i, p := range phones {
		before := version(roster[(i+1)%len(roster)].ID)
		p.moves(roster[i].ID, fmt.Sprint("note my-note-", i))
		p.get("seat")
		if version(roster[(i+1)%len(roster)].ID) != before {
			t.Error("the next one is told of it")
		}
		for _, text := range aPass[:4+i%2*3] {
			p.moves(roster[i].ID, text)
		}
	}
	s.do("next")
	for _, p := range phones {
		p.get("")
	}
	s.do("next")
	wall := s.sees("/wall/" + roomCode)
	has(t, wall, "What came", "Made without a mistake", "3 of 6")
	s.do("next")
	has(t, s.sees("/wall/"+roomCode), "How the pass goes", "cross to 0")
	for i, other := range roster {
		if strings.Contains(wall, other.Name) || strings.Contains(wall, fmt.Sprint("my-note-", i)) {
			t.Error("on the wall: ", other.Name)
		}
	}
	desk := s.sees("/desk/" + roomCode)
	has(t, desk, roster[0].Name, "along the thread", "pass made", "Go back to it")
	has(t, s.sees("/desk/"+roomCode+"/person/"+roster[0].ID), "1. note my-note-0", "2. cross to 0", "along the thread")
	if len(s.fails) > 0 {
		t.Error(s.fails)
	}
}

// sees is a page of the instructor's.
func (s *shop) sees(path string) string {
	s.t.Helper()
	p := s.phone()
	p.get("/desk/" + roomCode + "?key=" + privateKey)
	status, page := p.get(path)
	if status != http.StatusOK {
		s.t.Fatal(path, status, page)
	}
	return page
}

// What the instructor asks for wrongly is said, and nothing begins.
func TestRoundsThatCantBegin(t *testing.T) {
	s := openShop(t, class.Head{Roster: people(1)}, fmt.Sprintf(three, ""), class.Together)
	p := s.phone()
	p.get("/desk/" + roomCode + "?key=" + privateKey)
	for _, c := range []struct{ job, pass, says string }{
		{"adjusting-scrwe", "1", "did you mean adjusting-screw"},
		{"adjusting-screw", "20", "give 1 to 19 of the card"},
		{"adjusting-screw", "two", "pass &#34;two&#34;: give the number"},
		{"adjuster-sleeve", "1", "has no passes"},
		{"", "1", "no job is called"},
	} {
		if status, page := p.post("/desk/"+roomCode+"/do", "do", "bench", "job", c.job, "pass", c.pass); status != http.StatusBadRequest || !strings.Contains(page, c.says) {
			t.Errorf("%s %s: %d %s", c.job, c.pass, status, page)
		}
	}
	s.see(func(r *class.Room) {
		if len(r.Rounds) > 0 {
			t.Error("one began")
		}
	})
	if page := s.sees("/desk/" + roomCode); strings.Contains(page, `value="adjuster-sleeve"`) || !strings.Contains(page, `value="two-start-adjusting-nut"`) {
		t.Error("the jobs to choose from are others")
	}
}

// A room without questions is served like any other.
func TestABenchAlone(t *testing.T) {
	s := openShop(t, class.Head{Roster: people(2), Title: "At the bench"}, "", "")
	s.do("bench", "job", "pump-stud", "pass", "0")
	p := s.phone()
	has(t, p.comesIn("Ona01 Zquill01"), "Set-up and first pass", `data-scene="bench"`)
	p.moves("idzq-01", "dress")
	has(t, s.sees("/desk/"+roomCode), "setting up", "Pump stud")
	has(t, s.sees("/desk/"+roomCode+"/person/idzq-01"), "1. dress")
	has(t, s.sees("/wall/"+roomCode), "Set-up and first pass", "Pass made: 0 of 1")
	s.restart(nil)
	has(t, s.sees("/desk/"+roomCode), "setting up")
	s.do("ask", "task", "compound-travel", "level", "1")
	_, page := p.get("")
	has(t, page, `data-scene="asks"`)
	s.do("end")
	_, page = p.get("")
	has(t, page, "Your pass was not over")
	if len(s.fails) > 0 {
		t.Error(s.fails)
	}
}
