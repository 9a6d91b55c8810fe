package classroom

import (
	"context"
	"crypto/rand"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"time"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/class"
	"scratchpass/lessons/class/journal"
	"scratchpass/lessons/class/served"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/files"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/set"
)

// questions are what a class is asked, and where its room is kept.
type questions struct {
	blueprint string      // empty where it rehearses alone
	round     class.Event // a bench round that it begins with; without a text where there is none
	title     string
	room      journal.At       // empty where nobody has named it: see ofToday
	tasks     []string         // that were named instead of a blueprint
	next      []served.Further // that may be asked after it
	secret    string           // its sum
	lathe     func(string) (machine.Lathe, error)
}

// begun is what a class begins with: questions, a bench round, or both.
func begun(r *cli.Run, s *sitting.Session, args []string, o options, way class.Way) (q questions, err error) {
	if len(args) > 0 {
		q, err = questionsOf(args, o, way, s, r.Now())
	} else {
		q = questions{room: journal.At(o.file), lathe: set.LatheBeside("")}
	}
	if err != nil || o.job == "" {
		return q, err
	}
	var title string
	if q.round, title, err = roundOf(r, s, o); err != nil {
		return q, err
	}
	if len(args) == 0 {
		q.title = title
		if q.room == "" {
			q.room = journal.At(strings.TrimSuffix(o.job, filepath.Ext(o.job)) + ".class")
		}
	}
	return q, nil
}

// questionsOf reads blueprints, or makes one of tasks.
func questionsOf(args []string, o options, way class.Way, s *sitting.Session, now time.Time) (questions, error) {
	q := questions{room: journal.At(o.file), lathe: set.LatheBeside(args[0])}
	name := args[0]
	var further []string
	if isBlueprint(name) {
		further = args[1:]
		text, err := files.Read(name, files.MostWords)
		if err != nil {
			return q, err
		}
		q.blueprint = string(text)
	} else {
		q.tasks, name = args, strings.ReplaceAll(args[0], "/", "-")
		q.blueprint = q.ofTasks(nameOf(now, 1), o.level, s)
	}
	read, err := set.ParseBlueprint(name, []byte(q.blueprint), s.Tasks, q.lathe)
	if err != nil {
		return q, cli.UsageError(err)
	}
	q.title = read.Title
	if q.room == "" && q.tasks == nil {
		q.room = journal.At(filepath.Join(filepath.Dir(name), read.Set+".class"))
	}
	return q, q.further(further, read, way, s)
}

// nameOf is what the n-th set of tasks of a day is called.
func nameOf(day time.Time, n int) string {
	name := "class-" + day.Format(time.DateOnly)
	if n > 1 {
		name += "-" + strconv.Itoa(n)
	}
	return name
}

// ofTasks is a blueprint of tasks and stages, a question each. Its first line is its name.
func (q questions) ofTasks(name string, level int, s *sitting.Session) string {
	return set.OfTasks(name, s.Say("class-title"), s.System, q.tasks, level)
}

// asks reports whether a set asks these questions. What was made of tasks may have the name of
// another day.
func (q questions) asks(blueprint string) bool {
	if q.tasks == nil {
		return blueprint == q.blueprint
	}
	_, these, _ := strings.Cut(q.blueprint, "\n")
	_, those, _ := strings.Cut(blueprint, "\n")
	return these == those
}

// last is the head of the room that is gone on with; class.ErrNoRoom where there is none.
func (q questions) last(ctx context.Context, j class.Journal) (class.Head, error) {
	if d, ok := j.(*journal.Database); ok {
		if q.blueprint == "" {
			return d.GoesOn(ctx, class.Benched, q.round.Text)
		}
		return d.GoesOn(ctx, class.Asked, q.blueprint)
	}
	heads, err := j.Heads(ctx)
	if err == nil && len(heads) == 0 {
		err = class.ErrNoRoom
	}
	if err != nil {
		return class.Head{}, err
	}
	return heads[0], nil
}

// begin opens the room that is gone on with, or begins one.
func (q questions) begin(ctx context.Context, r *cli.Run, s *sitting.Session, j class.Journal, hall *class.Hall, o options, way class.Way) (*class.Live, error) {
	last, gone := q.last(ctx, j)
	if gone != nil && !errors.Is(gone, class.ErrNoRoom) {
		return nil, gone
	}
	head := class.Head{Code: class.NewCode(), Title: q.title, Key: rand.Text(), Listed: o.listed, Secret: q.secret}
	var err error
	if o.roster != "" {
		if head.Roster, err = set.ReadRoster(o.roster, func(n set.Note) {
			fmt.Fprintln(r.Err, s.Say(n.Says, "where", n.Where(), "text", n.Text))
		}); err != nil {
			return nil, cli.UsageError(err)
		}
	}
	head.Sheets = len(head.Roster) > 0 && q.tasks == nil
	if gone == nil {
		live, err := q.goOn(ctx, hall, last)
		if err == nil {
			tellGoesOn(r, s, live, o, head)
		}
		return live, err
	}
	live, err := hall.Begin(ctx, head, q.blueprint, way)
	for errors.Is(err, class.ErrTaken) {
		head.Code = class.NewCode()
		live, err = hall.Begin(ctx, head, q.blueprint, way)
	}
	return live, err
}

// goOn opens the room that is in the file.
func (q questions) goOn(ctx context.Context, hall *class.Hall, head class.Head) (*class.Live, error) {
	if head.Draws != problem.Draws {
		return nil, fmt.Errorf("%s was begun by a program that draws other numbers (%d, this one %d): end the class with that one, or give another file with --room", q.room, head.Draws, problem.Draws)
	}
	live, err := hall.Room(ctx, head.Code)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", q.room, err)
	}
	same, begun, benched := false, false, false
	live.See(func(room *class.Room) {
		benched = len(room.Rounds) > 0
		if begun = len(room.Sets) > 0; begun {
			same = q.asks(room.Sets[0].Text)
		}
	})
	switch {
	case q.blueprint == "" && (benched || !begun): // questions may have come after
		return live, nil
	case q.blueprint == "":
		return nil, fmt.Errorf("%s holds a class with questions: give its blueprint, or another file with --room", q.room)
	case !begun: // it was cut off before its first set was kept
		return live, live.Ask(ctx, q.blueprint, class.Together)
	case !same:
		return nil, fmt.Errorf("%s holds a class with another blueprint than this one now is: give another file with --room, or change the blueprint back", q.room)
	}
	return live, nil
}

// tellGoesOn says that a class goes on, so that who meant a new one sees it; and that its list of
// people is that of its beginning, where the one that is given now differs.
func tellGoesOn(r *cli.Run, s *sitting.Session, live *class.Live, o options, now class.Head) {
	live.See(func(room *class.Room) {
		fmt.Fprintln(r.Err, s.Say("class-goes-on", "time", room.Head.Began.In(time.Local).Format("2006-01-02 15:04"), "n", len(room.Came())))
		if room.Ended {
			fmt.Fprintln(r.Err, s.Say("class-goes-on-over"))
		}
		same := func(a, b class.Apprentice) bool { return a.ID == b.ID && a.Name == b.Name }
		if o.roster != "" && !slices.EqualFunc(room.Head.Roster, now.Roster, same) {
			fmt.Fprintln(r.Err, s.Say("class-list-then"))
		}
	})
}

// ofToday finds where a class of tasks is kept, for whose file nobody has chosen a name. A class
// of today with other questions stays what it is. One with the same goes on, as after a power
// cut; but whoever sits there is asked, for it may be that of another group. One that is over
// goes on only if they say so.
func (q questions) ofToday(ctx context.Context, r *cli.Run, s *sitting.Session, makes class.Maker, level int) (questions, error) {
	var last earlier
	n, passed := 1, ""
	for ; ; n++ {
		file := nameOf(r.Now(), n) + ".class"
		q.room = journal.At(file)
		if _, err := os.Lstat(file); errors.Is(err, fs.ErrNotExist) {
			break
		}
		if !journal.Is(file) { // something else, or what was cut off before it had anything in it
			continue
		}
		passed = file
		if e, err := look(ctx, file, makes); err == nil && q.asks(e.asked) { // one of another program, or damaged, is left alone
			last = e
		}
	}
	if last.file != "" {
		on, err := last.goesOn(r, s)
		if err != nil {
			return q, err
		}
		if on {
			q.room, q.blueprint = journal.At(last.file), last.asked
			return q, nil
		}
	}
	if q.blueprint = q.ofTasks(nameOf(r.Now(), n), level, s); passed != "" {
		fmt.Fprintln(r.Err, s.Say("class-beside", "file", q.room, "other", passed))
	}
	return q, nil
}
