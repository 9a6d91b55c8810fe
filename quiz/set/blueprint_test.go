package set

import (
	"fmt"
	"reflect"
	"strings"
	"testing"

	"scratchpass/content"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/tasks"
)

func noLathe(string) (machine.Lathe, error) { return machine.InchLathe, nil }

// Everything that is wrong with a blueprint is said at once, with what would work.
func TestBlueprints(t *testing.T) {
	for text, want := range map[string]string{
		"set: a\ntitel: b": "unknown key \"titel\"; here the keys are set, title, units",
		"set: A b\ntitle: x\nunits: in\nslots: [{tasks: [single-depth]}]":                                                                 `set "A b": give a short name`,
		"set: a\ntitle: x\nunits: cm\nslots: [{tasks: [single-depth]}]":                                                                   `units "cm": give in or mm`,
		"set: a\ntitle: x\nunits: in\nslots: []":                                                                                          "slots: there are 0: give 1 to 60",
		"set: a\ntitle: x\nunits: in\nslots: [{tasks: [single-dept]}]":                                                                    "slot 1: no task is called \"single-dept\"; did you mean single-depth",
		"set: a\ntitle: x\nunits: in\nslots: [{stage: shapes}]":                                                                           `stage "shapes": give one of`,
		"set: a\ntitle: x\nunits: in\nslots: [{stage: shape, tasks: [single-depth]}]":                                                     "give tasks or a stage, not both",
		"set: a\ntitle: x\nunits: in\nslots: [{}]":                                                                                        "slot 1: give tasks or a stage",
		"set: a\ntitle: x\nunits: in\nslots: [{tasks: [single-depth], level: 4}]":                                                         "level 4: give 1, 2 or 3",
		"set: a\ntitle: x\nunits: in\nslots: [{tasks: [single-depth], points: 1.3}]":                                                      "points 1.3: give half a point to 100, in halves",
		"set: a\ntitle: x\nunits: in\nslots: [{tasks: [single-depth], points: 0}]":                                                        "points 0: give half a point",
		"set: a\ntitle: x\nunits: in\nrules: {conventions: some}\nslots: [{tasks: [single-depth]}]":                                       `conventions "some": give full, half or none`,
		"set: a\ntitle: x\nunits: in\nslots: [{name: h, tasks: [single-depth]}, {tasks: [compound-travel], takes: {pitch: h}}]":           `takes pitch from "h", which asks for something else (h, not P)`,
		"set: a\ntitle: x\nunits: in\nslots: [{tasks: [single-depth], count: 70}]":                                                        "count 70: give 1 to",
		"set: a\ntitle: x\nunits: in\npaper: A5\nslots: [{tasks: [single-depth]}]":                                                        `paper "A5": give A4 or Letter`,
		"set: a\ntitle: x\nunits: in\ndate: today\nslots: [{tasks: [single-depth]}]":                                                      `date "today": give a day`,
		"set: a\ntitle: x\nunits: in\nslots: [{tasks: [infeed-left], takes: {total: travel}}]":                                            `takes total from "travel": no slot above has that name`,
		"set: a\ntitle: x\nunits: in\nslots: [{name: travel, tasks: [compound-travel]}, {tasks: [infeed-left], takes: {x: travel}}]":      `infeed-left has no input "x" to take over; it has`,
		"set: a\ntitle: x\nunits: mm\nslots: [{tasks: [inch-designation]}]":                                                               "inch-designation is not set in mm",
		"set: a\ntitle: x\nunits: mm\nslots: [{tasks: [single-depth], units: cm}]":                                                        `slot 1: units "cm": give in or mm`,
		"set: a\ntitle: x\nunits: in\nslots: [{tasks: [inch-designation], units: mm}]":                                                    "inch-designation is not set in mm",
		"set: a\ntitle: x\nunits: in\nslots: [{name: t, tasks: [compound-travel], units: mm}, {tasks: [infeed-left], takes: {total: t}}]": `takes total from "t", whose answer is in mm and not in in`,
		"set: a\ntitle: x\nunits: mm\nlathe: l.yaml\nslots: [{tasks: [single-depth]}]":                                                    `lathe "l.yaml" has dials in other units than units: mm`,
		"": "the file is empty; it wants set, title",
		"set: a\ntitle: " + strings.Repeat("ä", 201) + "\nunits: in\nslots: [{tasks: [single-depth]}]":                `"title" has more than 200 letters`,
		"set: a\ntitle: x\ntime: " + strings.Repeat("x", 101) + "\nunits: in\nslots: [{tasks: [single-depth]}]":       "time has 101 letters: give at most 100",
		"set: a\ntitle: x\nnotes: [a, " + strings.Repeat("x", 501) + "]\nunits: in\nslots: [{tasks: [single-depth]}]": "note 2 has 501 letters: give at most 500",
		"set: a\ntitle: x\nnotes: [" + strings.Repeat("a, ", 21) + "]\nunits: in\nslots: [{tasks: [single-depth]}]":   "notes: there are 21: give at most 20",
		"set: a\ntitle: x\nunits: in\nslots: [{name: " + strings.Repeat("x", 81) + ", tasks: [single-depth]}]":        "slot 1: its name has 81 letters: give at most 80",
		"set: a\ntitle: x\nunits: in\nslots: [{tasks: [" + strings.Repeat("single-depth, ", 101) + "]}]":              "slot 1: there are 101 tasks: give at most 100",
		"set: a\ntitle: x\nunits: in\nslots: [" + strings.Repeat("{tasks: [x], level: 9}, ", 50) + "]":                "and 80 more",
		"set: a\ntitle: x\nunits: in\nslots: [" + strings.Repeat("{tasks: [single-depth]}, ", 61) + "]":               "slots: there are 61: give 1 to 60",
	} {
		if _, err := ParseBlueprint("b.yaml", []byte(text), tasks.Set{}, noLathe); err == nil || !strings.Contains(err.Error(), want) || !strings.Contains(err.Error(), "b.yaml") {
			t.Errorf("%q: %v, want %q", text, err, want)
		}
	}
	long := "set: a\ntitle: " + strings.Repeat("ä", 200) + "\nunits: in\nnotes: [" + strings.Repeat("x", mostNote) + "]\nslots: [{tasks: [single-depth]}]"
	if _, err := ParseBlueprint("b.yaml", []byte(long), tasks.Set{}, noLathe); err != nil {
		t.Errorf("the longest title and note: %v", err)
	}
	_, err := ParseBlueprint("b.yaml", []byte("set: A\ntitle: ''\nunits: x\nslots: [{tasks: [nothing], level: 9}]"), tasks.Set{}, noLathe)
	if n := strings.Count(err.Error(), "b.yaml"); n != 5 {
		t.Errorf("%d findings at once: %v", n, err)
	}
	for name, text := range content.Examples() {
		if strings.HasSuffix(name, ".yaml") {
			if _, err := ParseBlueprint(name, text, tasks.Set{}, noLathe); err != nil {
				t.Error(err)
			}
		}
	}
}

// A mixed slot gives apprentices different tasks, a shuffled set another order.
func TestMixAndShuffle(t *testing.T) {
	m := example(t, "exit-ticket.yaml")
	orders, mixed := map[string]bool{}, map[string]bool{}
	for _, who := range roster(60) {
		order := ""
		for i, it := range items(t, m, who.ID) {
			order += fmt.Sprint(it.Place)
			if it.Number != i+1 {
				t.Fatalf("question %d is printed as %d", i+1, it.Number)
			}
			if it.Place == 4 {
				mixed[it.Problem.Task.Name] = true
			}
		}
		orders[order] = true
	}
	if len(orders) < 30 || len(mixed) != 2 {
		t.Errorf("%d orders, tasks %v", len(orders), mixed)
	}
}

// The identity of a blueprint holds what the numbers hang on and nothing else.
func TestIdentity(t *testing.T) {
	const base = "set: a\ntitle: x\nunits: in\nslots: [{tasks: [single-depth]}]"
	id := func(text string) string {
		b, err := ParseBlueprint("b", []byte(text), tasks.Set{}, noLathe)
		if err != nil {
			t.Fatal(err)
		}
		return string(b.identity())
	}
	for change, same := range map[string]bool{"title: x": true, "units: in": false, "slots: [{tasks: [single-depth]}]": false} {
		other := strings.Replace(base, change, map[string]string{"title: x": "title: y\ntime: 9 minutes\npaper: Letter\nnotes: [z]", "units: in": "units: mm",
			"slots: [{tasks: [single-depth]}]": "slots: [{tasks: [single-depth], level: 2}]"}[change], 1)
		if got := id(base) == id(other); got != same {
			t.Errorf("%q changed: same numbers %v", change, got)
		}
	}
	if points := strings.Replace(base, "single-depth]", "single-depth], points: 5", 1); !reflect.DeepEqual(id(base), id(points)) {
		t.Error("other points give other numbers")
	}
}
