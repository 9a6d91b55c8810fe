package main

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"strings"

	"github.com/spf13/cobra"

	"scratchpass/content"
	"scratchpass/lessons"
	"scratchpass/quiz/files"
	"scratchpass/quiz/set"
)

// setFlags are what every set command needs to find a class's numbers again.
type setFlags struct {
	roster  string
	forms   int
	secret  string
	out     string
	formats string
	replace bool
}

// addOut adds where to write.
func (f *setFlags) addOut(cmd *cobra.Command) {
	cmd.Flags().StringVar(&f.out, "out", "", "`DIR` for the files (default: named after the set)")
	cmd.Flags().BoolVar(&f.replace, "replace", false, "write files anew that are there already")
}

func (f *setFlags) add(cmd *cobra.Command) {
	cmd.Flags().StringVar(&f.roster, "roster", "", "`FILE` with the apprentices: a CSV with id and name, or the users.csv of OneRoster")
	cmd.Flags().IntVar(&f.forms, "forms", 0, "so many lettered forms instead of a roster")
	cmd.Flags().StringVar(&f.secret, "secret", "", "`FILE` with the class secret (default: one in your configuration folder)")
}

func (a *app) set() *cobra.Command {
	cmd := &cobra.Command{
		Use:   "set",
		Short: "An instructor's problem sets: sheets, keys, marking, what the class got wrong",
		Args:  noArguments,
		RunE:  func(cmd *cobra.Command, _ []string) error { return cmd.Help() },
	}
	cmd.AddCommand(a.setMake(), a.setKey(), a.setMark(), a.setReport(), a.setExample())
	return cmd
}

// desk is a set with its class.
type desk struct {
	app     *app
	lib     *content.Library
	maker   *set.Maker
	printer *set.Printer
	class   []set.Apprentice
	say     func(string, ...any) string
}

// openDesk reads blueprint, class and secret. make lets a secret be made where there is
// none yet.
func (a *app) openDesk(blueprint string, f *setFlags, makeSecret bool) (*desk, error) {
	lib, err := a.library()
	if err != nil {
		return nil, err
	}
	b, err := set.ReadBlueprint(blueprint)
	if err != nil {
		return nil, usageOr(err)
	}
	d := &desk{app: a, lib: lib}
	switch {
	case f.roster != "" && f.forms != 0:
		return nil, usage("--roster and --forms: give one of the two")
	case f.roster != "":
		d.class, err = set.ReadRoster(f.roster)
	case f.forms != 0:
		d.class, err = set.Forms(f.forms)
	default:
		return nil, usage("for whom? Give --roster FILE, or --forms 4 for lettered forms")
	}
	if err != nil {
		return nil, usageOr(err)
	}
	secret, err := a.classSecret(f.secret, makeSecret, lib)
	if err != nil {
		return nil, err
	}
	if d.maker, err = set.NewMaker(b, secret, lib); err != nil {
		return nil, fmt.Errorf("%s: %w", blueprint, err)
	}
	if _, err := d.maker.Codes(d.class); err != nil {
		return nil, err
	}
	if d.printer, err = set.NewPrinter(d.maker, lib); err != nil {
		return nil, err
	}
	d.say = d.printer.Say
	return d, nil
}

// usageOr makes an error of what was given a usage error; one of the file system stays
// what it is.
func usageOr(err error) error {
	if _, ok := err.(*os.PathError); ok {
		return err
	}
	return usageError{err}
}

// classSecret reads the class secret, or makes one.
func (a *app) classSecret(path string, makeOne bool, lib *content.Library) (set.Secret, error) {
	if path == "" {
		dir, err := os.UserConfigDir()
		if err != nil {
			return nil, fmt.Errorf("no folder for the class secret: %w; give --secret FILE", err)
		}
		path = filepath.Join(dir, "scratchpass", "class-secret")
	}
	if _, err := os.Stat(path); os.IsNotExist(err) {
		if !makeOne {
			return nil, fmt.Errorf("there is no class secret at %q: give --secret FILE, the one that the sheets were made with", path)
		}
		s, err := set.NewSecret(path)
		if err != nil {
			return nil, err
		}
		says, err := lib.Screens()
		if err == nil {
			fmt.Fprintln(a.err, content.FillPairs(says["set-secret-made"], "where", path))
		}
		return s, err
	}
	return set.ReadSecret(path)
}

// there is the error for a file that is there already.
func (d *desk) there(where string) error { return usage("%s", d.say("set-there", "where", where)) }

// keep puts the files of a folder in their place, and says which of an earlier run were
// taken away.
func (d *desk) keep(out *files.Staged, replace bool, earlier ...*regexp.Regexp) error {
	err := out.Commit(replace, d.there, earlier...)
	if err == nil && len(out.Gone) > 0 {
		fmt.Fprintln(d.app.err, d.say("set-taken", "dir", out.Dir, "files", strings.Join(out.Gone, ", ")))
	}
	return err
}

// done says what was written, as a sentence or as JSON.
func (d *desk) done(sentence string, n int, dir string) error {
	if d.app.json {
		return d.app.print(map[string]any{"written": n, "folder": dir})
	}
	_, err := fmt.Fprintln(d.app.out, d.say(sentence, "n", n, "where", dir))
	return err
}

// progress tells how far it is, on a terminal.
func (d *desk) progress(i, of int) {
	if _, ok := tty(d.app.err); !ok {
		return
	}
	end := "\r"
	if i == of {
		end = "\r\n"
	}
	if i%10 == 0 || i == of {
		fmt.Fprint(d.app.err, d.say("set-progress", "i", i, "of", of), end)
	}
}

// stopped is the error of someone who has stopped the program.
func (d *desk) stopped() error {
	if d.app.stop.Err() == nil {
		return nil
	}
	fmt.Fprintln(d.app.err, d.say("set-stopped"))
	return lessons.ErrStopped
}

// each makes every apprentice's questions, one after the other.
func (d *desk) each(do func(a set.Apprentice, items []set.Item) error) error {
	for i, who := range d.class {
		if err := d.stopped(); err != nil {
			return err
		}
		items, err := d.maker.Items(who.ID)
		if err != nil {
			return fmt.Errorf("%s: %w", who.ID, err)
		}
		if err := do(who, items); err != nil {
			return err
		}
		d.progress(i+1, len(d.class))
	}
	return nil
}

func (a *app) setExample() *cobra.Command {
	return &cobra.Command{
		Use:   "example [DIR]",
		Short: "Write two example blueprints and a roster, to change into your own",
		Args:  cobra.MaximumNArgs(1),
		RunE: func(_ *cobra.Command, args []string) error {
			dir := "scratchpass-sets"
			if len(args) == 1 {
				dir = args[0]
			}
			lib, err := a.library()
			if err != nil {
				return err
			}
			out := files.Stage(dir)
			defer out.Rollback()
			for name, text := range content.Examples() {
				if err := out.Write(name, func(w io.Writer) error { _, err := w.Write(text); return err }); err != nil {
					return err
				}
			}
			if err := out.Commit(false, func(where string) error { return usage("%s is there already: give another folder", where) }); err != nil {
				return err
			}
			says, err := lib.Screens()
			if err != nil {
				return err
			}
			if a.json {
				return a.print(map[string]any{"written": len(content.Examples()), "folder": dir})
			}
			fmt.Fprintln(a.out, content.FillPairs(says["set-example-made"], "where", dir))
			return nil
		},
	}
}
