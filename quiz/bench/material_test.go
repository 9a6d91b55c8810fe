package bench

import (
	"slices"
	"testing"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/quiz/machine"
)

// Oil forgotten matters where the metal wants it, and nowhere else; without it the set-up
// chatters earlier there.
func TestWhereOilMatters(t *testing.T) {
	for metal, wants := range map[string]bool{"": true, "mild-steel": true, "alloy-steel": true, "stainless": true, "aluminium": true, "brass": false, "cast-iron": false} {
		w := content.Job{Thread: "3/4-10 UNC-2A", Material: metal}
		p := planOf(t, w, machine.InchLathe)
		events := slices.DeleteFunc(p.Events(), func(e Event) bool { return e.Verb == "oil" })
		if b := Play(p.Job, false, events); b.made(mistakeNoOil) != wants {
			t.Errorf("%q without oil: %v", metal, b.Mistakes)
		}
		oiled, dry := readyFor(t, w, 70), readyFor(t, w, 70)
		dry.Oiled = false
		if worse := dry.quiet() < oiled.quiet(); worse != wants {
			t.Errorf("%q: dry %v, oiled %v", metal, dry.quiet(), oiled.quiet())
		}
		if missing := New(p.Job).Missing(); slices.Contains(missing, "oil") != wants {
			t.Errorf("%q: missing %v", metal, missing)
		}
	}
}

// A card follows the metal: a harder one is turned slower, its first cut is smaller, and the
// same chip takes more force; the job that does not say is of mild steel.
func TestACardFollowsTheMetal(t *testing.T) {
	fast := machine.InchLathe
	fast.Speeds = []int{20, 30, 45, 60, 80, 100, 130, 160, 200, 250, 300}
	card := func(metal string) Plan {
		return planOf(t, content.Job{Thread: "1-8 UNC-2A", Gap: "0.6 in", Material: metal}, fast)
	}
	steel, unsaid := card("mild-steel"), card("")
	if steel.RPM != unsaid.RPM || len(steel.Steps) != len(unsaid.Steps) || unsaid.Usual != steel.Usual {
		t.Error("a job without a metal is not of mild steel")
	}
	for _, c := range []struct {
		metal          string
		slower, harder bool
	}{{"alloy-steel", true, true}, {"stainless", true, true}, {"cast-iron", true, false}, {"brass", false, false}, {"aluminium", false, false}} {
		p := card(c.metal)
		if slower := p.Usual < steel.Usual; slower != c.slower {
			t.Errorf("%s at %.0f rpm, steel at %.0f", c.metal, p.Usual, steel.Usual)
		}
		if smaller := p.First < steel.First; smaller != c.harder {
			t.Errorf("%s: first cut to %v, steel %v", c.metal, p.First, steel.First)
		}
		if !p.Passes() {
			t.Errorf("%s: no passes: %+v", c.metal, p.Faults)
			continue
		}
		if b, _ := p.played(); b.Outcome.Verdict != Fits {
			t.Errorf("%s: %v", c.metal, b.Outcome)
		}
	}
}

// Soft metals bend: the same work of brass or aluminium is less stiff than of steel, and a
// bore is none, for there the bar bends.
func TestSoftWorkBends(t *testing.T) {
	stiff := func(thread, metal string) float64 {
		b := readyFor(t, content.Job{Thread: thread, Material: metal}, 70)
		k, err := b.Stiffness()
		if err != nil {
			t.Fatal(err)
		}
		return k
	}
	for _, metal := range []string{"stainless", "cast-iron", "brass", "aluminium"} {
		if stiff("1/2-13 UNC-2A", metal) >= stiff("1/2-13 UNC-2A", "mild-steel") {
			t.Errorf("%s is as stiff as steel", metal)
		}
		if stiff("1-8 UNC-2B", metal) != stiff("1-8 UNC-2B", "mild-steel") {
			t.Errorf("a bore of %s bends the bar otherwise", metal)
		}
	}
}

func TestNoSuchMetal(t *testing.T) {
	_, err := ParseJob(Usual(content.Job{Thread: "3/4-10 UNC-2A", Material: "titanium"}, machine.InchLathe), machine.InchLathe)
	if err == nil || err.Error() != `material "titanium": give one of mild-steel, alloy-steel, stainless, brass, aluminium, cast-iron` {
		t.Error(err)
	}
	if j := shippedJob(t, "adjusting-screw"); j.Material != calc.MildSteel {
		t.Error(j.Material)
	}
}
