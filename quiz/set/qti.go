package set

import (
	"cmp"
	"fmt"
	"strings"

	"scratchpass/quiz/qti"
)

// Package is the set for a learning system. A roster gives each apprentice a test with
// their own questions; lettered forms are one test, of which each learner gets one form by
// chance. A question that takes an answer over stands by itself there, with a number of
// its own.
func (p *Printer) Package(class []Apprentice, all [][]Item, version qti.Version, choiceOnly bool) (qti.Package, error) {
	b := p.maker.Blueprint
	seconds, _ := b.Seconds()
	out := qti.Package{ID: "set-" + b.Set, Title: b.Title, Version: version, ChoiceOnly: choiceOnly, ConventionCosts: conventionCosts[b.Rules.Conventions],
		Deal: qti.TestOfSlots, Telling: tellings[b.Rules.Feedback], Seconds: seconds, Words: p.qtiWords()}
	for i, items := range all {
		who := class[i]
		slot := qti.Slot{ID: "sheet-" + p.maker.Code(who.ID), Title: cmp.Or(who.Name, who.ID)}
		if who.Form != "" {
			out.Deal = qti.OneSlot
			slot.Title = p.Say("set-form") + " " + who.Form
		}
		for _, it := range items {
			own := it.Problem
			if len(it.From) > 0 {
				own = alone(it)
			}
			picture, err := it.Words.Drawing(own, p.drawings)
			if err != nil {
				return out, err
			}
			slot.Items = append(slot.Items, qti.Item{ID: itemID(it.Number, p.maker.Code(who.ID), askedAs(version, choiceOnly)), Problem: own, Words: it.Words, Points: it.Points, Picture: picture})
		}
		out.Slots = append(out.Slots, slot)
	}
	return out, nil
}

// tellings are when a learning system tells what was wrong, by what a blueprint says.
var tellings = map[string]qti.Telling{"": qti.AtOnce, "at-once": qti.AtOnce, "end": qti.AtTheEnd, "never": qti.Never}

// letters are what the name of an item begins with, by the way it stands in the package: who
// reads what came back must know which it was.
var letters = map[qti.Asked]string{qti.AsItIs: "q", qti.AsWhole: "w", qti.InCartridge: "c"}

// askedAs is the way in which the items of a package stand there.
func askedAs(version qti.Version, choiceOnly bool) qti.Asked {
	switch {
	case choiceOnly:
		return qti.AsWhole
	case version == qti.V12:
		return qti.InCartridge
	}
	return qti.AsItIs
}

// itemID names a question in a package by its number and the code of its sheet: q3-K7F-2QXM.
// It comes back with the responses. It says nothing without the class secret, where a
// problem's code would show its key to whoever looks at a page's source.
func itemID(number int, sheet string, how qti.Asked) string {
	return fmt.Sprintf("%s%d-%s", letters[how], number, sheet)
}

func (p *Printer) qtiWords() qti.Words {
	w := qti.Words{Number: p.Say("set-qti-number"), Limits: p.Say("set-qti-limits"), Numbers: p.Say("set-qti-numbers"), Parts: p.Say("set-qti-parts"),
		Choice: p.Say("set-qti-choice"), Several: p.Say("set-qti-several"), Order: p.Say("set-qti-order"), None: p.Say("set-qti-none"),
		Unread: p.Say("set-qti-unread"), WrongUnit: p.Say("set-qti-unit"), Fields: map[string]string{}}
	for name := range p.says {
		for _, field := range []string{"diameter", "pitch", "tpi", "starts", "side", "hand"} {
			if name == "set-qti-"+field {
				w.Fields[field] = strings.TrimSpace(p.Say(name))
			}
		}
	}
	return w
}
