package bench

import (
	"strconv"

	"scratchpass/calc"
)

// Events are the plan as moves at the bench, up to the first try of the fit. What is
// left is done as the fit says: see Finish.
func (p Plan) Events() []Event {
	system := p.Job.System()
	var events []Event
	do := func(text string) {
		if e, err := Parse(text, system); err == nil {
			events = append(events, e)
		}
	}
	move := func(verb, word string, l calc.Length) {
		events = append(events, Event{Verb: verb, Word: word, X: l.Inches(), Has: true})
	}
	deeper, away := p.Job.Ways()
	for _, text := range []string{"dress", "key out", "feed off", "speed " + strconv.Itoa(p.RPM)} {
		do(text)
	}
	switch {
	case len(p.Trains) > 0:
		e := Event{Verb: "gears", Has: true}
		for i := range p.Trains[0].Drivers {
			e.Ns = append(e.Ns, p.Trains[0].Drivers[i], p.Trains[0].Driven[i])
		}
		events = append(events, e)
	case p.Job.Thread.Metric:
		events = append(events, Event{Verb: "levers", Word: "mm", X: p.Lead.Millimetres(), Has: true})
	default:
		events = append(events, Event{Verb: "levers", Word: "TPI", X: 1 / p.Lead.Inches(), Has: true})
	}
	do("angle " + calc.Shortest(p.Scale.Degrees(), 2) + " " + p.Job.Swing())
	if p.Job.Side == calc.Inside {
		move("overhang", "", p.Overhang)
	}
	for _, text := range p.Job.lastSettings() {
		do(text)
	}
	move("cross", away, p.Out)
	do("return")
	for _, s := range p.Steps {
		switch s.Kind {
		case "scratch":
			move("cross", deeper, p.Out)
			move("compound", deeper, s.Feed)
			line := "close on 1"
			if p.Job.KeepClosed() || len(p.Marks) == 0 {
				line = "close"
			}
			do(line)
			do("run")
			move("cross", away, p.Out)
			if p.Job.KeepClosed() {
				for _, text := range []string{"stop", "count", "reverse", "run", "stop"} {
					do(text)
				}
				continue
			}
			for _, text := range []string{"open", "return", "stop", "count", "start"} {
				do(text)
			}
		case "cut":
			move("pass", "", s.Feed)
		case "spring":
			do("spring")
		case "test":
			return append(events, p.Try()...)
		}
	}
	return events
}

// lastSettings are the moves of the set-up after the compound and the bar, up to both zeros:
// what stands on the compound turned with it, so height and square come after.
func (j Job) lastSettings() []string {
	var texts []string
	square := "square"
	if j.Form() == Pipe {
		texts, square = append(texts, "taper 1/16"), "square axis"
	}
	texts = append(texts, "height", square, "gibs")
	if !j.CutsDry() {
		texts = append(texts, "oil")
	}
	return append(texts, "start", "touch", "zero cross", "zero compound")
}

// Try are the moves of a try: stop, clean, test. Between centres the work comes out for
// it, with its dog on.
func (p Plan) Try() []Event {
	events := []Event{{Verb: "stop"}, {Verb: "clean", Word: "hook"}}
	if p.Job.Hold == Centres {
		events = append(events, Event{Verb: "unchuck"})
	}
	return append(events, Event{Verb: "test", Word: "go"})
}
