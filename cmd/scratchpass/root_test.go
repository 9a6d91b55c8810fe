package main

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"scratchpass/cmd/scratchpass/internal/cli"
)

// A group is built for the names of its commands, so that each command is found by its
// own.
func TestGroupsHaveTheirNames(t *testing.T) {
	r := cli.New(strings.NewReader(""), &bytes.Buffer{}, &bytes.Buffer{})
	for _, g := range groups {
		var names []string
		for _, cmd := range g.build(r, nil) {
			names = append(names, cmd.Name())
		}
		if !slices.Equal(names, g.names) {
			t.Errorf("the commands %q are built for the names %q", names, g.names)
		}
	}
}

// What a command line may call is there; what lists commands has all of them.
func TestCalled(t *testing.T) {
	for _, c := range []struct {
		args string
		want int // groups
	}{
		{"", len(groups)},
		{"--help", len(groups)},
		{"help set", len(groups)},
		{"__complete quiz", len(groups)},
		{"lern quiz", len(groups)}, // did you mean learn?
		{"--seed 3 quiz", len(groups)},
		{"quiz ask compound-travel", 1},
		{"quiz --learner set", 2},
	} {
		found, byName := called(strings.Fields(c.args))
		if len(found) != c.want || byName != (c.want < len(groups)) {
			t.Errorf("%q: %d groups, by name: %v", c.args, len(found), byName)
		}
	}
}
