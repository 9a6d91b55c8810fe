package lookup

import (
	"maps"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/content"
	"scratchpass/lessons/page"
	"scratchpass/quiz/drawing"
)

// termsDocument is the glossary as JSON shows it.
type termsDocument struct {
	Terms []termDocument `json:"terms"`
}

// termDocument is an entry of the glossary as JSON shows it.
type termDocument struct {
	Term  string   `json:"term"`
	Means string   `json:"means"`
	Also  []string `json:"also"`
	See   []string `json:"see"`
}

func termsCommand(r *cli.Run) *cobra.Command {
	return &cobra.Command{
		Use:   "terms [WORD ...]",
		Short: "What a word of the trade means; without a word, all of them",
		RunE: func(cmd *cobra.Command, args []string) error {
			lib, err := r.Library()
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
				return cli.Usagef("no term has %q in it%s (terms lists all)", word, content.DidYouMean(word, names))
			}
			docs := termDocuments(all, found)
			if r.JSON {
				return r.PrintJSON(termsDocument{docs})
			}
			words, err := lib.Drawings()
			if err != nil {
				return err
			}
			return r.ShowPage(cmd.Context(), append(termsPage(docs), partPage(docs, words)...))
		},
	}
}

func termDocuments(all map[string]content.Term, names []string) []termDocument {
	docs := []termDocument{}
	for _, name := range names {
		t := all[name]
		docs = append(docs, termDocument{name, t.Means, append([]string{}, t.Also...), append([]string{}, t.See...)})
	}
	return docs
}

// partPage shows where on a lathe a part is, if one term is that of a part.
func partPage(docs []termDocument, words map[string]content.DrawingWords) page.Page {
	if len(docs) != 1 {
		return nil
	}
	d, ok := drawing.LathePart(docs[0].Term, words)
	if !ok {
		return nil
	}
	return page.Page{page.Figure{Pictures: []drawing.Drawing{d}, Twin: d.Twin}}
}

func termsPage(docs []termDocument) page.Page {
	var shown page.Page
	for _, d := range docs {
		line := d.Term + ": " + d.Means
		if len(d.Also) > 0 {
			line += " Also: " + strings.Join(d.Also, ", ") + "."
		}
		if len(d.See) > 0 {
			line += " See: " + strings.Join(d.See, ", ") + "."
		}
		shown = append(shown, page.Paragraph{Text: line})
	}
	return shown
}
