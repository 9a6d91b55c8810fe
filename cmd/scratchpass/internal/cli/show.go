package cli

import (
	"context"
	"encoding/json"
	"fmt"
	"strings"

	"scratchpass/lessons"
	"scratchpass/lessons/screen"
)

// PrintJSON prints one JSON object.
func (r *Run) PrintJSON(document any) error {
	e := json.NewEncoder(r.Out)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(document)
}

// Pictures reports whether drawings are of use where the output goes.
func (r *Run) Pictures() bool { return IsTerminal(r.Out) && !r.Plain && !dumb() }

// ShowPage shows a page that no one is asked about: with its pictures for a person at
// a terminal, else the plain way.
func (r *Run) ShowPage(ctx context.Context, t lessons.Text) error {
	if r.Pictures() {
		_, err := fmt.Fprintln(r.Out, strings.Join(screen.Lay(t, r.Width()-1), "\n"))
		return err
	}
	return r.ShowText(ctx, t)
}

// ShowText prints a text the plain way.
func (r *Run) ShowText(ctx context.Context, t lessons.Text) error {
	return lessons.NewPlain(ctx, r.In, r.Out, r.Width(), false).Show(t)
}
