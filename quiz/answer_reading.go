package quiz

import (
	"slices"
	"strings"

	"scratchpass/calc"
)

// reading is a designation taken apart: diameter, pitch or threads per inch,
// inside or outside, hand. Numbers stand where numbers belong, words anywhere.
type reading struct{}

var _ Kind = reading{}

func (reading) Name() string { return "reading" }

// words that may stand for another, so that a plain answer is understood.
var sameWord = map[string]string{
	"external": "outside", "ext": "outside", "screw": "outside", "internal": "inside", "int": "inside", "nut": "inside",
	"rh": "right", "right-hand": "right", "lh": "left", "left-hand": "left",
}

func (reading) Read(a *Answer, text string) (Reply, error) {
	want := "all parts in order, such as " + exampleReading(a)
	if len(text) > 200 {
		return Reply{}, unread(text, want)
	}
	items := list(strings.ToLower(text))
	var numbers, said []string
	for _, item := range items {
		if word, ok := sameWord[item]; ok {
			item = word
		}
		switch item {
		case "outside", "inside", "right", "left":
			said = append(said, item)
		case "in", "mm", "tpi", "hand", "pitch", "thread", "start", "starts":
		default:
			x, err := calc.ParseNumber(trimUnit(trimUnit(trimUnit(item, "mm"), "in"), "tpi"))
			if err != nil {
				return Reply{}, unread(text, want)
			}
			numbers = append(numbers, calc.Shortest(x, 4))
		}
	}
	fields := make([][2]string, len(a.Key.Fields))
	for i, f := range a.Key.Fields {
		fields[i][0] = f[0]
		switch f[0] {
		case "side", "hand":
			allowed := map[string][]string{"side": {"outside", "inside"}, "hand": {"right", "left"}}[f[0]]
			for _, w := range said {
				if slices.Contains(allowed, w) {
					fields[i][1] = w
				}
			}
		default:
			if len(numbers) > 0 {
				fields[i][1], numbers = numbers[0], numbers[1:]
			}
		}
		if fields[i][1] == "" {
			return Reply{}, unread(text, want)
		}
	}
	if len(numbers) > 0 {
		return Reply{}, unread(text, want)
	}
	return Reply{Fields: fields}, nil
}

func exampleReading(a *Answer) string {
	var parts []string
	for _, f := range a.Key.Fields {
		switch f[0] {
		case "side":
			parts = append(parts, "outside")
		case "hand":
			parts = append(parts, "right")
		case "pitch":
			parts = append(parts, "1.5")
		case "tpi":
			parts = append(parts, "20")
		case "starts":
			parts = append(parts, "1")
		default:
			parts = append(parts, map[bool]string{true: "10", false: "0.25"}[a.Unit.Name == "mm"])
		}
	}
	return strings.Join(parts, ", ")
}

func (reading) Same(_ *Answer, x, y Reply, _ float64) bool { return slices.Equal(x.Fields, y.Fields) }

func (reading) Show(_ *Answer, r Reply) string {
	parts := make([]string, len(r.Fields))
	for i, f := range r.Fields {
		parts[i] = f[1]
	}
	return strings.Join(parts, ", ")
}

// trimUnit takes a unit's name off the end of a text, in any case.
func trimUnit(text, unit string) string {
	text = strings.TrimSpace(text)
	if n := len(text) - len(unit); unit != "" && n > 0 && strings.EqualFold(text[n:], unit) {
		return strings.TrimSpace(text[:n])
	}
	return text
}
