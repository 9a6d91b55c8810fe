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
