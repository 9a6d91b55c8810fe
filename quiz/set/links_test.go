package set

import (
	"fmt"
	"strconv"
	"strings"
	"testing"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
)

// Three questions, each of which takes over the answer before it.
const linked = `
set: linked
title: Linked
units: in
slots:
  - {name: pitch, tasks: [pitch-from-tpi]}
  - {name: travel, tasks: [compound-travel], takes: {pitch: pitch}}
  - {tasks: [infeed-left], takes: {total: travel}}
`

// A slip costs once: what follows rightly from it earns its points, through two links.
func TestOneSlipCostsOnce(t *testing.T) {
	m := maker(t, linked)
	tried := 0
	for _, who := range roster(12) {
		all := items(t, m, who.ID)
		for i := 1; i < 3; i++ {
			if q := all[i].Words.Question(all[i].Problem); !strings.Contains(q, fmt.Sprint("your answer to question ", i)) || strings.Contains(q, all[i-1].Problem.Expected.Text()) {
				t.Fatalf("question %d reads %q", i+1, q)
			}
		}
		code := m.Code(who.ID)
		give := func(texts ...string) Result {
			var answers []Given
			for i, text := range texts {
				if text != "" {
					answers = append(answers, Given{Code: code, Item: i + 1, Text: text, File: "x"})
				}
			}
			return mark(t, m, []Apprentice{who}, answers)[0]
		}
		verdicts := func(r Result) string {
			return fmt.Sprint(r.Items[0].Verdict, " ", r.Items[1].Verdict, " ", r.Items[2].Verdict, " ", r.Points)
		}
		var half answer.Response
		for _, s := range all[0].Problem.Expected.Errors {
			if s.Name == "half" {
				half = s.Response
			}
		}
		travel, err := all[1].Problem.WithInput("pitch", half.X, "")
		if err != nil {
			t.Fatal(err)
		}
		left, err := all[2].Problem.WithInput("total", printed(travel), "")
		if err != nil {
			continue // with half the travel nothing is left to feed: there is no answer to carry
		}
		tried++
		keys := []string{all[0].Problem.Expected.Text(), all[1].Problem.Expected.Text(), all[2].Problem.Expected.Text()}
		wrong := typed(all[0].Problem, half)
		off := left.Expected.Key.X + 0.0043 // follows from nothing
		for all[2].Problem.Expected.Right(answer.NumberResponse(off)) || left.Expected.Right(answer.NumberResponse(off)) {
			off += 0.0017
		}
		for want, texts := range map[string][]string{
			"right right right 3":      keys,
			"slip carried carried 2":   {wrong, travel.Expected.Text(), left.Expected.Text()},
			"slip right right 2":       {wrong, keys[1], keys[2]}, // right all the same
			"slip carried right 2":     {wrong, travel.Expected.Text(), keys[2]},
			"slip carried safe-side 1": {wrong, travel.Expected.Text(), calc.Fixed(off, 4)},
			"blank safe-side blank 0":  {"", travel.Expected.Text(), ""}, // nothing wrong before it: nothing is carried
		} {
			if got := verdicts(give(texts...)); got != want && !strings.Contains(want, "safe-side") {
				t.Errorf("%v: %s, want %s", texts, got, want)
			} else if strings.Contains(want, "safe-side") && !strings.HasSuffix(got, want[len(want)-2:]) {
				t.Errorf("%v: %s, want %s", texts, got, want)
			}
		}
	}
	if tried < 6 {
		t.Errorf("only %d of 12 sheets could carry an answer", tried)
	}
}

// What starts from an answer that was right but rounded counts; what starts from one that
// can't be read is left for the instructor like it.
func TestRoundedAndUnreadAnswersBeforeALink(t *testing.T) {
	m := maker(t, "set: l\ntitle: x\nunits: in\nslots: [{name: travel, tasks: [compound-travel]}, {tasks: [infeed-left], takes: {total: travel}}]\n")
	tried := 0
	for _, who := range roster(20) {
		all := items(t, m, who.ID)
		rounded := strconv.FormatFloat(all[0].Problem.Expected.Key.X, 'f', 3, 64)
		if all[0].Problem.Mark(rounded).Verdict != answer.Right {
			continue
		}
		x, _ := strconv.ParseFloat(rounded, 64)
		after, err := all[1].Problem.WithInput("total", x, "")
		if err != nil {
			continue
		}
		tried++
		code := m.Code(who.ID)
		give := func(first, second string) Result {
			return mark(t, m, []Apprentice{who}, []Given{{Code: code, Item: 1, Text: first, File: "a"}, {Code: code, Item: 2, Text: second, File: "b"}})[0]
		}
		if r := give(rounded, after.Expected.Text()); r.Points != 2 {
			t.Errorf("%s then %s: %+v", rounded, after.Expected.Text(), r.Items)
		}
		if r := give("scribble", "0.0033"); r.Items[0].Verdict != answer.Unread || r.Items[1].Verdict != ByHand || r.Open != 2 {
			t.Errorf("%+v", r.Items)
		}
	}
	if tried < 5 {
		t.Errorf("only %d tried", tried)
	}
}

// One unit that is wrong costs once, wherever in a chain it is written, and what starts
// from a number that nothing can be worked out from is left to the instructor.
func TestUnitsAndImpossibleNumbersInALink(t *testing.T) {
	m := maker(t, "set: l\ntitle: x\nunits: in\nslots: [{name: travel, tasks: [compound-travel]}, {tasks: [infeed-left], takes: {total: travel}}]\n")
	thou := func(p *problem.Problem) string { return strconv.FormatFloat(p.Expected.Key.X*1000, 'f', 1, 64) }
	for _, who := range roster(10) {
		all := items(t, m, who.ID)
		code := m.Code(who.ID)
		give := func(first, second string) Result {
			return mark(t, m, []Apprentice{who}, []Given{{Code: code, Item: 1, Text: first, File: "a"}, {Code: code, Item: 2, Text: second, File: "b"}})[0]
		}
		if r := give(thou(all[0].Problem), thou(all[1].Problem)); r.Items[0].Points != 0.5 || r.Items[1].Points != 1 || r.Items[1].Verdict != Carried {
			t.Errorf("thou twice: %+v", r.Items)
		}
		if r := give(all[0].Problem.Expected.Text(), thou(all[1].Problem)); r.Points != 1.5 {
			t.Errorf("thou once: %+v", r.Items)
		}
		wrong := all[0].Problem.Expected.Key.X + 0.0095
		after, err := all[1].Problem.WithInput("total", wrong, "")
		if err != nil {
			t.Fatal(err)
		}
		if r := give(calc.Fixed(wrong, 5), thou(after)); r.Items[0].Points != 0 || r.Items[1].Verdict != answer.WrongUnit || r.Points != 0.5 {
			t.Errorf("a wrong travel, and what follows in thou: %+v", r.Items)
		}
		if r := give(calc.Fixed(wrong*1000, 2), thou(after)); r.Items[0].Points != 0 || r.Items[1].Verdict != Carried || r.Items[1].Points != 1 {
			t.Errorf("a wrong travel in thou, and what follows in thou: %+v", r.Items)
		}
		if r := give("12", "11.9760"); r.Items[1].Verdict != ByHand || r.Open != 1 {
			t.Errorf("an impossible travel without a unit: %+v", r.Items)
		}
		if r := give("12 in", "11.9 in"); r.Items[1].Verdict != ByHand || r.Open != 1 || r.Points != 0 {
			t.Errorf("an impossible travel: %+v", r.Items)
		}
	}
}
