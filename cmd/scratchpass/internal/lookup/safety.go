package lookup

import (
	"maps"
	"slices"

	"github.com/spf13/cobra"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/content"
	"scratchpass/lessons/page"
)

// cautionsDocument is the list of cautions as JSON shows it.
type cautionsDocument struct {
	Cautions []cautionDocument `json:"cautions"`
}

// cautionDocument is a caution as JSON shows it.
type cautionDocument struct {
	Name   string `json:"name"`
	Title  string `json:"title"`
	Text   string `json:"text"`
	Source string `json:"source"`
}

func safetyCommand(r *cli.Run) *cobra.Command {
	keys := false
	cmd := &cobra.Command{
		Use:   "safety",
		Short: "All the cautions on one page",
		Args:  cli.NoArguments,
		RunE: func(cmd *cobra.Command, _ []string) error {
			lib, err := r.Library()
			if err != nil {
				return err
			}
			docs, shown, err := cautions(lib, keys)
			if err != nil {
				return err
			}
			if r.JSON {
				return r.PrintJSON(cautionsDocument{docs})
			}
			return r.ShowPage(cmd.Context(), shown)
		},
	}
	cmd.Flags().BoolVar(&keys, "keys", false, "with the key of each, for questions of your own")
	return cmd
}

// cautions are all the cautions of a library, and the page of them; with the key of each where
// that is asked for.
func cautions(lib *content.Library, keys bool) ([]cautionDocument, page.Page, error) {
	all, err := lib.Safety()
	if err != nil {
		return nil, nil, err
	}
	phrases, err := lib.Phrases()
	if err != nil {
		return nil, nil, err
	}
	docs := []cautionDocument{}
	var shown page.Page
	for _, key := range slices.Sorted(maps.Keys(all)) {
		c := all[key]
		docs = append(docs, cautionDocument{key, c.Title, c.Text, c.Source})
		text := c.Title + ". " + c.Text
		if keys {
			text = key + ": " + text
		}
		shown = append(shown, page.Paragraph{Text: text})
	}
	return docs, append(shown, page.Caution{Text: phrases["rehearsal"]}), nil
}
