package shared

import (
	"scratchpass/quiz/answer"
	"scratchpass/quiz/problem"
)

// OptionUnlessIn is a wrong option, except in the situations where it is right or
// near enough to right that offering it would be unfair.
func OptionUnlessIn(input, option string, right ...string) func(problem.Values) answer.Response {
	return func(v problem.Values) answer.Response {
		for _, r := range right {
			if v.Word(input) == r {
				return answer.NoResponse
			}
		}
		return answer.OptionsResponse(option)
	}
}

// InOrder is the error of another order.
func InOrder(keys ...string) func(problem.Values) answer.Response {
	return func(problem.Values) answer.Response { return answer.OptionsResponse(keys...) }
}
