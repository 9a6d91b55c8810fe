package progress

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/page"
	"scratchpass/lessons/postgres"
	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/files"
)

func exportCommand(r *cli.Run) *cobra.Command {
	return &cobra.Command{
		Use:   "export [FILE]",
		Short: "Write your answers as JSON lines",
		Args:  cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			to := cli.OptionalArgument(args)
			if len(args) == 0 {
				to = "-"
			}
			if err := notOnTrial(r); err != nil {
				return err
			}
			v, err := open(cmd.Context(), r, true)
			if record.Damaged(err) && !postgres.Is(r.RecordFile) {
				return exportDamaged(cmd.Context(), r, to)
			}
			if err != nil {
				return err
			}
			return v.export(r, to)
		},
	}
}

// export writes the answers of a sound record.
func (v view) export(r *cli.Run, to string) error {
	lost, err := v.Record.Lost(true)
	if err != nil {
		return err
	}
	rehearsals, err := v.Record.LostRehearsals(true)
	if err != nil {
		return err
	}
	if to == "-" {
		_, err = v.Record.Export(r.Out)
	} else {
		err = v.exportTo(r, to)
	}
	if err == nil && len(lost) > 0 {
		fmt.Fprintln(r.Err, v.Session.Say("progress-export-lost", "n", len(lost), "which", cli.WhichLost(v.Session, lost)))
	}
	if err == nil && len(rehearsals) > 0 {
		fmt.Fprintln(r.Err, v.Session.Say("progress-export-lost-rehearsals", "n", len(rehearsals), "which", cli.WhichLost(v.Session, rehearsals)))
	}
	if m := v.Record.Mended; err == nil && m != nil && (m.Lost > 0 || m.LostRehearsals > 0 || m.Unsure) {
		return errors.New("what damage has taken from the record could not be exported")
	}
	return err
}

// exportTo writes them to a file, and first notes which: who forgets is told of it.
func (v view) exportTo(r *cli.Run, to string) error {
	if err := r.NoteExport(to); err != nil {
		return err
	}
	var x record.Exported
	err := files.WriteWhole(to, func(f *os.File) (err error) { x, err = v.Record.Export(f); return err })
	if err == nil {
		fmt.Fprintln(r.Out, v.Session.Say("progress-exported", "n", x.Answers))
	}
	if err == nil && x.Rehearsals > 0 {
		fmt.Fprintln(r.Out, v.Session.Say("progress-exported-rehearsals", "n", x.Rehearsals))
	}
	return err
}

// exportDamaged writes what can be read of a damaged record that can't be mended, because it
// may only be read or another program has it open, and fails all the same.
func exportDamaged(ctx context.Context, r *cli.Run, to string) error {
	s, err := r.OpenUnrecorded(ctx)
	if err != nil {
		return err
	}
	learner, path, err := r.LearnersRecord()
	if err != nil {
		return err
	}
	var x record.Exported
	write := func(w io.Writer) (err error) { x, err = record.ExportDamaged(path, learner, w); return err }
	if to == "-" {
		err = write(r.Out)
	} else if err = r.NoteExport(to); err == nil {
		err = files.WriteWhole(to, func(f *os.File) error { return write(f) })
	}
	if err != nil {
		return err
	}
	missing := func(all []int64) string {
		if len(all) == 0 {
			return s.Say("progress-export-missing-none")
		}
		return numbers(all)
	}
	said := s.Say("progress-export-damaged", "n", x.Answers, "missing", missing(x.Missing))
	if x.Rehearsals+len(x.MissingRehearsals) > 0 {
		said += " " + s.Say("progress-export-damaged-rehearsals", "n", x.Rehearsals, "missing", missing(x.MissingRehearsals))
	}
	return errors.New(said)
}

// numbers lists numbers, those in a row as from-to.
func numbers(all []int64) string {
	var parts []string
	for i := 0; i < len(all); {
		j := i
		for j+1 < len(all) && all[j+1] == all[j]+1 {
			j++
		}
		if j == i {
			parts = append(parts, fmt.Sprint(all[i]))
		} else {
			parts = append(parts, fmt.Sprintf("%d-%d", all[i], all[j]))
		}
		i = j + 1
	}
	return strings.Join(parts, ", ")
}

func importCommand(r *cli.Run) *cobra.Command {
	return &cobra.Command{
		Use:   "import FILE",
		Short: "Read answers that were exported, all or none",
		Args:  cli.OneArgument("a file"),
		RunE: func(cmd *cobra.Command, args []string) error {
			v, err := openToChange(cmd.Context(), r)
			if err != nil {
				return err
			}
			f, err := files.Open(args[0], files.MostAnswers)
			if err != nil {
				return err
			}
			defer f.Close()
			i, err := v.Record.Import(f, sitting.Remark(v.Session.Tasks), schedule.Fold(v.Items), r.Now())
			if err != nil {
				return err
			}
			v.tellOfImport(r, i)
			return nil
		},
	}
}

// tellOfImport tells what came of reading answers in.
func (v view) tellOfImport(r *cli.Run, i record.Imported) {
	say := v.Session.Say
	fmt.Fprintln(r.Out, say("progress-imported", "added", i.Added, "known", i.Known))
	if i.Rehearsals+i.RehearsalsKnown > 0 {
		fmt.Fprintln(r.Out, say("progress-imported-rehearsals", "added", i.Rehearsals, "known", i.RehearsalsKnown))
	}
	if i.Changed > 0 {
		fmt.Fprintln(r.Out, say("progress-imported-changed", "n", i.Changed))
	}
	if len(i.LeftOut) > 0 {
		const most = 10
		var lines []string
		for _, n := range i.LeftOut[:min(most, len(i.LeftOut))] {
			lines = append(lines, say("progress-imported-line", "n", n))
		}
		if more := len(i.LeftOut) - len(lines); more > 0 {
			lines = append(lines, say("say-lost-more", "n", more))
		}
		fmt.Fprintln(r.Err, say("progress-imported-left-out", "n", len(i.LeftOut), "lines", strings.Join(lines, ", ")))
	}
}

func forgetCommand(r *cli.Run) *cobra.Command {
	yes := false
	cmd := &cobra.Command{
		Use:   "forget",
		Short: "Delete all of your answers, for good",
		Args:  cli.NoArguments,
		RunE: func(cmd *cobra.Command, _ []string) error {
			v, err := openToChange(cmd.Context(), r)
			if err != nil {
				return err
			}
			if !yes {
				if yes, err = v.sureToForget(); err != nil {
					return err
				}
			}
			if !yes {
				fmt.Fprintln(r.Out, v.Session.Say("progress-kept"))
				return nil
			}
			return v.forget(r)
		},
	}
	cmd.Flags().BoolVar(&yes, "yes", false, "do not ask")
	return cmd
}

// forget deletes the answers and what copies there are of them, and names those that are the
// learner's own to delete.
func (v view) forget(r *cli.Run) error {
	f, err := v.Record.Forget()
	if err != nil {
		return err
	}
	fmt.Fprintln(r.Out, v.Session.Say("progress-forgot", "n", f.Answers, "learner", v.Record.Learner))
	if f.Rehearsals > 0 {
		fmt.Fprintln(r.Out, v.Session.Say("progress-forgot-rehearsals", "n", f.Rehearsals))
	}
	deleted, left, err := cli.ForgetLogs(v.Record.Learner)
	if err != nil {
		return err
	}
	for _, file := range append(f.Deleted, deleted...) {
		fmt.Fprintln(r.Out, v.Session.Say("progress-forgot-file", "file", file))
	}
	for _, file := range append(f.Left, left...) {
		fmt.Fprintln(r.Out, v.Session.Say("progress-forgot-left", "file", file))
	}
	fmt.Fprintln(r.Out, v.Session.Say("progress-forgot-elsewhere"))
	return nil
}

// notOnTrial is an error for what can't be tried as of another day.
func notOnTrial(r *cli.Run) error {
	if r.IsTrial() {
		return cli.Usagef("--as-of only tries things on a copy of the record, and nothing of it is kept: leave it out")
	}
	return nil
}

// openToChange opens the record to change all of it, which can't be tried as of another day.
func openToChange(ctx context.Context, r *cli.Run) (view, error) {
	if err := notOnTrial(r); err != nil {
		return view{}, err
	}
	v, err := open(ctx, r, false)
	if err == nil && v.Record.ReadOnly {
		err = record.ErrReadOnly
	}
	return v, err
}

// sureToForget asks for the learner's name: no one types that by accident.
func (v view) sureToForget() (bool, error) {
	_, n, err := v.Record.Summaries()
	if err != nil {
		return false, err
	}
	rehearsals, err := v.Record.Rehearsals()
	if err != nil {
		return false, err
	}
	ask := v.Session.Say("progress-forget-ask", "n", n, "learner", v.Record.Learner)
	if len(rehearsals) > 0 {
		ask = v.Session.Say("progress-forget-ask-rehearsals", "n", n, "learner", v.Record.Learner, "rehearsals", len(rehearsals))
	}
	reply, err := v.Session.Face.Ask(page.Prompt{Text: ask, Takes: page.Words{}})
	return reply == v.Record.Learner, errors.Join(err, cli.LeaveScreen(v.Session))
}
