package served

import (
	"net/http"
	"strings"
	"testing"

	"scratchpass/lessons/class"
	"scratchpass/quiz/answer"
)

// After one more question the main button leads back to the set that was left. The next blueprint is
// not the main button then, and to start it is asked about first.
func TestTheDeskLeadsBack(t *testing.T) {
	r := newDeskRoom(t, "end", class.Together, 6)
	r.server.o.Further = []Further{{"Exit ticket", "set: dials\ntitle: Exit ticket\nunits: in\nslots:\n- {tasks: [single-depth]}\n", class.Ticket}}
	r.come(0, 6)
	r.step(3)
	r.do("do", "ask", "task", "no-cloth-on-turning-work", "level", "1")
	for range 9 {
		_, desk := r.page("/desk/ACDEFH")
		if strings.Contains(desk, "Back to question") {
			break
		}
		r.step(1)
	}
	page := r.shows("/desk/ACDEFH", []string{"Back to question 2 of 10"}, []string{"Nothing is left to do here."})
	if strings.Contains(page, `value="start" class="next"`) {
		t.Error("the next blueprint is the main button")
	}
	if status, body := r.do("do", "start", "n", "0", "way", "ticket"); status != http.StatusOK || !strings.Contains(text(body), "not asked yet: 9") || !strings.Contains(body, `name="way" value="ticket"`) {
		t.Error("it is not asked first: ", status, text(body))
	}
	r.step(1)
	r.shows("/desk/ACDEFH", []string{"Question 2 of 10 is open"}, nil)
}

// Who would have bet on a wrong answer is marked so in a ticket too, on their own page as well; what
// can hurt someone asks for the instructor.
func TestSureAndWrongInATicket(t *testing.T) {
	r := newDeskRoom(t, "end", class.Ticket, 6)
	r.come(0, 6)
	r.answers(0, 0, -1, answer.Bet) // wrong, and hurts nobody
	r.answers(1, 5, 1, answer.Bet)
	r.answers(2, 0, 0, answer.Guess)
	page := r.shows("/desk/ACDEFH", []string{"Sure, and wrong, on what can hurt someone.", "was sure, and is wrong"}, nil)
	if n := strings.Count(page, `<span aria-hidden="true">!`); n != 2 {
		t.Error(n, " are marked")
	}
	r.shows("/desk/ACDEFH/person/p0", []string{"wrong, sure of it", "How sure: "}, []string{"Sure, and wrong, on what"})
	r.shows("/desk/ACDEFH/person/p2", []string{"How sure: "}, nil)
}

// Where the wall shows no counts, the instructor reads why, and can show them all the same.
func TestCountsOfFewAnyway(t *testing.T) {
	r := newDeskRoom(t, "end", class.Together, 3)
	r.come(0, 3)
	r.step(1)
	for who := range 3 {
		r.answers(who, 0, -who%2, "")
	}
	if status, body := r.do("do", "counts"); status != http.StatusBadRequest {
		t.Error("before anything is shown: ", status, body)
	}
	r.step(2)
	why := "the wall shows no counts"
	r.shows("/desk/ACDEFH", []string{why, "Show the counts anyway", "Other wrong answers: 7.77 (1)"}, []string{"what came is on the wall", "What came is on the wall"})
	r.do("do", "counts")
	r.shows("/desk/ACDEFH", []string{"what came is on the wall"}, []string{why, "Show the counts anyway"})
	r.shows("/wall/ACDEFH", []string{"2 of 3"}, []string{"on the phones alone"})
}

// A phone that waits at the door is seen there, though its page has no stream.
func TestAPhoneAtTheDoorIsSeen(t *testing.T) {
	r := newDeskRoom(t, "end", class.Together, 3)
	r.come(0, 1)
	r.event(class.Event{Kind: class.Joined, Who: "p0", Text: kept("a-second-phone")})
	r.shows("/desk/ACDEFH", []string{"Phone that asks: not seen"}, nil)
	r.send("GET", "/r/ACDEFH", nil, "room-ACDEFH=a-second-phone")
	r.shows("/desk/ACDEFH", []string{"Phone that asks: last seen at "}, []string{"Phone that asks: not seen"})
}

// Of a visitor nobody is chosen until the instructor does, and who has a phone is marked.
func TestNobodyIsChosenFirst(t *testing.T) {
	r := newDeskRoom(t, "end", class.Together, 3)
	r.come(0, 1)
	r.event(class.Event{Kind: class.Joined, Who: "visitor-a", Text: "v", Name: "Zoe"})
	_, page := r.page("/desk/ACDEFH/person/visitor-a")
	for _, want := range []string{`name="with" required><option value="">Choose a name</option>`, "Ada Brink (has a phone)", ">Ben Corrie<"} {
		if !strings.Contains(page, want) {
			t.Error("no ", want)
		}
	}
}

// A task is found by its name, its title, and a part of it; else those that are near are told.
func TestATaskIsMeant(t *testing.T) {
	r := newDeskRoom(t, "end", class.Together, 3)
	s := r.server
	title := ""
	for _, task := range s.tasks() {
		if task.Name == "single-depth" {
			title = task.Title
		}
	}
	for typed, want := range map[string]string{"single-depth": "single-depth", " Single-Depth ": "single-depth", strings.ToUpper(title): "single-depth", "past a turn": "dial-past-a-turn"} {
		if got, err := s.taskMeant(typed); got != want {
			t.Errorf("%q: %s %v", typed, got, err)
		}
	}
	for typed, want := range map[string]string{"singel-depth": "single-depth", "": "compound-travel", "the": "more", "zzzz": `"zzzz"`} {
		if got, err := s.taskMeant(typed); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %s %v", typed, got, err)
		}
	}
}

// The two tools stand before the questions, each with a place for what is wrong.
func TestToolsStandFirst(t *testing.T) {
	r := newDeskRoom(t, "end", class.Together, 3)
	_, page := r.page("/desk/ACDEFH")
	before, _, _ := strings.Cut(page, `id="people"`)
	if !strings.Contains(before, `value="ask"`) || !strings.Contains(before, `value="bench"`) || strings.Count(before, "data-said") != 2 {
		t.Error("they do not stand above the table")
	}
}

// A bench round is left for the questions at once; while moves are made that is asked about.
func TestTheBenchIsLeft(t *testing.T) {
	r := newDeskRoom(t, "end", class.Together, 3)
	r.come(0, 3)
	r.step(1)
	r.do("do", "bench", "job", "adjusting-screw", "pass", "3")
	r.shows("/desk/ACDEFH", []string{"Leave the bench round"}, nil)
	if status, body := r.do("do", "leave"); status != http.StatusOK || !strings.Contains(body, "no more moves then") {
		t.Error("it is not asked first: ", status, text(body))
	}
	r.step(1)
	if status, _ := r.do("do", "leave"); status != http.StatusSeeOther {
		t.Error("it is asked about though it is closed: ", status)
	}
	r.shows("/desk/ACDEFH", []string{"Question 1 of 10 is open"}, []string{"Leave the bench round"})
}

// Once the lesson is over the tables of its other sets can be looked at, and none takes an answer.
func TestTablesOfAnEndedLesson(t *testing.T) {
	r := newDeskRoom(t, "end", class.Together, 3)
	r.come(0, 3)
	r.step(1)
	r.do("do", "ask", "task", "no-cloth-on-turning-work", "level", "1")
	r.do("do", "end", "sure", "yes")
	r.shows("/desk/ACDEFH", []string{"Look at its table"}, nil)
	r.do("do", "turn", "set", "0")
	page := r.shows("/desk/ACDEFH", []string{"The lesson is over."}, nil)
	if n := strings.Count(page, `<th scope="col" title=`); n != 10 {
		t.Error("the table has ", n, " questions")
	}
	r.live.See(func(room *class.Room) {
		for place := range 10 {
			if room.Takes(room.Person("p0"), class.Question{Place: place}, r.server.o.Clock()) {
				t.Error("a question takes answers")
			}
		}
	})
}
