package shared

import "scratchpass/quiz/answer"

// Worked is what a formula of calc gives, as the response of a common error: none where
// the numbers that the error brings in are out of the formula's range.
func Worked[X ~float64](x X, err error) answer.Response {
	if err != nil {
		return answer.NoResponse
	}
	return answer.NumberResponse(float64(x))
}
