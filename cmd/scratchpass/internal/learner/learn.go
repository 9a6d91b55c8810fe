package learner

import (
	"context"
	"fmt"

	"github.com/spf13/cobra"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/content"
	"scratchpass/lessons/course"
)

// lessonDocument is a lesson in the JSON list of lessons.
type lessonDocument struct {
	Name    string   `json:"name"`
	Title   string   `json:"title"`
	Minutes int      `json:"minutes"`
	Goals   []string `json:"goals"`
	Tasks   []string `json:"tasks"`
}

// lessonsDocument is the JSON list of lessons.
type lessonsDocument struct {
	Lessons []lessonDocument `json:"lessons"`
}

func learnCommand(r *cli.Run) *cobra.Command {
	var goOn bool
	cmd := &cobra.Command{
		Use:   "learn [LESSON]",
		Short: "Take a lesson; without a name, list them",
		Args:  cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			if goOn {
				return takeUp(cmd.Context(), r, args)
			}
			lib, err := r.Library()
			if err != nil {
				return err
			}
			if len(args) == 0 {
				return listLessons(cmd.Context(), r, lib)
			}
			if r.JSON {
				return cli.Usagef("learn %q talks with you; --json is for the list, learn --json", args[0])
			}
			_, err = lib.Lesson(args[0])
			if content.ErrNotThere(err) {
				return cli.Usagef("no lesson is called %q%s (learn lists all)", args[0], content.DidYouMean(args[0], lib.LessonNames()))
			}
			if err != nil {
				return err
			}
			s, _, err := r.Open(cmd.Context())
			if err != nil {
				return err
			}
			return run(s, course.Lesson{Lesson: args[0]})
		},
	}
	addGoOn(cmd, &goOn)
	return cmd
}

func listLessons(ctx context.Context, r *cli.Run, lib *content.Library) error {
	docs := []lessonDocument{}
	for _, name := range lib.LessonNames() {
		l, err := lib.Lesson(name)
		if err != nil {
			return err
		}
		doc := lessonDocument{Name: name, Title: l.Title, Minutes: l.Minutes, Goals: l.Goals}
		for _, p := range l.Parts {
			doc.Tasks = append(doc.Tasks, p.Task)
		}
		docs = append(docs, doc)
	}
	if r.JSON {
		return r.PrintJSON(lessonsDocument{docs})
	}
	say, plan, err := planOf(ctx, r, lib)
	if err != nil {
		return err
	}
	for _, special := range []bool{false, true} {
		if special {
			if _, err := fmt.Fprintln(r.Out, say("lessons-special")); err != nil {
				return err
			}
		}
		for _, l := range plan.Lessons {
			if l.Special != special {
				continue
			}
			next := plan.Next != nil && plan.Next.Name == l.Name
			if _, err := fmt.Fprintln(r.Out, content.OneLine(fmt.Sprintf("%-24s %s", l.Name, l.Label(say, next)))); err != nil {
				return err
			}
		}
	}
	return nil
}

// planOf is the plan of the learner's record, and where there is none that of someone who
// has not begun: to list the lessons makes no record.
func planOf(ctx context.Context, r *cli.Run, lib *content.Library) (course.Say, course.Plan, error) {
	if r.HasRecord() {
		s, rec, err := r.OpenToRead(ctx, false)
		if err != nil {
			return nil, course.Plan{}, err
		}
		p, err := course.Load(lib).Plan(rec, s.System, r.Now())
		return s.Say, p, err
	}
	s, err := r.OpenUnrecorded(ctx)
	if err != nil {
		return nil, course.Plan{}, err
	}
	return s.Say, course.Load(lib).NoPlan(), nil
}
