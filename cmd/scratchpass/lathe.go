package main

import (
	"fmt"
	"scratchpass/quiz/machine"

	"gopkg.in/yaml.v3"
)

// latheDocument is the JSON of a lathe.
type latheDocument struct {
	Name        string `json:"name"`
	LeadScrew   string `json:"lead_screw"`
	DialGear    int    `json:"thread_dial_gear"`
	DialMarks   int    `json:"thread_dial_marks"`
	CrossTurn   string `json:"cross_slide_turn"`
	CrossLine   string `json:"cross_slide_line"`
	CrossReads  string `json:"cross_slide_reads"`
	CompTurn    string `json:"compound_turn"`
	CompLine    string `json:"compound_line"`
	CompZero    string `json:"compound_zero"`
	SpindleNose string `json:"spindle_nose"`
	Gears       []int  `json:"gears"`
	Speeds      []int  `json:"speeds"`
}

func (a *app) showLathe(l machine.Lathe) error {
	f := l.File()
	if a.json {
		return a.print(latheDocument{f.Name, f.LeadScrew, f.ThreadDial.Gear, f.ThreadDial.Marks, f.CrossSlide.Turn, f.CrossSlide.Line,
			f.CrossSlide.Reads, f.Compound.Turn, f.Compound.Line, f.Compound.Zero, f.SpindleNose,
			append([]int{}, f.Gears...), append([]int{}, f.Speeds...)})
	}
	text, err := yaml.Marshal(f)
	if err == nil {
		_, err = fmt.Fprint(a.out, string(text))
	}
	return err
}
