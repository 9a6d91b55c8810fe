// Package classroom serves a room of phones on the network of a shop or a school.
package classroom

import (
	"github.com/spf13/cobra"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/class"
)

// options are what class was called with.
type options struct {
	roster string
	file   string
	listen string
	secret string
	way    string
	listed bool
	tls    cli.TLS
	level  int
	job    string // of the bench round that it begins with; empty for none
	pass   int
	hints  bool
}

// Command is class, with the commands below it.
func Command(r *cli.Run) *cobra.Command {
	o := options{way: string(class.Together), level: 1}
	cmd := &cobra.Command{
		Use:   "class BLUEPRINT ... | TASK ... | --job JOB",
		Short: "A room of phones on the shop network: each their own numbers, one instructor",
		Long: `Serves a room to phones in the same network: no internet, no accounts. The first line that
it prints is the address for the phones, the second the instructor's private link; the wall is a
link there.

Everything that happens is kept in one file beside the blueprint. Stopped, or cut off, the class
goes on with the same command, with the same code and links. set mark reads the file.

The first blueprint begins. The instructor's page offers the others, such as five questions for
the end of the lesson.

With --job it begins at the bench: all rehearse one pass of a job, as dryrun has it, each at a
lathe of their own. The questions come after, if there are any.

--room postgres://USER@HOST/NAME keeps the room in a database of the school instead: it goes on
with the last class of this blueprint there that has not ended. Two computers that do so with the
same --secret serve one room together. A password is better in PGPASSWORD than in the address.`,
		RunE: func(cmd *cobra.Command, args []string) error {
			switch {
			case len(args) == 0 && o.job == "":
				return cli.Usagef("a class needs a blueprint, tasks, or a job to rehearse: give BLUEPRINT, TASK ... or --job JOB")
			case o.job == "" && (cmd.Flags().Changed("pass") || o.hints):
				return cli.Usagef("--pass and --hints are for a bench round: give its job with --job")
			}
			return serve(cmd.Context(), r, args, o)
		},
	}
	f := cmd.Flags()
	f.StringVar(&o.roster, "roster", "", "`FILE` with the people: a CSV with id and name, or the users.csv of OneRoster")
	f.StringVar(&o.file, "room", "", "`FILE`, or postgres://..., that the room is kept in (default: named after the set, ending in .class)")
	f.StringVar(&o.listen, "listen", "", "`HOST:PORT` to serve at (default: this computer's address in the network, port 8460)")
	f.StringVar(&o.secret, "secret", "", "`FILE` with the class secret (default: one in your configuration folder)")
	f.StringVar(&o.way, "way", o.way, "how it is run: together, own-pace or ticket")
	f.BoolVar(&o.listed, "list-names", false, "every phone shows the whole class list to tap a name; else everyone types theirs")
	o.tls.AddTo(f, "")
	f.StringVar(&o.job, "job", "", "begin with a bench round: `JOB` is one that ships (dryrun jobs lists them) or a file")
	f.IntVar(&o.pass, "pass", 1, "of the job's card, that all rehearse; 0 is the set-up and the first pass")
	f.BoolVar(&o.hints, "hints", false, "hints may be taken in the bench round")
	f.IntVar(&o.level, "level", o.level, "of tasks that are named: 1, 2 or 3")
	cmd.AddCommand(afterCommands(r)...)
	return cmd
}
