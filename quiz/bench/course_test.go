package bench

import (
	"math"
	"testing"

	"scratchpass/content"
	"scratchpass/quiz/machine"
)

// What a picture is told of a pass is what the bench does: where the dial stands at a moment,
// when a half-nut that is pressed then falls into its thread, and when the tip meets the end.
func TestCourse(t *testing.T) {
	w, err := content.Shipped().Job("adjusting-screw")
	if err != nil {
		t.Fatal(err)
	}
	j, err := ParseJob(w, machine.InchLathe)
	if err != nil {
		t.Fatal(err)
	}
	b := New(j)
	b.Live = true
	if _, ok := b.Course(); ok {
		t.Error("a course with the spindle standing")
	}
	for _, line := range []string{"dress", "key out", "feed off", "speed 70", "gears 32/40", "angle 29.5 tailstock", "start", "touch", "zero cross", "zero compound", "cross out 0.2", "return", "cross to 0"} {
		e, err := Parse(line, machine.Imperial)
		if err != nil {
			t.Fatal(err)
		}
		b, _ = b.Step(e)
	}
	c, ok := b.Course()
	if !ok || !c.HasDial || !c.Closes || c.Closed || c.Keeps {
		t.Fatalf("%+v, %v", c, ok)
	}
	for i := range 50 {
		at := float64(i) * 0.173
		later := b.Ahead(at)
		mark, _ := later.Mark()
		want := math.Mod(c.Mark+at/c.MarkSeconds, float64(j.Lathe.DialMarks))
		if off := math.Abs(mark - want); off > 1e-6 && off < float64(j.Lathe.DialMarks)-1e-6 {
			t.Errorf("after %v s mark %v is under the index, not %v", at, want, mark)
		}
		closed, _ := later.Step(Event{Verb: "close"})
		drops, back := 0.0, 0.0
		if past := math.Mod(c.Past+at/c.NutSeconds, 1); past > c.Slack {
			drops = (1 - past) * c.NutSeconds
		} else {
			back = past * c.ThreadShare
		}
		if got := closed.Clock - later.Clock; math.Abs(got-drops) > 1e-6 {
			t.Errorf("pressed after %v s the half-nut falls after %v s, not %v", at, drops, got)
		}
		left := c.WaySeconds * (1 - c.Tool - back)
		if closed.Ahead(left-0.001).Over || !closed.Ahead(left+0.001).Over {
			t.Errorf("pressed after %v s the tip does not meet the end %v s later", at, left)
		}
	}
}
