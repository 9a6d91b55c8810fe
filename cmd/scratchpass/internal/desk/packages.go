package desk

import (
	"context"
	"fmt"
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
		return nil, cli.Usagef("a package has one test for each apprentice; %d are too many: give --forms 10, and each learner gets one of ten by chance", len(d.class))
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
	if _, ok := d.maker.Blueprint.Seconds(); !ok && d.maker.Blueprint.Time != "" {
		fmt.Fprintln(d.run.Err, d.say("set-qti-time", "time", d.maker.Blueprint.Time))
	}
	for _, f := range packageFormats {
		if !slices.Contains(formats, f.name) {
			continue
		}
		pack, err := d.printer.Package(d.class, forms, f.version, choiceOnly)
		if err != nil {
			return nil, err
		}
		if err := out.WritePrivate(f.file, func(w io.Writer) error { return qti.Write(w, pack) }); err != nil {
			return nil, err
		}
	}
	return same, nil
}
