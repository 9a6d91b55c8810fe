package learner

import (
	"context"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/content"
	"scratchpass/lessons/course"
	"scratchpass/lessons/practice"
	"scratchpass/lessons/record"
	"scratchpass/lessons/sitting"
)

// The shortest and the longest round, in seconds, and the most who play in turn.
const (
	shortestRound = 10
	longestRound  = 600
	mostPlayers   = 40
)

func drillCommand(r *cli.Run) *cobra.Command {
	var level cli.Level
	var seconds int
	var names string
	cmd := &cobra.Command{
		Use:   "drill [TASK|STAGE ...]",
		Short: "Timed rounds of what you already can, alone or by names in turn",
		RunE: func(cmd *cobra.Command, args []string) error {
			l, err := level.Read()
			if err != nil {
				return err
			}
			if seconds < shortestRound || seconds > longestRound {
				return cli.Usagef("--seconds %d: give %d to %d", seconds, shortestRound, longestRound)
			}
			players, err := readPlayers(names)
			if err != nil {
				return err
			}
			if r.JSON {
				return cli.Usagef("drill talks with you; for JSON use quiz ask and quiz mark")
			}
			s, rec, err := openDrill(cmd.Context(), r, players)
			if err != nil {
				return err
			}
			tasks, err := drillTasks(s, rec, args)
			if err != nil {
				return cli.UsageError(err)
			}
			return run(s, practice.Drill{Tasks: tasks, Players: players, Length: time.Duration(seconds) * time.Second, Level: l})
		},
	}
	level.AddTo(cmd)
	cmd.Flags().IntVar(&seconds, "seconds", 90, "how long a round is")
	cmd.Flags().StringVar(&names, "names", "", "names that play in turn, with commas between them")
	return cmd
}

// openDrill begins a session; several at one machine play for no one's record.
func openDrill(ctx context.Context, r *cli.Run, players []string) (*sitting.Session, *record.Record, error) {
	if len(players) == 0 {
		return r.Open(ctx)
	}
	s, err := r.OpenUnrecorded(ctx)
	return s, nil, err
}

// drillTasks are the tasks named, none of which may hurt someone, or what the record
// says is ready for the clock.
func drillTasks(s *sitting.Session, rec *record.Record, args []string) ([]string, error) {
	if len(args) > 0 {
		return practice.Harmless(s.Tasks, args)
	}
	if rec == nil {
		return nil, practice.ErrNothingToDrill
	}
	of, _, err := rec.Summaries()
	if err != nil {
		return nil, err
	}
	names := practice.Drillable(course.Order(s.Library, s.System), of)
	if len(names) == 0 {
		return nil, practice.ErrNothingToDrill
	}
	return names, nil
}

// readPlayers reads the names that play in turn.
func readPlayers(names string) ([]string, error) {
	var all []string
	for _, name := range strings.Split(names, ",") {
		if name = strings.TrimSpace(content.Printable(name)); name != "" {
			all = append(all, name)
		}
	}
	if len(all) > mostPlayers {
		return nil, cli.Usagef("--names has %d names: give up to %d", len(all), mostPlayers)
	}
	return all, nil
}
