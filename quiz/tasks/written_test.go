package tasks

import (
	"slices"
	"strings"
	"testing"

	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
)

// What people write on paper for one and the same answer is read as one and the same.
func TestWaysOfWriting(t *testing.T) {
	made := func(name string, fits func(*problem.Problem) bool) *problem.Problem {
		t.Helper()
		task, err := (Set{}).Find(name)
		if err != nil {
			t.Fatal(err)
		}
		for seed := range uint32(400) {
			p, err := problem.New(task, problem.NewCode(name, problem.NumbersGiven, machine.Imperial, seed, machine.InchLathe))
			if err == nil && (fits == nil || fits(p)) {
				return p
			}
		}
		t.Fatalf("%s: no problem fits", name)
		return nil
	}
	same := func(p *problem.Problem, texts ...string) {
		t.Helper()
		for _, text := range texts {
			if m := p.Mark(text); m.Verdict != answer.Right {
				t.Errorf("%s: %q is %s, the answer is %s", p.Code, text, m.Verdict, p.Expected.Text())
			}
		}
	}
	p := made("one-full-pass", nil)
	steps := strings.Fields(p.Expected.Text())
	same(p, strings.Join(steps, ""), strings.Join(steps, "-"), strings.Join(steps, ", "), strings.Join(steps, " > "), strings.Join(steps, ") "))
	for _, text := range []string{strings.Join(steps[1:], ""), steps[0], strings.Join(steps, "") + steps[0]} {
		if m := p.Mark(text); m.Verdict != answer.Unread {
			t.Errorf("%q is %s", text, m.Verdict)
		}
	}
	p = made("feed-off-before-half-nut", nil)
	same(p, strings.Join(p.Expected.Key.Keys, ", "), strings.Join(p.Expected.Key.Keys, " "))
	p = made("thread-dial-line", func(p *problem.Problem) bool { return p.Expected.Text() == "1, 2, 3, 4, 5, 6, 7, 8" })
	same(p, "all", "All.", "all marks", "any", "1-8", "1 to 8", "1 \u2013 8", "1-3, 4-8", "1 2 3 4 5 6 7 and 8")
	for _, text := range []string{"1-8 (odd)", "1 to 7 (odd only)", "8-1", "1-9", "1-", "-8", "1-2-8", "1..8"} {
		if m := p.Mark(text); m.Verdict != answer.Unread {
			t.Errorf("%q is %s", text, m.Verdict)
		}
	}
	p = made("thread-dial-line", func(p *problem.Problem) bool { return p.Expected.Text() == "1, 3, 5, 7" })
	same(p, "1357", "1/3/5/7", "1, 3, 5, 7 (odd)", "1, 3, 5 and 7", "1+3+5+7", "(1) (3) (5) (7)", "1 & 3 & 5 & 7", "7,5,3,1")
	p = made("cross-slide-return", nil)
	var two []string
	for _, x := range p.Expected.Key.Xs {
		two = append(two, p.Expected.Unit.Fixed(x))
	}
	same(p, strings.Join(two, " "), strings.Join(two, " and "), strings.Join(two, " in, ")+" in", strings.Join(two, " in and ")+" in", strings.Join(two, ", "))
	same(p, strings.Trim(two[0], "0.")+" and "+strings.Trim(two[1], "0.")+" thou")
	if m := p.Mark(strings.Trim(two[0], "0.") + " " + strings.Trim(two[1], "0.")); m.Verdict != answer.WrongUnit || m.Points != 0.5 {
		t.Errorf("thou without a unit: %s, %v", m.Verdict, m.Points)
	}
	for _, text := range []string{two[0] + " then " + strings.Trim(two[1], "0.") + " thou", two[0] + " mm then " + two[1] + " in"} {
		if m := p.Mark(text); m.Verdict != answer.Unread {
			t.Errorf("%q is %s", text, m.Verdict)
		}
	}
	same(p, strings.Trim(two[0], "0.")+" thou then "+strings.Trim(two[1], "0."), strings.Trim(two[0], "0.")+" thousandths, "+strings.Trim(two[1], "0.")+" thousandths")
	if m := p.Mark(strings.Trim(two[0], "0.") + " in, " + strings.Trim(two[1], "0.") + " in"); m.Points != 0 {
		t.Errorf("inches written for thou: %s, %v", m.Verdict, m.Points)
	}
	p = made("gear-ratio", func(p *problem.Problem) bool { return p.Expected.Key.X == 0.5 })
	same(p, "0.5", "r = 0.5", "1:2", "20:40", "20/40", "1.5:3", "20 to 40")
	p = made("percent-of-thread", nil)
	percent := p.Expected.Unit.Fixed(p.Expected.Key.X)
	same(p, percent+"%", percent+" %", percent+" percent", "about "+percent)
	if m := p.Mark("0." + strings.ReplaceAll(percent, ".", "") + " %"); m.Points != 0 {
		t.Errorf("a share, written as percent: %s", m.Verdict)
	}
	if m := p.Mark("0." + strings.ReplaceAll(percent, ".", "")); m.Verdict != answer.WrongUnit {
		t.Errorf("a share for percent: %s", m.Verdict)
	}
	p = made("pitch-from-tpi", nil)
	same(p, "P = 1/11 = "+p.Expected.Text(), "P="+p.Expected.Text(), "P = "+p.Expected.Unit.Fixed(p.Expected.Key.X))
	key := p.Expected.Unit.Fixed(p.Expected.Key.X)
	for _, text := range []string{"2=1", "=", "P=", "P = " + key + " for n = 11", "P = " + key + " in, n = 11", "P = " + key + " in = 2.31"} {
		if m := p.Mark(text); m.Verdict != answer.Unread {
			t.Errorf("%q is %s", text, m.Verdict)
		}
	}
	p = made("threading-speed", nil)
	rpm := p.Expected.Unit.Fixed(p.Expected.Key.X)
	if m := p.Mark(rpm + "1/min"); m.Verdict == answer.Right {
		t.Errorf("%s1/min is read as %s", rpm, rpm)
	}
	same(p, rpm+"/min", rpm+" r/min", rpm+" revs", rpm+" rev/min", rpm+" RPM")
	p = made("in-or-out", func(p *problem.Problem) bool { return p.Expected.Key.X < 0 })
	out := strings.TrimPrefix(p.Expected.Unit.Fixed(p.Expected.Key.X), "-")
	same(p, "-"+out, "- "+out, "minus "+out, "\u2212"+out)
	p = made("marks-that-fit", func(p *problem.Problem) bool { return p.Expected.Key.X == 2 })
	for _, text := range []string{"1.5", "2.4"} {
		if m := p.Mark(text); m.Verdict == answer.Right {
			t.Errorf("%s of 2 marks is right", text)
		}
	}
	p = made("inch-designation", nil)
	parts := strings.Split(p.Expected.Text(), ", ")
	if i := slices.Index([]string{"right", "left"}, parts[len(parts)-1]); i >= 0 {
		same(p, p.Expected.Text()+" hand")
	}
}
