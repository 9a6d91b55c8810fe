package home

import (
	"fmt"
	"strconv"

	"scratchpass/calc"
	"scratchpass/lessons/page"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/machine"
)

// DescribeLathe asks about the learner's machine, one thing at a time. Enter keeps
// what is offered.
func DescribeLathe(session *sitting.Session) (machine.Lathe, error) {
	s := asker{session}
	l, err := s.describe()
	return l, page.Farewell(err, s.Say("say-stopped-lathe"))
}

// asker asks about a lathe.
type asker struct{ *sitting.Session }

func (s asker) choose(ask string, options ...string) (int, error) {
	for i, o := range options {
		options[i] = s.Say(o)
	}
	return sitting.Choose(s.Session, s.Face, s.Say(ask), page.Menu{Options: options})
}

func (s asker) describe() (machine.Lathe, error) {
	if err := s.Face.Show(page.Page{page.Heading{Text: s.Say("lathe-title")}, page.Paragraph{Text: s.Say("lathe-what")}}); err != nil {
		return machine.Lathe{}, err
	}
	metric, err := s.choose("lathe-units", "lathe-units-in", "lathe-units-mm")
	if err != nil {
		return machine.Lathe{}, err
	}
	l := machine.DefaultLathe(machine.System(metric))
	l.Name = s.Say("lathe-own-name")
	unit := l.System().String()
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
			i, err := s.choose("lathe-cross-reads", "lathe-reads-radius", "lathe-reads-diameter")
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
			i, err := s.choose("lathe-zero", "lathe-zero-across", "lathe-zero-along")
			l.CompoundZero = calc.CompoundZero(i)
			return err
		},
		func() error {
			i, err := s.choose("lathe-nose", "lathe-nose-screwed", "lathe-nose-locked")
			l.ScrewedNose = i == 0
			return err
		},
	}
	for _, ask := range asks {
		if err := ask(); err != nil {
			return l, err
		}
	}
	return l, nil
}

// number asks for one fact until it can be used. Enter keeps the one offered.
func (s asker) number(phrase, offered string, set func(text string) error) error {
	for {
		reply, err := s.Face.Ask(page.Prompt{Text: s.Say(phrase, "offered", offered), Takes: page.Words{}})
		if err != nil {
			return err
		}
		if word, _ := page.Typed(reply, []string{page.WordStop}); word == page.WordStop {
			return page.ErrStopped
		}
		if reply == "" {
			reply = offered
		}
		if err = set(reply); err == nil {
			return nil
		}
		if err := s.Face.Show(page.Page{page.Paragraph{Text: s.Say("mark-unread", "problem", err)}}); err != nil {
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
