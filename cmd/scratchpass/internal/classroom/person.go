package classroom

import (
	"strconv"
	"time"

	"scratchpass/calc"
	"scratchpass/lessons/class"
	"scratchpass/lessons/page"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/set"
)

// personPage is what a class has of one person, in sentences: what happened and when, then what
// was asked and answered, with its marks.
func personPage(s *sitting.Session, room *class.Room, p *class.Person, events []class.Event) (page.Page, error) {
	all := page.Page{page.Heading{Text: s.Say("class-person", "name", p.Name, "title", room.Head.Title, "time", clock(room.Head.Began, "2006-01-02 15:04"))}}
	if p.Visitor {
		all = append(all, page.Paragraph{Text: s.Say("class-person-visitor")})
	} else {
		all = append(all, page.Paragraph{Text: s.Say("class-person-id", "id", p.ID)})
	}
	if p.Keeps {
		all = append(all, page.Paragraph{Text: s.Say("class-person-keeps")})
	}
	all = append(all, page.Heading{Text: s.Say("class-person-when")})
	for _, e := range events {
		what, err := happened(s, room, p, e)
		if err != nil {
			return nil, err
		}
		if what != "" {
			all = append(all, page.Item{Text: s.Say("class-person-line", "time", clock(e.At, "2006-01-02 15:04:05"), "what", what)})
		}
	}
	all = append(all, page.Heading{Text: s.Say("class-person-asked")})
	for n := range room.Sets {
		marks, err := marksOf(s, room, p, n)
		if err != nil {
			return nil, err
		}
		all = append(all, marks...)
	}
	return all, nil
}

// clock is a moment as it is on the clocks here.
func clock(at time.Time, layout string) string { return at.In(time.Local).Format(layout) }

// says are the sentences of what happens to a person, where the kind alone tells it.
var says = map[class.Kind]string{
	class.Joined: "class-person-joined", class.Left: "class-person-left", class.Let: "class-person-let", class.Refused: "class-person-refused",
	class.Answered: "class-person-answered", class.Counted: "class-person-counted", class.Hinted: "class-person-hinted", class.Called: "class-person-called",
	class.Seen: "class-person-seen", class.Unclear: "class-person-unclear", class.Keeps: "class-person-keep", class.Longer: "class-person-longer",
	class.Renamed: "class-person-renamed", class.Merged: "class-person-merged", class.Removed: "class-person-removed",
}

// happened tells an event in a sentence; empty for one that says nothing of the person.
func happened(s *sitting.Session, room *class.Room, p *class.Person, e class.Event) (string, error) {
	key, ok := says[e.Kind]
	if !ok {
		return "", nil
	}
	n, given := e.N, e.Text
	switch e.Kind {
	case class.Answered, class.Counted, class.Hinted:
		if e.Set < 0 || e.Set >= len(room.Sets) {
			return "", nil
		}
		it, err := room.Sets[e.Set].Item(p.ID, e.Place)
		if err != nil {
			return "", err
		}
		n = it.Number
	case class.Keeps:
		if e.N == 0 {
			key = "class-person-keep-not"
		}
	}
	if e.Kind == class.Answered && e.Name != "" {
		key = "class-person-typed"
	}
	text := s.Say(key, "n", n, "set", e.Set+1, "given", given, "typed", e.Name)
	if e.Certainty != answer.NotAsked && e.Certainty != "" {
		text += " " + s.Say("class-person-sure", "sure", s.Say("say-sure-"+string(e.Certainty)))
	}
	return text, nil
}

// marksOf are the questions of a set that someone had, with what came of their answers.
func marksOf(s *sitting.Session, room *class.Room, p *class.Person, n int) (page.Page, error) {
	items, err := room.Sets[n].Items(p.ID)
	if err != nil {
		return nil, err
	}
	result, err := room.Marked(p, n)
	if err != nil {
		return nil, err
	}
	// What nobody was asked is worth nothing, as in the marks.
	unasked := room.Sets[n].NeverPut()
	never := func(i int) bool { return unasked[items[i].Place] && result.Items[i].Given == "" }
	of := result.Of
	for i, it := range items {
		if never(i) {
			of -= it.Points
		}
	}
	all := page.Page{page.Paragraph{Text: s.Say("class-person-points", "n", n+1, "title", room.Sets[n].Blueprint.Title, "points", calc.Shortest(result.Points, 2), "of", calc.Shortest(of, 2))}}
	for i, it := range items {
		came := result.Items[i]
		asked := s.QuestionOf(it.Problem, it.Words)
		all = append(all, page.Paragraph{Text: strconv.Itoa(it.Number) + ") " + asked.Text})
		for j, line := range asked.Lines {
			all = append(all, page.Item{Text: strconv.Itoa(j+1) + ") " + line})
		}
		if never(i) {
			all = append(all, page.Item{Text: s.Say("class-person-not-asked")})
			continue
		}
		if came.Verdict == set.Blank {
			all = append(all, page.Item{Text: s.Say("class-gave-nothing")})
			continue
		}
		all = append(all, page.Item{Text: s.Say("class-gave", "given", came.Given) + " " + s.Say("class-key-is", "key", came.Key)},
			page.Item{Text: s.Say("class-person-marked", "verdict", came.Verdict, "points", calc.Shortest(came.Points, 2), "of", calc.Shortest(came.Of, 2))})
	}
	return all, nil
}
