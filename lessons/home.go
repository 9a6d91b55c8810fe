package lessons

import (
	"errors"
	"slices"
	"strconv"

	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
)

// Home is the screen that the program opens with. It returns when the learner is
// done. saveLathe keeps a described machine; best, progress and rehearse are what the
// program opens besides, and are left out when they are nil.
func (s *Session) Home(saveLathe func(machine.Lathe) (where string, err error), best, progress, rehearse func() error) error {
	if err := s.Terminal.Show(Text{
		{Heading, s.say("home-title")},
		{Plain, s.say("home-what")},
		{Caution, s.say("rehearsal")},
		{Faint, s.say("home-lathe", "lathe", s.Lathe.Name)},
	}); err != nil {
		return err
	}
	for {
		doors := []door{
			{s.say("home-best"), best},
			{s.say("home-learn"), s.chooseLesson},
			{s.say("home-progress"), progress},
			{s.say("home-practise"), s.choosePractice},
			{s.say("bench-door"), rehearse},
			{s.say("home-lathe-door"), func() error { return s.describeAndKeep(saveLathe) }},
			{s.say("home-safety"), s.showSafety},
			{s.say("home-leave"), nil},
		}
		doors = slices.DeleteFunc(doors, func(d door) bool { return d.open == nil && d.label != s.say("home-leave") })
		q := Question{Prompt: s.say("home-ask"), Back: true}
		for _, d := range doors {
			q.Options = append(q.Options, d.label)
		}
		i, err := s.choose(q)
		if err != nil {
			return err
		}
		if doors[i].open == nil {
			return nil
		}
		// Who stops inside is back at the menu; who stops there leaves.
		if err := doors[i].open(); err != nil && !errors.Is(err, errBack) && !errors.Is(err, ErrStopped) {
			return err
		}
		s.describing, s.rehearsing = false, false
	}
}

// door is a line of the home menu and where it leads; the last leads out.
type door struct {
	label string
	open  func() error
}

// errBack leaves a menu for the one before.
var errBack = errors.New("back")

// choose asks for one option until it gets one, and returns its index.
func (s *Session) choose(q Question) (int, error) {
	for {
		reply, err := s.Terminal.Choose(q)
		if err != nil {
			return 0, err
		}
		if word, ok := asked(reply, anywhere); ok && word == WordStop {
			return 0, ErrStopped
		}
		for i := range q.Options {
			if reply == strconv.Itoa(i+1) {
				return i, nil
			}
		}
		if err := s.show(Plain, s.say("say-choose-again", "n", len(q.Options))); err != nil {
			return 0, err
		}
	}
}

func (s *Session) chooseLesson() error {
	names := s.Library.LessonNames()
	q := Question{Prompt: s.say("home-which-lesson")}
	for _, name := range names {
		l, err := s.Library.Lesson(name)
		if err != nil {
			return err
		}
		q.Options = append(q.Options, Title(l))
	}
	q.Options, q.Back = append(q.Options, s.say("home-back")), true
	i, err := s.choose(q)
	if err != nil {
		return err
	}
	if i == len(names) {
		return errBack
	}
	return s.Lesson(names[i])
}

// homePractice is how many problems a session from the home screen has.
const homePractice = 5

func (s *Session) choosePractice() error {
	q := Question{Prompt: s.say("home-which-stage"), Options: []string{s.say("home-mixed")}}
	choices := [][]string{tasks.Names()}
	for _, stage := range problem.Stages {
		if names, _ := Resolve([]string{string(stage)}); len(tasks.OfStage(stage)) > 0 {
			q.Options = append(q.Options, s.say("stage-"+string(stage)))
			choices = append(choices, names)
		}
	}
	q.Options, q.Back = append(q.Options, s.say("home-back")), true
	i, err := s.choose(q)
	if err != nil {
		return err
	}
	if i == len(choices) {
		return errBack
	}
	return s.Practice(choices[i], problem.NumbersGiven, homePractice)
}

func (s *Session) showSafety() error {
	text := Text{{Heading, s.say("home-safety")}}
	for _, key := range sortedKeys(s.safety) {
		c := s.safety[key]
		text = append(text, Block{Plain, "- " + c.Title + ". " + c.Text})
	}
	return s.Terminal.Show(append(text, Block{Caution, s.say("rehearsal")}))
}

func (s *Session) describeAndKeep(save func(machine.Lathe) (string, error)) error {
	lathe, err := s.DescribeLathe()
	if err != nil {
		return err
	}
	where, err := save(lathe)
	if err != nil {
		return err
	}
	s.UseLathe(lathe)
	return s.show(Plain, s.say("lathe-kept", "where", where))
}

// UseLathe sets the lathe, and with it the units it works in.
func (s *Session) UseLathe(l machine.Lathe) {
	s.Lathe, s.System = l, machine.Imperial
	if l.Metric {
		s.System = machine.Metric
	}
}
