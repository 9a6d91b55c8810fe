package set

import (
	"fmt"
	"strings"

	"scratchpass/quiz/qti"
)

// Package is the set for a learning system: each question is a slot, and the problems of
// all apprentices or forms are the items that it draws one from. A question that takes
// an answer over stands by itself there, with a number of its own.
func (p *Printer) Package(all [][]Item, version qti.Version, choiceOnly bool) qti.Package {
	b := p.maker.Blueprint
	out := qti.Package{ID: "set-" + b.Set, Title: b.Title, Version: version, ChoiceOnly: choiceOnly, ConventionCosts: conventionCosts[b.Rules.Conventions], Words: p.qtiWords()}
	for place := range p.maker.places {
		slot := qti.Slot{ID: fmt.Sprintf("question-%d", place+1), Select: 1}
		for i, items := range all {
			for _, it := range items {
				if it.Place != place {
					continue
				}
				own := it.Problem
				if len(it.From) > 0 {
					own = alone(it)
				}
				slot.Title = it.Words.Task.Title
				slot.Items = append(slot.Items, qti.Item{ID: fmt.Sprintf("q%d-%d", place+1, i+1), Problem: own, Words: it.Words, Points: it.Points})
			}
		}
		out.Slots = append(out.Slots, slot)
	}
	return out
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
