package school

import (
	"context"
	"errors"
	"fmt"
	"io"
	"log/slog"
	"time"

	"scratchpass/lessons/school"
	"scratchpass/lessons/school/oneroster"
	"scratchpass/lessons/school/served"
)

// rosters are the class lists of a school. told is told of each that was fetched.
func (p parts) rosters(told func(oneroster.Fetched)) oneroster.Rosters {
	return oneroster.Rosters{Settings: p.settings, DB: p.db, Service: p.service, Clock: p.clock.Now, Told: told}
}

// book is the school's book of grades; nil where marks go to none.
func (p parts) book() *oneroster.Book {
	if p.service == nil || p.settings.OneRoster.ListsOnly {
		return nil
	}
	return &oneroster.Book{Service: p.service, DB: p.db, Clock: p.clock.Now}
}

// logged is what the log and the numbers have of lists that are fetched and of marks that are sent:
// how many, and no names.
func logged(log *slog.Logger, running *served.Running) (func(oneroster.Fetched), func(oneroster.Sent)) {
	fetched := func(f oneroster.Fetched) {
		running.Fetched(f)
		if f.Err != nil {
			log.Error("class list not fetched", "group", f.Group, "why", oneroster.Logged(f.Err), "ms", f.Took.Milliseconds())
			return
		}
		log.Info("class list fetched", "group", f.Group, "people", f.People, "ms", f.Took.Milliseconds())
	}
	sent := func(s oneroster.Sent) {
		running.Sent(s)
		if s.Broke != nil {
			log.Error("marks not sent", "taken", s.Taken, "unsent", s.Unsent, "refused", len(s.Refused), "why", oneroster.Logged(s.Broke))
			return
		}
		log.Info("marks sent", "taken", s.Taken, "refused", len(s.Refused))
	}
	return fetched, sent
}

// fetchAll fetches the class lists of all groups by hand, and says what came of each.
func fetchAll(ctx context.Context, o options, out io.Writer) error {
	p, err := partsOf(ctx, o)
	if err != nil {
		return err
	}
	defer p.db.Close()
	failed := 0
	lists := p.rosters(func(f oneroster.Fetched) {
		if f.Err == nil {
			fmt.Fprintf(out, "%s: %d people\n", f.Group, f.People)
		}
	})
	groups := lists.Groups()
	for _, g := range groups {
		if err := lists.Fetch(ctx, g); err != nil {
			failed++
			fmt.Fprintf(out, "%s: %v\n", g.Name, err)
		}
	}
	switch {
	case len(groups) == 0:
		return errors.New("no group has a list that is fetched: give the group its class, and no roster")
	case failed > 0:
		return fmt.Errorf("%d of %d lists could not be fetched; those from before are kept", failed, len(groups))
	}
	return nil
}

// checkedLists checks the school's OneRoster service, and returns what checks the list and the class of
// a group. Where the service itself is not good its classes are not asked for.
func checkedLists(ctx context.Context, s school.Settings, say func(what string, err error)) func(school.Group) {
	lists := oneroster.Rosters{Settings: s, Clock: time.Now}
	if s.OneRoster != nil {
		service, err := oneroster.New(*s.OneRoster, time.Now)
		if err == nil {
			err = service.Check(ctx)
		}
		say("one-roster", err)
		if err == nil {
			lists.Service = service
		}
	}
	return func(g school.Group) {
		if g.Roster != "" {
			say("roster of "+g.Name, lists.Check(ctx, g))
		}
		if g.Class == "" || lists.Service == nil {
			return
		}
		if oneroster.IsFetched(g) {
			say("class of "+g.Name, lists.Check(ctx, g))
			return
		}
		_, err := lists.Service.Class(ctx, g.Class) // where its marks go
		say("class of "+g.Name, err)
	}
}
