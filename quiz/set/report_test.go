package set

import (
	"bytes"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"scratchpass/content"
	"scratchpass/quiz/answer"
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
			text, sure := typed(it.Problem, it.Problem.Expected.Key), answer.NotAsked
			switch {
			case it.Problem.Task.Name == "compound-travel" && i%2 == 0:
				for _, s := range it.Problem.Expected.Errors {
					if s.Name == "no-angle" {
						text, sure = typed(it.Problem, s.Response), answer.Bet
					}
				}
				slips++
			case it.Problem.Task.Name == "dial-past-a-turn" && r.IntN(4) == 0:
				text = "0.7777"
				odd++
			}
			answers = append(answers, Given{Code: m.Code(who.ID), Item: it.Number, Text: text, Certainty: sure, File: "x"})
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
			text := typed(it.Problem, it.Problem.Expected.Key)
			if i%3 == 0 {
				text = "0.9"
			}
			answers = append(answers, Given{Code: m.Code(who.ID), Item: it.Number, Text: text, File: "x"})
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

// The mean is that of the sheets handed in, and a form that nobody had is nobody's sheet.
func TestMeanAndForms(t *testing.T) {
	m := maker(t, "set: f\ntitle: x\nunits: in\nslots: [{tasks: [single-depth], points: 2}, {tasks: [stop-before-gauging]}]\n")
	class, err := Forms(4)
	if err != nil {
		t.Fatal(err)
	}
	all := items(t, m, class[0].ID)
	code := m.Code(class[0].ID)
	var answers []Given
	for who, right := range map[string][2]bool{"Ada": {true, true}, "Ben": {true, false}, "Cato": {false, false}} {
		for i, it := range all {
			text := typed(it.Problem, it.Problem.Expected.Key)
			if !right[i] {
				text = map[bool]string{true: "0.9", false: "2"}[i == 0]
				if text == typed(it.Problem, it.Problem.Expected.Key) {
					text = "1"
				}
			}
			answers = append(answers, Given{Code: code, Item: it.Number, Text: text, Certainty: answer.Bet, Who: who, File: "x"})
		}
	}
	s := NewSummary(m, content.Shipped())
	for _, r := range mark(t, m, class, answers) {
		s.Add(r)
	}
	rep := s.Report()
	if rep.Class != 3 || rep.Handed != 3 || len(rep.Missing) != 0 || rep.Mean != 1.67 { // (3 + 2 + 0) / 3
		t.Errorf("%d of %d handed in, missing %q, mean %v", rep.Handed, rep.Class, rep.Missing, rep.Mean)
	}
	// What was chosen is told in words: each sheet has its options in another order.
	words := 0
	for _, one := range rep.Sure {
		if one.Task == "stop-before-gauging" {
			words++
			if !strings.Contains(one.Given, "\"") || !strings.Contains(one.Key, "Tool backed clear") || one.Number != 2 {
				t.Errorf("%+v", one)
			}
		}
	}
	if words != 2 {
		t.Errorf("%d wrong though sure", words)
	}
}

// A question is compared with the rest of the sheet, not with itself: one that has nothing
// to do with the others goes with nothing.
func TestDiscriminationLeavesTheQuestionOut(t *testing.T) {
	var item, other, total []float64
	for i := range 64 {
		a, b := float64(i%2), float64(i/2%2) // each as often with either of the other
		item, other, total = append(item, a), append(other, b), append(total, a+b)
	}
	for _, one := range [][]float64{item, other} {
		if d, ok := discrimination(one, total); !ok || math.Abs(d) > 1e-12 {
			t.Errorf("%v, %v", d, ok)
		}
	}
}

// A part of what is right is half a point, and counted as that.
func TestPartlyRight(t *testing.T) {
	m := maker(t, "set: p\ntitle: x\nunits: in\nslots: [{tasks: [thread-dial-line], level: 2, points: 2}]\n")
	s := NewSummary(m, content.Shipped())
	partly := 0
	for _, who := range roster(20) {
		it := items(t, m, who.ID)[0]
		marks := strings.Split(it.Problem.Expected.Text(), ", ")
		if len(marks) < 3 {
			continue
		}
		partly++
		r := mark(t, m, []Apprentice{who}, []Given{{Code: m.Code(who.ID), Item: 1, Text: strings.Join(marks[1:], " "), Certainty: answer.Bet}})[0]
		if r.Points != 1 {
			t.Errorf("%v of 2 for %v", r.Points, marks[1:])
		}
		s.Add(r)
	}
	if rep := s.Report(); partly == 0 || rep.Tasks[0].Partly != partly || rep.Tasks[0].Wrong != 0 || len(rep.Sure) != 0 {
		t.Errorf("%d partly right: %+v", partly, rep.Tasks)
	}
}

// The right number in another unit ruins the part all the same: who would have bet it on
// that is listed, as in the learner's own record.
func TestSureOfAWrongUnit(t *testing.T) {
	m := maker(t, "set: u\ntitle: x\nunits: in\nslots: [{tasks: [single-depth], level: 2, points: 2}]\n")
	who := roster(1)[0]
	it := items(t, m, who.ID)[0]
	for _, sure := range []answer.Certainty{answer.NotAsked, answer.Guess, answer.Fairly, answer.Bet} {
		s := NewSummary(m, content.Shipped())
		text := it.Problem.Expected.Unit.Fixed(it.Problem.Expected.Key.X * 1000) // thousandths, without a word
		s.Add(mark(t, m, []Apprentice{who}, []Given{{Code: m.Code(who.ID), Item: 1, Text: text, Certainty: sure}})[0])
		rep := s.Report()
		if want := map[bool]int{true: 1}[sure == answer.Bet]; rep.Tasks[0].Unit != 1 || len(rep.Sure) != want {
			t.Errorf("%s, %q: %d in another unit, %d sure but wrong", text, sure, rep.Tasks[0].Unit, len(rep.Sure))
		}
	}
}
