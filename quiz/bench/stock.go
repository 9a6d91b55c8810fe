package bench

import "scratchpass/calc"

// Stock returns an error for a blank or a bore out of its limits: whatever is cut on it,
// its crests are wrong, so it has no card. The error says what would do.
func (j Job) Stock() error {
	if j.Side == calc.Inside {
		limits := j.Limits.Minor
		switch {
		case j.Start < limits.Min-sizeSlack:
			return j.wrongStock("bore", limits, "bore it out to "+j.text(limits.Middle())+" first")
		case j.Start > limits.Max+sizeSlack:
			return j.wrongStock("bore", limits, "take new stock: no pass puts metal back")
		}
		return nil
	}
	limits := j.Limits.Major
	switch {
	case j.Start > limits.Max+sizeSlack:
		return j.wrongStock("blank", limits, "turn it to "+j.text(limits.Middle())+" first")
	case j.Start < limits.Min-sizeSlack:
		return j.wrongStock("blank", limits, "take thicker stock: no pass puts metal back")
	}
	return nil
}

// wrongStock words it: what the limits are, and what to do.
func (j Job) wrongStock(what string, limits calc.Span, remedy string) error {
	return &calc.InputError{What: what, Got: j.text(j.Start) + " is out of the limits of " + j.Thread.String(),
		Want: j.text(limits.Min) + " to " + j.text(limits.Max) + "; " + remedy}
}
