package bench

import (
	"slices"
	"strings"
	"testing"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/quiz/machine"
)

func planOf(t *testing.T, w content.Job, l machine.Lathe) Plan {
	t.Helper()
	j, err := ParseJob(Usual(w, l), l)
	if err != nil {
		t.Fatal(err)
	}
	p, err := NewPlan(j, 29.5)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// A card has passes only where someone could cut them, and then its speed leaves the hands
// their time.
func TestACardWithoutPasses(t *testing.T) {
	fast := machine.InchLathe
	fast.Speeds = []int{300, 600}
	p := planOf(t, content.Job{Thread: "1/2-13 UNC-2A", Gap: "0.2 in"}, fast)
	if !p.TooFast || p.Passes() || len(p.Steps) > 0 {
		t.Errorf("too fast %v, %d steps", p.TooFast, len(p.Steps))
	}
	if d := p.Document("own"); d.RPM != nil || d.Leave != nil || d.Out != nil || d.Overhang != nil || len(d.Steps) > 0 {
		t.Errorf("%+v", d)
	}
	p = planOf(t, content.Job{Thread: "M12x1.75-6g"}, machine.InchLathe)
	if !p.Unscrews || p.Passes() || len(p.Steps) > 0 {
		t.Errorf("unscrews %v, %d steps", p.Unscrews, len(p.Steps))
	}
	for _, thread := range []string{"1/4-20 UNC-2A", "1/2-13 UNC-2B", "1-8 UNC-2A", "1-1/2-6 UNC-2A"} {
		p := planOf(t, content.Job{Thread: thread}, machine.InchLathe)
		if !p.Passes() || float64(p.RPM) > p.Fastest+1e-6 || len(p.Steps) < 10 || len(p.Faults) > 0 {
			t.Errorf("%s: %d rpm, fastest %v, %d steps, faults %v", thread, p.RPM, p.Fastest, len(p.Steps), p.Faults)
		}
	}
}

// A dial too coarse for the job is told of, and the card has no passes: the last cuts would
// be heavy, or miss the size.
func TestACardTellsItsFaults(t *testing.T) {
	coarse := machine.InchLathe
	coarse.CrossReads = calc.ReadsRadius
	coarse.Cross.Division = .005
	if p := planOf(t, content.Job{Thread: "1-8 UNC-2A"}, coarse); !slices.Contains(p.Faults, "heavy") || p.Passes() || len(p.Steps) > 0 {
		t.Errorf("faults %v, %d steps", p.Faults, len(p.Steps))
	}
	coarse.Cross.Division = .010
	if p := planOf(t, content.Job{Thread: "1/4-20 UNC-2A"}, coarse); !p.Misses || p.Passes() || len(p.Steps) > 0 {
		t.Errorf("misses %v, %d steps", p.Misses, len(p.Steps))
	}
}

// The tool is taken out by half a turn or by whole turns of the dial, clear of the crests
// from the bottom of the groove.
func TestTheWithdrawalOfACard(t *testing.T) {
	small := machine.InchLathe
	small.Cross = machine.Dial{Turn: .040, Division: .001}
	small.CrossReads = calc.ReadsRadius
	for _, l := range []machine.Lathe{machine.InchLathe, small} {
		for _, thread := range []string{"1/4-20 UNC-2A", "3/4-10 UNC-2A", "1-1/2-6 UNC-2A"} {
			p := planOf(t, content.Job{Thread: thread}, l)
			turns := p.Out.Over(l.Cross.Turn)
			if turns != 0.5 && !calc.Within(calc.Round(turns, 0), turns, 1e-9) {
				t.Errorf("%s, %v a turn: %v turns", thread, l.Cross.Turn, turns)
			}
			if out := p.Out.Times(1 / l.CrossReads.PerRadial()); out < p.Depth+calc.Thou.Times(19) {
				t.Errorf("%s: out %v from a depth of %v", thread, out, p.Depth)
			}
		}
	}
}

// Exact gears stand alone; near ones stand alone where there are no exact ones.
func TestGearsWorthSetting(t *testing.T) {
	train := func(ppm float64) calc.Train { return calc.Train{Drivers: []int{1}, Driven: []int{2}, PPM: ppm} }
	for _, c := range []struct {
		have, want []float64
	}{
		{[]float64{0, 0, 1953}, []float64{0, 0}},
		{[]float64{125, -125, 606}, []float64{125, -125}},
		{[]float64{900, 1200}, []float64{900}},
		{nil, nil},
	} {
		var trains []calc.Train
		for _, ppm := range c.have {
			trains = append(trains, train(ppm))
		}
		var got []float64
		for _, x := range fitting(trains) {
			got = append(got, x.PPM)
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%v: %v, want %v", c.have, got, c.want)
		}
	}
}

// A bar that does not reach through the thread and its gap is refused with the job.
func TestABarTooShort(t *testing.T) {
	_, err := ParseJob(Usual(content.Job{Thread: "M36x4-6H", Length: "54 mm", StandsOut: "55 mm"}, machine.MetricLathe), machine.MetricLathe)
	if err == nil {
		t.Error("a bar of 55 mm for a thread of 54 mm and its gap is taken")
	}
	_, err = ParseJob(Usual(content.Job{Thread: "3/4-10 UNC-2A", Length: "40 in"}, machine.InchLathe), machine.InchLathe)
	if err == nil || len(err.Error()) > 140 {
		t.Errorf("a thread 40 in long: %v", err)
	}
}

// Stock out of its limits gets no card but what would do; at its limits it gets one.
func TestStockOutOfItsLimitsHasNoCard(t *testing.T) {
	for _, c := range []struct {
		thread, blank, bore, want string
	}{
		{"3/4-10 UNC-2A", "0.760 in", "", "turn it to 0.7418 in first"},
		{"3/4-10 UNC-2A", "0.730 in", "", "take thicker stock"},
		{"1-8 UNC-2B", "", "0.850 in", "bore it out to 0.8775 in first"},
		{"1-8 UNC-2B", "", "0.895 in", "take new stock"},
		{"3/4-10 UNC-2A", "0.7482 in", "", ""},
		{"3/4-10 UNC-2A", "0.7353 in", "", ""},
		{"1-8 UNC-2B", "", "0.865 in", ""},
		{"1-8 UNC-2B", "", "0.890 in", ""},
	} {
		j, err := ParseJob(Usual(content.Job{Thread: c.thread, Blank: c.blank, Bore: c.bore}, machine.InchLathe), machine.InchLathe)
		if err != nil {
			t.Fatal(err)
		}
		p, err := NewPlan(j, 29.5)
		switch {
		case c.want == "" && err != nil:
			t.Errorf("%s %s%s: %v", c.thread, c.blank, c.bore, err)
		case c.want != "" && (err == nil || !strings.Contains(err.Error(), c.want) || len(p.Steps) > 0):
			t.Errorf("%s %s%s: %v, %d steps", c.thread, c.blank, c.bore, err, len(p.Steps))
		}
	}
}

// Cuts grow no heavier on the way, none on the compound is under the least one, and the
// light schedule is the longer one.
func TestTheCutsOfACard(t *testing.T) {
	for _, thread := range []string{"7/16-20 UNF-2A", "9/16-12 UNC-2A", "1-1/8-7 UNC-2A", "7/8-9 UNC-2B", "M27x3-6g"} {
		l := machine.InchLathe
		l.ScrewedNose = false
		p := planOf(t, content.Job{Thread: thread}, l)
		light, err := NewLightPlan(p.Job, 29.5)
		if err != nil {
			t.Fatal(err)
		}
		if len(light.Steps) <= len(p.Steps) || p.Schedule() != "equal-area" || light.Schedule() != "light" {
			t.Errorf("%s: %d steps %s, %d steps %s", thread, len(p.Steps), p.Schedule(), len(light.Steps), light.Schedule())
		}
		for _, p := range []Plan{p, light} {
			line, before := p.Job.Lathe.Compound.Division, calc.Length(1)
			for i, s := range p.Steps {
				if s.Kind != "cut" {
					continue
				}
				if s.Feed > before+line+hair || s.Feed < p.LeastCut()-hair {
					t.Errorf("%s %s, step %d: a cut of %v after one of %v; the least is %v", thread, p.Schedule(), i+1, s.Feed, before, p.LeastCut())
				}
				if i > 1 {
					before = s.Feed
				}
			}
		}
	}
}

// A dial counts down in a bore: what the card leaves the compound at is said as it reads there.
func TestWhatTheDialReadsAfterSoMuchTravel(t *testing.T) {
	for _, c := range []struct {
		job           string
		travel, reads float64
		turns         int
	}{{"adjusting-screw", .046, .046, 0}, {"gland-nut", .046, .054, 0}, {"gland-nut", 0, 0, 0}, {"adjusting-screw", .146, .046, 1}, {"gland-nut", .146, .054, 1}} {
		reads, turns := Plan{Job: shippedJob(t, c.job)}.Reads(calc.Inches(c.travel))
		if !calc.Within(reads.Inches(), c.reads, 1e-9) || turns != c.turns {
			t.Errorf("%s after %v: %v, %d turns", c.job, c.travel, reads, turns)
		}
	}
}

// The example of the compound's swing is one for the job.
func TestAnExampleIsOfTheJob(t *testing.T) {
	for job, want := range map[string]string{"adjusting-screw": "give angle 29.5 tailstock, or headstock", "gland-nut": "give angle 29.5 headstock, or tailstock"} {
		if _, err := shippedJob(t, job).Parse("angle 30 tailstok"); err == nil || !strings.Contains(err.Error(), `"angle 30 tailstok": `+want) {
			t.Errorf("%s: %v", job, err)
		}
	}
}
