package answer_test

import (
	"errors"
	"slices"
	"testing"

	"scratchpass/quiz/answer"
)

// visits is a visitor that says which of its methods was called.
type visits struct{}

func (visits) Number() error      { return errors.New("number") }
func (visits) Limits() error      { return errors.New("limits") }
func (visits) Readings() error    { return errors.New("readings") }
func (visits) Choice() error      { return errors.New("choice") }
func (visits) Several() error     { return errors.New("several") }
func (visits) Order() error       { return errors.New("order") }
func (visits) Designation() error { return errors.New("designation") }

// What JSON, phrases, sheets and sets go by. A name that changes breaks what others keep.
func TestTraitsOfKinds(t *testing.T) {
	type traits struct {
		name, visit                                                                   string
		numeric, oneNumber, takeable, guessable, oneKey, inOrder, worded, boundsGiven bool
	}
	wants := map[answer.Kind]traits{
		answer.Quantity:    {name: "quantity", visit: "number", numeric: true, oneNumber: true, takeable: true, boundsGiven: true},
		answer.Limits:      {name: "limits", visit: "limits", numeric: true, oneNumber: true, boundsGiven: true},
		answer.Readings:    {name: "readings", visit: "readings", numeric: true},
		answer.Choice:      {name: "choice", visit: "choice", guessable: true, oneKey: true, worded: true},
		answer.Several:     {name: "several", visit: "several", worded: true},
		answer.Order:       {name: "order", visit: "order", oneKey: true, inOrder: true, worded: true},
		answer.Designation: {name: "reading", visit: "designation"},
	}
	if len(wants) != len(answer.Kinds) {
		t.Errorf("%d kinds, %d expected", len(answer.Kinds), len(wants))
	}
	for _, k := range answer.Kinds {
		e := answer.Expected{Kind: k}
		_, _, bounds := e.Bounds()
		got := traits{k.Name(), k.Accept(visits{}).Error(), k.Numeric(), k.OneNumber(), k.Takeable(), k.Guessable(), k.OneKey(), k.InOrder(), k.Worded(), bounds}
		if got != wants[k] {
			t.Errorf("%s: %+v, want %+v", k.Name(), got, wants[k])
		}
	}
}

// Options are offered in the order of shuffle; without one they are sorted.
func TestOffer(t *testing.T) {
	reversed := func(keys []string) []string {
		out := slices.Clone(keys)
		slices.Reverse(out)
		return out
	}
	same := func(keys []string) []string { return slices.Clone(keys) }
	options := func(keys ...string) []answer.Known {
		var all []answer.Known
		for _, k := range keys {
			all = append(all, answer.Known{Name: k, Response: answer.OptionsResponse(k)})
		}
		return all
	}
	choice := answer.Expected{Kind: answer.Choice, Key: answer.OptionsResponse("m"), Errors: options("z", "a", "z")}
	order := answer.Expected{Kind: answer.Order, Key: answer.OptionsResponse("c", "b", "a")}
	for _, c := range []struct {
		name    string
		e       *answer.Expected
		shuffle func([]string) []string
		want    []string
	}{
		{"choice", &choice, nil, []string{"a", "m", "z"}}, // the key among the errors, each once
		{"choice, shuffled", &choice, reversed, []string{"z", "m", "a"}},
		{"order", &order, nil, []string{"a", "b", "c"}},
		{"order, shuffled", &order, reversed, []string{"a", "b", "c"}},
		{"order that came out right", &order, same, []string{"b", "c", "a"}}, // never the key itself
		{"quantity", &answer.Expected{Kind: answer.Quantity}, reversed, nil},
	} {
		if got := c.e.Kind.Offer(c.e, c.shuffle); !slices.Equal(got, c.want) {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
	if !slices.Equal(order.Key.Keys, []string{"c", "b", "a"}) {
		t.Errorf("offering changed the key: %q", order.Key.Keys)
	}
}

// Others are wrong, whatever the known errors are.
func TestOthersAreWrong(t *testing.T) {
	count := inches(7)
	count.Unit.Count, count.Tolerance = true, 0.1
	marks := answer.Expected{Kind: answer.Several, Key: answer.OptionsResponse("1", "2"), Options: []string{"1", "2", "3", "4"}}
	for _, c := range []struct {
		name string
		e    answer.Expected
		want []string
	}{
		{"length", inches(0.05), []string{"0.1000 in", "0.0250 in", "0.0750 in", "0.0333 in", "0.0625 in", "0.0400 in", "0.1500 in", "0.0167 in", "0.5000 in", "0.0050 in"}},
		{"count", count, []string{"14 in", "4 in", "11 in", "5 in", "9 in", "6 in", "21 in", "2 in", "70 in", "1 in"}}, // whole, as seven is
		{"several", marks, []string{"1, 2, 3, 4", "none", "1, 3", "2, 4", "3, 4"}},
		{"order", answer.Expected{Kind: answer.Order, Key: answer.OptionsResponse("a", "b", "c", "d"), Options: []string{"d", "a", "b", "c"}, Free: [][2]string{{"c", "b"}}}, []string{"3 2 4 1", "2 3 1 4"}},
		{"choice", answer.Expected{Kind: answer.Choice}, nil},
	} {
		var got []string
		for _, r := range c.e.Kind.Others(&c.e) {
			if c.e.Right(r) {
				t.Errorf("%s: %s is right", c.name, c.e.Show(r))
			}
			got = append(got, c.e.Show(r))
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}
