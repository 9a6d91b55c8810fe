package quiz_test

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"scratchpass/content"
	"scratchpass/quiz"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/tasks"
)

func remake(t testing.TB, code string) *quiz.Problem {
	t.Helper()
	p, err := tasks.Remake(code)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// An answer as it may be typed, and what comes of it. The key is 0.0587 in.
func TestMarkWhatIsTyped(t *testing.T) {
	tk, _ := tasks.Find("compound-travel")
	v := quiz.NewValues(tk.Inputs, machine.Imperial)
	v.Set("tpi", 12)
	v.Set("angle", 29.5)
	p, err := quiz.Worked(tk, v, machine.InchLathe)
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
		if m.Slip != "" {
			got += " " + m.Slip
		}
		if got != want {
			t.Errorf("%.30q is marked %s, want %s", text, got, want)
		}
		if m.Verdict == quiz.Unread && (m.Err == nil || strings.ContainsAny(m.Err.Error(), "\x1b\n") || len(m.Err.Error()) > 200) {
			t.Errorf("%.30q: error %v", text, m.Err)
		}
	}
}

func TestPoints(t *testing.T) {
	p := remake(t, "single-depth@1-0001")
	for _, c := range []struct {
		text   string
		points float64
	}{{p.Answer.Unit.Fixed(p.Answer.Key.X), 1}, {"0.9", 0}, {p.Answer.Unit.Fixed(p.Answer.Key.X * 1000), 0.5}} {
		if m := p.Mark(c.text); m.Points != c.points {
			t.Errorf("%s: %v points (%s)", c.text, m.Points, m.Verdict)
		}
	}
}

// The order of the feedback: the two answers, the road, the working, the lathe, the
// caution of a task that can hurt; at most 60 words besides the working.
func TestFeedback(t *testing.T) {
	for _, task := range tasks.All() {
		w, err := quiz.LoadWords(content.Shipped(), task.Name)
		if err != nil {
			t.Fatal(err)
		}
		for seed := range uint32(60) {
			system := machine.System(seed % 2)
			if !task.Allows(system) {
				system = task.Systems[0]
			}
			p, err := quiz.Make(task, quiz.NewCode(task.Name, quiz.Level(1+seed%3), system, seed, machine.DefaultLathe(system)))
			if err != nil {
				t.Fatal(err)
			}
			marks := []quiz.Mark{p.MarkReply(p.Answer.Key)}
			p.SlipReplies(func(_ *quiz.Slip, r quiz.Reply) { marks = append(marks, p.MarkReply(r)) })
			if p.Answer.Kind.Name() == "quantity" {
				marks = append(marks, p.MarkReply(quiz.X(99)), p.MarkReply(quiz.X(-99)))
			}
			for _, m := range marks {
				f := w.Feedback(p, m)
				if f.Verdict == "" || strings.Contains(f.Text(), "${") || strings.Contains(f.Text(), "..") {
					t.Errorf("%s %s: %q", p.Code, m.Verdict, f.Text())
				}
				if m.Correct() {
					continue
				}
				if f.Reason == "" || f.Lathe == "" && m.Verdict != quiz.SafeWrong || task.Gate == (len(f.Safety) == 0) {
					t.Errorf("%s %s: something is missing: %+v", p.Code, m.Verdict, f)
				}
				if len(p.Working.Steps) > 0 && len(f.Working) == 0 {
					t.Errorf("%s: no working", p.Code)
				}
				if p.Answer.Options == nil {
					if n := wordCount(f.Verdict, f.Reason, f.Lathe, strings.Join(f.Safety, " ")); n > 60 {
						t.Errorf("%s %s: %d words", p.Code, m.Slip, n)
					}
				}
			}
		}
	}
}

// wordCount counts words, not numbers.
func wordCount(texts ...string) int {
	n := 0
	for _, w := range strings.Fields(strings.Join(texts, " ")) {
		if strings.ContainsFunc(w, func(r rune) bool { return r >= 'a' && r <= 'z' }) {
			n++
		}
	}
	return n
}

func TestCodes(t *testing.T) {
	for _, code := range []string{"compound-travel@2-7f3a", "compound-travel@1m-0000", "infeed-left@3-12345678",
		"dial-past-a-turn@3-0001+L6.24.12_C100.1r_T125.1b_k", "dial-past-a-turn@3-0001+L11p5.24.12_C100.0p5r_T62p5.0p5b_k"} {
		c, err := quiz.ParseCode(code)
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
		if _, err := quiz.ParseCode(code); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, want %q", code, err, want)
		}
	}
}

// A lathe goes through its file and its key and comes back.
func TestLatheRoundTrip(t *testing.T) {
	odd := machine.InchLathe
	odd.LeadScrew, odd.Compound.Turn, odd.Compound.Division = 4.5, 0.0625, 0.0005
	for _, l := range []machine.Lathe{machine.InchLathe, machine.MetricLathe, odd} {
		path := filepath.Join(t.TempDir(), "deep", "lathe.yaml")
		if err := machine.WriteLathe(path, l); err != nil {
			t.Fatal(err)
		}
		back, err := machine.ReadLathe(path)
		if err != nil || back.Code() != l.Code() || back.Name != l.Name || len(back.Gears) != len(l.Gears) {
			t.Errorf("wrote %+v, read %+v, %v", l, back, err)
		}
		left, _ := os.ReadDir(filepath.Dir(path))
		if len(left) != 1 {
			t.Errorf("%d files are left in the folder", len(left))
		}
		code := quiz.NewCode("infeed-left", 3, map[bool]machine.System{true: machine.Metric}[l.Metric], 1, l)
		if again, err := quiz.ParseCode(code.String()); err != nil || again != code {
			t.Errorf("%s reads %s, %v", code, again, err)
		}
	}
}

func FuzzMark(f *testing.F) {
	for _, s := range []string{"0.05", "1, 2", "2 1 3 4 5 6 7", "0.5, 13, 1, outside, left", "29°30'", "1½", "none", "0.004 then 0.005"} {
		f.Add(s)
	}
	var problems []*quiz.Problem
	for _, t := range tasks.All() {
		system := machine.Imperial
		if !t.Allows(system) {
			system = t.Systems[0]
		}
		p, err := quiz.Make(t, quiz.NewCode(t.Name, 2, system, 7, machine.DefaultLathe(system)))
		if err != nil {
			f.Fatal(err)
		}
		problems = append(problems, p)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, p := range problems {
			m := p.Mark(text)
			if (m.Verdict == quiz.Unread) != (m.Err != nil) || math.IsNaN(m.Reply.X) || math.IsInf(m.Reply.X, 0) {
				t.Errorf("%s %q: %+v", p.Code, text, m)
			}
		}
	})
}

func FuzzCode(f *testing.F) {
	f.Add("compound-travel@2-7f3a")
	f.Add("dial-past-a-turn@3m-0001+L3mm.20.10_C400.2d_T200.2b_k")
	f.Fuzz(func(t *testing.T, text string) {
		c, err := quiz.ParseCode(text)
		if err != nil {
			return
		}
		if c.String() != text {
			t.Errorf("%q prints %q", text, c)
		}
		if p, err := tasks.Remake(text); err == nil && p.Code.String() != text {
			t.Errorf("%q remakes %q", text, p.Code)
		}
	})
}

func FuzzLatheFile(f *testing.F) {
	text, err := os.ReadFile("testdata/lathe.yaml")
	if err != nil {
		f.Fatal(err)
	}
	f.Add(text)
	f.Fuzz(func(t *testing.T, text []byte) {
		l, err := machine.ParseLathe("lathe.yaml", text)
		if err == nil && l.Check() != nil {
			t.Errorf("%q gives a lathe that is wrong: %v", text, l.Check())
		}
	})
}

func BenchmarkMakeProblem(b *testing.B) {
	t, _ := tasks.Find("compound-travel")
	b.ReportAllocs()
	seed := uint32(0)
	for b.Loop() {
		if _, err := quiz.Make(t, quiz.NewCode(t.Name, 2, machine.Imperial, seed, machine.InchLathe)); err != nil {
			b.Fatal(err)
		}
		seed++
	}
}

func BenchmarkMarkAnswer(b *testing.B) {
	p := remake(b, "compound-travel@2-7f3a")
	b.ReportAllocs()
	for b.Loop() {
		if m := p.Mark("58.7 thou"); m.Verdict == quiz.Unread {
			b.Fatal(m.Err)
		}
	}
}

func BenchmarkWorkingAndFeedback(b *testing.B) {
	p := remake(b, "compound-travel@2-7f3a")
	w, err := quiz.LoadWords(content.Shipped(), "compound-travel")
	if err != nil {
		b.Fatal(err)
	}
	m := p.Mark("0.9")
	b.ReportAllocs()
	for b.Loop() {
		if w.Feedback(p, m).Text() == "" {
			b.Fatal("no feedback")
		}
	}
}
