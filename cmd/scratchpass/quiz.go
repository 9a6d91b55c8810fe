package main

import (
	"fmt"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"scratchpass/lessons"
	"scratchpass/lessons/screen"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
	"scratchpass/quiz/wording"
)

// mostProblems is the longest practice session; a longer one teaches nothing more.
const mostProblems = 200

func (a *app) quiz() *cobra.Command {
	var level, count int
	var test bool
	var codes, out string
	cmd := &cobra.Command{
		Use:   "quiz [TASK|STAGE|CODE ...]",
		Short: "Practise; without a task, what is best for you now (12 minutes at most)",
		RunE: func(cmd *cobra.Command, args []string) error {
			l, err := checkLevel(level)
			if err != nil {
				return err
			}
			if count < 1 || count > mostProblems {
				return usage("--count %d: give 1 to %d", count, mostProblems)
			}
			handed, err := handedOut(args, codes)
			if err != nil {
				return err
			}
			var names []string
			if len(handed.Codes) == 0 {
				if names, err = lessons.Resolve(args); err != nil {
					return usageError{err}
				}
			}
			if a.json {
				return usage("quiz talks with you; for JSON use quiz ask and quiz mark")
			}
			s, err := a.open()
			if err != nil {
				return err
			}
			if out != "" {
				if len(handed.Codes) > 0 {
					if err := goOnIn(&handed, out); err != nil {
						return err
					}
				}
				if err := a.alsoWrite(s, out); err != nil {
					return err
				}
			}
			if len(handed.Codes) > 0 {
				return a.askHandedOut(s, handed, out)
			}
			if test {
				return a.mixedTest(s, l)
			}
			if len(args) == 0 && a.record != nil && !cmd.Flags().Changed("count") {
				return s.Best(lessons.CourseOrder(s.Library, s.System), a.summaries, l)
			}
			return s.Practice(names, l, count)
		},
	}
	levelFlag(cmd, &level)
	cmd.Flags().IntVar(&count, "count", 10, "how many problems")
	cmd.Flags().BoolVar(&test, "test", false, "the mixed test: twelve problems, no hints")
	cmd.Flags().StringVar(&codes, "codes", "", "ask the problem codes in `FILE`, one a line, as your instructor has handed them out")
	cmd.Flags().StringVar(&out, "out", "", "also write your answers to `FILE`, for your instructor")
	cmd.AddCommand(a.ask(), a.mark())
	return cmd
}

// mixedTest asks the mixed test and keeps its result.
func (a *app) mixedTest(s *lessons.Session, level problem.Level) error {
	t, err := s.MixedTest(lessons.CourseOrder(s.Library, s.System), lessons.Special(s.Library), level)
	if err != nil || a.record == nil {
		return err
	}
	return a.record.AddTest(t)
}

func (a *app) ask() *cobra.Command {
	var level int
	var key bool
	cmd := &cobra.Command{
		Use:   "ask CODE|TASK",
		Short: "Print one problem; a code remakes the same one anywhere",
		Args:  exactly(1, "a problem code or a task"),
		RunE: func(_ *cobra.Command, args []string) error {
			l, err := checkLevel(level)
			if err != nil {
				return err
			}
			p, w, err := a.problem(args[0], l)
			if err != nil {
				return err
			}
			if a.json {
				return a.print(w.Document(p, key))
			}
			prompt, _ := w.Ask(p)
			text := lessons.Text{{Text: p.Code.String() + "\n" + prompt + "\n" + w.Expects(p)}}
			if key {
				text = append(text, workedText(p, w)...)
			}
			return a.showText(text)
		},
	}
	levelFlag(cmd, &level)
	cmd.Flags().BoolVar(&key, "key", false, "with the working, the answer and what wrong roads give")
	return cmd
}

func (a *app) mark() *cobra.Command {
	return &cobra.Command{
		Use:   "mark CODE ANSWER",
		Short: "Mark an answer to a problem code",
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) < 2 {
				return usage("quiz mark wants a problem code and an answer, such as compound-travel@1-7f3a 0.0701")
			}
			return nil
		},
		RunE: func(_ *cobra.Command, args []string) error {
			if !strings.Contains(args[0], "@") {
				return usage("problem code %q: give the whole code, such as compound-travel@1-7f3a", args[0])
			}
			p, w, err := a.problem(args[0], 1)
			if err != nil {
				return err
			}
			given := strings.Join(args[1:], " ")
			m := p.Mark(given)
			if a.json {
				return a.print(w.MarkDocument(p, given, m))
			}
			return a.showText(lessons.Text{{Text: w.Feedback(p, m).Text()}})
		},
	}
}

// problem remakes the problem of a code, or draws one of a task.
func (a *app) problem(codeOrTask string, level problem.Level) (*problem.Problem, *wording.Words, error) {
	lib, err := a.library()
	if err != nil {
		return nil, nil, err
	}
	code := codeOrTask
	if !strings.Contains(code, "@") {
		t, err := tasks.Find(code)
		if err != nil {
			return nil, nil, usageError{err}
		}
		lathe, system, err := a.lathe()
		if err != nil {
			return nil, nil, err
		}
		if !t.Allows(system) {
			if a.units != "" {
				return nil, nil, usage("--units %s: %s is only set with --units %s", a.units, t.Name, t.Systems[0])
			}
			system = t.Systems[0]
			lathe = machine.DefaultLathe(system)
		}
		code = problem.NewCode(t.Name, level, system, a.seeds()(), lathe).String()
	}
	p, err := tasks.FromCode(code)
	if err != nil {
		return nil, nil, usageError{err}
	}
	w, err := wording.Load(lib, p.Task.Name)
	return p, w, err
}

// showPage shows a page that no one is asked about: with its pictures for a person at
// a terminal, else the plain way.
func (a *app) showPage(t lessons.Text) error {
	if _, ok := tty(a.out); ok && !a.plain && os.Getenv("TERM") != "dumb" {
		_, err := fmt.Fprintln(a.out, strings.Join(screen.Lay(t, a.width()-1), "\n"))
		return err
	}
	return a.showText(t)
}

// showText prints a text the plain way.
func (a *app) showText(t lessons.Text) error {
	return lessons.NewPlain(a.stop, a.in, a.out, a.width(), false).Show(t)
}

func exactly(n int, what string) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		if len(args) != n {
			return usage("%s wants %s, got %d: %s", cmd.CommandPath(), what, len(args), fmt.Sprintf("%.60q", args))
		}
		return nil
	}
}
