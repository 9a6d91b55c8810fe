package schedule_test

import (
	"slices"
	"testing"

	"scratchpass/lessons/mastery"
	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
)

func TestItemOf(t *testing.T) {
	for _, row := range []struct {
		task             string
		critical, choice bool
		oneKey           bool
		minutes          float64
		why              string
	}{
		{"single-depth", false, false, false, 1.25, "a number is worked out"},
		{"radius-dial-plunge", true, false, false, 1.25, "a number that can hurt someone"},
		{"left-hand-start", true, true, true, 0.5, "an option is read, and may be guessed; the same one may be right each time"},
		{"one-full-pass", true, false, true, 1.25, "steps in order: always the same order, and no luck"},
		{"thread-dial-line", false, false, false, 1.25, "several of some options: no luck either"},
	} {
		task, err := (tasks.Set{}).Find(row.task)
		if err != nil {
			t.Fatal(err)
		}
		it := schedule.ItemOf(task, machine.Imperial)
		rule := mastery.Rule{Choice: row.choice, SafetyCritical: row.critical, OneKey: row.oneKey}
		if it.Task != row.task || it.Stage != task.Stage || it.SafetyCritical != row.critical || it.Minutes != row.minutes ||
			it.Rule.Choice != rule.Choice || it.Rule.SafetyCritical != rule.SafetyCritical || it.Rule.OneKey != rule.OneKey {
			t.Errorf("%s: %+v %v minutes: %s", row.task, it.Rule, it.Minutes, row.why)
		}
	}
}

// decision is a task made for these tests: its n-th problem has the number n and is in the
// situation that of gives. The errors of a name show in the first so many problems.
func decision(of func(n int) string, errors map[string]int) *problem.Task {
	n := 0
	task := &problem.Task{
		Name: "decision", Stage: problem.SetUp, Kind: answer.Choice,
		Inputs: []problem.Input{{Name: "situation", Type: problem.InputWord}, {Name: "number", Type: problem.InputCount}},
		Draw: func(d *problem.Draw) problem.Values {
			v := d.Values()
			v.SetWord("situation", of(n))
			v.Set("number", float64(n))
			n++
			return v
		},
		Work: func(v problem.Values) (problem.Working, error) { w := v.Working(); return w.Choice("right") },
	}
	for _, name := range []string{"always", "often", "seldom", "other-book"} {
		if first, ok := errors[name]; ok {
			task.Errors = append(task.Errors, problem.CommonError{Name: name, Convention: name == "other-book", Work: func(v problem.Values) answer.Response {
				if v.X("number") < float64(first) {
					return answer.OptionsResponse(name)
				}
				return answer.NoResponse
			}})
		}
	}
	return task
}

// problems makes the first so many problems of a task.
func problems(t *testing.T, task *problem.Task, n int) []*problem.Problem {
	t.Helper()
	var all []*problem.Problem
	for seed := range uint32(n) {
		p, err := problem.New(task, problem.NewCode(task.Name, problem.NumbersGiven, machine.Imperial, seed, machine.DefaultLathe(machine.Imperial)))
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, p)
	}
	return all
}

// Of sixty problems a situation must come up three times to be asked for, and a common
// error be possible twelve times. What is rarer would hold a learner up for ever.
func TestWhatUsuallyComesUp(t *testing.T) {
	situation := func(n int) string {
		switch n %= 60; {
		case n < 3:
			return "thrice"
		case n < 5:
			return "twice"
		case n < 8:
			return "" // told in no word
		}
		return "mostly"
	}
	errors := map[string]int{"always": 1000, "often": 12, "seldom": 11, "other-book": 1000}
	it := schedule.ItemOf(decision(situation, errors), machine.Imperial)
	first := problems(t, decision(situation, errors), 20) // 0 thrice, 3 twice, 11 mostly, with all errors until 12

	rule := it.RuleFor(machine.Imperial)
	if !slices.Equal(rule.Situations, []string{"thrice", "mostly"}) || !slices.Equal(rule.Errors, []string{"always", "often"}) {
		t.Errorf("what comes up: %+v", rule)
	}
	run := func(all ...mastery.Answer) record.Summary {
		var s record.Summary
		for _, a := range all {
			a.Right = true
			s.State = s.Add(rule, a)
		}
		return s
	}
	thrice := mastery.Answer{Situation: "thrice", Errors: []string{"always", "often"}}
	mostly := mastery.Answer{Situation: "mostly", Errors: []string{"always", "often"}}
	for _, row := range []struct {
		had  record.Summary
		p    *problem.Problem
		want bool
		why  string
	}{
		{run(), first[0], true, "nothing was had yet: this brings a situation and errors"},
		{run(thrice), first[0], false, "the same situation again, and the errors had as many chances; another situation is missing"},
		{run(thrice), first[3], false, "a situation that is too rare to be asked for"},
		{run(thrice), first[19], true, "the other situation that comes up"},
		{run(mostly), first[0], true, "three times of sixty is often enough to be asked for"},
		{run(mostly), first[19], false, "and this is not it"},
		{run(thrice, mostly), first[0], true, "nothing is missing: any problem does"},
		{run(thrice, mostly), first[3], true, "nothing is missing, the rare situation and the rare error neither"},
		{run(thrice, mastery.Answer{Situation: "mostly", Errors: []string{"always"}}), first[0], true, "one error had fewer chances than the other, and has one here"},
		{run(thrice, mastery.Answer{Situation: "mostly", Errors: []string{"always"}}), first[19], false, "and has none here"},
		{run(thrice, mastery.Answer{Situation: "mostly", Errors: []string{"often"}}), first[19], true, "it is the other one that had fewer"},
	} {
		if got := it.Wants(row.had, row.p); got != row.want {
			t.Errorf("a problem in %q after %+v: wanted %v: %s", row.p.Values.Situation(), row.had.Run, got, row.why)
		}
	}
}

// A situation is asked for only where every problem is about one.
func TestSituationThatMayBeLeftOut(t *testing.T) {
	always := map[string]int{"always": 1000}
	elsewhere := problems(t, decision(func(int) string { return "elsewhere" }, always), 1)[0]
	had := record.Summary{State: mastery.State{Run: mastery.Run{Length: 1, Chances: map[string]int{"always": 1}}}}
	for _, extra := range []bool{true, false} {
		task := decision(func(int) string { return "any" }, always)
		task.Inputs[0].Extra = extra
		if got := schedule.ItemOf(task, machine.Imperial).Wants(had, elsewhere); got != extra {
			t.Errorf("may be left out %v: a problem in another situation is wanted %v", extra, got)
		}
	}
}

// A task that makes sense in one system of units only is described in that one, whatever
// the learner works in; and one that can't be drawn has a rule all the same.
func TestItemsOfOddTasks(t *testing.T) {
	task := decision(func(int) string { return "any" }, map[string]int{"always": 1000})
	task.Systems = []machine.System{machine.Metric}
	var systems []machine.System
	draw := task.Draw
	task.Draw = func(d *problem.Draw) problem.Values { systems = append(systems, d.System); return draw(d) }
	it := schedule.ItemOf(task, machine.Imperial)
	missing := problems(t, decision(func(int) string { return "another" }, map[string]int{"often": 1000}), 1)[0]
	if it.Wants(record.Summary{}, missing) {
		t.Error("a problem that brings nothing of what comes up is wanted")
	}
	if len(systems) != 60 || slices.Contains(systems, machine.Imperial) {
		t.Errorf("%d problems were drawn: %v", len(systems), systems)
	}

	never := decision(func(int) string { return "any" }, map[string]int{"always": 0})
	if never := schedule.ItemOf(never, machine.Imperial); !never.Wants(record.Summary{}, missing) {
		t.Error("a task that can't be drawn asks for nothing, so any problem does")
	}
	// One that now and then can't be drawn is described by the problems that can.
	seldom := decision(func(int) string { return "any" }, map[string]int{"always": 1_000_000})
	drawn, tries := seldom.Draw, 0
	seldom.Draw = func(d *problem.Draw) problem.Values {
		if tries++; tries <= 400 { // until the first problem is given up
			return problem.Values{}
		}
		return drawn(d)
	}
	if it := schedule.ItemOf(seldom, machine.Imperial); it.Wants(record.Summary{}, missing) || tries != 459 {
		t.Errorf("after a problem that can't be drawn the others count for nothing; %d tries", tries)
	}
	if by := (schedule.Item{Task: "by hand"}); !by.Wants(record.Summary{}, missing) {
		t.Error("an item that stands for no task asks for nothing, so any problem does")
	}
	byHand := schedule.Item{Task: "by hand", Rule: mastery.Rule{Situations: []string{"x"}}}
	if byHand.Wants(record.Summary{}, missing) {
		t.Error("the rule of an item that stands for no task counts as it is")
	}
}

// An error that shows in fewer than three of four problems shows in some only. Where
// options are chosen on one day only, that makes nothing easier.
func TestErrorsThatShowInSomeProblemsOnly(t *testing.T) {
	errors := map[string]int{"always": 1000, "often": 45, "seldom": 44}
	it := schedule.ItemOf(decision(func(int) string { return "any" }, errors), machine.Imperial)
	for _, row := range []struct {
		choice, critical bool
		want             []string
	}{
		{false, false, []string{"seldom"}}, {false, true, []string{"seldom"}}, {true, true, []string{"seldom"}}, {true, false, nil},
	} {
		it.Rule.Choice, it.Rule.SafetyCritical = row.choice, row.critical
		if got := it.RuleFor(machine.Imperial); !slices.Equal(got.Seldom, row.want) || len(got.Errors) != 3 {
			t.Errorf("options %v, safety-critical %v: %+v", row.choice, row.critical, got)
		}
	}
}

// What is missing is told by what comes up in the system of units that the learner works
// in, or that the task is set in.
func TestMissingOfAnItem(t *testing.T) {
	task := decision(func(int) string { return "any" }, map[string]int{"always": 1000})
	task.Systems = []machine.System{machine.Metric}
	it := schedule.ItemOf(task, machine.Imperial)
	if m, ok := it.Missing(record.Summary{}); !ok || !slices.Equal(m.Errors, []string{"always"}) || !slices.Equal(m.Situations, []string{"any"}) || m.Right != 5 {
		t.Errorf("%+v, %v", m, ok)
	}
	if m, ok := it.Missing(record.Summary{State: mastery.State{Days: 1, Mastered: true}}); ok {
		t.Errorf("%+v", m)
	}
}
