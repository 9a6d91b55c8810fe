package machine_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"scratchpass/calc"
	"scratchpass/quiz/machine"
)

// A file that says what the shipped one in testdata says, with lines replaced.
func latheFile(t *testing.T, replace ...string) []byte {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("testdata", "lathe.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	for i := 0; i+1 < len(replace); i += 2 {
		if !strings.Contains(string(text), replace[i]) {
			t.Fatalf("the file has no %q", replace[i])
		}
		text = []byte(strings.ReplaceAll(string(text), replace[i], replace[i+1]))
	}
	return text
}

// What someone may write down wrongly, and what they are told. All that is wrong is told
// at once.
func TestLatheFilesThatAreRefused(t *testing.T) {
	for _, c := range []struct {
		replace []string
		want    []string
	}{
		{[]string{"6 TPI", "6"}, []string{`lead_screw "6": give 8 TPI or 3 mm`}},
		{[]string{"6 TPI", "six TPI"}, []string{`lead_screw "six TPI"`}},
		{[]string{"6 TPI", "6 TPI mm"}, []string{"lead_screw"}},
		{[]string{"6 TPI", "1 TPI"}, []string{"lead screw 1 TPI: give 2 to 20 TPI"}},
		{[]string{"gear: 24", "gear: 3"}, []string{"thread-dial gear 3"}},
		{[]string{"turn: 0.100 in", "turn: 0.100"}, []string{"cross_slide turn", `no unit in "0.100": give 0.100 in or 2 mm`}},
		{[]string{"turn: 0.125 in", "turn: wide"}, []string{"compound turn"}},
		{[]string{"reads: radius", "reads: both"}, []string{`cross_slide reads "both": give radius or diameter`}},
		{[]string{"zero: along", "zero: sideways"}, []string{`compound zero "sideways": give across or along`}},
		{[]string{"spindle_nose: locked", "spindle_nose: bolted"}, []string{`spindle_nose "bolted": give locked or screwed`}},
		{[]string{"reads: radius", "reads: both", "zero: along", "zero: sideways", "line: 0.001 in", "line: 0.001"},
			[]string{"cross_slide line", "compound line", "cross_slide reads", "compound zero"}},
		{[]string{"name: bench lathe", "nmae: bench lathe"}, []string{"nmae"}},
		{[]string{"name: bench lathe", "gears: [" + strings.Repeat("20, ", 201) + "20]"}, []string{"202 gears and speeds: give at most 200"}},
		{[]string{"name: bench lathe", "name: ["}, []string{"lathe.yaml"}},
	} {
		_, err := machine.ParseLathe("lathe.yaml", latheFile(t, c.replace...))
		if err == nil {
			t.Errorf("%q is taken", c.replace)
			continue
		}
		for _, want := range append(c.want, "lathe.yaml") {
			if !strings.Contains(err.Error(), want) {
				t.Errorf("%q: %v, want %q", c.replace, err, want)
			}
		}
	}
}

// Each key of a file arrives where it belongs.
func TestLatheFileIsRead(t *testing.T) {
	l, err := machine.ParseLathe("lathe.yaml", latheFile(t))
	if err != nil {
		t.Fatal(err)
	}
	want := machine.Lathe{Name: "bench lathe", LeadScrew: 6, DialTeeth: 24, DialMarks: 12, Cross: machine.Dial{Turn: 0.1, Division: 0.001},
		CrossReads: calc.ReadsRadius, Compound: machine.Dial{Turn: 0.125, Division: 0.001}, CompoundZero: calc.ZeroAlong}
	if l.Code() != want.Code() || l.Name != want.Name {
		t.Errorf("read %+v, want %+v", l, want)
	}
	l, err = machine.ParseLathe("lathe.yaml", latheFile(t, "6 TPI", "3 mm", "0.100 in", "2.5 mm", "0.125 in", "100 thou", "reads: radius", "reads: diameter", "zero: along", "zero: across", "locked", "screwed",
		"name: bench lathe", "name: other\ngears: [20, 40]\nspeeds: [50]"))
	if err != nil {
		t.Fatal(err)
	}
	if !l.Metric || l.LeadScrew != 3 || !calc.Within(l.Cross.Turn.Millimetres(), 2.5, 1e-9) || l.Compound.Turn != 0.1 || l.CrossReads != calc.ReadsDiameter ||
		l.CompoundZero != calc.ZeroAcross || !l.ScrewedNose || len(l.Gears) != 2 || len(l.Speeds) != 1 {
		t.Errorf("read %+v", l)
	}
}

// What can't be read or written is an error, not half a lathe.
func TestLatheFilesThatAreNotThere(t *testing.T) {
	dir := t.TempDir()
	if _, err := machine.ReadLathe(filepath.Join(dir, "lathe.yaml")); !os.IsNotExist(err) {
		t.Errorf("reading nothing: %v", err)
	}
	file := filepath.Join(dir, "file")
	if err := os.WriteFile(file, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := machine.WriteLathe(filepath.Join(file, "lathe.yaml"), machine.InchLathe); err == nil {
		t.Error("a lathe was written below a file")
	}
	if err := machine.WriteLathe(dir, machine.InchLathe); err == nil {
		t.Error("a lathe was written over a folder")
	}
}
