package tasks_test

import (
	"slices"
	"strings"
	"testing"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
)

func find(t *testing.T, name string) *problem.Task {
	t.Helper()
	task, err := (tasks.Set{}).Find(name)
	if err != nil {
		t.Fatal(err)
	}
	return task
}

// What is counted along the work, and the gap behind a thread, lie on what stands out of
// the jaws.
func TestLengthsLieOnTheWork(t *testing.T) {
	for name, needed := range map[string]func(p *problem.Problem) float64{
		"count-crests":        func(p *problem.Problem) float64 { return p.Values.X("last") - p.Values.X("first") },
		"scratch-pass-check":  func(p *problem.Problem) float64 { return p.Values.X("over") },
		"time-to-shoulder":    func(p *problem.Problem) float64 { return 3 * p.Values.X("gap") },
		"fastest-for-the-gap": func(p *problem.Problem) float64 { return 3 * p.Values.X("gap") },
		"relief-groove-width": func(p *problem.Problem) float64 { return 3 * p.Expected.Key.X },

		"incomplete-thread-at-the-end": func(p *problem.Problem) float64 { return 3 * p.Expected.Key.X },
	} {
		task := find(t, name)
		for _, s := range []machine.System{machine.Imperial, machine.Metric} {
			for seed := range draws(400) {
				p := made(t, task, problem.OnTheJob, s, seed+61000, lathe(s, seed))
				text, ok := p.Values.PromptWord("stickout", "")
				number, _, _ := strings.Cut(text, " ")
				out, err := calc.ParseNumber(number)
				if !ok || err != nil {
					t.Fatalf("%s: stands out %q", p.Code, text)
				}
				length := needed(p)
				if out/s.Length().Factor <= length {
					t.Fatalf("%s: %s stands out, and %s of it is needed", p.Code, text, s.Length().Text(length))
				}
			}
		}
	}
}

// Where a dial has come round to its zero, zero and a whole turn are the same reading.
func TestAWholeTurnReadsAsZero(t *testing.T) {
	found := 0
	task := find(t, "dial-after-springs")
	for level := problem.NumbersGiven; level <= problem.OnTheJob; level++ {
		for _, s := range []machine.System{machine.Imperial, machine.Metric} {
			for seed := range draws(2000) {
				p := made(t, task, level, s, seed, machine.DefaultLathe(s))
				turn := p.Values.Length("turn")
				if left := turn.Inches() - p.Expected.Key.X; left <= p.Expected.Tolerance*1.000001 {
					continue // so near the end of the turn that its end is right as well
				}
				zero := p.Expected.Key.X == 0
				if m := p.Mark(s.Length().Text(turn.Inches())); zero != (m.Verdict == answer.Right) {
					t.Fatalf("%s: reads %s, a whole turn is %s", p.Code, p.Expected.Text(), m.Verdict)
				}
				if zero {
					found++
					if m := p.Mark("0.0000"); m.Verdict != answer.Right {
						t.Fatalf("%s: zero is %s", p.Code, m.Verdict)
					}
				}
			}
		}
	}
	if found == 0 && !testing.Short() {
		t.Error("no dial came round to its zero")
	}
}

// The pitches that a beginner meets first come up.
func TestTheCommonestPitchesAreAsked(t *testing.T) {
	for _, name := range []string{"compound-travel", "compound-travel-needed", "sideways-shift", "radius-dial-plunge", "diameter-dial-plunge", "depth-for-tool",
		"minor-diameter", "single-depth", "best-wire", "over-wires", "time-to-shoulder", "room-to-start"} {
		task := find(t, name)
		for s, want := range map[machine.System][]string{machine.Imperial: {"13", "16", "18", "20"}, machine.Metric: {"1.25", "1.5", "1.75", "2"}} {
			seen := map[string]bool{}
			for seed := range 600 {
				p := made(t, task, problem.DeriveFirst, s, seed, machine.DefaultLathe(s))
				pitch := p.Values.Pitch()
				if text := calc.Shortest(pitch.Millimetres(), 2); s == machine.Metric {
					seen[text] = true
				} else {
					seen[calc.Shortest(calc.Round(calc.Inch.Over(pitch), 1), 0)] = true
				}
			}
			for _, pitch := range want {
				if !seen[pitch] && !(name == "radius-dial-plunge" && pitch == "1.75") { // its answer lies on an edge of rounding
					t.Errorf("%s: %s is never asked", name, pitch)
				}
			}
		}
	}
}

// Dropping the 0.866 is told from the right answer in every draw, and so is rounding the
// pitch where it does harm. Another setting of the compound is right, and named.
func TestNearErrorsAreTold(t *testing.T) {
	for name, slip := range map[string]string{"depth-for-tool": "no-866", "rule-of-thumb": "no-866", "basic-pitch-diameter": "no-866", "lead-angle": "nominal",
		"bore-for-inside-thread": "no-866", "over-wires": "no-866", "flank-width": "radians", "compound-travel": "radians"} {
		for _, s := range []machine.System{machine.Imperial, machine.Metric} {
			for seed := range draws(400) {
				p := made(t, find(t, name), problem.DeriveFirst, s, seed+71000, lathe(s, seed))
				if !slices.ContainsFunc(p.Expected.Errors, func(k answer.Known) bool { return k.Name == slip }) {
					t.Fatalf("%s: %s does not show", p.Code, slip)
				}
			}
		}
	}
	told := 0
	for seed := range 300 {
		p := made(t, find(t, "compound-travel"), problem.NumbersGiven, machine.Imperial, seed, machine.DefaultLathe(machine.Imperial))
		for _, known := range p.Expected.Errors {
			if !known.Near {
				continue
			}
			told++
			if m := p.Mark(p.Expected.Show(known.Response)); m.Verdict != answer.Convention || m.Points != 1 || m.Error != known.Name {
				t.Errorf("%s: %s is marked %s %s", p.Code, known.Name, m.Verdict, m.Error)
			}
		}
	}
	if told < 300 {
		t.Errorf("only %d neighbouring angles are told in 300 problems", told)
	}
}
