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
		Use:   "forget FILE",
		Short: "Delete a class, its people and their answers, for good",
		Args:  cobra.ExactArgs(1),
	}
	days := f.Flags().Int("older", 0, "only if it was begun more than so many `DAYS` ago")
	yes := f.Flags().Bool("yes", false, "do not ask")
	f.RunE = func(cmd *cobra.Command, args []string) error {
		return forget(cmd.Context(), r, args[0], *days, *yes)
	}
	return f
}

// forget deletes the classes of a file; the file too, once nothing is in it.
func forget(ctx context.Context, r *cli.Run, file string, days int, yes bool) error {
	if days < 0 {
		return cli.Usagef("--older %d: give a number of days", days)
	}
	if err := isClass(file); err != nil {
		return err
	}
	s, err := r.OpenUnrecorded(ctx)
	if err != nil {
		return err
	}
	j, err := journal.Open(file)
	if err != nil {
		return err
	}
	heads, err := j.Heads(ctx)
	if err != nil {
		return errors.Join(err, j.Close())
	}
	var old []class.Head
	for _, h := range heads {
		if days == 0 || r.Now().Sub(h.Began) > time.Duration(days)*24*time.Hour {
			old = append(old, h)
		}
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
	if err := j.Close(); err != nil {
		return err
	}
	if len(old) == len(heads) {
		for _, ending := range []string{"-wal", "-shm", "", ".lock"} {
			if err := os.Remove(file + ending); err != nil && !errors.Is(err, os.ErrNotExist) {
				return err
			}
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

// isClass is an error for a file that is not there, and for one of something else.
func isClass(file string) error {
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
