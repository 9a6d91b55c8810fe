package cli

import (
	"context"
	"encoding/json"
	"fmt"
	"strings"

	"scratchpass/lessons/face/plain"
	"scratchpass/lessons/face/screen"
	"scratchpass/lessons/page"
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
func (r *Run) ShowPage(ctx context.Context, p page.Page) error {
	if r.Pictures() {
		_, err := fmt.Fprintln(r.Out, strings.Join(screen.Lay(p, r.Width()-1), "\n"))
		return err
	}
	return r.ShowText(ctx, p)
}

// ShowText prints a page the plain way.
func (r *Run) ShowText(ctx context.Context, p page.Page) error {
	return plain.New(ctx, r.In, r.Out, plain.Options{Width: r.Width(), Columns: !r.Plain}).Show(p)
}
