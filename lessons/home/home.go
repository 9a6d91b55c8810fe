// Package home is the screen that the program opens with, and the questions that describe
// a learner's lathe.
package home

import (
	"errors"
	"slices"

	"scratchpass/lessons/course"
	"scratchpass/lessons/page"
	"scratchpass/lessons/practice"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
)

// Doors are what the home screen opens besides lessons and practice; those that are nil
// are left out.
type Doors struct {
	Progress  func() error
	Rehearse  func() error
	SaveLathe func(machine.Lathe) (where string, err error) // keeps a described machine
	OneRecord bool                                          // there can be no other record of the learner's
	AtMenu    func() error                                  // is called when the menu is there: no sitting goes on
}

// Run shows the home screen until the learner is done.
func Run(s *sitting.Session, d Doors) error {
	h := &home{Session: s, Doors: d, course: course.Load(s.Library)}
	for first := true; ; first = false {
		if err := h.look(); err != nil {
			return err
		}
		if err := s.Face.Show(h.page(first)); err != nil {
			return err
		}
		if d.AtMenu != nil {
			if err := d.AtMenu(); err != nil {
				return err
			}
		}
		doors := h.doors()
		var labels []string
		for _, d := range doors {
			labels = append(labels, d.label)
		}
		i, err := h.choose("home-ask", labels, false)
		if err != nil {
			return page.Farewell(err, s.Say("say-stopped", "done", s.Done(h.answers)))
		}
		if doors[i].open == nil {
			return nil
		}
		// Who stops inside is back at the menu; who stops there leaves.
		if err := doors[i].open(); err != nil && !errors.Is(err, errBack) && !errors.Is(err, page.ErrStopped) {
			return err
		}
	}
}

type home struct {
	*sitting.Session
	Doors
	course  course.Course
	plan    *course.Plan       // nil where no record is kept
	looked  bool               // someone who is here for the first time wants the whole menu
	answers []sitting.Answered // of all sittings since the program was opened
}

// look makes the plan from what the record holds now.
func (h *home) look() error {
	if h.Book == nil {
		return nil
	}
	p, err := h.course.Plan(h.Book, h.System, h.Clock())
	h.plan = &p
	return err
}

// sit runs a flow as a sitting of its own.
func (h *home) sit(f sitting.Flow) error {
	answers, err := h.Session.Run(f)
	h.answers = append(h.answers, answers...)
	return err
}

// errBack leaves a menu for the one before.
var errBack = errors.New("back")

func (h *home) choose(ask string, options []string, back bool) (int, error) {
	return sitting.Choose(h.Session, h.Face, h.Say(ask), page.Menu{Options: options, Back: back})
}

// homePractice is how many problems a session from the home screen has.
const homePractice = 5

func (h *home) choosePractice() error {
	options := []string{h.Say("home-mixed")}
	choices := [][]string{h.Tasks.Names()}
	for _, stage := range append(slices.Clone(problem.Stages), problem.Own) {
		if len(h.Tasks.OfStage(stage)) == 0 {
			continue
		}
		names, err := practice.Resolve(h.Tasks, []string{string(stage)})
		if err != nil {
			return err
		}
		options = append(options, h.Say("stage-"+string(stage)))
		choices = append(choices, names)
	}
	i, err := h.choose("home-which-stage", append(options, h.Say("home-back")), true)
	if err != nil {
		return err
	}
	if i == len(choices) {
		return errBack
	}
	return h.sit(practice.Practice{Tasks: choices[i], Level: problem.NumbersGiven, Count: homePractice})
}

func (h *home) describeAndKeep() error {
	lathe, err := DescribeLathe(h.Session)
	if err != nil {
		return err
	}
	where, err := h.SaveLathe(lathe)
	if err != nil {
		return err
	}
	h.UseLathe(lathe)
	return h.Face.Show(page.Page{page.Paragraph{Text: h.Say("lathe-kept", "where", where)}})
}
