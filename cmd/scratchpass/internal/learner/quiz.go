package learner

import (
	"context"

	"github.com/spf13/cobra"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/practice"
	"scratchpass/quiz/problem"
)

// mostProblems is the longest practice session; a longer one teaches nothing more.
const mostProblems = 200

// quizFlags are how a practice session is called.
type quizFlags struct {
	level cli.Level
	count int
	test  bool
	codes string
	out   string
}

func quizCommand(r *cli.Run) *cobra.Command {
	var f quizFlags
	var goOn bool
	cmd := &cobra.Command{
		Use:   "quiz [TASK|STAGE|CODE ...]",
		Short: "Practise; without a task, what is best for you now (12 minutes at most)",
		RunE: func(cmd *cobra.Command, args []string) error {
			if goOn {
				return takeUp(cmd.Context(), r, args)
			}
			p, err := f.read(r, args)
			if err == nil {
				err = r.NotOnTrial("--out", f.out)
			}
			if err != nil {
				return err
			}
			if r.JSON {
				return cli.Usagef("quiz talks with you; for JSON use quiz ask and quiz mark")
			}
			p.best = len(args) == 0 && !cmd.Flags().Changed("count")
			return p.begin(cmd.Context(), r)
		},
	}
	addGoOn(cmd, &goOn)
	f.level.AddTo(cmd)
	cmd.Flags().IntVar(&f.count, "count", 10, "how many problems")
	cmd.Flags().BoolVar(&f.test, "test", false, "the mixed test: twelve problems, no hints")
	cmd.Flags().StringVar(&f.codes, "codes", "", "ask the problem codes in `FILE`, one a line, as your instructor has handed them out")
	cmd.Flags().StringVar(&f.out, "out", "", "also write your answers to `FILE`, for your instructor")
	return cmd
}

// session is a practice session that was asked for.
type session struct {
	level  problem.Level
	count  int
	test   bool
	best   bool               // neither tasks nor how many were named: what is best now
	handed practice.HandedOut // by an instructor; has codes or the session has names
	names  []string           // of tasks
	out    string             // a file for the answers, or empty
}

// read reads how practice was called.
func (f *quizFlags) read(r *cli.Run, args []string) (p session, err error) {
	p = session{count: f.count, test: f.test, out: f.out}
	if p.level, err = f.level.Read(); err != nil {
		return p, err
	}
	if f.count < 1 || f.count > mostProblems {
		return p, cli.Usagef("--count %d: give 1 to %d", f.count, mostProblems)
	}
	if p.handed, err = readHandedOut(args, f.codes); err != nil || len(p.handed.Codes) > 0 {
		return p, err
	}
	of, err := r.Tasks()
	if err != nil {
		return p, err
	}
	if p.names, err = practice.Resolve(of, args); err != nil {
		return p, cli.UsageError(err)
	}
	return p, nil
}

// begin opens a session and asks.
func (p session) begin(ctx context.Context, r *cli.Run) error {
	s, rec, err := r.Open(ctx)
	if err != nil {
		return err
	}
	handedOut := len(p.handed.Codes) > 0
	if p.out != "" {
		given, err := answeredIn(p.out)
		if err == nil && handedOut {
			err = goOnWith(&p.handed, given, p.out)
		}
		if err != nil {
			return err
		}
		s.Store = nil // it is gone on by the file
		if err := alsoWrite(r, s, p.out); err != nil {
			return err
		}
	}
	switch {
	case handedOut:
		return askHandedOut(r.Out, s, p.handed, p.out)
	case p.test:
		return run(s, practice.MixedTest{Level: p.level})
	case p.best && rec != nil:
		return run(s, practice.Best{Level: p.level})
	}
	return run(s, practice.Practice{Tasks: p.names, Level: p.level, Count: p.count})
}
