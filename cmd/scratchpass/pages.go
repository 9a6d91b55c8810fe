package main

import (
	"maps"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"scratchpass/content"
	"scratchpass/lessons"
	"scratchpass/quiz/tasks"
)

// termDocument is an entry of the glossary as JSON shows it.
type termDocument struct {
	Term  string   `json:"term"`
	Means string   `json:"means"`
	Also  []string `json:"also"`
	See   []string `json:"see"`
}

func (a *app) terms() *cobra.Command {
	return &cobra.Command{
		Use:   "terms [WORD ...]",
		Short: "What a word of the trade means; without a word, all of them",
		RunE: func(_ *cobra.Command, args []string) error {
			lib, err := a.library()
			if err != nil {
				return err
			}
			all, err := lib.Terms()
			if err != nil {
				return err
			}
			word := strings.Join(args, " ")
			found := content.FindTerms(all, word)
			if len(found) == 0 {
				names := slices.Sorted(maps.Keys(all))
				return usage("no term has %q in it%s (terms lists all)", word, content.DidYouMean(word, names))
			}
			docs := []termDocument{}
			var text lessons.Text
			for _, name := range found {
				t := all[name]
				docs = append(docs, termDocument{name, t.Means, append([]string{}, t.Also...), append([]string{}, t.See...)})
				line := name + ": " + t.Means
				if len(t.Also) > 0 {
					line += " Also: " + strings.Join(t.Also, ", ") + "."
				}
				if len(t.See) > 0 {
					line += " See: " + strings.Join(t.See, ", ") + "."
				}
				text = append(text, lessons.Block{Text: line})
			}
			if a.json {
				return a.print(map[string]any{"terms": docs})
			}
			return a.showPage(text)
		},
	}
}

// sourceDocument is a source as JSON shows it, with the tasks that name it.
type sourceDocument struct {
	Name  string   `json:"name"`
	Title string   `json:"title"`
	For   string   `json:"for"`
	Tasks []string `json:"tasks"`
}

func (a *app) sources() *cobra.Command {
	return &cobra.Command{
		Use:   "sources",
		Short: "Where figures and rules come from, and which tasks rest on them",
		Args:  noArguments,
		RunE: func(*cobra.Command, []string) error {
			lib, err := a.library()
			if err != nil {
				return err
			}
			all, err := lib.Sources()
			if err != nil {
				return err
			}
			users := map[string][]string{}
			for _, t := range tasks.All() {
				for _, key := range t.Sources {
					users[key] = append(users[key], t.Name)
				}
			}
			docs := []sourceDocument{}
			var text lessons.Text
			for _, key := range slices.Sorted(maps.Keys(all)) {
				s := all[key]
				docs = append(docs, sourceDocument{key, s.Title, s.For, append([]string{}, users[key]...)})
				text = append(text, lessons.Block{Text: key + ": " + s.Title + ". For " + s.For + "."})
				if len(users[key]) > 0 {
					text = append(text, lessons.Block{Text: "    " + strings.Join(users[key], ", ")})
				}
			}
			if a.json {
				return a.print(map[string]any{"sources": docs})
			}
			return a.showPage(text)
		},
	}
}

// cautionDocument is a caution as JSON shows it.
type cautionDocument struct {
	Name   string `json:"name"`
	Title  string `json:"title"`
	Text   string `json:"text"`
	Source string `json:"source"`
}

func (a *app) safety() *cobra.Command {
	return &cobra.Command{
		Use:   "safety",
		Short: "All the cautions on one page",
		Args:  noArguments,
		RunE: func(*cobra.Command, []string) error {
			lib, err := a.library()
			if err != nil {
				return err
			}
			all, err := lib.Safety()
			if err != nil {
				return err
			}
			phrases, err := lib.Phrases()
			if err != nil {
				return err
			}
			docs := []cautionDocument{}
			var text lessons.Text
			for _, key := range slices.Sorted(maps.Keys(all)) {
				c := all[key]
				docs = append(docs, cautionDocument{key, c.Title, c.Text, c.Source})
				text = append(text, lessons.Block{Text: c.Title + ". " + c.Text})
			}
			if a.json {
				return a.print(map[string]any{"cautions": docs})
			}
			return a.showPage(append(text, lessons.Block{Style: lessons.Caution, Text: phrases["rehearsal"]}))
		},
	}
}
