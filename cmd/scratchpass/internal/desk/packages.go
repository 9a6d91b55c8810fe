package desk

import (
	"context"
	"io"
	"slices"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/quiz/files"
	"scratchpass/quiz/qti"
	"scratchpass/quiz/set"
)

// mostInPackage is for how many apprentices a package is made: it has one question for
// each of them and each place, all in memory.
const mostInPackage = 50

// writePackages writes everyone's questions into a package for a learning system, and
// returns which questions have one answer for all.
func (d *desk) writePackages(ctx context.Context, out *files.Staged, formats []string, choiceOnly bool) (*set.SameAnswers, error) {
	if len(d.class) > mostInPackage {
		return nil, cli.Usagef("a QTI package has one question for each apprentice and place; %d are too many: give --forms 10, and the learning system draws one of ten", len(d.class))
	}
	var forms [][]set.Item
	same := set.NewSameAnswers()
	err := d.each(ctx, func(_ set.Apprentice, items []set.Item) error {
		same.Add(items)
		forms = append(forms, items)
		return nil
	})
	if err != nil {
		return nil, err
	}
	for _, f := range packageFormats {
		if !slices.Contains(formats, f.name) {
			continue
		}
		if err := out.WritePrivate(f.name+".zip", func(w io.Writer) error { return qti.Write(w, d.printer.Package(forms, f.version, choiceOnly)) }); err != nil {
			return nil, err
		}
	}
	return same, nil
}
