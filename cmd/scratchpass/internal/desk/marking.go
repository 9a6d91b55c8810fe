package desk

import (
	"context"
	"fmt"
	"path/filepath"
	"strings"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/quiz/set"
)

// marking is a set with the answers that came back.
type marking struct {
	*desk
	marker *set.Marker
}

// openMarking opens a set with the answers in these files.
func openMarking(r *cli.Run, blueprint string, class *classFlags, paths []string) (*marking, error) {
	if len(paths) == 0 {
		return nil, cli.Usagef("which answers? Give --answers FILE: a CSV, or what quiz --out wrote; more than once for more files")
	}
	d, err := openDesk(r, blueprint, class, findAgain)
	if err != nil {
		return nil, err
	}
	answers, err := readAnswers(paths, class.forms != 0)
	if err != nil {
		return nil, err
	}
	m, err := set.NewMarker(d.maker, d.class, answers)
	if err != nil {
		return nil, cli.UsageError(err)
	}
	for _, row := range m.Names {
		fmt.Fprintln(r.Err, d.say("set-names", "row", row))
	}
	return &marking{d, m}, nil
}

// readAnswers reads files of answers. With lettered forms the name of a file tells who it
// is from.
func readAnswers(paths []string, forms bool) ([]set.Given, error) {
	var answers []set.Given
	stems := map[string]string{}
	for _, file := range paths {
		stem := strings.TrimSuffix(filepath.Base(file), filepath.Ext(file))
		if other, twice := stems[stem]; twice && forms {
			return nil, cli.Usagef("--answers %q and %q: with forms the name of a file tells who it is from; name them ada.jsonl, ben.jsonl", other, file)
		}
		stems[stem] = file
		more, err := set.ReadAnswers(file)
		if err != nil {
			return nil, usageUnlessFile(err)
		}
		answers = append(answers, more...)
	}
	return answers, nil
}

// each marks one apprentice after the other until someone stops it.
func (m *marking) each(ctx context.Context, do func(set.Result) error) error {
	return m.marker.Each(func(r set.Result) error {
		if err := m.stopped(ctx); err != nil {
			return err
		}
		return do(r)
	})
}
