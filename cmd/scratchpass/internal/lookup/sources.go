package lookup

import (
	"maps"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/content"
	"scratchpass/lessons/page"
	"scratchpass/quiz/tasks"
)

// sourcesDocument is the list of sources as JSON shows it.
type sourcesDocument struct {
	Sources []sourceDocument `json:"sources"`
}

// sourceDocument is a source as JSON shows it, with the tasks that name it.
type sourceDocument struct {
	Name  string   `json:"name"`
	Title string   `json:"title"`
	For   string   `json:"for"`
	Tasks []string `json:"tasks"`
}

func sourcesCommand(r *cli.Run) *cobra.Command {
	return &cobra.Command{
		Use:   "sources",
		Short: "Where figures and rules come from, and which tasks rest on them",
		Args:  cli.NoArguments,
		RunE: func(cmd *cobra.Command, _ []string) error {
			lib, err := r.Library()
			if err != nil {
				return err
			}
			docs, err := sourceDocuments(lib)
			if err != nil {
				return err
			}
			if r.JSON {
				return r.PrintJSON(sourcesDocument{docs})
			}
			return r.ShowPage(cmd.Context(), sourcesPage(docs))
		},
	}
}

// sourceDocuments are all the sources of a library, by name.
func sourceDocuments(lib *content.Library) ([]sourceDocument, error) {
	all, err := lib.Sources()
	if err != nil {
		return nil, err
	}
	users := tasksBySource()
	docs := []sourceDocument{}
	for _, key := range slices.Sorted(maps.Keys(all)) {
		docs = append(docs, sourceDocument{key, all[key].Title, all[key].For, append([]string{}, users[key]...)})
	}
	return docs, nil
}

// tasksBySource are the names of the tasks that rest on each source.
func tasksBySource() map[string][]string {
	users := map[string][]string{}
	for _, t := range tasks.All() {
		for _, key := range t.Sources {
			users[key] = append(users[key], t.Name)
		}
	}
	return users
}

func sourcesPage(docs []sourceDocument) page.Page {
	var shown page.Page
	for _, d := range docs {
		shown = append(shown, page.Paragraph{Text: d.Name + ": " + d.Title + ". For " + d.For + "."})
		if len(d.Tasks) > 0 {
			shown = append(shown, page.Paragraph{Text: "    " + strings.Join(d.Tasks, ", ")})
		}
	}
	return shown
}
