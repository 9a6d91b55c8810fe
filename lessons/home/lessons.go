package home

import (
	"errors"

	"scratchpass/lessons/course"
)

// chooseLesson lists the lessons that every first thread needs, and behind a line of their
// own those that it does not.
func (h *home) chooseLesson() error {
	if len(h.course) < len(h.Library.LessonNames()) { // one can't be read: the instructor should hear why
		for _, name := range h.Library.LessonNames() {
			if _, err := h.Library.Lesson(name); err != nil {
				return err
			}
		}
	}
	lessons := h.lessonsAt()
	var needed, special []course.LessonAt
	for _, l := range lessons {
		if l.Special {
			special = append(special, l)
		} else {
			needed = append(needed, l)
		}
	}
	for {
		labels := h.labels(needed)
		if len(special) > 0 {
			labels = append(labels, h.Say("home-special", "n", len(special)))
		}
		i, err := h.choose("home-which-lesson", append(labels, h.Say("home-back")), true)
		switch {
		case err != nil:
			return err
		case i < len(needed):
			return h.sit(course.Lesson{Lesson: needed[i].Name})
		case i == len(labels):
			return errBack
		}
		if err := h.chooseSpecial(special); !errors.Is(err, errBack) {
			return err
		}
	}
}

func (h *home) chooseSpecial(lessons []course.LessonAt) error {
	i, err := h.choose("home-which-special", append(h.labels(lessons), h.Say("home-back")), true)
	if err != nil {
		return err
	}
	if i == len(lessons) {
		return errBack
	}
	return h.sit(course.Lesson{Lesson: lessons[i].Name})
}

// lessonsAt are all lessons, with how far the learner is where a record is kept.
func (h *home) lessonsAt() []course.LessonAt {
	if h.plan != nil {
		return h.plan.Lessons
	}
	return h.course.NoPlan().Lessons
}

func (h *home) labels(lessons []course.LessonAt) []string {
	var labels []string
	for _, l := range lessons {
		next := h.plan != nil && h.plan.Next != nil && h.plan.Next.Name == l.Name
		labels = append(labels, l.Label(h.Say, next))
	}
	return labels
}
