package rehearsal

import (
	"math"
	"strings"

	"scratchpass/calc"
	"scratchpass/lessons/page"
	"scratchpass/quiz/bench"
	"scratchpass/quiz/drawing"
)

// panel is where the machine stands. The moves are told once for each place.
func (s Flow) panel(r *Rehearsal, offers []bench.Offer) page.Bench {
	b := s.machine(r.Bench)
	b.Told, b.Moves = s.status(r.Bench), moves(offers)
	if place := placeOf(offers); place != r.place {
		r.place = place
		b.Head = s.Say("bench-moves")
	}
	return b
}

// machine is the same without a word: what happened says it.
func (s Flow) machine(b bench.Bench) page.Bench {
	st, l := b.Status(), b.Job.Lathe
	p := page.Bench{Title: s.Say("bench-title", "title", b.Job.Title), Signs: s.signs(b)}
	dial := func(key, reads string, at, turn calc.Length) {
		face, err := drawing.SlideDial(s.Say("bench-word-"+key), at, turn, l.Metric, s.Drawings())
		if err == nil {
			p.Dials = append(p.Dials, page.Dial{Sign: page.Sign{Name: s.Say("bench-sign-" + key), Reads: reads}, Face: face})
		}
	}
	dial("cross", st.CrossDial, b.CrossReading(), l.Cross.Turn)
	dial("compound", st.CompoundDial, b.CompoundReading(), l.Compound.Turn)
	if d, err := s.section(b); err == nil {
		p.Work = &d
	}
	return p
}

// signs are what can be seen at the machine, one thing each, and what was written down.
func (s Flow) signs(b bench.Bench) []page.Sign {
	st := b.Status()
	spindle, nut, tool := stands(st)
	var all []page.Sign
	add := func(name, reads string) {
		all = append(all, page.Sign{Name: s.Say("bench-sign-" + name), Reads: reads})
	}
	say := func(key string, pairs ...any) string { return s.Say("bench-sign-"+key, pairs...) }
	add("spindle", say(spindle, "rpm", calc.Shortest(st.RPM, 1)))
	add("nut", say(nut))
	if st.Mark >= 0 {
		near := math.Round(st.Mark)
		where := "on"
		if math.Abs(st.Mark-near) > 0.1 {
			where = "near"
		}
		add("dial", say(where, "mark", int(near)%b.Job.Lathe.DialMarks+1))
	}
	add("tool", say(tool, "where", say(whereWord(st))))
	add("passes", calc.Fixed(float64(st.PassesDone), 0))
	add("book", s.book(b))
	return all
}

// book is what was written down last, of each slide and in words.
func (s Flow) book(b bench.Bench) string {
	last := map[string]string{}
	for _, e := range b.Log {
		switch e.Event.Verb {
		case "book":
			last[e.Event.Word] = s.Say("bench-word-"+e.Event.Word) + " " + b.Job.System().Length().Text(e.Event.X)
		case "note":
			last["note"] = e.Event.Note
		}
	}
	var lines []string
	for _, of := range []string{"cross", "compound", "note"} {
		if last[of] != "" {
			lines = append(lines, last[of])
		}
	}
	if len(lines) == 0 {
		return s.Say("bench-sign-no-book")
	}
	return strings.Join(lines, ", ")
}

// moves are how offers are listed.
func moves(offers []bench.Offer) page.Moves {
	var all page.Moves
	for _, o := range offers {
		move := o.Text
		if o.Takes != "" {
			move += " ..."
		}
		all = append(all, move)
	}
	return all
}
