package rehearsal

import (
	"maps"
	"slices"
	"strings"

	"scratchpass/content"
	"scratchpass/lessons/page"
	"scratchpass/quiz/bench"
)

// OnePass is one pass of a card as it is made in a room: a bench that is kept elsewhere, move by
// move. Nothing is asked here, and nothing is taken back.
type OnePass struct {
	Flow
	bench.OnePass
	Words content.BenchWords
}

// Asks is what is to be done: the job, the pass with its readings, and which marks fit.
func (o OnePass) Asks() page.Page {
	j := o.Plan.Job
	p := page.Page{page.Paragraph{Text: o.Say("bench-title", "title", j.Title)}, page.Paragraph{Text: o.Task()}}
	say := func(key string, pairs ...any) { p = append(p, page.Paragraph{Text: o.Say(key, pairs...)}) }
	o.planDrive(o.Plan, func(key string, pairs ...any) {
		if key == "plan-marks" || key == "plan-keep-closed" || key == "plan-any-moment" { // the gears are set by now
			say(key, pairs...)
		}
	})
	deeper, _ := j.Ways()
	say("bench-ways", "deeper", deeper)
	return p
}

// Task is what is to be done, in a line: the pass in the words of the card.
func (o OnePass) Task() string { return o.planRow(o.Plan, o.Step, max(o.N, 1)).Sentence }

// Goes is how the pass goes, move by move, with what comes of each.
func (o OnePass) Goes() page.Working {
	var all page.Working
	b := o.Start
	for _, e := range o.Moves {
		var happened []bench.Happening
		b, happened = b.Step(e)
		step := page.Step{Line: e.Write(b.Job.System())}
		var said []string
		for _, block := range o.cameOf(b.Job, o.Words, e, happened) {
			if text, ok := block.(page.Paragraph); ok && text.Text != o.Say("bench-done-so") {
				said = append(said, text.Text)
			}
		}
		step.Means = strings.Join(said, " ")
		all = append(all, step)
	}
	return all
}

// Panel is where a machine stands, with the moves that might be made.
func (o OnePass) Panel(b bench.Bench) page.Bench {
	p := o.machine(b)
	p.Moves = moves(o.Offers(b))
	return p
}

// Came is what came of the last move; nothing before the first.
func (o OnePass) Came(b bench.Bench) page.Page {
	n := len(b.Log)
	if n == len(o.Start.Log) {
		return nil
	}
	last := b.Log[n-1]
	p := page.Page{page.Aside{Text: last.Event.Write(b.Job.System())}}
	return append(p, o.cameOf(b.Job, o.Words, last.Event, last.Happened)...)
}

// Move reads what was typed: a move, or the number of one that is offered now, with its figure
// behind it if it takes one. wants is a move whose figure is still to come; an error is the
// bench's own.
func (o OnePass) Move(b bench.Bench, typed string) (e bench.Event, wants string, err error) {
	number, rest, _ := strings.Cut(strings.TrimSpace(typed), " ")
	if of, ok := byNumber(o.Offers(b), number); ok {
		figure := strings.TrimSpace(strings.TrimPrefix(strings.TrimSpace(rest), of.Text))
		switch typed = of.Text; {
		case of.Takes != "" && figure == "":
			return e, typed, nil
		case of.Takes != "":
			typed += " " + figure
		}
	}
	e, err = b.Job.Parse(typed)
	return e, "", err
}

// Figure says how a move is written whose figure is still to be typed.
func (o OnePass) Figure(move string) string {
	verb, _, _ := strings.Cut(move, " ")
	return o.Say("class-bench-figure", "move", move, "write", written(o.Plan.Job, o.Words, verb))
}

// Log is what was done since the start, a line each with what came of it.
func (o OnePass) Log(b bench.Bench) []string {
	var all []string
	for i := len(o.Start.Log); i < len(b.Log); i++ {
		all = append(all, moveLine(b, i, i-len(o.Start.Log)+1, o.Words))
	}
	return all
}

// Debrief tells each kind of mistake since the start once, the worst first, with what it would
// have done.
func (o OnePass) Debrief(b bench.Bench) page.Page {
	return o.kindsOf(b.Job, o.Words, "bench-mistake", byKind(o.Made(b)))
}

// Titles are the kinds of mistakes since the start by their titles, the worst first.
func (o OnePass) Titles(b bench.Bench) []string {
	var all []string
	for _, kind := range byKind(o.Made(b)) {
		all = append(all, b.Job.WordsOf(kind[0], o.Words).Title)
	}
	return all
}

// Hint says what to look at next: one thing. Nothing can be taken back.
func (o OnePass) Hint(b bench.Bench) string {
	return o.hintAtTheBench(&Rehearsal{Bench: b, words: o.Words})
}

// Card is the card of the job.
func (o OnePass) Card() page.Page { return o.PlanPage(o.Plan) }

// AllMoves explains the moves of this pass, and those that are offered where a machine stands.
func (o OnePass) AllMoves(b bench.Bench) page.Page {
	used := map[string]bool{}
	for _, e := range o.Moves {
		used[e.Verb] = true
	}
	for _, of := range o.Offers(b) {
		used[of.Verb] = true
	}
	p := page.Page{page.Heading{Text: o.Say("bench-help")}}
	for _, verb := range slices.Sorted(maps.Keys(used)) {
		p = append(p, explained(o.Plan.Job, o.Words, verb))
	}
	return p
}
