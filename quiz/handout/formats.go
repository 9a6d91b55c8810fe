package handout

import (
	"io"
	"strings"

	"scratchpass/calc"
)

// Format is one way to write sheets and keys.
type Format struct {
	Name   string
	Ending string // of its files
	New    New
}

// Formats lists the formats.
func Formats() []Format {
	return []Format{
		{"pdf", ".pdf", PDF},
		{"html", ".html", HTML},
		{"text", ".txt", Text},
	}
}

// FormatNamed returns the format of a name.
func FormatNamed(name string) (Format, error) {
	var names []string
	for _, f := range Formats() {
		if f.Name == name {
			return f, nil
		}
		names = append(names, f.Name)
	}
	return Format{}, &calc.InputError{What: "format", Got: calc.Quoted(name), Want: strings.Join(names, ", ")}
}

// ReportPDF writes a report as a PDF of its own.
func ReportPDF(w io.Writer, r Report, o Options) error { return alone(PDF, w, r, o) }

// ReportHTML writes a report as an HTML document of its own.
func ReportHTML(w io.Writer, r Report, o Options) error { return alone(HTML, w, r, o) }

func alone(format New, w io.Writer, r Report, o Options) error {
	doc, err := format(w, o)
	if err != nil {
		return err
	}
	if err := doc.Report(r); err != nil {
		return err
	}
	return doc.Close()
}
