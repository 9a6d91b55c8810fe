package fitting

import (
	"scratchpass/calc"
	"scratchpass/quiz/problem"
)

// withClass is a thread with the class it was told with, or the usual one.
func withClass(v problem.Values, t calc.Designation) calc.Designation {
	switch {
	case v.Has("thread"):
		return v.Thread("thread")
	case t.Metric:
		t.Class = "6g"
	default:
		t.Class = "2A"
	}
	return t
}
