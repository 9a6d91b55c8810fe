package desk

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"maps"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"scratchpass/calc"
	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/class/journal"
	"scratchpass/quiz/set"
)

// marking is a set with the answers that came back.
type marking struct {
	*desk
	marker *set.Marker

	decisions string // the file they come from; empty where there are none
}

// openMarking opens a set with the answers in these files.
func openMarking(ctx context.Context, r *cli.Run, blueprint string, class *classFlags, given answersFlag) (*marking, error) {
	if len(given.paths) == 0 {
		return nil, cli.Usagef("which answers? Give --answers FILE: a CSV, or what quiz --out wrote; more than once for more files")
	}
	d, err := openDesk(ctx, r, blueprint, class, cli.FindAgain)
	if err != nil {
		return nil, err
	}
	answers, never, err := d.readAnswers(ctx, given, class.forms != 0)
	if err != nil {
		return nil, err
	}
	var m *set.Marker
	if err := d.unlessStopped(ctx, func() (err error) {
		if m, err = set.NewMarker(ctx, d.maker, d.class, answers); err != nil {
			return cli.UsageError(err)
		}
		return nil
	}); err != nil {
		return nil, err
	}
	m.NotAsked = never
	if line := d.notAsked(never); line != "" {
		fmt.Fprintln(r.Err, line)
	}
	for _, row := range m.Names {
		fmt.Fprintln(r.Err, d.say("set-names", "row", row))
	}
	return &marking{desk: d, marker: m}, nil
}

// decisionList is the file of decisions in a folder of marks, waitingList that of the answers
// to decide about.
const (
	decisionList = "decisions.csv"
	waitingList  = "waiting.csv"
)

// decide applies the decisions of a file; where none is named, those that lie beside the marks.
// A run of mark never writes that file.
func (m *marking) decide(ctx context.Context, file decisionsFlag, dir string) error {
	path := cmp.Or(string(file), filepath.Join(dir, decisionList))
	var all []set.Decision
	err := m.unlessStopped(ctx, func() (err error) { all, err = set.ReadDecisions(path); return err })
	if file == "" && errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return usageUnlessFile(err)
	}
	if err := m.marker.Decide(all); err != nil {
		return cli.UsageError(err)
	}
	m.decisions = path
	return nil
}

// tellDecisions says how many decisions were applied, and which needed none.
func (m *marking) tellDecisions(to io.Writer) {
	if m.decisions == "" {
		return
	}
	fmt.Fprintln(to, m.say("set-decided", "n", m.marker.Applied, "where", m.decisions))
	for _, u := range m.marker.NeedlessOnes {
		says := "set-decided-needless"
		if !u.Applied {
			says = "set-decided-nobody"
		}
		fmt.Fprintln(to, m.say(says, "where", u.Where(), "item", u.Item, "name", u.Name, "verdict", u.Verdict, "marked", calc.Shortest(u.Marked, 2), "points", calc.Shortest(u.Points, 2)))
	}
	if more := m.marker.Needless - len(m.marker.NeedlessOnes); more > 0 {
		fmt.Fprintln(to, m.say("set-decided-more", "n", more))
	}
}

// readAnswers reads files of answers. With lettered forms the name of a file tells who it
// is from.
//
// never are the places of questions that nobody was asked in any of the files: on paper all are.
func (d *desk) readAnswers(ctx context.Context, given answersFlag, forms bool) (answers []set.Given, never map[int]bool, err error) {
	stems := map[string]string{}
	for i, path := range given.paths {
		file := journal.At(path).String() // as it may be printed
		stem := strings.TrimSuffix(filepath.Base(file), filepath.Ext(file))
		if other, twice := stems[stem]; twice && forms {
			return nil, nil, cli.Usagef("--answers %q and %q: with forms the name of a file tells who it is from; name them ada.jsonl, ben.jsonl", other, file)
		}
		stems[stem] = file
		var more []set.Given
		var here map[int]bool
		var notes []set.Note
		err := d.unlessStopped(ctx, func() (err error) {
			more, here, err = d.answersIn(path, given.code, func(n set.Note) { notes = append(notes, n) })
			return err
		})
		if err != nil {
			return nil, nil, usageUnlessFile(err)
		}
		if i == 0 {
			never = here
		}
		maps.DeleteFunc(never, func(place int, _ bool) bool { return !here[place] })
		for _, n := range notes {
			d.note(n)
		}
		if answers = append(answers, more...); len(answers) > set.MostAnswers {
			return nil, nil, cli.Usagef("%d answers and more in --answers up to %q: give %d at most, and mark the rest apart", len(answers), file, set.MostAnswers)
		}
	}
	return answers, never, nil
}

// notAsked says which questions are left out of the marks; empty where none is.
func (d *desk) notAsked(never map[int]bool) string {
	var numbers []string
	points := d.maker.Blueprint.Points()
	for _, place := range slices.Sorted(maps.Keys(never)) {
		numbers = append(numbers, strconv.Itoa(place+1))
		points -= d.maker.Worth(place)
	}
	if numbers == nil {
		return ""
	}
	return d.say("set-not-asked", "n", strings.Join(numbers, ", "), "of", calc.Shortest(points, 2))
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

// tellTwice says which sheets came back empty, and which answers came a second time: those that say the same, and those that
// differ and are left to the instructor.
func (m *marking) tellTwice(to io.Writer) {
	if len(m.marker.Empty) > 0 {
		fmt.Fprintln(to, m.say("set-empty", "names", strings.Join(m.marker.Empty, ", ")))
	}
	if m.marker.Repeats > 0 {
		var in []string
		for _, files := range m.marker.RepeatedIn {
			where := files[1]
			if files[0] != files[1] {
				where = m.say("set-repeats-in", "first", files[0], "second", files[1])
			}
			in = append(in, where)
		}
		fmt.Fprintln(to, m.say("set-repeats", "n", m.marker.Repeats, "files", strings.Join(in, ", ")))
	}
	for _, q := range m.marker.Differing {
		var answers []string
		for _, a := range q.Answers {
			answers = append(answers, a.String())
		}
		fmt.Fprintln(to, m.say("set-differ", "name", q.Name, "n", q.Number, "answers", strings.Join(answers, ", ")))
	}
	if more := m.marker.Differ - len(m.marker.Differing); more > 0 {
		fmt.Fprintln(to, m.say("set-differ-more", "n", more))
	}
}
