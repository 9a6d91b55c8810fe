package cli

import (
	"errors"
	"io/fs"
	"os"
	"strings"

	"scratchpass/content"
	"scratchpass/quiz/machine"
)

// Lathe returns the lathe and the units that problems are drawn for: what --lathe
// and --units say, else the learner's own machine, else the one that ships.
func (o *Options) Lathe() (machine.Lathe, machine.System, error) {
	var system machine.System
	if o.Units != "" {
		system, _ = machine.ParseSystem(o.Units) // checked before any command runs
	}
	lathe := machine.DefaultLathe(system)
	own, err := o.ownLathe()
	switch {
	case err != nil:
		return lathe, system, err
	case own == nil:
		return lathe, system, nil
	}
	its := machine.Imperial
	if own.Metric {
		its = machine.Metric
	}
	switch {
	case o.Units == "" || its == system:
		return *own, its, nil
	case o.LatheFile != "":
		return lathe, system, Usagef("--units %s: the lathe in %q has dials in %s; leave one of the two out", system, o.LatheFile, its)
	}
	return lathe, system, nil // the learner's own machine is for the other units
}

// ownLathe reads the lathe of --lathe, or the one that is kept; nil when there is none.
func (o *Options) ownLathe() (*machine.Lathe, error) {
	path := o.LatheFile
	if path == "" {
		kept, err := keptLathe()
		if err != nil {
			return nil, nil // no home, no kept lathe
		}
		path = kept
	}
	l, err := machine.ReadLathe(path)
	switch {
	case err == nil:
		return &l, nil
	case errors.Is(err, fs.ErrNotExist) && o.LatheFile == "":
		return nil, nil
	}
	return nil, err
}

// keptLathe is where the learner's own machine is kept.
func keptLathe() (string, error) { return ConfigFile("lathe.yaml") }

// KeepLathe keeps the learner's own machine, in the file of --lathe where that was given.
func (o *Options) KeepLathe(l machine.Lathe) (where string, err error) {
	path, err := keptLathe()
	if o.LatheFile != "" {
		path, err = o.LatheFile, nil
	}
	if err != nil {
		return "", err
	}
	l.Name = strings.TrimSpace(content.OneLine(l.Name)) // as it was typed; the file would not be read with anything else in it
	return path, machine.WriteLathe(path, l)
}

// ForgetLathe deletes the lathe that is kept, if one is.
func ForgetLathe() error {
	path, err := keptLathe()
	if err != nil {
		return err
	}
	if err := os.Remove(path); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	return nil
}
