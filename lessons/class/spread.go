package class

import (
	"cmp"
	"maps"
	"slices"
	"strings"

	"scratchpass/quiz/problem"
	"scratchpass/quiz/set"
)

// Spread is what came of a question, without names.
type Spread struct {
	Asked    int // people who have it
	Answered int
	Right    int
	Partly   int
	Wrong    int // by no common error
	Passed   int
	Open     int // for the instructor to decide, or late

	SureWrong int // would have bet the part on a wrong answer

	others   map[string]int // what was given and is no common error, and how often
	mistakes map[string]*Mistakes
}

// Mistakes is a common error and how many made it.
type Mistakes struct {
	Task   string
	Slip   string // its name in the task
	Letter string // that stands for it in the table
	Name   string // in letters that can be read
	Says   string // what it is, in a sentence; empty where that has someone's figures in it
	Times  int
}

// Text is what it is: in a sentence, or else by its name.
func (m Mistakes) Text() string { return cmp.Or(m.Says, m.Name) }

func (s *Spread) add(c Cell, it set.Item) {
	s.Asked++
	if c.State == NotYet || c.State == Here {
		return
	}
	s.Answered++
	if c.SureWrong {
		s.SureWrong++
	}
	switch c.State {
	case IsRight:
		s.Right++
	case IsPartly:
		s.Partly++
	case IsPassed:
		s.Passed++
	case IsWrong:
		s.Wrong++
		s.other(c.Given)
	case IsKnown:
		s.mistake(c.Mistake, it)
	default:
		s.Open++
	}
}

func (s *Spread) mistake(name string, it set.Item) {
	if s.mistakes == nil {
		s.mistakes = map[string]*Mistakes{}
	}
	key := it.Problem.Task.Name + " " + name
	m := s.mistakes[key]
	if m == nil {
		m = &Mistakes{Task: it.Problem.Task.Name, Slip: name, Letter: letterOf(it.Problem.Task, name), Name: strings.ReplaceAll(name, "-", " ")}
		if says := it.Words.Task.Slips[name]; !strings.Contains(says, "${") {
			m.Says = says
		}
		s.mistakes[key] = m
	}
	m.Times++
}

// Other is an answer that is wrong, and no common error, as it was typed.
type Other struct {
	Given string
	Times int
}

func (s *Spread) other(given string) {
	if s.others == nil {
		s.others = map[string]int{}
	}
	s.others[strings.ToLower(strings.Join(strings.Fields(given), " "))]++
}

// Others are those answers, what came most often first.
func (s Spread) Others() []Other {
	var all []Other
	for _, given := range slices.Sorted(maps.Keys(s.others)) {
		all = append(all, Other{given, s.others[given]})
	}
	slices.SortStableFunc(all, func(a, b Other) int { return cmp.Compare(b.Times, a.Times) })
	return all
}

// letterOf is a letter for a common error of a task, the same whoever makes it; none for those
// beyond z.
func letterOf(t *problem.Task, name string) string {
	i := slices.IndexFunc(t.Errors, func(e problem.CommonError) bool { return e.Name == name })
	if i < 0 || i >= 26 {
		return ""
	}
	return string(rune('a' + i))
}

// Mistakes are the common errors, the commonest first.
func (s Spread) Mistakes() []Mistakes {
	var all []Mistakes
	for _, key := range slices.Sorted(maps.Keys(s.mistakes)) {
		all = append(all, *s.mistakes[key])
	}
	slices.SortStableFunc(all, func(a, b Mistakes) int { return cmp.Compare(b.Times, a.Times) })
	return all
}
