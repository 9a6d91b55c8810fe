package learner

import (
	"context"
	"fmt"

	"github.com/spf13/cobra"
	"gopkg.in/yaml.v3"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/home"
	"scratchpass/quiz/machine"
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

func latheCommand(r *cli.Run) *cobra.Command {
	cmd := &cobra.Command{
		Use:   "lathe",
		Short: "Describe your machine, so that problems fit it",
		Args:  cobra.NoArgs,
	}
	show := cmd.Flags().Bool("show", false, "show the lathe that problems are drawn for")
	forget := cmd.Flags().Bool("forget", false, "go back to the lathe that ships")
	cmd.RunE = func(cmd *cobra.Command, _ []string) error {
		switch {
		case *forget:
			return forgetLathe(r)
		case *show || r.JSON:
			return showLathe(r)
		}
		return describeLathe(cmd.Context(), r)
	}
	return cmd
}

// describeLathe asks for the learner's own machine and keeps it.
func describeLathe(ctx context.Context, r *cli.Run) error {
	s, _, err := r.Open(ctx)
	if err != nil {
		return err
	}
	l, err := home.DescribeLathe(s)
	if err != nil {
		return err
	}
	where, err := r.KeepLathe(l)
	if err == nil {
		r.Note(s, s.Say("lathe-kept", "where", where))
	}
	return err
}

func forgetLathe(r *cli.Run) error {
	if err := cli.ForgetLathe(); err != nil {
		return err
	}
	fmt.Fprintln(r.Out, "Problems are now drawn for the lathe that ships.")
	return nil
}

func showLathe(r *cli.Run) error {
	l, _, err := r.Lathe()
	if err != nil {
		return err
	}
	f := l.File()
	if r.JSON {
		return r.PrintJSON(documentOf(f))
	}
	text, err := yaml.Marshal(f)
	if err == nil {
		_, err = fmt.Fprint(r.Out, string(text))
	}
	return err
}

func documentOf(f machine.LatheFile) latheDocument {
	return latheDocument{f.Name, f.LeadScrew, f.ThreadDial.Gear, f.ThreadDial.Marks, f.CrossSlide.Turn, f.CrossSlide.Line,
		f.CrossSlide.Reads, f.Compound.Turn, f.Compound.Line, f.Compound.Zero, f.SpindleNose,
		append([]int{}, f.Gears...), append([]int{}, f.Speeds...)}
}
