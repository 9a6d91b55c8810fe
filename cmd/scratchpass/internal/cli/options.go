package cli

import (
	"math/rand/v2"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"scratchpass/content"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/tasks"
)

// Options are those that mean the same for every command.
type Options struct {
	Units      string // in or mm; empty for those of the lathe
	LatheFile  string // instead of the learner's own lathe
	ContentDir string // the instructor's own words
	RecordFile string // where answers are kept, or NoRecord; empty for the usual place
	Learner    string
	Plain      bool
	JSON       bool

	seed   uint64
	seeded bool // by --seed
	asOf   string
}

// AddTo adds the options to the command above all others, and has them checked before
// any command runs.
func (o *Options) AddTo(root *cobra.Command) {
	f := root.PersistentFlags()
	f.Uint64Var(&o.seed, "seed", 0, "draw the same problems again")
	f.StringVar(&o.Units, "units", "", "in or mm (default: those of your lathe)")
	f.StringVar(&o.LatheFile, "lathe", "", "`FILE` that describes a lathe, instead of your own")
	f.StringVar(&o.ContentDir, "content", "", "`DIR` with your own questions, lessons and wording")
	f.StringVar(&o.RecordFile, "record", "", "`FILE` to keep answers in, a postgres:// address, or none (default: in your data folder)")
	f.StringVar(&o.Learner, "learner", "me", "`NAME` of the learner, on a shared machine")
	f.StringVar(&o.asOf, "as-of", "", "practise as if it were this `DAY`, such as 2026-11-27, on a copy of your record: to try what comes back when")
	f.BoolVar(&o.Plain, "plain", false, "text from top to bottom, for screen readers and pipes")
	f.BoolVar(&o.JSON, "json", false, "print one JSON object")
	root.PersistentPreRunE = func(cmd *cobra.Command, _ []string) error {
		o.seeded = cmd.Flags().Changed("seed")
		return o.check()
	}
}

func (o *Options) check() error {
	if _, err := time.Parse(time.DateOnly, o.asOf); o.asOf != "" && err != nil {
		return Usagef("--as-of %q: give a day such as 2026-11-27", o.asOf)
	}
	if o.Units == "" {
		return nil
	}
	if _, err := machine.ParseSystem(o.Units); err != nil {
		return UsageError(err)
	}
	return nil
}

// Library returns the words, with the instructor's own in front where given.
func (o *Options) Library() (*content.Library, error) { return LibraryIn(o.ContentDir) }

// ContentDirIn is the folder that --content names among words that are not read as options
// yet; empty where none is named.
func ContentDirIn(args []string) string {
	for i, arg := range args {
		if dir, ok := strings.CutPrefix(arg, "--content="); ok {
			return dir
		}
		if arg == "--content" && i+1 < len(args) {
			return args[i+1]
		}
	}
	return ""
}

// Tasks returns the tasks that can be asked: those that ship, and the instructor's own
// questions.
func (o *Options) Tasks() (tasks.Set, error) {
	lib, err := o.Library()
	if err != nil {
		return tasks.Set{}, err
	}
	return tasks.Of(lib)
}

// LibraryIn is Library for a folder, as --content names it; empty for the words that ship
// alone.
func LibraryIn(dir string) (*content.Library, error) {
	if dir == "" {
		return content.Shipped(), nil
	}
	lib, err := content.With(dir)
	if err != nil {
		return nil, Usagef("--content %q: %w", dir, err)
	}
	return lib, nil
}

// Now is the clock: the real one, or the real time of day on another day.
func (o *Options) Now() time.Time {
	t := time.Now()
	day, err := time.Parse(time.DateOnly, o.asOf)
	if err != nil {
		return t
	}
	return time.Date(day.Year(), day.Month(), day.Day(), t.Hour(), t.Minute(), t.Second(), t.Nanosecond(), t.Location())
}

// IsTrial reports whether it is practised as of another day, on a copy of the record.
func (o *Options) IsTrial() bool { return o.asOf != "" }

// NotOnTrial is an error where it is practised as of another day and an option, such as
// --out, would keep something of it.
func (o *Options) NotOnTrial(option, value string) error {
	if o.IsTrial() && value != "" {
		return Usagef("--as-of only tries things, and nothing of it is kept: leave out %s", option)
	}
	return nil
}

// Seeds returns the seeds of one sitting after the other: the same for the same --seed,
// else new each time.
func (o *Options) Seeds() func() sitting.Seeds {
	if !o.seeded {
		return func() sitting.Seeds { return sitting.Seeds{Seed: rand.Uint64(), Stream: rand.Uint64()} }
	}
	stream := uint64(0)
	return func() sitting.Seeds {
		stream++
		return sitting.Seeds{Seed: o.seed, Stream: stream - 1, Short: true}
	}
}
