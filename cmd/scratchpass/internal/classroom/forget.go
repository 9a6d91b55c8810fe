package classroom

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"time"

	"github.com/spf13/cobra"

	"scratchpass/calc"
	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/class"
	"scratchpass/lessons/class/journal"
	"scratchpass/lessons/page"
	"scratchpass/lessons/sitting"
)

func forgetCommand(r *cli.Run) *cobra.Command {
	f := &cobra.Command{
		Use:   "forget FILE | postgres://...",
		Short: "Delete a class, its people and their answers, for good",
		Args:  cobra.ExactArgs(1),
	}
	days := f.Flags().Int("older", 0, "only if it was begun more than so many `DAYS` ago")
	code := f.Flags().String("code", "", "`CODE` of the class (default: all in the file; of a database, give it, or --older)")
	yes := f.Flags().Bool("yes", false, "do not ask")
	f.RunE = func(cmd *cobra.Command, args []string) error {
		return forget(cmd.Context(), r, journal.At(args[0]), which{*code, *days}, *yes)
	}
	return f
}

// which are the classes that are to be deleted: that with a code, and those that are so many days
// old.
type which struct {
	code string
	days int
}

// of are those of a journal.
func (w which) of(ctx context.Context, at journal.At, j class.Journal, now time.Time) (old []class.Head, err error) {
	all, err := j.Heads(ctx)
	if w.code != "" && err == nil {
		var one class.Head
		one, err = at.Head(ctx, j, w.code)
		all = []class.Head{one}
	}
	for _, h := range all {
		if w.days == 0 || now.Sub(h.Began) > time.Duration(w.days)*24*time.Hour {
			old = append(old, h)
		}
	}
	return old, err
}

// forget deletes classes; the file too, once nothing is in it.
func forget(ctx context.Context, r *cli.Run, at journal.At, which which, yes bool) error {
	switch {
	case which.days < 0:
		return cli.Usagef("--older %d: give a number of days", which.days)
	case at.File() == "" && which.code == "" && which.days == 0:
		return cli.Usagef("%s holds the classes of many: say which with --code CODE, or --older DAYS", at)
	}
	if err := isClass(at); err != nil {
		return err
	}
	s, err := r.OpenUnrecorded(ctx)
	if err != nil {
		return err
	}
	j, err := at.Open(ctx)
	if err != nil {
		return err
	}
	old, err := which.of(ctx, at, j, r.Now())
	if err != nil {
		return errors.Join(err, j.Close())
	}
	if len(old) == 0 {
		fmt.Fprintln(r.Out, s.Say("class-forget-none"))
		return j.Close()
	}
	if !yes {
		if err := sureToForget(s, old); err != nil {
			return errors.Join(err, j.Close())
		}
	}
	for _, h := range old {
		if err := j.Forget(ctx, h.Code); err != nil {
			return errors.Join(err, j.Close())
		}
	}
	left, err := empties(ctx, at, j)
	if err = errors.Join(err, j.Close()); err != nil {
		return err
	}
	for _, name := range left {
		if err := os.Remove(name); err != nil && !errors.Is(err, os.ErrNotExist) {
			return err
		}
	}
	fmt.Fprintln(r.Out, s.Say("class-forgotten", "n", len(old)))
	fmt.Fprintln(r.Out, s.Say("class-forgotten-kept"))
	return nil
}

// sureToForget asks for a word that nobody types by accident. Another one stops, as Ctrl-C does;
// what is said then comes when the screen is left.
func sureToForget(s *sitting.Session, old []class.Head) error {
	reply, err := s.Face.Ask(page.Prompt{Text: s.Say("class-forget-ask", "title", old[0].Title, "n", len(old)), Takes: page.Words{}})
	err = errors.Join(err, cli.LeaveScreen(s))
	if err == nil && reply != s.Say("class-forget-yes") {
		err = page.ErrStopped
	}
	if errors.Is(err, page.ErrStopped) {
		return page.Stopped{Farewell: s.Say("class-forget-not")}
	}
	return err
}

// isClass is an error for a file that is not there, and for one of something else. A database is not
// asked.
func isClass(at journal.At) error {
	file := at.File()
	if file == "" {
		return nil
	}
	switch _, err := os.Stat(file); {
	case errors.Is(err, fs.ErrNotExist):
		return fmt.Errorf("there is no file %s: give the one that the class is kept in; its name ends in .class if --room gave no other", calc.Quoted(file))
	case err != nil:
		return err
	case !journal.Is(file):
		return cli.Usagef("%s holds no class", calc.Quoted(file))
	}
	return nil
}

// empties are the files of a journal in which there is nothing any more.
func empties(ctx context.Context, at journal.At, j class.Journal) (names []string, err error) {
	if at.File() == "" {
		return nil, nil
	}
	left, err := j.Heads(ctx)
	if err != nil || len(left) > 0 {
		return nil, err
	}
	for _, ending := range []string{"-wal", "-shm", "", ".lock"} {
		names = append(names, at.File()+ending)
	}
	return names, nil
}
