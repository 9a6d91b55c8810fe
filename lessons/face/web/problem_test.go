package web_test

import (
	"errors"
	"testing"

	"scratchpass/lessons/face/web"
)

// A page says an error without the options and commands of a terminal, and quotes what was given.
func TestProblem(t *testing.T) {
	for said, page := range map[string]string{
		`no task is called "x" (work --list shows all) (if it is an instructor's own question, give its folder with --content DIR)`: `no task is called "x"`,
		"--nominal: the pitch diameter is told already; leave one of them out":                                                      "nominal: the pitch diameter is told already; leave one of them out",
		"give --largest and --tool-flat, or none of them":                                                                           "give largest and tool flat, or none of them",
		"scratchpass thread has its depth":                                                                                          "thread has its depth",
		`tpi "--": give a number (such as 12)`:                                                                                      `tpi "--": give a number (such as 12)`,
		"a minus b - c":                                                                                                             "a minus b - c",
	} {
		if got := web.Problem(errors.New(said)); got != page {
			t.Errorf("%q becomes %q", said, got)
		}
	}
}
