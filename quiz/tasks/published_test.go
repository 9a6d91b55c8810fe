package tasks_test

import (
	"strings"
	"testing"

	"scratchpass/calc"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
)

// worked works a task with inputs as someone types them: "tpi=12 angle=29.5".
func worked(t *testing.T, task, inputs string, s machine.System) *problem.Problem {
	t.Helper()
	tk, err := (tasks.Set{}).Find(task)
	if err != nil {
		t.Fatal(err)
	}
	v := problem.NewValues(tk.Inputs, s)
	for _, pair := range strings.Split(inputs, "; ") {
		name, value, _ := strings.Cut(pair, "=")
		if err := v.Read(name, value); err != nil {
			t.Fatal(err)
		}
	}
	p, err := problem.FromValues(tk, v, machine.DefaultLathe(s))
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// Each numeric task against a published value or worked example, at the decimals
// printed there.
func TestPublishedValues(t *testing.T) {
	for _, c := range []struct {
		task, inputs string
		places       int
		want         string
		source       string
	}{
		{"pitch-from-tpi", "tpi=10", 4, "0.1000", "US Navy training manual, three-wire section: pitch of 10 TPI"},
		{"pitch-from-tpi", "tpi=8", 4, "0.1250", "F. D. Jones, Turning and Boring, 1914: 8 threads per inch"},
		{"single-depth", "tpi=10", 4, "0.0613", "US Navy training manual p. 6-49: 0.61343 P"},
		{"depth-for-tool", "tpi=10; tool-flat=.0125; side=outside", 5, "0.06495", "school handout on thread calculations, 3/4-10: flat .0125, single depth .06495"},
		{"depth-for-tool", "tpi=8; tool-flat=0.015625; side=outside", 4, "0.0812", "Joshua Rose, Modern Machine-Shop Practice: root of 1-8 0.8376, so (1 - 0.8376)/2"},
		{"depth-for-tool", "tpi=10; tool-flat=.0125; side=inside", 5, "0.05413", "US Navy training manual p. 6-49: 0.54127 P inside"},
		{"compound-travel", "tpi=10; angle=30", 4, "0.0708", "US Navy training manual p. 6-49: along the flank at 30 degrees 0.708 P"},
		{"compound-travel", "tpi=8; angle=30", 4, "0.0885", "the same, 0.708 P"},
		{"diameter-dial-plunge", "tpi=10", 5, "0.12269", "US Navy training manual p. 6-49: 2 x 0.61343 P"},
		{"radius-dial-plunge", "tpi=10", 5, "0.06134", "US Navy training manual p. 6-49: 0.61343 P"},
		{"rule-of-thumb", "tpi=10; tool-flat=.0125; angle=30", 4, "0.0042", "pitch / 1.5 = .0667 (common practice) less 0.625 P along the flank at 30 degrees (US Navy p. 6-49)"},
		{"dial-past-a-turn", "turn=0.1; start=0.025; infeed=0.088", 3, "0.013", "arithmetic"},
		{"infeed-left", "total=0.054; cuts=0.015,0.01,0.007", 3, "0.022", "arithmetic"},
		{"dial-after-springs", "turn=.1; start=.010; cuts=0.006,0.006,0.005,s,0.005,s,s,0.004", 4, "0.0360", "arithmetic"},
		{"finish-with-cross-slide", "total=.0622; done=.055; dial-reads=diameter; angle=29.5", 4, "0.0125", "geometry"},
		{"finish-with-cross-slide", "total=.0750; done=0; dial-reads=radius; angle=30", 4, "0.0650", "school handout, 3/4-10: compound at 30 degrees .0750, single depth .06495"},
		{"find-where-you-are", "total=.067; dial=.044; believed=.030; turn=.100", 3, "0.023", "arithmetic"},
		{"best-wire", "tpi=10", 4, "0.0577", "US Navy training manual"},
		{"over-wires", "tpi=10; pitch-diameter=.6832; wire=.0577", 4, "0.7697", "US Navy training manual, three-wire section"},
		{"pitch-diameter-from-wires", "tpi=10; reading=.7697; wire=.0577", 4, "0.6832", "the same, turned round"},
		{"basic-pitch-diameter", "thread=3/4-10 UNC-2B", 4, "0.6850", "one-page UNC 2B table after ASME B1.1"},
		{"bore-for-inside-thread", "thread=1-8 UNC-2B", 3, "0.865", "one-page UNC 2B table after ASME B1.1"},
		{"bore-for-inside-thread", "thread=3/4-10 UNC-2B", 3, "0.642", "one-page UNC 2B table after ASME B1.1"},
		{"tool-nose-flat", "tpi=10", 4, "0.0125", "school handout on thread calculations, 3/4-10: flat .0125"},
		{"minor-diameter", "tpi=10; nominal=.75", 4, "0.6273", "US Navy training manual p. 6-49: 2 x 0.61343 P"},
		{"lead-angle", "pitch=.1; starts=1; pitch-diameter=.6850", 4, "2.6605", "school handout on thread calculations, 3/4-10"},
		{"lead-angle", "thread=1-8", 2, "2.48", "Machinery's Handbook 27th ed. p. 1763: 2 deg 29 min"},
		{"lead-angle", "thread=4-40", 2, "4.75", "Machinery's Handbook 27th ed. p. 1763: 4 deg 45 min"},
		{"threading-speed", "diameter=1; turning-speed=120", 1, "114.6", "US War Department TM 1-420, 1942: 30 ft/min on 1 in; a quarter of 120"},
		{"gear-ratio-metric-thread", "pitch-mm=3; lead-screw=6", 4, "0.7087", "F. D. Jones, Turning and Boring, 1914: driver 90, driven 127"},
		{"gear-ratio", "tpi=18; lead-screw=6", 4, "0.3333", "Joshua Rose, Modern Machine-Shop Practice: 12 : 36"},
		{"gear-ratio", "tpi=5; lead-screw=2", 4, "0.4000", "American Mechanic: 40 : 100"},
		{"marks-that-fit", "tpi=10; lead-screw=6; gear=24; marks=8", 0, "8", "F. D. Jones, Turning and Boring, 1914"},
		{"bar-stiffness", "overhang=4; new-overhang=2", 3, "8.000", "E. Isakov, 2019: give grows with the cube of the overhang"},
		{"whitworth-depth", "tpi=14", 4, "0.0457", "table of British Standard Whitworth threads (Sheartak), 7/16-14"},
		{"whitworth-depth", "tpi=7", 4, "0.0915", "the same, 1-1/8-7"},
		{"pitch-diameter-before-plating", "side=outside; after=.4500; plating=.000375", 4, "0.4485", "ASTM F1941: 1/2-13, plating .000375 takes up an allowance of .0015"},
		{"acme-compound-angle", "form=acme", 1, "14.5", "Acme flanks at 14.5 degrees, F. D. Jones, 1914"},
	} {
		p := worked(t, c.task, c.inputs, machine.Imperial)
		if got := calc.Fixed(p.Expected.Key.X, c.places); got != c.want {
			t.Errorf("%s %s: %s, want %s (%s)", c.task, c.inputs, got, c.want, c.source)
		}
	}
	back := worked(t, "cross-slide-return", "cuts=0.001,s,0.001,0.002,s; next=0.001", machine.Imperial)
	if got := back.Expected.Text(); got != "0.0040, 0.0050 in" { // arithmetic
		t.Error("cross-slide-return:", got)
	}
}

// F. D. Jones, Turning and Boring, 1914: on a 24-tooth wheel and a 6 TPI screw with
// eight lines, 10 TPI may use any.
func TestThreadDialLineAgainstJones(t *testing.T) {
	p := worked(t, "thread-dial-line", "tpi=10; lead-screw=6; gear=24; marks=8; first=1", machine.Imperial)
	if got := p.Expected.Text(); got != "1, 2, 3, 4, 5, 6, 7, 8" {
		t.Error(got)
	}
	// By the geometry, on the wide and the narrow gear of an 8 TPI screw.
	for gear, want := range map[string]string{"32": "1, 3, 5, 7", "16": "1, 5"} {
		p := worked(t, "thread-dial-line", "tpi=13; lead-screw=8; gear="+gear+"; marks=8; first=1", machine.Imperial)
		if got := p.Expected.Text(); got != want {
			t.Errorf("13 TPI, gear %s: %s, want %s", gear, got, want)
		}
	}
	// A metric thread on an inch lead screw has no line at all.
	p = worked(t, "thread-dial-line", "pitch=1.5mm; lead-screw=8; gear=32; marks=8; first=1", machine.Imperial)
	if got := p.Expected.Text(); got != "none" {
		t.Error(got)
	}
}

// Millimetres give the same answer as inches.
func TestSystemsAgree(t *testing.T) {
	inch := worked(t, "compound-travel", "pitch=2mm; angle=29.5", machine.Imperial)
	mm := worked(t, "compound-travel", "pitch=2; angle=29.5", machine.Metric)
	if !calc.Within(inch.Expected.Key.X, mm.Expected.Key.X, 1e-12) || mm.Expected.Text() != "1.410 mm" {
		t.Error(inch.Expected.Text(), mm.Expected.Text())
	}
}
