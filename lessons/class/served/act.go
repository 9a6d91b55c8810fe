package served

import (
	"errors"
	"fmt"
	"net/url"
	"strconv"
	"strings"
	"time"

	"scratchpass/calc"
	"scratchpass/lessons/class"
)

// order is something that the instructor wants done, and the event that comes of it.
type order struct {
	form url.Values
	room *class.Room
	now  time.Time
	e    *class.Event
}

// acts are what the instructor can do, by the name on a form. An error says what is wrong with
// what was asked for, in words for the instructor.
var acts = map[string]func(order) error{
	"next": func(o order) error {
		return o.step(func() (class.Event, error) { _, e, err := o.room.Next(); return e, err })
	},
	"back":   func(o order) error { return o.step(o.room.Back) },
	"open":   func(o order) error { return o.at(class.Opened, 0) },
	"look":   func(o order) error { return o.at(class.Opened, 1) },
	"lock":   order.lock,
	"unlock": order.unlock,
	"show":   order.show,
	"counts": order.counts,
	"leave": func(o order) (err error) {
		if *o.e, err = o.room.LeaveBench(); errors.Is(err, class.ErrNotNow) {
			return errors.New("there is no bench round that could be left for questions")
		}
		return err
	},
	"turn": simple(class.Turned),
	"way": func(o order) error {
		o.e.Kind, o.e.Text = class.Ran, o.form.Get("way")
		_, err := class.ParseWay(o.e.Text)
		return err
	},
	"until":   order.until,
	"endless": simple(class.Until),
	"pause":   simple(class.Paused),
	"resume":  simple(class.Resumed),
	"shut":    simple(class.Shut),
	"unshut":  simple(class.Unshut),
	"end":     simple(class.Ended),
	"reopen":  simple(class.Goes),
	"longer":  about(class.Longer, func(o order, _ *class.Person) (err error) { o.e.N, err = o.minutes(0); return err }),
	"let":     about(class.Let, order.device),
	"refuse":  about(class.Refused, order.device),
	"rename":  about(class.Renamed, order.name),
	"merge":   about(class.Merged, order.other),
	"remove":  about(class.Removed, nil),
	"seen":    about(class.Seen, nil),
	"count":   about(class.Counted, order.late),
}

// asksFirst are those that can't be taken back, with what is asked before they are done.
var asksFirst = map[string]string{"end": "class-sure-end", "remove": "class-sure-remove", "merge": "class-sure-merge", "lock": "class-sure-lock", "start": "class-sure-start", "leave": "class-sure-leave"}

// mostMinutes is how long a window is, and how much longer someone may be given.
const mostMinutes = 600

func simple(kind class.Kind) func(order) error {
	return func(o order) error {
		o.e.Kind = kind
		return nil
	}
}

// about is an act about one person.
func about(kind class.Kind, more func(order, *class.Person) error) func(order) error {
	return func(o order) error {
		o.e.Kind, o.e.Who = kind, o.form.Get("who")
		p := o.room.Person(o.e.Who)
		if p == nil {
			return fmt.Errorf("there is nobody %s here", calc.Quoted(o.e.Who))
		}
		if more == nil {
			return nil
		}
		return more(o, p)
	}
}

// step goes on or back, from where the page that asked for it was.
func (o order) step(next func() (class.Event, error)) (err error) {
	if from := o.form.Get("from"); from != "" && from != o.room.Position() {
		return errors.New("the room has gone on meanwhile: look where it is now")
	}
	if *o.e, err = next(); errors.Is(err, class.ErrNotNow) {
		return errors.New("there is no step to take from here")
	}
	return err
}

// at is an act about a question that all are to be at.
func (o order) at(kind class.Kind, n int) error {
	o.e.Kind, o.e.N = kind, n
	if err := o.place(); err != nil {
		return err
	}
	if o.room.Sets[o.e.Set].Way != class.Together {
		return errors.New("a question is opened for all only where all go together")
	}
	return nil
}

// place reads which question is meant.
func (o order) place() error {
	n, err := strconv.Atoi(o.form.Get("place"))
	if err != nil || o.e.Set >= len(o.room.Sets) || n < 0 || n >= o.room.Sets[o.e.Set].Places() {
		return fmt.Errorf("there is no question with place %s in this set", calc.Quoted(o.form.Get("place")))
	}
	o.e.Place = n
	return nil
}

func (o order) lock() error {
	o.e.Kind = class.Locked
	if a := o.room.Sets[o.e.Set]; a.Locked || a.Way == class.Together && a.Open < 0 {
		return errors.New("there is nothing open that could be closed")
	}
	return nil
}

func (o order) unlock() error {
	o.e.Kind = class.Freed
	switch a := o.room.Sets[o.e.Set]; {
	case !a.Locked || a.Way == class.Together:
		return errors.New("there is nothing closed that could be opened again")
	case !a.Never():
		return errors.New("what came was told: ask a question again with other numbers")
	}
	return nil
}

// show shows what came of a question, and so many lines of its working less one.
func (o order) show() error {
	if err := o.at(class.Showed, 0); err != nil {
		return err
	}
	n, err := strconv.Atoi(o.form.Get("n"))
	if err != nil || n < 0 {
		return fmt.Errorf("show %s: give 0 for nothing, 1 for what came, and one more for each line", calc.Quoted(o.form.Get("n")))
	}
	o.e.N = n
	return nil
}

// counts shows the counts of what is shown, however few there are.
func (o order) counts() error {
	o.e.Name = class.WithCounts
	if round, n := o.room.Round(); round != nil && round.Shown > 0 {
		o.e.Kind, o.e.Set, o.e.N = class.Halted, n, round.Shown
		return nil
	}
	a := o.room.Asking()
	if a == nil || a.Way != class.Together || a.Open < 0 || a.Shown(a.Open) == 0 {
		return errors.New("nothing is shown whose counts could be")
	}
	o.e.Kind, o.e.Set, o.e.Place, o.e.N = class.Showed, o.room.Now, a.Open, a.Shown(a.Open)
	return nil
}

// minutes reads a number of minutes.
func (o order) minutes(least int) (int, error) {
	n, err := strconv.Atoi(strings.TrimSpace(o.form.Get("n")))
	if err != nil || n < least || n > mostMinutes {
		return 0, fmt.Errorf("%s minutes: give %d to %d", calc.Quoted(o.form.Get("n")), least, mostMinutes)
	}
	return n, nil
}

// until sets the end of the window: so many minutes from now.
func (o order) until() error {
	o.e.Kind = class.Until
	n, err := o.minutes(1)
	o.e.Text = o.now.Add(time.Duration(n) * time.Minute).UTC().Format(time.RFC3339)
	return err
}

// device reads which second phone is let in, or refused.
func (o order) device(p *class.Person) error {
	o.e.Text = o.form.Get("device")
	for _, d := range p.Claims {
		if d == o.e.Text {
			return nil
		}
	}
	return fmt.Errorf("no such phone waits for the name %s any more", calc.Quoted(p.Name))
}

// name reads a new name. It is nobody else's.
func (o order) name(*class.Person) error {
	given := o.form.Get("name")
	if o.e.Text = o.room.NickName(given); o.e.Text == "" {
		return fmt.Errorf("name %s: give one that nobody here has", calc.Quoted(line(given)))
	}
	return nil
}

// other reads who a visitor is.
func (o order) other(p *class.Person) error {
	o.e.Text = o.form.Get("with")
	to := o.room.Person(o.e.Text)
	switch {
	case o.e.Text == "":
		return errors.New("nobody was chosen: take the name on the class list that the visitor is")
	case to == nil:
		return fmt.Errorf("there is nobody %s on the class list", calc.Quoted(o.e.Text))
	case !p.Visitor:
		return fmt.Errorf("%s is on the class list: only a visitor can be made someone on it", calc.Quoted(p.Name))
	case to.Visitor:
		return fmt.Errorf("%s is a visitor: take someone on the class list", calc.Quoted(to.Name))
	}
	return nil
}

// late reads which answer is to count.
func (o order) late(p *class.Person) error {
	if err := o.place(); err != nil {
		return err
	}
	if a, ok := p.Answers[class.Question{Set: o.e.Set, Place: o.e.Place}]; !ok || !a.Late {
		return fmt.Errorf("%s has no late answer to question %d", calc.Quoted(p.Name), o.e.Place+1)
	}
	return nil
}
