package desk

import (
	"slices"
	"strings"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/quiz/handout"
	"scratchpass/quiz/qti"
)

// The formats besides those of sheets on paper.
const (
	formatCodes  = "codes"
	formatFields = "fields"
	formatQTI3   = "qti3"
	formatQTI2   = "qti2"
	formatCC     = "cc"
	formatXLSX   = "xlsx"
	formatRoster = "oneroster"
)

// packageFormat is a format for a learning system.
type packageFormat struct {
	name, file string
	version    qti.Version
}

var packageFormats = []packageFormat{
	{formatQTI3, "qti3.zip", qti.V30},
	{formatQTI2, "qti2.zip", qti.V21},
	{formatCC, "cartridge.imscc", qti.V12},
}

// isPackage reports whether a format is for a learning system.
func isPackage(format string) bool {
	return slices.ContainsFunc(packageFormats, func(p packageFormat) bool { return p.name == format })
}

// readFormats reads "pdf,html".
func readFormats(text string, more ...string) ([]string, error) {
	var known []string
	for _, f := range handout.Formats() {
		known = append(known, f.Name)
	}
	known = append(known, more...)
	var formats []string
	for _, name := range strings.Split(text, ",") {
		name = strings.TrimSpace(name)
		if !slices.Contains(known, name) {
			return nil, cli.Usagef("--format %q: give %s, with commas between them", name, strings.Join(known, ", "))
		}
		if !slices.Contains(formats, name) {
			formats = append(formats, name)
		}
	}
	return formats, nil
}
