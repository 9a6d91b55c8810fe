package served

import (
	"fmt"
	"regexp"
	"strings"
	"testing"
	"time"

	"scratchpass/lessons/class"
	"scratchpass/quiz/answer"
)

// shows fetches a page, and looks for what must be on it and what must not, without its tags.
func (r *deskRoom) shows(path string, wants, not []string) string {
	r.t.Helper()
	_, page := r.page(path)
	said := strings.Join(strings.Fields(text(page)), " ")
	for _, want := range wants {
		if !strings.Contains(said, want) {
			r.t.Errorf("%s: no %q in %s", path, want, said)
		}
	}
	for _, other := range not {
		if strings.Contains(said, other) {
			r.t.Errorf("%s: %q is there", path, other)
		}
	}
	return page
}

// ticket is a set for the end of the lesson.
const deskTicket = `set: exit-ticket-dials
title: Five questions on dials
units: in
sure: true
slots:
- {tasks: [dial-past-a-turn]}
- {tasks: [find-where-you-are]}
`

// A further set is offered with its way, begins when it is started, and is not offered again. It
// is offered once more to a program that starts again, if it was not asked.
func TestAFurtherSetIsStarted(t *testing.T) {
	r := newDeskRoom(t, "end", class.Together, 3)
	r.come(0, 3)
	r.server.o.Further = []Further{{"Five questions on dials", deskTicket, class.Ticket}, {"Another", strings.Replace(deskTicket, "dials", "more", 2), class.OwnPace}}
	page := r.shows("/desk/ACDEFH", []string{"Next: Five questions on dials", "Next: Another"}, nil)
	if !strings.Contains(page, `<option value="ticket" selected>`) || !strings.Contains(page, `<option value="own-pace" selected>`) {
		t.Error("its way is not chosen")
	}
	r.do("do", "start", "n", "0", "way", "ticket")
	r.live.See(func(room *class.Room) {
		if a := room.Asking(); room.Now != 1 || a.Way != class.Ticket || a.Text != deskTicket {
			t.Error("it is not at hand: ", room.Now, a.Way)
		}
	})
	r.shows("/desk/ACDEFH", []string{"End-of-lesson questions. Done: 0 of 3.", "Next: Another"}, []string{"Next: Five questions"})
	r.do("do", "end", "sure", "yes")
	r.shows("/desk/ACDEFH", []string{"Phones have said what came.", "those questions take no more answers"}, []string{"Next: "})
	if status, body := r.do("do", "start", "n", "1"); status != 400 || !strings.Contains(body, "the lesson is over") {
		t.Error("a set is started after the end: ", status)
	}
}

// After the last question there is no next one: what is next is a further set, or the end.
func TestWhatComesAfterTheLast(t *testing.T) {
	for _, way := range []class.Way{class.Together, class.OwnPace} {
		r := newDeskRoom(t, "end", way, 3)
		r.come(0, 1)
		done := []string{"Nothing is left to do here."}
		if way == class.OwnPace {
			r.shows("/desk/ACDEFH", nil, done)
			for place := range 10 {
				r.answers(0, place, 0, answer.Fairly)
			}
		} else {
			for range 100 {
				r.shows("/desk/ACDEFH", nil, done)
				if status, _ := r.do("do", "next"); status != 303 {
					t.Fatal(status)
				}
				if _, page := r.page("/desk/ACDEFH"); !strings.Contains(page, `value="next"`) {
					break
				}
			}
		}
		end := regexp.MustCompile(`value="end" class="next"`)
		if page := r.shows("/desk/ACDEFH", done, []string{"Next question"}); !end.MatchString(page) {
			t.Error("the end is not what comes next: ", way)
		}
		r.server.o.Further = []Further{{"Five questions on dials", deskTicket, class.Ticket}}
		if page := r.shows("/desk/ACDEFH", done, nil); end.MatchString(page) || !strings.Contains(page, `value="start" class="next"`) {
			t.Error("the further set is not what comes next: ", way)
		}
	}
}

// What can't be read stands in the table as it was typed, and on the person's page.
func TestUnreadAnswersAreShown(t *testing.T) {
	r := newDeskRoom(t, "end", class.OwnPace, 3)
	r.come(0, 2)
	r.event(class.Event{Kind: class.Answered, Who: "p0", Place: 2, Text: "abc<b>"})
	if page := r.shows("/desk/ACDEFH", []string{"Answer 3 can't be read: abc&lt;b&gt;"}, nil); !strings.Contains(page, `<span class="given">abc&lt;b&gt;</span>`) {
		t.Error("it is not in its cell")
	}
	r.shows("/desk/ACDEFH/person/p0", []string{"can't be read Typed: abc&lt;b&gt;."}, nil)
	r.do("do", "seen", "who", "p0")
	if page := r.shows("/desk/ACDEFH", nil, []string{"Answer 3 can't"}); !strings.Contains(page, `<span class="given">abc`) {
		t.Error("it is gone from its cell once it was seen")
	}
}

// A late answer stands beside the button that counts it, with how late it came.
func TestLateAnswersAreShown(t *testing.T) {
	r := newDeskRoom(t, "end", class.Together, 3)
	r.come(0, 3)
	r.answers(2, 5, -1, "") // before it was opened
	r.step(2)
	r.after.Add(int64(42 * time.Second))
	r.event(class.Event{Kind: class.Answered, Who: "p0", Text: "0.0558"})
	r.after.Add(int64(7 * time.Minute))
	r.event(class.Event{Kind: class.Answered, Who: "p1", Text: "0.0559"})
	want := []string{"Answer 1, 42 s late: 0.0558 Count answer 1", "Answer 1, 7 min late: 0.0559 Count answer 1", "Answer 6, late: 1 Count answer 6"}
	r.shows("/desk/ACDEFH", want, nil)
	r.shows("/desk/ACDEFH/person/p0", want[:1], nil)
}

// To let a second phone in puts the first out: that is said, and which was seen last.
func TestWhoIsPutOutIsSaid(t *testing.T) {
	r := newDeskRoom(t, "end", class.Together, 3)
	r.come(0, 1)
	first := r.server.o.Clock()
	r.after.Add(int64(5 * time.Minute))
	r.event(class.Event{Kind: class.Joined, Who: "p0", Text: "another"})
	r.shows("/desk/ACDEFH", []string{"Phone with the name: last seen at " + first.In(time.Local).Format("15:04:05") + ". Phone that asks: not seen since the program started. Let it in and put the other out"}, nil)
	r.server.presence.enter("another", r.server.o.Clock())
	r.shows("/desk/ACDEFH/person/p0", []string{"Phone that asks: open now. Let it in and put the other out"}, nil)
	r.event(class.Event{Kind: class.Left, Who: "p0", Text: "phone 0"})
	r.shows("/desk/ACDEFH", []string{"Let it in: Ada"}, []string{"put the other out", "Phone with"})
}

// The wall says that its numbers are nobody's, wherever it shows some.
func TestTheWallIsAnExample(t *testing.T) {
	r := newDeskRoom(t, "end", class.Together, 3)
	says := []string{"An example nobody has. Yours is on your phone."}
	r.shows("/wall/ACDEFH", nil, says)
	for range 5 {
		r.step(1)
		r.shows("/wall/ACDEFH", says, nil)
	}
	r.do("do", "pause")
	r.shows("/wall/ACDEFH", nil, says)
}

// People are counted one way: all counts are of those in the room, which is said once; those not
// here stand last, under a count.
func TestPeopleAreCountedOneWay(t *testing.T) {
	r := newDeskRoom(t, "end", class.Together, 24)
	r.come(0, 18)
	r.event(class.Event{Kind: class.Joined, Who: "visitor-a", Text: "v", Name: "Zoe"})
	r.step(1)
	for who := range 12 {
		r.answers(who, 0, who%2, "")
	}
	r.after.Add(int64(time.Minute))
	for i := range 16 {
		r.server.presence.heard(fmt.Sprint("phone ", i), r.server.o.Clock())
	}
	r.server.presence.heard("v", r.server.o.Clock())
	page := r.shows("/desk/ACDEFH", []string{"Answered: 12 of 19.", "In the room: 19. Of the 24 on the class list: 18.", "All counts of people, here and on the wall, are of these 19.",
		"Not here: 8. Not come yet: 6. Phone away: 2.", "6 of 12 answers."}, []string{" of 18", "12 of 24"})
	for _, want := range []string{"Answered: 12 of 19"} {
		r.shows("/wall/ACDEFH", []string{want}, nil)
	}
	here, away, _ := strings.Cut(page, `class="group"`)
	if n := strings.Count(here, "<tr class"); n != 17 || strings.Contains(here, "Quin") || !strings.Contains(away, "Quin") || strings.Contains(away, "Ada") {
		t.Error(n, " rows are of those here")
	}
	r.event(class.Event{Kind: class.Called, Who: "p17"}) // who asks is here, though the phone is dark
	r.shows("/desk/ACDEFH", []string{"Not here: 7. Not come yet: 6. Phone away: 1."}, nil)
}

// The working and the right answer of the question at hand are on the instructor's page from the
// first, and of everyone's own on theirs; on no phone and not on the wall.
func TestTheSolutionIsTheInstructors(t *testing.T) {
	r := newDeskRoom(t, "end", class.Together, 3)
	r.event(class.Event{Kind: class.Joined, Who: "p0", Text: kept("a-phone-that-has-a-name")})
	r.step(1)
	right := func(id string) (key string) {
		r.live.See(func(room *class.Room) {
			it, err := room.Asking().Item(id, 0)
			if err != nil {
				t.Fatal(err)
			}
			key = it.Words.KeyNumber(it.Problem)
		})
		return key
	}
	wall, own := right(class.OnTheWall), right("p0")
	r.shows("/desk/ACDEFH", []string{"Right answer and working, with the numbers on the wall", wall}, []string{own})
	r.shows("/desk/ACDEFH/person/p0", []string{"Right answer and working, with their numbers", own, "cos(a)"}, []string{wall})
	r.shows("/wall/ACDEFH", nil, []string{wall, own, "cos(a)"})
	_, phone := r.send("GET", "/r/ACDEFH", nil, "room-ACDEFH=a-phone-that-has-a-name")
	if !strings.Contains(phone, "compound") || strings.Contains(phone, own) || strings.Contains(phone, wall) || strings.Contains(phone, "cos(a)") {
		t.Error("on the phone: ", text(phone))
	}
}

// What phones tell, and when, stands under the way of the set, and under each way that it might
// be run.
func TestWhenPhonesTellIsSaid(t *testing.T) {
	says := map[string]string{"together": "Phones tell what came of a question when you show it.", "at-once": "Phones tell at once what came of each answer.", "end": "Phones tell what came when you close these questions.", "never": "Phones never tell what came."}
	for feedback, own := range map[string]string{"at-once": "at-once", "end": "end", "never": "never", `""`: "at-once"} {
		for _, way := range class.Ways {
			at := own
			if way == class.Together && own != "never" {
				at = "together"
			}
			r := newDeskRoom(t, feedback, way, 1)
			page := r.shows("/desk/ACDEFH", nil, nil)
			_, now, _ := strings.Cut(page, `id="now"`)
			if now, _, _ = strings.Cut(now, "</div>"); !strings.Contains(now, says[at]) {
				t.Errorf("%s, %s: %s", feedback, way, text(now))
			}
			_, ways, _ := strings.Cut(page, `data-key="ways"`)
			if want := says[own]; way == class.Together && !strings.Contains(ways, want) {
				t.Errorf("%s: no %q where it might be run another way: %s", feedback, want, text(ways))
			}
		}
	}
}
