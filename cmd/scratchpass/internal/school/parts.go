package school

import (
	"context"
	"crypto/tls"
	"errors"
	"fmt"
	"io"
	"os"
	"strings"
	"time"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/postgres"
	"scratchpass/lessons/school"
	"scratchpass/lessons/school/oneroster"
	"scratchpass/lessons/school/served"
	"scratchpass/lessons/school/signon"
)

// parts are what a school is served from.
type parts struct {
	settings school.Settings
	seal     school.Seal
	db       *postgres.DB
	clock    *postgres.Clock
	signOn   *signon.SignOn
	service  *oneroster.Service // nil where the school has none
}

// called reports what is wrong with how serve was called. All that is missing comes at once.
func called(o options) error {
	var missing []string
	for _, needed := range []struct{ name, value string }{{"--settings FILE", o.settings}, {"--database ADDRESS", o.database}, {"--seal FILE", o.seal}} {
		if needed.value == "" {
			missing = append(missing, needed.name)
		}
	}
	if len(missing) > 0 {
		return cli.Usagef("serve needs %s too", strings.Join(missing, ", "))
	}
	if err := o.tls.Check(); err != nil {
		return err
	}
	if _, err := earlierAt(o.earlier); err != nil {
		return err
	}
	if !postgres.Is(o.database) {
		return cli.Usagef("--database %q: give the address of a PostgreSQL database, such as postgres://user@host/name", o.database)
	}
	return nil
}

// partsOf opens what a school is served from.
func partsOf(ctx context.Context, o options) (p parts, err error) {
	if p.settings, err = school.Read(o.settings); err != nil {
		return p, err
	}
	if p.seal, err = readSeal(o.seal); err != nil {
		return p, err
	}
	if p.signOn, err = signon.New(p.settings.SignOn, p.settings.Address+served.Back, p.seal, time.Now); err != nil {
		return p, err
	}
	if p.settings.OneRoster != nil {
		if p.service, err = oneroster.New(*p.settings.OneRoster, time.Now); err != nil {
			return p, err
		}
	}
	if p.db, err = postgres.Open(ctx, o.database); err != nil {
		return p, err
	}
	p.clock, err = p.db.Clock(ctx, time.Now)
	return p, err
}

func readSeal(path string) (school.Seal, error) {
	text, err := os.ReadFile(path)
	if err != nil {
		return school.Seal{}, fmt.Errorf("the key: %w; serve --new-seal %s writes one", err, path)
	}
	seal, err := school.NewSeal(strings.TrimSpace(string(text)))
	if err != nil {
		return seal, fmt.Errorf("%s: %w", path, err)
	}
	return seal, nil
}

// mostOff is how far the clock of this computer may be from that of the database's server. All that is
// kept has the server's time; but how long a sign-on's word holds is looked up on this computer.
const mostOff = 5 * time.Second

// clockOff says that the clock of this computer, or of the server, is wrong.
func clockOff(ctx context.Context, db *postgres.DB) error {
	c, err := db.Clock(ctx, time.Now)
	if err == nil && c.Ahead().Abs() > mostOff {
		err = fmt.Errorf("this computer has another time than the database's server, by %s: set both right", c.Ahead().Abs().Round(time.Second))
	}
	return err
}

// check says what is wrong with the set-up, each part by itself, so that all of it comes at once.
func check(ctx context.Context, o options, out io.Writer) error {
	var wrong int
	say := func(what string, err error) {
		if err != nil {
			wrong++
			fmt.Fprintf(out, "%s: %v\n", what, err)
			return
		}
		fmt.Fprintf(out, "%s: good\n", what)
	}
	settings, err := school.Read(o.settings)
	say("settings", err)
	seal, sealErr := readSeal(o.seal)
	say("key", sealErr)
	db, dbErr := postgres.Open(ctx, o.database)
	say("database", dbErr)
	if dbErr == nil {
		defer db.Close()
		say("clock", clockOff(ctx, db))
	}
	if err == nil {
		signOn, err := signon.New(settings.SignOn, settings.Address+served.Back, seal, time.Now)
		if err == nil {
			err = signOn.Check(ctx)
		}
		say("sign-on", err)
		fmt.Fprintf(out, "the sign-on has to send people back to %s\n", settings.Address+served.Back)
		lists := checkedLists(ctx, settings, say)
		for _, g := range settings.AllGroups() {
			lists(g)
			if dbErr == nil && sealErr == nil {
				say("secret of "+g.Name, school.Secrets{DB: db, Seal: seal}.Check(ctx, g.Name))
			}
		}
	}
	if err == nil && dbErr == nil {
		if err := tellOpen(ctx, settings, db, out); err != nil {
			say("rooms", err)
		}
	}
	if o.earlier != "" {
		say("earlier version", checkEarlier(ctx, o.earlier))
	}
	if o.tls.On() {
		_, err := tls.LoadX509KeyPair(o.tls.Cert, o.tls.Key)
		say("certificate", err)
	}
	if wrong > 0 {
		return errors.New("the set-up is not good yet: mend what is named above")
	}
	return nil
}
