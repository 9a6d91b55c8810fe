package shape

import (
	"scratchpass/calc"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks/internal/shared"
)

// pipeInput is the threads per inch of a pipe thread.
var pipeInput = problem.Input{Name: "tpi", Symbol: "n", Type: problem.InputTPI, Low: 8, High: 27}

// tellPipe draws a size of pipe thread, each number of threads per inch as often as
// another, and tells it by that number and by its callout.
func tellPipe(d *problem.Draw, v *problem.Values) calc.PipeSize {
	var sizes [][]calc.PipeSize
	for _, s := range calc.PipeSizes { // sizes of one number of threads stand side by side
		if n := len(sizes); n > 0 && sizes[n-1][0].TPI == s.TPI {
			sizes[n-1] = append(sizes[n-1], s)
			continue
		}
		sizes = append(sizes, []calc.PipeSize{s})
	}
	s := problem.Pick(d, problem.Pick(d, sizes...)...)
	v.Set("tpi", s.TPI.Number())
	v.Say("callout", s.Size+"-"+calc.Shortest(s.TPI.Number(), 1)+" NPT")
	return s
}

// pipePitchStep adds the step to the pitch.
func pipePitchStep(w *problem.Working, v problem.Values) (calc.Length, calc.ThreadsPerInch) {
	return w.Pitch(), calc.ThreadsPerInch(v.X("tpi"))
}

// pipePitch is the pitch, for common errors.
func pipePitch(v problem.Values) calc.Length {
	p, _ := calc.ThreadsPerInch(v.X("tpi")).Pitch() // the input's range lies within the formula's
	return p
}

var pipeDone = shared.LengthInput("done", "g", 0, 0.2)
