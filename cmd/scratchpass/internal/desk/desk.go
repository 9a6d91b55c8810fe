package desk

import (
	"context"
	"errors"
	"fmt"
	"io/fs"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/content"
	"scratchpass/lessons/page"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/set"
	"scratchpass/quiz/tasks"
)

// desk is a set with its class.
type desk struct {
	run     *cli.Run
	lib     *content.Library
	maker   *set.Maker
	printer *set.Printer
	class   []set.Apprentice
	key     set.Secret
	of      tasks.Set
	lathe   func(file string) (machine.Lathe, error) // that the blueprint names
	say     func(string, ...any) string
}

// deskFor is a desk with the words and tasks of a run, and the blueprint read.
func deskFor(r *cli.Run, blueprint string) (*desk, *set.Blueprint, error) {
	lib, err := r.Library()
	if err != nil {
		return nil, nil, err
	}
	says, err := lib.Screens()
	if err != nil {
		return nil, nil, err
	}
	of, err := r.Tasks()
	if err != nil {
		return nil, nil, err
	}
	b, err := set.ReadBlueprint(blueprint, of)
	if err != nil {
		return nil, nil, usageUnlessFile(err)
	}
	return &desk{run: r, lib: lib, of: of, lathe: set.LatheBeside(blueprint), say: func(name string, pairs ...any) string { return content.FillPairs(says[name], pairs...) }}, b, nil
}

// openDesk reads blueprint, class and secret.
func openDesk(ctx context.Context, r *cli.Run, blueprint string, f *classFlags, use cli.SecretUse) (*desk, error) {
	d, b, err := deskFor(r, blueprint)
	if err != nil {
		return nil, err
	}
	if d.class, err = f.class(d.note); err != nil {
		return nil, err
	}
	key, err := cli.ClassSecret(r.Err, f.secret, use, d.lib)
	if err != nil {
		return nil, err
	}
	var maker *set.Maker
	var printer *set.Printer
	if err := d.unlessStopped(ctx, func() (err error) {
		if maker, err = set.NewMaker(b, key, d.lib); err != nil {
			return fmt.Errorf("%s: %w", blueprint, err)
		}
		maker.Seat(d.class)
		if _, err := maker.Codes(d.class); err != nil {
			return err
		}
		printer, err = set.NewPrinter(maker, d.lib)
		return err
	}); err != nil {
		return nil, err
	}
	d.maker, d.printer, d.key = maker, printer, key
	return d, nil
}

// note tells what was left out of a table, or how it was read.
func (d *desk) note(n set.Note) {
	fmt.Fprintln(d.run.Err, d.say(n.Says, "where", n.Where(), "text", n.Text))
}

// class reads for whom a set is: a roster or lettered forms.
func (f *classFlags) class(note func(set.Note)) (class []set.Apprentice, err error) {
	switch {
	case f.roster != "" && f.forms != 0:
		return nil, cli.Usagef("--roster and --forms: give one of the two")
	case f.roster != "":
		class, err = set.ReadRoster(f.roster, note)
	case f.forms != 0:
		class, err = set.Forms(f.forms)
	default:
		return nil, cli.Usagef("for whom? Give --roster FILE, or --forms 4 for lettered forms")
	}
	if err != nil {
		return nil, usageUnlessFile(err)
	}
	return class, nil
}

// usageUnlessFile makes an error of what was given a usage error; one of the file system
// stays what it is, also where a file that was given names the one that is missing.
func usageUnlessFile(err error) error {
	if file := (*fs.PathError)(nil); errors.As(err, &file) {
		return err
	}
	return cli.UsageError(err)
}

// progress tells how far it is, on a terminal.
func (d *desk) progress(i, of int) {
	if !cli.IsTerminal(d.run.Err) {
		return
	}
	end := "\r"
	if i == of {
		end = "\r\n"
	}
	if i%10 == 0 || i == of {
		fmt.Fprint(d.run.Err, d.say("set-progress", "i", i, "n", of), end)
	}
}

// stopped is the error of someone who has stopped the program.
func (d *desk) stopped(ctx context.Context) error {
	if ctx.Err() == nil {
		return nil
	}
	fmt.Fprintln(d.run.Err, d.say("set-stopped"))
	return page.ErrStopped
}

// unlessStopped does work that may be long and that nobody waits for who has stopped the
// program: it is left behind then. So it writes to nothing that is looked at afterwards.
func (d *desk) unlessStopped(ctx context.Context, work func() error) error {
	if err := d.stopped(ctx); err != nil {
		return err
	}
	done := make(chan error, 1)
	go func() { done <- work() }()
	select {
	case err := <-done:
		return err
	case <-ctx.Done():
		return d.stopped(ctx)
	}
}

// each makes every apprentice's questions, one after the other.
func (d *desk) each(ctx context.Context, do func(a set.Apprentice, items []set.Item) error) error {
	for i, who := range d.class {
		if err := d.stopped(ctx); err != nil {
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
