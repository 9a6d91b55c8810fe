package problem_test

import (
	"strings"
	"testing"

	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
)

func TestCodes(t *testing.T) {
	for _, code := range []string{"compound-travel@2-7f3a", "compound-travel@1m-0000", "infeed-left@3-12345678",
		"dial-past-a-turn@3-0001+L6.24.12_C100.1r_T125.1b_k", "dial-past-a-turn@3-0001+L11p5.24.12_C100.0p5r_T62p5.0p5b_k"} {
		c, err := problem.ParseCode(code)
		if err != nil || c.String() != code {
			t.Errorf("%s reads %s, %v", code, c, err)
		}
	}
	for code, want := range map[string]string{
		"":                                    "give a task",
		"compound-travel":                     "give a task",
		"compound-travel@4-7f3a":              "a level from 1 to 3",
		"compound-travel@1-7F3A":              "give a task",
		"compound-travel@1-00007f3a":          "give compound-travel@1-7f3a", // one problem has one code
		"a@1-0001+L8.32.8_C200.1d_T100.1a_s":  "give a@1-0001",
		"a@1-0001+L99.32.8_C200.1d_T100.1a_s": "lead screw 99 TPI: give 2 to 20",
		"a@1-0001+L8.32.8_C200.0d_T100.1a_s":  "one line",
	} {
		if _, err := problem.ParseCode(code); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, want %q", code, err, want)
		}
	}
}

func FuzzCode(f *testing.F) {
	f.Add("compound-travel@2-7f3a")
	f.Add("dial-past-a-turn@3m-0001+L3mm.20.10_C400.2d_T200.2b_k")
	f.Fuzz(func(t *testing.T, text string) {
		c, err := problem.ParseCode(text)
		if err != nil {
			return
		}
		if c.String() != text {
			t.Errorf("%q prints %q", text, c)
		}
		if p, err := (tasks.Set{}).FromCode(text); err == nil && p.Code.String() != text {
			t.Errorf("%q remakes %q", text, p.Code)
		}
	})
}

func BenchmarkMakeProblem(b *testing.B) {
	t, _ := (tasks.Set{}).Find("compound-travel")
	b.ReportAllocs()
	seed := uint32(0)
	for b.Loop() {
		if _, err := problem.New(t, problem.NewCode(t.Name, 2, machine.Imperial, seed, machine.InchLathe)); err != nil {
			b.Fatal(err)
		}
		seed++
	}
}

// A code carries a lathe that is not the one that ships.
func TestCodeCarriesTheLathe(t *testing.T) {
	odd := machine.InchLathe
	odd.LeadScrew, odd.Compound.Turn, odd.Compound.Division = 4.5, 0.0625, 0.0005
	for _, l := range []machine.Lathe{machine.InchLathe, machine.MetricLathe, odd} {
		code := problem.NewCode("infeed-left", 3, map[bool]machine.System{true: machine.Metric}[l.Metric], 1, l)
		if again, err := problem.ParseCode(code.String()); err != nil || again != code {
			t.Errorf("%s reads %s, %v", code, again, err)
		}
	}
}
