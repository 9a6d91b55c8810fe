package qti

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
)

// Asked is the way in which an item stands in a package.
type Asked int

// The ways.
const (
	AsItIs      Asked = iota // with the boxes and options of its kind
	AsWhole                  // as one choice among whole answers, but for a decision
	InCartridge              // as a cartridge can have it
)

// Reply is what a learning system hands back of one item, as someone would have typed it at
// a screen: given has the values of each response variable, such as RESPONSE. What was left
// out stays out; what can't be a response to the item is an error that quotes it.
func Reply(it Item, how Asked, given map[string][]string) (string, error) {
	r := &reply{draft: draft{Item: it, pack: &Package{}}, given: given}
	if how == AsWhole && it.Problem.Task.Kind != answer.Choice || how == InCartridge && !r.fitsCartridge() {
		return r.whole()
	}
	err := it.Problem.Task.Kind.Accept(r)
	return r.text, err
}

// reply reads a response by the kind of its answer.
type reply struct {
	draft
	given map[string][]string
	text  string
}

var _ answer.Visitor = (*reply)(nil)

func (r *reply) first(id string) string {
	if values := r.given[id]; len(values) > 0 {
		return strings.TrimSpace(values[0])
	}
	return ""
}

// Number is one box.
func (r *reply) Number() error { r.text = r.first(response); return nil }

// Limits is one box.
func (r *reply) Limits() error { return r.Number() }

// Readings are several boxes.
func (r *reply) Readings() error { return r.boxes(len(r.Problem.Expected.Key.Xs), "; ") }

// Designation is boxes and lists, one for each part.
func (r *reply) Designation() error { return r.boxes(len(r.Problem.Expected.Key.Fields), ", ") }

// boxes are several boxes; none is answered where all are empty.
func (r *reply) boxes(n int, between string) error {
	parts := make([]string, n)
	for i := range parts {
		parts[i] = r.first(response + strconv.Itoa(i+1))
	}
	if r.text = strings.Join(parts, between); strings.Join(parts, "") == "" {
		r.text = ""
	}
	return nil
}

// Choice is one option.
func (r *reply) Choice() error { return r.numbers(" ") }

// Order is all options, one after the other.
func (r *reply) Order() error { return r.numbers(" ") }

// Several are all that fit; none may be one of them.
func (r *reply) Several() error {
	if slices.Equal(r.given[response], []string{noneID}) {
		r.text = "none"
		return nil
	}
	return r.numbers(", ")
}

// numbers are the numbers of the lines that were chosen.
func (r *reply) numbers(between string) error {
	var lines []string
	for _, id := range r.given[response] {
		n, err := chosen(id, len(r.Problem.Expected.Options))
		if err != nil {
			return err
		}
		lines = append(lines, strconv.Itoa(n))
	}
	r.text = strings.Join(lines, between)
	return nil
}

// chosen is the number of the option that an identifier names.
func chosen(id string, options int) (int, error) {
	number, ok := strings.CutPrefix(strings.TrimSpace(id), "choice-")
	n, err := strconv.Atoi(number)
	if !ok || err != nil || n < 1 || n > options {
		return 0, &calc.InputError{What: "response", Got: calc.Quoted(id), Want: fmt.Sprintf("choice-1 to choice-%d", options)}
	}
	return n, nil
}

// whole is one of the whole answers, as it stood there.
func (r *reply) whole() (string, error) {
	id := r.first(response)
	if id == "" {
		return "", nil
	}
	all, err := r.wholes()
	if err != nil {
		return "", err
	}
	n, err := chosen(id, len(all))
	if err != nil {
		return "", err
	}
	return all[n-1].shown, nil
}
