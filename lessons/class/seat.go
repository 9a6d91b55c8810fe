package class

import (
	"slices"
	"time"

	"scratchpass/lessons/page"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/set"
)

// Seat is what a phone shows.
type Seat struct {
	Scene  Scene
	Where  page.Where
	Says   string // in a line: that an answer is kept, what is waited for
	Body   page.Page
	Came   page.Page   // of the answer to the question at hand
	Panel  *page.Bench // that the prompt belongs to, in a bench round; else nil
	Prompt page.Prompt // of a question; takes nothing where none is asked
	Sure   []Sureness  // to be ticked beside the answer; empty where that is not asked
	Given  string      // the answer that is kept, to be changed
	Next   bool        // there is a next question to go to
	All    bool        // there is a list of all questions to go back to
	Asks   bool        // a line is asked for: what is still unclear
	Wrote  string      // what was written there
}

// Sureness is how sure someone may be.
type Sureness struct {
	Value answer.Certainty
	Name  string
	Now   bool // it was ticked before
}

// Rules are what is true of a question in a set: hints are for practice, not where what came
// is told at the end or never.
func (a At) Rules() sitting.Rules {
	return sitting.Rules{NoHints: !a.Asked.AtOnce() || a.Way == Ticket, AtTheEnd: !a.Asked.AtOnce()}
}

// AsksSure reports whether each answer is asked how sure someone is.
func (a *Asking) AsksSure() bool { return a.Blueprint.Sure || a.Way == Ticket }

// Asking is the page that asks the question at hand.
func (a At) Asking(s *sitting.Session) page.Page {
	q := s.QuestionOf(a.Item.Problem, a.Item.Words)
	q.Code = "" // who has it has the key
	p := page.Page{q}
	for _, b := range a.Before {
		says := "class-follows"
		if b.Given == "" {
			says = "class-follows-none"
		}
		p = append(p, page.Aside{Text: s.Say(says, "n", b.Number, "title", b.Title, "given", b.Given)})
	}
	return p
}

// Seat is what a phone shows of where someone is, in the words of a session.
func (a At) Seat(s *sitting.Session) Seat {
	seat := Seat{Scene: a.Scene}
	switch a.Scene {
	case Waits, Stops, Over:
		seat.Says = s.Say("class-" + string(a.Scene))
	case Done:
		seat.Says = s.Say("class-done")
		if a.answered() < len(a.Lines) {
			seat.Says = s.Say("class-no-more")
		}
	case Closed:
		seat.Says = s.Say("class-closed")
		switch {
		case a.Answer != nil && a.Answer.Late:
			seat.Says = s.Say("class-late")
		case a.Answer != nil:
			seat.Says = s.Say("class-closed-with", "given", a.gave(s))
		}
	case Kept:
		seat.Says = s.Say("class-kept", "given", a.gave(s))
	}
	if a.Asked == nil || a.Scene == Stops {
		return seat
	}
	if a.Way == Ticket && (a.Scene == Done || a.Scene == Over) {
		seat.Asks, seat.Wrote = a.Scene == Done, a.Person.Unclear[a.Set]
	}
	if a.Item.Problem != nil {
		a.atQuestion(s, &seat)
		return seat
	}
	switch {
	case a.Scene == Over:
		for i, c := range a.Came {
			if len(a.Came) > 1 {
				seat.Body = append(seat.Body, page.Heading{Text: s.Say("class-came-set", "n", i+1, "name", c.Name())})
			}
			seat.Body = append(seat.Body, c.summary(s)...)
		}
	case a.Marks:
		seat.Body = Came{a.Asked, a.Lines, a.Result}.summary(s)
	}
	return seat
}

// atQuestion fills in the question at hand, and what came of the answer.
func (a At) atQuestion(s *sitting.Session, seat *Seat) {
	seat.Where = s.Problems(a.Item.Number-1, a.Of)
	seat.Where.Text = s.Say("class-wall-place", "n", a.Item.Number, "of", a.Of) // the word of the wall and of paper
	seat.Where.Done = a.answered()
	if a.Way == Together { // the room goes on, not the phone
		seat.Where.Done = a.Item.Number
	}
	seat.Body = a.Asking(s)
	switch a.Scene {
	case Asks, Kept:
		seat.Prompt = sitting.Asking(a.Item.Problem, a.Item.Words, seat.Body, a.Rules())
		seat.Prompt.Words = slices.DeleteFunc(seat.Prompt.Words, func(w string) bool { return w == page.WordStop || w == page.WordLook })
		if a.Answer != nil && !a.passed() {
			seat.Given = a.Answer.Text
		}
		if a.Asked.AsksSure() {
			for _, c := range answer.Certainties {
				seat.Sure = append(seat.Sure, Sureness{c, s.Say("say-sure-" + string(c)), a.Answer != nil && a.Answer.Certainty == c})
			}
		}
	case Tells, Over:
		if a.Marks {
			seat.Came = a.told(s)
		}
	}
	goesOn := a.Way != Together && (a.Scene == Tells || a.Scene == Kept || a.Scene == Closed)
	seat.Next = goesOn && a.answered() < len(a.Lines)
	seat.All = a.Scene == Over || goesOn && !seat.Next
}

// passed reports whether the answer is that someone does not know.
func (a At) passed() bool {
	word, _ := page.Typed(a.Answer.Text, page.Anywhere)
	return word == page.WordPass
}

// gave is the answer as its person reads it.
func (a At) gave(s *sitting.Session) string {
	if a.passed() {
		return s.Say("web-pass")
	}
	return a.Answer.Text
}

func (a At) answered() int {
	n := 0
	for _, l := range a.Lines {
		if l.Answered {
			n++
		}
	}
	return n
}

// told is what came of the answer to the question at hand.
func (a At) told(s *sitting.Session) page.Page {
	if a.Answer == nil {
		p := s.Told(a.Item.Problem, a.Item.Words, notKnown)
		return append(page.Page{page.Paragraph{Text: s.Say("class-not-answered")}}, withoutPauses(a.worked(s, p))[1:]...)
	}
	if a.Answer.Late {
		return append(page.Page{page.Aside{Text: s.Say("class-late")}}, a.came(s)...)
	}
	return a.came(s)
}

// notKnown is the mark of who does not know: what is told of it has the whole way to the answer.
var notKnown = answer.Mark{Verdict: answer.Wrong, Passed: true}

// came is what came of an answer that was given, late or not.
func (a At) came(s *sitting.Session) page.Page {
	i := a.Item.Number - 1
	res := a.Result.Items[i]
	given, key := a.Answer.Text, res.Key
	switch {
	case res.Verdict == set.Carried:
		return a.worked(s, page.Page{page.Verdict{Right: true, Text: s.Say("set-feedback-carried", "given", given, "key", key)}})
	case res.Verdict == set.ByHand:
		return a.worked(s, page.Page{page.Paragraph{Text: s.Say("set-feedback-by-hand", "given", given)}})
	}
	return withoutPauses(a.worked(s, s.Told(a.Item.Problem, a.Item.Words, sitting.MarkOf(a.Item.Problem, given))))
}

// worked is what is told of a question with as much of the working as the wall has, where the room
// works it out together: whoever answered what.
func (a At) worked(s *sitting.Session, p page.Page) page.Page {
	if a.Way != Together || a.Scene != Tells {
		return p
	}
	n := max(0, a.Asked.Shown(a.Item.Place)-1)
	lines := workingTo(s, a.Item, n)
	if i := slices.IndexFunc(p, isWorking); i >= 0 && n > 0 && a.Item.Problem.Task.Kind.InOrder() {
		return p // one line, in which their own order is looked at
	}
	p = slices.DeleteFunc(p, isWorking)
	at := min(2, len(p)) // behind the verdict and the reason
	return slices.Insert(p, at, lines...)
}

// isWorking reports whether a block is the way to an answer.
func isWorking(b page.Block) bool {
	switch b.(type) {
	case page.Working, page.Sequence:
		return true
	}
	return false
}

func withoutPauses(p page.Page) page.Page {
	return slices.DeleteFunc(p, func(b page.Block) bool { return b == page.Block(page.Pause{}) })
}

// Until says when the time is up: as a time of day, never counted down.
func (a At) Until(s *sitting.Session, local *time.Location) string {
	if !a.Timed || a.Way == Together || a.Scene != Asks && a.Scene != Kept {
		return ""
	}
	return s.Say("class-until", "time", a.Ends.In(local).Format("15:04"))
}
