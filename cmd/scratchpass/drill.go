package main

import (
	"strings"
	"time"

	"github.com/spf13/cobra"

	"scratchpass/content"
	"scratchpass/lessons"
)

func (a *app) drill() *cobra.Command {
	var level, seconds int
	var names string
	cmd := &cobra.Command{
		Use:   "drill [TASK|STAGE ...]",
		Short: "Timed rounds of what you already can, alone or by names in turn",
		RunE: func(_ *cobra.Command, args []string) error {
			l, err := checkLevel(level)
			if err != nil {
				return err
			}
			if seconds < 10 || seconds > 600 {
				return usage("--seconds %d: give 10 to 600", seconds)
			}
			players, err := players(names)
			if err != nil {
				return err
			}
			if a.json {
				return usage("drill talks with you; for JSON use quiz ask and quiz mark")
			}
			if len(players) > 0 { // several at one machine: no one's record
				a.recordFile = noRecord
			}
			s, err := a.open()
			if err != nil {
				return err
			}
			tasks, err := a.drillTasks(s, args)
			if err != nil {
				return usageError{err}
			}
			return s.Drill(tasks, players, time.Duration(seconds)*time.Second, l)
		},
	}
	levelFlag(cmd, &level)
	cmd.Flags().IntVar(&seconds, "seconds", 90, "how long a round is")
	cmd.Flags().StringVar(&names, "names", "", "names that play in turn, with commas between them")
	return cmd
}

// drillTasks are the tasks named, none of which may hurt someone, or what the record
// says is ready for the clock.
func (a *app) drillTasks(s *lessons.Session, args []string) ([]string, error) {
	if len(args) > 0 {
		names, err := lessons.Resolve(args)
		if err == nil {
			err = lessons.NoGate(names)
		}
		return names, err
	}
	if a.record == nil {
		return nil, lessons.ErrNothingToDrill
	}
	of, err := a.summaries()
	if err != nil {
		return nil, err
	}
	names := lessons.Drillable(lessons.CourseOrder(s.Library, s.System), of)
	if len(names) == 0 {
		return nil, lessons.ErrNothingToDrill
	}
	return names, nil
}

// players reads the names that play in turn.
func players(names string) ([]string, error) {
	var all []string
	for _, name := range strings.Split(names, ",") {
		if name = strings.TrimSpace(content.Printable(name)); name != "" {
			all = append(all, name)
		}
	}
	if len(all) > 40 {
		return nil, usage("--names has %d names: give up to 40", len(all))
	}
	return all, nil
}
