// Package school serves a school: many rooms and learners, on a database that several computers share.
package school

import (
	"fmt"
	"os"

	"github.com/spf13/cobra"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/school"
)

// options are what serve was called with.
type options struct {
	settings string
	database string
	seal     string
	newSeal  string
	listen   string
	metrics  string
	tls      cli.TLS
	earlier  string
	check    bool
}

// Command is serve.
func Command(r *cli.Run, doors Doors) *cobra.Command {
	o := options{listen: "127.0.0.1:8460"}
	cmd := &cobra.Command{
		Use:   "serve",
		Short: "A school: many rooms and learners, with the school's own sign-on, on PostgreSQL",
		Long: `Serves a school: staff and learners sign on with their school account, instructors see their
groups and run rooms, phones come into a room by its code. All that is kept is in a PostgreSQL
database, so that several computers can serve one school behind a proxy.

The first line that it prints is the address that it serves at. lessons/school/README.md tells how
to set it up; --check says what is wrong with what was set up.`,
		Args: cli.NoArguments,
		RunE: func(cmd *cobra.Command, _ []string) error {
			if o.database == "" { // no default of the option: help would print what is in it
				o.database = os.Getenv("SCRATCHPASS_DATABASE")
			}
			if o.newSeal != "" {
				return newKey(r, o.newSeal)
			}
			return serve(cmd.Context(), r, o, doors)
		},
	}
	f := cmd.Flags()
	f.StringVar(&o.settings, "settings", "", "`FILE` with the school's settings")
	f.StringVar(&o.database, "database", "", "`ADDRESS` of the database, such as postgres://user@host/name (default: $SCRATCHPASS_DATABASE)")
	f.StringVar(&o.seal, "seal", "", "`FILE` with the key that seals what must not be read in the database")
	f.StringVar(&o.newSeal, "new-seal", "", "write such a key to a new `FILE`, and end")
	f.StringVar(&o.listen, "listen", o.listen, "`HOST:PORT` to serve at; port 0 takes a free one")
	f.StringVar(&o.metrics, "metrics", "", "`HOST:PORT` to tell at how the program does, in the text format of OpenMetrics (default: nowhere)")
	f.StringVar(&o.earlier, "earlier", "", "`ADDRESS` of an earlier version of the program that still serves the rooms it began, such as http://127.0.0.1:8461")
	o.tls.AddTo(f, ". Without, a proxy does that")
	f.BoolVar(&o.check, "check", false, "say what is wrong with the set-up, and end")
	return cmd
}

// newKey writes a key that only its owner may read. One that is there is left as it is: what was
// sealed with it could not be opened any more.
func newKey(r *cli.Run, path string) error {
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
	if err != nil {
		return fmt.Errorf("the key is not written: %w", err)
	}
	if _, err := fmt.Fprintln(f, school.NewKey()); err != nil {
		return err
	}
	if err := f.Sync(); err != nil {
		return err
	}
	fmt.Fprintln(r.Out, path)
	return f.Close()
}
