package answer

import (
	"slices"
	"strings"

	"scratchpass/calc"
	"scratchpass/quiz/machine"
)

// Designation is a thread's designation taken apart: diameter, pitch or threads per
// inch, external or internal, hand. Numbers stand where numbers belong, words anywhere.
var Designation Kind = designation{}

type designation struct{ common }

func (designation) Name() string           { return "reading" }
func (designation) Accept(v Visitor) error { return v.Designation() }

// words that may stand for another, so that a plain answer is understood.
var sameWord = map[string]string{
	"external": "outside", "ext": "outside", "screw": "outside", "internal": "inside", "int": "inside", "nut": "inside",
	"rh": "right", "right-hand": "right", "lh": "left", "left-hand": "left",
}

// FieldWords are the words that may stand in a field of a designation; nil for a field
// that is a number.
func FieldWords(field string) []string {
	switch field {
	case "side":
		return []string{"outside", "inside"}
	case "hand":
		return []string{"right", "left"}
	}
	return nil
}

func (designation) Read(e *Expected, text string) (Response, error) {
	refuse := func() (Response, error) {
		return Response{}, unread(text, "want-reading", "example", designationExample(e))
	}
	if len(text) > longest {
		return refuse()
	}
	numbers, said, ok := numbersAndWords(text)
	if !ok {
		return refuse()
	}
	fields := make([][2]string, len(e.Key.Fields))
	for i, f := range e.Key.Fields {
		fields[i][0] = f[0]
		words := FieldWords(f[0])
		for _, w := range said {
			if slices.Contains(words, w) {
				fields[i][1] = w
			}
		}
		if words == nil && len(numbers) > 0 {
			fields[i][1], numbers = numbers[0], numbers[1:]
		}
		if fields[i][1] == "" {
			return refuse()
		}
	}
	if len(numbers) > 0 {
		return refuse()
	}
	return Response{Fields: fields}, nil
}

// numbersAndWords parts a text into the numbers and the words that count.
func numbersAndWords(text string) (numbers, said []string, ok bool) {
	for _, item := range list(strings.ToLower(text)) {
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
				return nil, nil, false
			}
			numbers = append(numbers, calc.Shortest(x, 4))
		}
	}
	return numbers, said, true
}

func designationExample(e *Expected) string {
	var parts []string
	for _, f := range e.Key.Fields {
		switch f[0] {
		case "side":
			parts = append(parts, calc.Outside.Word())
		case "hand":
			parts = append(parts, "right")
		case "pitch":
			parts = append(parts, "1.5")
		case "tpi":
			parts = append(parts, "20")
		case "starts":
			parts = append(parts, "1")
		default:
			diameter := "0.25"
			if e.Unit.Name == machine.MMUnit.Name {
				diameter = "10"
			}
			parts = append(parts, diameter)
		}
	}
	return strings.Join(parts, ", ")
}

func (designation) Same(_ *Expected, x, y Response, _ float64) bool {
	return slices.Equal(x.Fields, y.Fields)
}

func (designation) Print(_ *Expected, r Response) []string {
	parts := make([]string, len(r.Fields))
	for i, f := range r.Fields {
		parts[i] = f[1]
	}
	return []string{strings.Join(parts, ", ")}
}
