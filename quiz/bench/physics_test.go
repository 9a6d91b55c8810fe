package bench

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/quiz/machine"
)

// figureFiles are the files in which figures stand: published ones, chosen ones, and how near
// two numbers come that are the same.
var figureFiles = []string{"published.go", "chosen.go", "tolerances.go"}

// Figures of the cut stand in their files and nowhere else. In the files that decide what a
// cut does there is no number but those that count or halve; in the others none with a point
// has a name of its own.
func TestFiguresStandInTheirFiles(t *testing.T) {
	rooms := []string{"cut.go", "part.go", "material.go", "form.go", "formlimits.go", "consequence.go"}
	counts := []string{"0", "1", "2", "3", "0.5"}
	names, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") || slices.Contains(figureFiles, name) {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		all := slices.Contains(rooms, name)
		inspect := func(root ast.Node, floats bool) {
			ast.Inspect(root, func(n ast.Node) bool {
				lit, ok := n.(*ast.BasicLit)
				if ok && (lit.Kind == token.FLOAT || lit.Kind == token.INT && !floats) && !slices.Contains(counts, lit.Value) {
					t.Errorf("%s: the figure %s stands here: it belongs in %s, with its source or with why it was chosen", name, lit.Value, strings.Join(figureFiles[:2], " or "))
				}
				return true
			})
		}
		if all {
			inspect(file, false)
			continue
		}
		for _, d := range file.Decls {
			if g, ok := d.(*ast.GenDecl); ok && g.Tok == token.CONST {
				inspect(g, true)
			}
		}
	}
}

// Every chosen figure says so, and every published one names a source that exists.
func TestChosenAndPublishedSayWhatTheyAre(t *testing.T) {
	sources, err := content.Shipped().Sources()
	if err != nil {
		t.Fatal(err)
	}
	for name, wants := range map[string]func(text string) bool{
		"chosen.go": func(text string) bool {
			return strings.Contains(strings.ToLower(text), "chosen") || strings.Contains(text, "common practice")
		},
		"published.go": func(text string) bool {
			_, after, ok := strings.Cut(text, "(")
			source, _, closed := strings.Cut(after, ")")
			source, _, _ = strings.Cut(source, ",")
			_, known := sources[source]
			return ok && closed && known
		},
	} {
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ParseComments)
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range file.Decls {
			g, ok := d.(*ast.GenDecl)
			if !ok || g.Tok == token.IMPORT {
				continue
			}
			for _, spec := range g.Specs {
				v := spec.(*ast.ValueSpec)
				text := v.Doc.Text() + v.Comment.Text()
				if name == "chosen.go" || !g.Lparen.IsValid() { // a head counts for all that stand under it, but for sources
					text += g.Doc.Text()
				}
				if !wants(text) {
					t.Errorf("%s: %s does not say where it comes from: %q", name, v.Names[0].Name, text)
				}
			}
		}
	}
}

// readyFor is a bench whose set-up is as it should be.
func readyFor(t *testing.T, w content.Job, rpm float64) Bench {
	t.Helper()
	j, err := ParseJob(Usual(w, machine.InchLathe), machine.InchLathe)
	if err != nil {
		t.Fatal(err)
	}
	b := New(j)
	b.Snug, b.Oiled, b.RPM = true, true, rpm
	return b
}

// What makes it worse is not rough: each of these alone lowers the widest quiet chip, or
// leaves more of a cut on.
func TestWhatMakesItWorse(t *testing.T) {
	outside, inside := content.Job{Thread: "3/4-10 UNC-2A"}, content.Job{Thread: "1-8 UNC-2B"}
	for _, c := range []struct {
		name          string
		better, worse func(t *testing.T) Bench
		lag           bool // what is left on grows too
	}{
		{"a longer bar", func(t *testing.T) Bench { return readyFor(t, inside, 70) }, func(t *testing.T) Bench {
			b := readyFor(t, inside, 70)
			b.Job.StandsOut = b.Job.StandsOut.Times(1.5)
			return b
		}, true},
		{"a thinner bar", func(t *testing.T) Bench { return readyFor(t, inside, 70) }, func(t *testing.T) Bench {
			b := readyFor(t, inside, 70)
			b.Job.Bar = b.Job.Bar.Times(0.8)
			return b
		}, true},
		{"longer work", func(t *testing.T) Bench { return readyFor(t, outside, 70) }, func(t *testing.T) Bench {
			b := readyFor(t, outside, 70)
			b.Job.StandsOut = b.Job.StandsOut.Times(1.5)
			return b
		}, true},
		{"no centre", func(t *testing.T) Bench {
			b := readyFor(t, outside, 70)
			b.Job.Hold = Centres
			return b
		}, func(t *testing.T) Bench { return readyFor(t, outside, 70) }, true},
		{"loose gibs", func(t *testing.T) Bench { return readyFor(t, outside, 70) }, func(t *testing.T) Bench {
			b := readyFor(t, outside, 70)
			b.Snug = false
			return b
		}, false},
		{"no oil", func(t *testing.T) Bench { return readyFor(t, outside, 70) }, func(t *testing.T) Bench {
			b := readyFor(t, outside, 70)
			b.Oiled = false
			return b
		}, false},
		{"loose gibs rather than no oil", func(t *testing.T) Bench {
			b := readyFor(t, outside, 70)
			b.Oiled = false
			return b
		}, func(t *testing.T) Bench {
			b := readyFor(t, outside, 70)
			b.Snug = false
			return b
		}, false},
		{"a faster spindle", func(t *testing.T) Bench { return readyFor(t, outside, 130) }, func(t *testing.T) Bench { return readyFor(t, outside, 260) }, false},
	} {
		better, worse := c.better(t), c.worse(t)
		if worse.quiet() >= better.quiet() {
			t.Errorf("%s: the widest quiet chip goes from %v to %v", c.name, better.quiet(), worse.quiet())
		}
		if c.lag != (worse.Lag() > better.Lag()) {
			t.Errorf("%s: what is left on goes from %v to %v", c.name, better.Lag(), worse.Lag())
		}
	}
}

// As a cut grows the lathe groans before the tip breaks. On a stout set-up that is all; a
// slender one has chattered long before.
func TestWhatComesFirstAsACutGrows(t *testing.T) {
	for _, c := range []struct {
		job     content.Job
		slender bool
	}{
		{content.Job{Thread: "3/4-10 UNC-2A"}, false},
		{content.Job{Thread: "1/2-13 UNC-2A", StandsOut: "3 in", Hold: "chuck"}, true},
		{content.Job{Thread: "1-8 UNC-2B", Bar: "0.45 in", StandsOut: "2 in"}, true},
	} {
		b := readyFor(t, c.job, 70)
		b.Angle = 29.5
		at := map[string]calc.Length{}
		for cut := calc.Thou; cut < 0.08; cut += calc.Thou {
			p := Pass{Before: 0.03, Set: 0.03 + cut}
			s := &step{Bench: b}
			if !s.measure(&p) {
				t.Fatal(c.job.Thread)
			}
			for name, so := range map[string]bool{"chatter": p.Chatter, "heavy": p.Force > b.Job.heavyForce(), "breaks": p.Force > b.Job.breakingForce()} {
				if _, was := at[name]; so && !was {
					at[name] = cut
				}
			}
		}
		if at["heavy"] == 0 || at["breaks"] == 0 || at["heavy"] >= at["breaks"] || c.slender != (at["chatter"] > 0 && at["chatter"] < at["heavy"]) {
			t.Errorf("%s: %v", c.job.Thread, at)
		}
	}
}
