package learner

import (
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
				return listLessons(r, lib)
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

func listLessons(r *cli.Run, lib *content.Library) error {
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
	for _, d := range docs {
		if _, err := fmt.Fprintln(r.Out, content.OneLine(fmt.Sprintf("%-24s %s (%d min)", d.Name, d.Title, d.Minutes))); err != nil {
			return err
		}
	}
	return nil
}
