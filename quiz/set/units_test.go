package set

import (
	"strings"
	"testing"

	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
)

// A slot may have units of its own: its questions are set in them, for the lathe that ships
// for them, and the others stay what they were without it.
func TestUnitsOfASlot(t *testing.T) {
	const one = "set: a\ntitle: x\nunits: in\nslots: [{tasks: [compound-travel], level: 3}%s]"
	alone, both := maker(t, strings.Replace(one, "%s", "", 1)), maker(t, strings.Replace(one, "%s", ", {tasks: [compound-travel], level: 3, units: mm}", 1))
	all := items(t, both, "mf-1")
	if len(items(t, alone, "mf-1")) != 1 || len(all) != 2 {
		t.Fatal("another number of questions")
	}
	for i, want := range []machine.System{machine.Imperial, machine.Metric} {
		code := all[i].Problem.Code
		if code.System != want || code.Lathe != "" {
			t.Errorf("question %d: %s", i+1, code)
		}
		if again, err := problem.New(all[i].Problem.Task, code); err != nil || again.Expected.Key.X != all[i].Problem.Expected.Key.X {
			t.Errorf("%s: %v", code, err)
		}
	}
	if string(alone.Blueprint.identity()) == string(both.Blueprint.identity()) {
		t.Error("units of a slot change no identity")
	}
	same, err := ParseBlueprint("b", []byte(strings.Replace(one, "level: 3}%s", "level: 3}", 1)), tasks.Set{}, noLathe)
	if err != nil || string(same.identity()) != string(alone.Blueprint.identity()) {
		t.Error("a blueprint without units of slots has another identity", err)
	}
}

// A lathe with dials in inches and a lead screw in millimetres serves a set in inches: every
// task that is set in inches can be asked, and its code finds the same numbers again.
func TestInchDialsAndAMetricLeadScrew(t *testing.T) {
	mixed := machine.InchLathe
	mixed.Metric, mixed.LeadScrew = true, 3
	if err := mixed.Check(); err != nil {
		t.Fatal(err)
	}
	for system, fits := range map[machine.System]bool{machine.Imperial: true, machine.Metric: false} {
		if dialsFit(mixed, system) != fits || dialsFit(machine.InchLathe, system) != fits || dialsFit(machine.MetricLathe, system) == fits {
			t.Errorf("dials in %s", system)
		}
	}
	for i, text := range everyTask(machine.Imperial) {
		b, err := ParseBlueprint("b.yaml", []byte(strings.Replace(text, "units: in", "units: in\nlathe: mixed.yaml", 1)), tasks.Set{}, func(string) (machine.Lathe, error) { return mixed, nil })
		if err != nil {
			t.Fatal(err)
		}
		if i > 0 && testing.Short() {
			break
		}
		m := &Maker{Blueprint: b, secret: testSecret, id: b.identity()}
		for slot, s := range b.Slots {
			m.places = append(m.places, place{slot: slot, tasks: s.Tasks})
			p, err := m.draw(slot, s.Tasks[0], "mf-1", 0, nil, nil)
			if err != nil {
				t.Errorf("%s: %v", s.Tasks[0], err)
				continue
			}
			code, err := problem.ParseCode(p.Code.String())
			if err != nil || code.System != machine.Imperial {
				t.Errorf("%s: %v", p.Code, err)
			}
			if again, err := problem.New(p.Task, code); err != nil || again.Expected.Key.X != p.Expected.Key.X {
				t.Errorf("%s gives another problem: %v", p.Code, err)
			}
		}
	}
}
