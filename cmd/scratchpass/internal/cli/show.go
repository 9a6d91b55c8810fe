package cli

import (
	"context"
	"encoding/json"
	"fmt"
	"io"
	"strings"
	"unicode/utf16"

	"scratchpass/content"
	"scratchpass/lessons/face/plain"
	"scratchpass/lessons/face/screen"
	"scratchpass/lessons/page"
)

// PrintJSON prints one JSON object. What a terminal would obey is escaped, and so the same
// text to who reads it.
func (r *Run) PrintJSON(document any) error {
	var text strings.Builder
	e := json.NewEncoder(&text)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(document); err != nil {
		return err
	}
	_, err := io.WriteString(r.Out, escaped(text.String()))
	return err
}

// escaped writes the characters of JSON that no one would see as JSON may write them.
func escaped(text string) string {
	hidden := func(c rune) bool { return c != '\n' && content.Printable(string(c)) != string(c) }
	if !strings.ContainsFunc(text, hidden) {
		return text
	}
	var out strings.Builder
	for _, c := range text {
		if !hidden(c) {
			out.WriteRune(c)
			continue
		}
		for _, unit := range utf16.Encode([]rune{c}) {
			fmt.Fprintf(&out, "\\u%04x", unit)
		}
	}
	return out.String()
}

// Pictures reports whether drawings are of use where the output goes.
func (r *Run) Pictures() bool { return IsTerminal(r.Out) && !r.Plain && !dumb() }

// ShowPage shows a page that no one is asked about: with its pictures for a person at
// a terminal, else the plain way.
func (r *Run) ShowPage(ctx context.Context, p page.Page) error {
	if r.Pictures() {
		_, err := fmt.Fprintln(r.Out, strings.Join(screen.Lay(p, r.Width()-1, r.Look()), "\n"))
		return err
	}
	return r.ShowText(ctx, p)
}

// ShowText prints a page the plain way.
func (r *Run) ShowText(ctx context.Context, p page.Page) error {
	return plain.New(ctx, r.In, r.Out, plain.Options{Width: r.Width(), Columns: !r.Plain}).Show(p)
}
