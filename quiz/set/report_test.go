package set

import (
	"bytes"
	"math/rand/v2"
	"strings"
	"testing"

	"scratchpass/content"
	"scratchpass/quiz"
	"scratchpass/quiz/handout"
)

// What a class of simulated apprentices gets wrong is what the report says.
func TestReport(t *testing.T) {
	m := example(t, "first-thread.yaml")
	class := roster(40)
	r := rand.New(rand.NewPCG(1, 2))
	var answers []Given
	slips, odd := 0, 0
	for i, who := range class {
		if i%10 == 9 {
			continue // was not there
		}
		for _, it := range items(t, m, who.ID) {
			text, sure := typed(it.Problem, it.Problem.Answer.Key), ""
			switch {
			case it.Problem.Task.Name == "compound-travel" && i%2 == 0:
				it.Problem.SlipReplies(func(s *quiz.Slip, r quiz.Reply) {
					if s.Name == "no-angle" {
						text, sure = typed(it.Problem, r), "bet"
					}
				})
				slips++
			case it.Problem.Task.Name == "dial-past-a-turn" && r.IntN(4) == 0:
				text = "0.7777"
				odd++
			}
			answers = append(answers, Given{Code: m.Code(who.ID), Item: it.Number, Text: text, Certainty: sure, Where: "x"})
		}
	}
	s := NewSummary(m, content.Shipped())
	for _, res := range mark(t, m, class, answers) {
		s.Add(res)
	}
	rep := s.Report()
	if rep.Class != 40 || rep.Handed != 36 || len(rep.Missing) != 4 || len(rep.Sure) != slips || len(rep.Strange) != odd || rep.Alpha == nil {
		t.Errorf("%d of %d, %d missing, %d sure of %d, %d strange of %d, alpha %v", rep.Handed, rep.Class, len(rep.Missing), len(rep.Sure), slips, len(rep.Strange), odd, rep.Alpha)
	}
	for _, task := range rep.Tasks {
		switch task.Task {
		case "compound-travel":
			if task.Slip != slips || len(task.Slips) != 1 || task.Slips[0].Times != slips || task.Lesson != "how-deep-to-go" || task.Part == "" {
				t.Errorf("%+v", task)
			}
		case "single-depth":
			if task.Right != 36 || task.Share != 1 || task.Low < 0.9 || task.High != 1 {
				t.Errorf("%+v", task)
			}
		}
	}
	p, err := NewPrinter(m, content.Shipped())
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range handout.Formats() {
		var out bytes.Buffer
		w, err := f.New(&out, p.Options("x"))
		if err == nil {
			err = w.Report(p.Page(rep))
		}
		if err == nil {
			err = w.Close()
		}
		if err != nil || out.Len() == 0 {
			t.Errorf("%s: %v", f.Name, err)
		}
		if f.Name != "pdf" && strings.Contains(out.String(), "${") {
			t.Errorf("%s: a figure is missing", f.Name)
		}
	}
}

// Below thirty sheets no figure is given on a single question.
func TestFewSheetsGiveNoStatistics(t *testing.T) {
	m := example(t, "exit-ticket.yaml")
	class := roster(29)
	var answers []Given
	for i, who := range class {
		for _, it := range items(t, m, who.ID) {
			text := typed(it.Problem, it.Problem.Answer.Key)
			if i%3 == 0 {
				text = "0.9"
			}
			answers = append(answers, Given{Code: m.Code(who.ID), Item: it.Number, Text: text, Where: "x"})
		}
	}
	s := NewSummary(m, content.Shipped())
	for _, r := range mark(t, m, class, answers) {
		s.Add(r)
	}
	rep := s.Report()
	if rep.Alpha != nil {
		t.Error(*rep.Alpha)
	}
	for _, it := range rep.Items {
		if it.Discrimination != nil {
			t.Error(*it.Discrimination)
		}
	}
}
