package drawing

import (
	"math"

	"scratchpass/content"
)

// TurningDial returns the face of a thread dial with its first mark under the index, for a
// picture in which it turns about the middle: its lines and numbers move, the index stays.
func TurningDial(marks int, words map[string]content.DrawingWords) (d Drawing, middle Point, err error) {
	d, err = ThreadDial(0, marks, words)
	for i := range d.Shapes {
		d.Shapes[i].Moves = d.Shapes[i].Part != Marked
	}
	for i := range d.Labels {
		d.Labels[i].Moves = true
	}
	return d, dialMiddle, err
}

// Way is the way of a tool from the start of a thread to what lies behind it, in shares of
// the whole.
type Way struct {
	ThreadFrom, ThreadTo float64
	Inside               bool // of a bore
}

// Draw returns it as a strip, seen as one sees the lathe, with the headstock at the left: the
// tool before the thread, which moves, the thread, the clear run and what lies behind it.
// from and to are the places of the tip at the two ends of the way.
func (w Way) Draw(words map[string]content.DrawingWords) (d Drawing, from, to float64, err error) {
	const wide, high, first, last, line, tall = 160.0, 42.0, 150.0, 26.0, 17.0, 14.0
	half := tall * tan30 // of the tool, at its back
	at := func(share float64) float64 { return first + share*(last-first) }
	d, err = drawn("way-of-the-tool", Facts{}, words, func(s *sheet) {
		s.paper(wide, high)
		s.Most = 52
		begin, end := at(w.ThreadFrom), at(w.ThreadTo)
		edge := []Point{{begin, line - 4}}
		teeth := max(1, math.Round((begin-end)/5))
		for i := range int(teeth) {
			x, step := begin-float64(i)*(begin-end)/teeth, (begin-end)/teeth
			edge = append(edge, Point{x - step*0.5, line}, Point{x - step, line - 4})
		}
		wall := last - half // where what stands ahead of the tip meets it
		edge = append(edge, Point{wall, line - 4}, Point{wall, line + tall}, Point{0, line + tall})
		s.section(Work, append(edge, Point{0, 0}, Point{begin, 0})...)
		tip := Point{first, line + 1}
		s.area(Outline, Tint, Tool, tip, tip.plus(half, tall), tip.plus(-half, tall))
		s.Shapes[len(s.Shapes)-1].Moves = true
		s.name((begin+end)/2, 6, "thread")
		if end-wall > 40 {
			s.name((end+wall)/2, 6, "clear")
		}
		s.name(first, line+tall+6, "tool")
		s.Labels[len(s.Labels)-1].Moves = true
		if w.Inside {
			s.upsideDown(high)
		}
	})
	return d, first, last, err
}
