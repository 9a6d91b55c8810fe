package tasks

import (
	"strings"

	"scratchpass/content"
	"scratchpass/quiz/drawing"
	"scratchpass/quiz/figures"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/wording"
)

// Known lists what words may refer to.
func Known() content.Known {
	known := content.Known{Tasks: Names(), Drawings: drawing.Names(),
		Slips: map[string][]string{}, Figure: figures.Figure}
	for _, t := range All() {
		for _, s := range t.Errors {
			known.Slips[t.Name] = append(known.Slips[t.Name], s.Name)
		}
	}
	return known
}

// promptsTried is how many problems of each level show whether a prompt asks for
// something that no problem has.
const promptsTried = 30

// CheckPrompts draws problems with a library's words and reports every ${name}
// that has no value.
func CheckPrompts(lib *content.Library) content.Findings {
	var found content.Findings
	for _, t := range All() {
		w, err := wording.Load(lib, t.Name)
		if err != nil {
			continue // the check of the files has said so
		}
		unknown := map[string]bool{}
		for level := problem.NumbersGiven; level <= problem.OnTheJob; level++ {
			for seed := range uint32(promptsTried) {
				system := machine.System(seed % 2)
				if !t.Allows(system) {
					system = t.Systems[0]
				}
				p, err := problem.New(t, problem.NewCode(t.Name, level, system, seed, machine.DefaultLathe(system)))
				if err != nil {
					continue // a task's own tests answer for its draws
				}
				_, names := w.Ask(p)
				for _, name := range names {
					unknown[name] = true
				}
			}
		}
		for name := range unknown {
			var symbols []string
			for _, in := range t.Inputs {
				symbols = append(symbols, "${"+in.Symbol+"}")
			}
			found = append(found, content.Finding{File: "tasks/" + t.Name + ".yaml",
				Text: "a prompt asks for ${" + name + "}, which this task does not always have; it has " + strings.Join(symbols, ", ")})
		}
	}
	return found
}
