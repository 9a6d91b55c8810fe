package served

import (
	"html/template"

	"scratchpass/lessons/class"
	"scratchpass/lessons/face/web"
	"scratchpass/lessons/page"
)

// deskPlace is a question of the set at hand.
type deskPlace struct {
	class.Place
	State    string // the end of the name of a phrase
	CanOpen  bool
	CanLook  bool
	CanAgain bool
	Mistakes []deskMistake
	Solution template.HTML // of the question at hand, with the numbers on the wall
}

// deskMistake is a common error, and where it is taught.
type deskMistake struct {
	class.Mistakes
	Look string // a sentence; empty for what is practised alone
}

// placeOf is a question of the set at hand, with what can be done about it.
func (s *Server) placeOf(room *class.Room, a *class.Asking, p class.Place) (deskPlace, error) {
	one := deskPlace{Place: p}
	if a.Way == class.Together {
		one.State = "not-yet"
	}
	together := a.Way == class.Together && !room.Ended && !room.Paused
	here := a.Way == class.Together && a.Open == p.Place
	switch {
	case here && a.Shown(p.Place) > 0 && p.Spread.Few() && !a.Counted(p.Place):
		one.State = "few"
	case here && a.Shown(p.Place) > 0:
		one.State = "shown"
	case here && a.Locked:
		one.State = "closed"
	case here:
		one.State = "open"
	case a.Way == class.Together && a.Been(p.Place):
		one.State = "been"
	}
	one.CanOpen = together && !a.Told(p.Place) && (!here || a.Locked)
	one.CanLook = together && !here && a.Been(p.Place)
	one.CanAgain = !room.Ended && (a.Been(p.Place) || a.Way != class.Together && p.Spread.Answered > 0)
	for _, m := range p.Spread.Mistakes() {
		one.Mistakes = append(one.Mistakes, deskMistake{m, s.lessonOf(m.Task)})
	}
	if !here {
		return one, nil
	}
	it, err := room.Example(room.Now, p.Place)
	if err != nil {
		return one, err
	}
	one.Solution, err = web.Blocks(class.Solution(s.o.Session, it), page.Prompt{})
	return one, err
}

// lessonOf says where a task is taught; empty for what is practised alone.
func (s *Server) lessonOf(task string) string {
	in, ok := s.taught()[task]
	if !ok {
		return ""
	}
	return s.say("set-report-reteach", "lesson", in.Lesson, "part", in.Part)
}
