package problem

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"sync"

	"scratchpass/calc"
	"scratchpass/quiz/machine"
)

// Code names one problem: compound-travel@2-7f3a. It remakes the problem anywhere.
// An m behind the level makes it metric, and a part behind a + carries the lathe
// when it is not the one that ships.
type Code struct {
	Task   string
	Level  Level
	System machine.System
	Seed   uint32
	Lathe  string // key of the lathe; empty for the one that ships
}

// NewCode returns the code of a problem for a lathe.
func NewCode(task string, level Level, s machine.System, seed uint32, lathe machine.Lathe) Code {
	c := Code{Task: task, Level: level, System: s, Seed: seed}
	if key := lathe.Code(); key != machine.DefaultLathe(s).Code() {
		c.Lathe = key
	}
	return c
}

// String prints the code.
func (c Code) String() string {
	var b strings.Builder
	b.Grow(len(c.Task) + 16 + len(c.Lathe))
	b.WriteString(c.Task)
	b.WriteByte('@')
	b.WriteString(strconv.Itoa(int(c.Level)))
	if c.System == machine.Metric {
		b.WriteByte('m')
	}
	b.WriteByte('-')
	hex := strconv.FormatUint(uint64(c.Seed), 16)
	b.WriteString("0000"[min(4, len(hex)):])
	b.WriteString(hex)
	if c.Lathe != "" {
		b.WriteString("+" + c.Lathe)
	}
	return b.String()
}

var codeForm = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^([a-z0-9]+(?:-[a-z0-9]+)*)@([0-9])(m?)-([0-9a-f]{4,8})(?:\+(.+))?$`)
})

// ParseCode reads a code.
func ParseCode(text string) (Code, error) {
	m := codeForm().FindStringSubmatch(text)
	if m == nil || len(text) > 200 {
		return Code{}, &calc.InputError{What: "problem code", Got: calc.Quoted(text), Want: "a task, @, the level, - and four figures or letters a to f, such as compound-travel@2-7f3a"}
	}
	level, _ := strconv.Atoi(m[2])
	if level < 1 || level > 3 {
		return Code{}, &calc.InputError{What: "problem code", Got: calc.Quoted(text), Want: "a level from 1 to 3 behind the @"}
	}
	seed, err := strconv.ParseUint(m[4], 16, 32)
	if err != nil {
		return Code{}, fmt.Errorf("problem code %s: %w", calc.Quoted(text), err)
	}
	c := Code{Task: m[1], Level: Level(level), Seed: uint32(seed)}
	if m[3] == "m" {
		c.System = machine.Metric
	}
	if m[5] != "" {
		lathe, err := machine.LatheOfCode(m[5])
		if err != nil {
			return Code{}, fmt.Errorf("problem code %s: %w", calc.Quoted(text), err)
		}
		c = NewCode(c.Task, c.Level, c.System, c.Seed, lathe)
	}
	if c.String() != text {
		return Code{}, &calc.InputError{What: "problem code", Got: calc.Quoted(text), Want: c.String()}
	}
	return c, nil
}

// lathe returns the lathe the code was made for.
func (c Code) lathe() (machine.Lathe, error) {
	if c.Lathe == "" {
		return machine.DefaultLathe(c.System), nil
	}
	return machine.LatheOfCode(c.Lathe)
}
