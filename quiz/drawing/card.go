package drawing

import (
	"strings"

	"scratchpass/calc"
	"scratchpass/content"
)

// Card returns the pictures of a card for paper side by side, with one twin: the blank or
// bore with its groove, the tool in its groove, and both dials at zero. facts are those of
// the first two figures; profile is
// the name of the second, cross and compound are one turn of each dial.
func Card(profile string, facts Facts, cross, compound calc.Length, words map[string]content.DrawingWords) (Drawing, error) {
	part, err := Of("blank-and-groove", facts, words)
	if err != nil {
		return Drawing{}, err
	}
	tool, err := Of(profile, facts, words)
	if err != nil {
		return Drawing{}, err
	}
	if profile == "acme-form" && facts.Words["side"] == calc.Inside.String() {
		tool.upsideDown(tool.Height)
	}
	dials, err := drawn("card-dials", Facts{Metric: facts.Metric}, words, func(s *sheet) { s.zeroDials(cross, compound) })
	if err != nil {
		return Drawing{}, err
	}
	return beside(part, tool, dials), nil
}

// zeroDials are the faces of both slides' dials at their zeros, one over the other.
func (s *sheet) zeroDials(cross, compound calc.Length) {
	s.paper(34, 62)
	unit, label := s.dialUnit()
	for i, turn := range []calc.Length{compound, cross} {
		y := 13 + float64(i)*32
		places := placesEvery(turn, fewNumbers(turn, unit).Times(0.5), turn, label)
		s.face(Point{17, y}, 10, places, 0)
		s.name(17, y-12, []string{"compound", "cross"}[i])
	}
	s.values["cross"], s.values["compound"] = s.measured(cross), s.measured(compound)
}

// besideGap is between drawings that stand side by side.
const besideGap = 6.0

// beside puts drawings side by side as one, their middles level, told one after the other.
func beside(drawings ...Drawing) Drawing {
	var all Drawing
	var twins []string
	for _, d := range drawings {
		all.Height = max(all.Height, d.Height)
	}
	for i, d := range drawings {
		if i > 0 {
			all.Width += besideGap
		}
		by := Point{all.Width, (all.Height - d.Height) / 2}
		for _, shape := range d.Shapes {
			points := make([]Point, len(shape.Points))
			for k, q := range shape.Points {
				points[k] = q.plus(by.X, by.Y)
			}
			shape.Points = points
			all.Shapes = append(all.Shapes, shape)
		}
		for _, l := range d.Labels {
			l.At = l.At.plus(by.X, by.Y)
			all.Labels = append(all.Labels, l)
		}
		all.Width += d.Width
		twins = append(twins, d.Twin)
	}
	all.Most = int(all.Width / 2)
	all.Twin = strings.Join(twins, "\n")
	return all
}
