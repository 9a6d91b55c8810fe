package lessons

import (
	"fmt"
	"maps"
	"slices"
	"strconv"

	"scratchpass/calc"
	"scratchpass/quiz/machine"
)

func sortedKeys[V any](m map[string]V) []string { return slices.Sorted(maps.Keys(m)) }

// DescribeLathe asks about the learner's machine, one thing at a time. Enter keeps
// what is offered.
func (s *Session) DescribeLathe() (machine.Lathe, error) {
	s.describing = true
	if err := s.Terminal.Show(Text{{Heading, s.say("lathe-title")}, {Plain, s.say("lathe-what")}}); err != nil {
		return machine.Lathe{}, err
	}
	metric, err := s.choose(Question{Prompt: s.say("lathe-units"), Options: []string{s.say("lathe-units-in"), s.say("lathe-units-mm")}})
	if err != nil {
		return machine.Lathe{}, err
	}
	l := machine.DefaultLathe(machine.System(metric))
	l.Name = s.say("lathe-own-name")
	unit := map[bool]string{false: "in", true: "mm"}[l.Metric]
	shown := machine.System(metric).Length()
	number := func(phrase, offered string, set func(string) error) error {
		return s.number(phrase, offered, func(text string) error {
			before := l
			err := set(text)
			if err == nil {
				err = l.Check()
			}
			if err != nil {
				l = before
			}
			return err
		})
	}
	asks := []func() error{
		func() error {
			return number("lathe-name", l.Name, func(text string) error { return setName(&l, text) })
		},
		func() error {
			return number("lathe-screw-"+unit, calc.Shortest(l.LeadScrew, 3), func(text string) (err error) {
				l.LeadScrew, err = calc.ParseNumber(text)
				return err
			})
		},
		func() error { return number("lathe-dial-gear", strconv.Itoa(l.DialTeeth), whole(&l.DialTeeth)) },
		func() error {
			if l.DialTeeth == 0 {
				return nil
			}
			return number("lathe-dial-marks", strconv.Itoa(l.DialMarks), whole(&l.DialMarks))
		},
		func() error {
			return number("lathe-cross-turn-"+unit, shown.Fixed(l.Cross.Turn.Inches()), length(&l.Cross.Turn, shown))
		},
		func() error {
			return number("lathe-cross-line-"+unit, shown.Fixed(l.Cross.Division.Inches()), length(&l.Cross.Division, shown))
		},
		func() error {
			i, err := s.choose(Question{Prompt: s.say("lathe-cross-reads"), Options: []string{s.say("lathe-reads-radius"), s.say("lathe-reads-diameter")}})
			l.CrossReads = calc.DialReads(i)
			return err
		},
		func() error {
			return number("lathe-compound-turn-"+unit, shown.Fixed(l.Compound.Turn.Inches()), length(&l.Compound.Turn, shown))
		},
		func() error {
			return number("lathe-compound-line-"+unit, shown.Fixed(l.Compound.Division.Inches()), length(&l.Compound.Division, shown))
		},
		func() error {
			i, err := s.choose(Question{Prompt: s.say("lathe-zero"), Options: []string{s.say("lathe-zero-across"), s.say("lathe-zero-along")}})
			l.CompoundZero = calc.CompoundZero(i)
			return err
		},
		func() error {
			i, err := s.choose(Question{Prompt: s.say("lathe-nose"), Options: []string{s.say("lathe-nose-screwed"), s.say("lathe-nose-locked")}})
			l.ScrewedNose = i == 0
			return err
		},
	}
	for _, ask := range asks {
		if err := ask(); err != nil {
			return l, err
		}
	}
	s.describing = false
	return l, nil
}

// number asks for one fact until it can be used. Enter keeps the one offered.
func (s *Session) number(phrase, offered string, set func(text string) error) error {
	for {
		reply, err := s.Terminal.Ask(Question{Prompt: s.say(phrase, "offered", offered)})
		if err != nil {
			return err
		}
		if word, _ := asked(reply, []string{WordStop}); word == WordStop {
			return ErrStopped
		}
		if reply == "" {
			reply = offered
		}
		if err = set(reply); err == nil {
			return nil
		}
		if err := s.show(Plain, s.say("mark-unread", "problem", err)); err != nil {
			return err
		}
	}
}

func setName(l *machine.Lathe, text string) error {
	if len(text) > 60 {
		return fmt.Errorf("the name is too long: give up to 60 letters")
	}
	l.Name = text
	return nil
}

func whole(into *int) func(string) error {
	return func(text string) error {
		x, err := calc.ParseNumber(text)
		if err != nil || x != calc.Round(x, 0) || x < 0 || x > 1000 {
			return &calc.InputError{What: "can't use", Got: calc.Quoted(text), Want: "a whole number"}
		}
		*into = int(x)
		return nil
	}
}

func length(into *calc.Length, u machine.Unit) func(string) error {
	bare := calc.UnitInch
	if u.Name == "mm" {
		bare = calc.UnitMillimetre
	}
	return func(text string) error {
		l, err := calc.LengthOf(text, bare)
		if err == nil {
			*into = l
		}
		return err
	}
}
