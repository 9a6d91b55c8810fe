package classroom

import (
	"context"
	"encoding/csv"
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"scratchpass/calc"
	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/content"
	"scratchpass/lessons/class"
	"scratchpass/lessons/class/journal"
	"scratchpass/lessons/class/served"
	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/set"
)

// afterFlags are what finds a class again.
type afterFlags struct {
	secret string
	lathe  string
	code   string
	n      int
}

func (f *afterFlags) addTo(cmd *cobra.Command) {
	cmd.Flags().StringVar(&f.secret, "secret", "", "`FILE` with the class secret (default: one in your configuration folder)")
	codeFlag(cmd, &f.code)
	cmd.Flags().StringVar(&f.lathe, "beside", "", "`BLUEPRINT` that the class was begun with, if it names a lathe file")
}

// codeFlag says which of several classes is meant.
func codeFlag(cmd *cobra.Command, code *string) {
	cmd.Flags().StringVar(code, "code", "", "`CODE` of the class (default: of a file, its last class)")
}

// afterCommands are what is done with a class when it is over.
func afterCommands(r *cli.Run) []*cobra.Command {
	var answers, person, keep afterFlags
	a := &cobra.Command{
		Use:   "answers FILE | postgres://...",
		Short: "The answers of a class as a table; those of visitors with --visitors",
		Args:  cobra.ExactArgs(1),
	}
	visitors := a.Flags().Bool("visitors", false, "those who are on no class list")
	a.Flags().IntVar(&answers.n, "set", 1, "which of the sets that were asked: 1 is the first")
	answers.addTo(a)
	a.RunE = func(cmd *cobra.Command, args []string) error {
		return withRoom(cmd.Context(), r, args[0], answers, func(_ context.Context, s *sitting.Session, _ class.Journal, room *class.Room) error {
			if answers.n < 1 || answers.n > len(room.Sets) {
				return cli.Usagef("--set %d: the class has %d", answers.n, len(room.Sets))
			}
			if n := len(room.Sets); n > 1 && !a.Flags().Changed("set") {
				fmt.Fprintln(r.Err, s.Say("class-sets-more", "n", n))
			}
			return csv.NewWriter(r.Out).WriteAll(served.Answers(room, answers.n-1, *visitors))
		})
	}
	p := &cobra.Command{
		Use:   "person FILE|postgres://... NAME",
		Short: "All that a class has of one person: to be given to them; with --json as data",
		Args:  cobra.MinimumNArgs(2), // a name may be two words
		RunE: func(cmd *cobra.Command, args []string) error {
			return withRoom(cmd.Context(), r, args[0], person, func(ctx context.Context, s *sitting.Session, j class.Journal, room *class.Room) error {
				return onePerson(ctx, r, s, j, room, strings.Join(args[1:], " "))
			})
		},
	}
	person.addTo(p)
	k := &cobra.Command{
		Use:   "keep FILE | postgres://...",
		Short: "Put the answers of who asked for it into their records on this computer",
		Args:  cobra.ExactArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			return withRoom(cmd.Context(), r, args[0], keep, func(_ context.Context, s *sitting.Session, _ class.Journal, room *class.Room) error {
				return keepAll(r, s, room)
			})
		},
	}
	keep.addTo(k)
	return []*cobra.Command{a, p, k, forgetCommand(r)}
}

// withRoom opens the class that is meant, to be read.
func withRoom(ctx context.Context, r *cli.Run, where string, f afterFlags, do func(context.Context, *sitting.Session, class.Journal, *class.Room) error) (err error) {
	at := journal.At(where)
	if err := isClass(at); err != nil {
		return err
	}
	s, err := r.OpenUnrecorded(ctx)
	if err != nil {
		return err
	}
	key, err := cli.ClassSecret(r.Err, f.secret, cli.FindAgain, s.Library)
	if err != nil {
		return err
	}
	j, err := at.OpenToRead(ctx)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, j.Close()) }()
	head, err := at.Head(ctx, j, f.code)
	if err != nil {
		return err
	}
	lathe := func(name string) (machine.Lathe, error) {
		if f.lathe == "" {
			return machine.Lathe{}, cli.Usagef("the class has the lathe %s: give --beside BLUEPRINT, which it lies beside", calc.Quoted(name))
		}
		return set.LatheBeside(f.lathe)(name)
	}
	live, err := class.Open(ctx, j, head, head.With(key, class.MakerOf(key, s.Library, s.Tasks, lathe)), time.Now)
	if err != nil {
		return err
	}
	live.See(func(room *class.Room) { err = do(ctx, s, j, room) })
	return err
}

// onePerson prints what a class has of one person.
func onePerson(ctx context.Context, r *cli.Run, s *sitting.Session, j class.Journal, room *class.Room, name string) error {
	p, twice := room.Named(name)
	if twice {
		return cli.Usagef("two people here are called %s: give the id, as it stands on the roster", calc.Quoted(name))
	}
	for _, other := range room.Everyone() {
		if p == nil && (other.Name == name || other.ID == name) {
			p = room.Person(other.ID)
		}
	}
	if p == nil {
		return cli.Usagef("there is nobody %s in this class%s", calc.Quoted(name), nearNames(room, name))
	}
	events, err := j.After(ctx, room.Head.Code, 0)
	if err != nil {
		return err
	}
	events = class.Of(events, room.IDs(p))
	if !r.JSON {
		told, err := personPage(s, room, p, events)
		if err != nil {
			return err
		}
		return r.ShowText(ctx, told)
	}
	return r.PrintJSON(struct {
		ID     string        `json:"id"`
		Name   string        `json:"name"`
		Class  string        `json:"class"`
		Began  time.Time     `json:"began"`
		Events []class.Event `json:"events"`
	}{p.ID, p.Name, room.Head.Title, room.Head.Began, events})
}

// nearNames says who may be meant by a name that is nobody's, for the end of an error.
func nearNames(room *class.Room, name string) string {
	var all, part []string
	for _, p := range room.People() {
		all = append(all, p.Name)
		for _, word := range strings.Fields(strings.ToLower(name)) {
			if len(word) > 1 && strings.Contains(strings.ToLower(p.Name), word) && !slices.Contains(part, p.Name) {
				part = append(part, p.Name)
			}
		}
	}
	if near := room.Near(name).Person; near != nil {
		part = []string{near.Name}
	}
	if len(part) > 0 && len(part) <= mostNear {
		return "; did you mean " + strings.Join(part, ", ") + "?"
	}
	return content.DidYouMean(name, all)
}

// mostNear is how many people are named who may be meant.
const mostNear = 4

// keepAll puts answers into the records of who asked for it. To do so twice keeps each once.
func keepAll(r *cli.Run, s *sitting.Session, room *class.Room) error {
	if r.RecordFile == cli.NoRecord {
		return cli.Usagef("--record none keeps nothing")
	}
	_, path, err := r.LearnersRecord()
	if err != nil {
		return err
	}
	any := false
	for _, p := range room.People() {
		if !p.Keeps {
			continue
		}
		any = true
		answers, left := room.ForRecord(p, s.Library.Version)
		if err := keepOne(path, p.Name, s.System, answers); err != nil {
			return fmt.Errorf("%s: %w", p.Name, err)
		}
		fmt.Fprintln(r.Out, s.Say("class-kept-record", "name", p.Name, "n", len(answers)))
		if left != (class.LeftOut{}) {
			fmt.Fprintln(r.Out, s.Say("class-kept-left", "late", left.Late, "hangs", left.Hangs, "unread", left.Unread))
		}
		fmt.Fprintln(r.Out, s.Say("class-kept-see", "command", "scratchpass progress "+recordOf(r, p.Name)))
	}
	if !any {
		fmt.Fprintln(r.Out, s.Say("class-kept-nobody"))
	}
	return nil
}

// recordOf are the options that lead to someone's record, as they were given here.
func recordOf(r *cli.Run, learner string) string {
	options := "--learner " + calc.Quoted(learner)
	if r.RecordFile != "" {
		options += " --record " + calc.Quoted(r.RecordFile)
	}
	return options
}

func keepOne(path, learner string, system machine.System, answers []record.Answer) (err error) {
	rec, err := record.Open(path, learner)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, rec.Close()) }()
	book, err := schedule.NewBook(rec, system)
	if err != nil {
		return err
	}
	for _, a := range answers {
		if err := book.Keep(a); err != nil {
			return err
		}
	}
	return nil
}
