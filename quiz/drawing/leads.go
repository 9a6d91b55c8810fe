package drawing

import (
	"math"

	"scratchpass/calc"
)

// leadAngle is a thread unrolled: once round is the long side of a triangle, the lead its
// short one. The slope is drawn steeper than it is.
func leadAngle(s *sheet) {
	s.paper(sheetWide, 62)
	starts := min(max(s.number("starts", "z", 2, 0), 1), 4)
	pitch := s.length("pitch", "P", examplePitch)
	e := s.length("pitch-diameter", "E", must(calc.BasicPitchDiameter(calc.Inches(1), examplePitch)))
	lead := s.derived("l", pitch.Times(starts))
	s.tell("A", calc.Shortest(calc.AngleOfSlope(lead, e.Times(math.Pi)).Degrees(), 2)+"°", false)
	const left, right, foot, top, step = 22.0, 76.0, 12.0, 56.0, 11.0
	wide := right - left
	s.area(Thin, Clear, Work, box(left, foot, right, top)...)
	rise := step * starts
	for i := -3; i < 5; i++ {
		from, to := Point{left, foot + float64(i)*step}, Point{right, foot + float64(i)*step + rise}
		if to.Y <= foot || from.Y >= top {
			continue
		}
		slope := rise / wide
		if from.Y < foot {
			from = Point{left + (foot-from.Y)/slope, foot}
		}
		if to.Y > top {
			to = Point{from.X + (top-from.Y)/slope, top}
		}
		part, pen := Work, Thin
		if ((i%int(starts))+int(starts))%int(starts) == 0 {
			part, pen = Marked, Outline
		}
		s.draw(pen, part, from, to)
	}
	s.draw(Outline, Work, Point{left, foot}, Point{right, foot})
	s.dimension(Point{left, foot}, Point{right, foot}, -5)
	s.label((left+right)/2, 2.5, s.word("round"))
	s.dimension(Point{right, foot}, Point{right, foot + rise}, -6)
	over := 3.5
	if rise < 3*headLong {
		over = 2*headLong + 3
	}
	s.labelFrom(right+1, foot+rise+over, "${l}")
	s.dimension(Point{left, foot + step}, Point{left, foot}, -6)
	s.labelTo(left-1, foot+step+2*headLong+3, "${P}")
	angle := math.Atan2(rise, wide)
	s.angle(Point{left, foot}, 30, 0, angle)
	s.labelFrom(left+32, foot+max(30*math.Sin(angle/2)-1, 2.5), "${A}")
	s.label((left+right)/2, 60, s.word("starts"))
}

// leftHand is a right-hand and a left-hand thread cut on the same lathe, the spindle
// forward: the carriage goes the other way.
func leftHand(s *sheet) {
	s.paper(sheetWide, 64)
	const axis1, axis2 = 47.0, 15.0
	s.name(50, axis1-12, "carriage")
	s.labelFrom(54, axis2-12, s.word("carriage"))
	for i, axis := range []float64{axis1, axis2} {
		hand := calc.Hand(calc.RightHand)
		if i == 1 {
			hand = calc.LeftHand
		}
		s.area(Outline, Clear, Machine, box(2, axis-13, 14, axis+13)...)
		for _, y := range []float64{-6, 6} {
			s.draw(Thin, Machine, Point{2, axis + y}, Point{14, axis + y})
		}
		s.area(Outline, Clear, Work, box(14, axis-11, 24, axis+11)...)
		s.area(Outline, Clear, Work, box(24, axis-5, 31, axis+5)...)
		s.screw(Work, 31, 72, axis, 8.5, 6, hand)
		s.axis(Point{3, axis}, Point{76, axis})
		at, to := Point{78, axis - 9}, Point{62, axis - 12}
		if hand == calc.LeftHand {
			at, to = Point{27.5, axis - 6}, Point{52, axis - 12}
		}
		s.area(Outline, Tint, Tool, at, at.plus(2, -3.5), at.plus(2, -6), at.plus(-2, -6), at.plus(-2, -3.5))
		s.arrow(Marked, Point{at.X + math.Copysign(5, to.X-at.X), axis - 12}, to)
		s.labelFrom(75, axis+6, s.word([]string{"right", "left"}[i]))
	}
	s.name(50, 62, "forward")
}
