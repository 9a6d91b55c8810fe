package bench

import (
	"fmt"
	"strings"
	"testing"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/quiz/machine"
)

// sweptOtherWays are the same tables for left-hand threads, for right-hand ones away from the
// shoulder and for several starts.
func sweptOtherWays(t *testing.T, lathes ...machine.Lathe) string {
	t.Helper()
	var text strings.Builder
	for _, way := range []struct {
		title, sizes, towards string
		hand                  calc.Hand
		starts                int
		locked                bool
	}{
		{"Left-hand, from the groove to the free end", "1/4-20 3/8-16 1/2-13 5/8-11 3/4-10 3/4-16 1-8 1-1/2-6 M8x1.25 M12x1.75 M20x2.5 M36x4", "", calc.LeftHand, 1, false},
		{"Left-hand towards the chuck, the spindle in reverse, the nose locked", "1/2-13 3/4-10 M12x1.75", Headstock, calc.LeftHand, 1, true},
		{"Right-hand away from the shoulder, the spindle in reverse", "1/2-13 3/4-10 M12x1.75", Tailstock, calc.RightHand, 1, false},
		{"The same, the nose locked", "3/8-16 1/2-13 3/4-10 1-8 1-12 M12x1.75 M20x2.5", Tailstock, calc.RightHand, 1, true},
		{"Two starts", "3/8-24 1/2-20 3/4-16 3/4-10 1-12 1-8 1-1/2-12 M16x2 M20x2.5 M30x3.5", "", calc.RightHand, 2, false},
		{"Two starts, left-hand", "3/4-16 1-12 M20x2.5", "", calc.LeftHand, 2, false},
		{"Three starts", "1-12 1-1/2-12 M30x3.5", "", calc.RightHand, 3, true},
	} {
		fmt.Fprintf(&text, "\n## %s\n\n| thread | side | lathe | bar | to the next start | passes | minutes | verdict |\n|---|---|---|---|---|---|---|---|\n", way.title)
		for _, name := range strings.Fields(way.sizes) {
			d, err := calc.ParseDesignation(name)
			if err != nil {
				t.Fatal(err)
			}
			d.Hand, d.Starts = way.hand, way.starts
			for _, side := range []calc.Side{calc.Outside, calc.Inside} {
				for _, l := range lathes {
					l.ScrewedNose = l.ScrewedNose && !way.locked
					r := sweep(t, content.Job{Thread: d.String(), Side: side.String(), Towards: way.towards}, l, false)
					if r.way == "" {
						r.way = "-"
					}
					fmt.Fprintf(&text, "| %s | %s | %s | %s | %s | %s | %s | %s |\n", r.thread, r.side, r.lathe, r.bar, r.way, r.passes, r.minutes, r.verdict)
				}
			}
		}
	}
	return text.String()
}
