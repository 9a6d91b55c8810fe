package main

import (
	"fmt"

	"github.com/spf13/cobra"

	"scratchpass/content"
)

// lessonDocument is a lesson in the JSON list of lessons.
type lessonDocument struct {
	Name    string   `json:"name"`
	Title   string   `json:"title"`
	Minutes int      `json:"minutes"`
	Goals   []string `json:"goals"`
	Tasks   []string `json:"tasks"`
}

func (a *app) learn() *cobra.Command {
	return &cobra.Command{
		Use:   "learn [LESSON]",
		Short: "Take a lesson; without a name, list them",
		Args:  cobra.MaximumNArgs(1),
		RunE: func(_ *cobra.Command, args []string) error {
			lib, err := a.library()
			if err != nil {
				return err
			}
			if len(args) == 0 {
				return a.listLessons(lib)
			}
			if a.json {
				return usage("learn %q talks with you; --json is for the list, learn --json", args[0])
			}
			_, err = lib.Lesson(args[0])
			if content.ErrNotThere(err) {
				return usage("no lesson is called %q%s (learn lists all)", args[0], content.DidYouMean(args[0], lib.LessonNames()))
			}
			if err != nil {
				return err
			}
			s, err := a.open()
			if err != nil {
				return err
			}
			return s.Lesson(args[0])
		},
	}
}

func (a *app) listLessons(lib *content.Library) error {
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
	if a.json {
		return a.print(map[string]any{"lessons": docs})
	}
	for _, d := range docs {
		if _, err := fmt.Fprintf(a.out, "%-24s %s (%d min)\n", d.Name, d.Title, d.Minutes); err != nil {
			return err
		}
	}
	return nil
}
