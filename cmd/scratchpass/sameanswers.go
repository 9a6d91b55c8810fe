package main

import (
	"fmt"

	"scratchpass/quiz/set"
)

// sameAnswers looks whether a question has one answer for a whole class.
type sameAnswers struct {
	answers map[int]map[string]bool // by place; no more than a few of each are kept
	sheets  int
}

func newSameAnswers() *sameAnswers { return &sameAnswers{answers: map[int]map[string]bool{}} }

func (s *sameAnswers) add(items []set.Item) {
	s.sheets++
	for _, it := range items {
		if s.answers[it.Place] == nil {
			s.answers[it.Place] = map[string]bool{}
		}
		if len(s.answers[it.Place]) < 3 {
			s.answers[it.Place][it.Problem.Answer.Text()] = true
		}
	}
}

// warn says which questions can be copied from a neighbour.
func (s *sameAnswers) warn(d *desk) {
	if s.sheets < 2 {
		return
	}
	for place := range d.maker.Blueprint.Items() {
		if len(s.answers[place]) == 1 {
			fmt.Fprintln(d.app.err, d.say("set-same", "n", place+1))
		}
	}
}
