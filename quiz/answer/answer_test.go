package answer_test

import (
	"math"
	"strings"
	"testing"

	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
)

func remake(t testing.TB, code string) *problem.Problem {
	t.Helper()
	p, err := (tasks.Set{}).FromCode(code)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// An answer as it may be typed, and what comes of it. The key is 0.0587 in.
func TestMarkWhatIsTyped(t *testing.T) {
	tk, _ := (tasks.Set{}).Find("compound-travel")
	v := problem.NewValues(tk.Inputs, machine.Imperial)
	v.Set("tpi", 12)
	v.Set("angle", 29.5)
	p, err := problem.FromValues(tk, v, machine.InchLathe)
	if err != nil {
		t.Fatal(err)
	}
	for text, want := range map[string]string{
		"0.0587": "right", ".0587": "right", "58.7 thou": "right", "1.491 mm": "right", "0,0587": "right", ".0587in": "right",
		`.0587"`: "right", "0.0587 in.": "right", "+.0587": "right", "  .0587  ": "right", "0.058": "right", "15/256": "right",
		"0.0511": "slip no-angle", "51.1 thou": "slip no-angle", "0.0445": "slip times-cos", "0.1038": "slip sin-or-ref",
		"0.1175": "slip double", "0.1022": "slip double-no-angle",
		"58.7": "unit", "1.491": "unit", "0.0587 mm": "unit", "0.0587 thou": "unit",
		"0.07": "scrap-side", "0.03": "safe-side", "-0.0587": "wrong",
		"five": "unread", "": "unread", "   ": "unread", "0.05 0.06": "unread", "NaN": "unread", "Inf": "unread", "1e-2": "unread",
		"0x10": "unread", "1_0": "unread", "\x1b[31m0.05": "unread", strings.Repeat("9", 10000): "unread", "1,500": "unread",
	} {
		m := p.Mark(text)
		got := string(m.Verdict)
		if m.Error != "" {
			got += " " + m.Error
		}
		if got != want {
			t.Errorf("%.30q is marked %s, want %s", text, got, want)
		}
		if m.Verdict == answer.Unread && (m.Unread == nil || strings.ContainsAny(m.Unread.Error(), "\x1b\n") || len(m.Unread.Error()) > 200) {
			t.Errorf("%.30q: error %v", text, m.Unread)
		}
	}
}

func TestPoints(t *testing.T) {
	p := remake(t, "single-depth@1-0001")
	for _, c := range []struct {
		text   string
		points float64
	}{{p.Expected.Unit.Fixed(p.Expected.Key.X), 1}, {"0.9", 0}, {p.Expected.Unit.Fixed(p.Expected.Key.X * 1000), 0.5}} {
		if m := p.Mark(c.text); m.Points != c.points {
			t.Errorf("%s: %v points (%s)", c.text, m.Points, m.Verdict)
		}
	}
}

func FuzzMark(f *testing.F) {
	for _, s := range []string{"0.05", "1, 2", "2 1 3 4 5 6 7", "0.5, 13, 1, outside, left", "29°30'", "1½", "none", "0.004 then 0.005"} {
		f.Add(s)
	}
	var problems []*problem.Problem
	for _, t := range tasks.All() {
		system := machine.Imperial
		if !t.Allows(system) {
			system = t.Systems[0]
		}
		p, err := problem.New(t, problem.NewCode(t.Name, 2, system, 7, machine.DefaultLathe(system)))
		if err != nil {
			f.Fatal(err)
		}
		problems = append(problems, p)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, p := range problems {
			m := p.Mark(text)
			if (m.Verdict == answer.Unread) != (m.Unread != nil) || math.IsNaN(m.Response.X) || math.IsInf(m.Response.X, 0) {
				t.Errorf("%s %q: %+v", p.Code, text, m)
			}
		}
	})
}

func BenchmarkMarkAnswer(b *testing.B) {
	p := remake(b, "compound-travel@2-7f3a")
	b.ReportAllocs()
	for b.Loop() {
		if m := p.Mark("58.7 thou"); m.Verdict == answer.Unread {
			b.Fatal(m.Unread)
		}
	}
}
