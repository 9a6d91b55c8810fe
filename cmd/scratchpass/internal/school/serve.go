package school

import (
	"context"
	"errors"
	"fmt"
	"log/slog"
	"net"
	"net/http"
	"sync"
	"time"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/class"
	"scratchpass/lessons/class/journal"
	"scratchpass/lessons/school"
	"scratchpass/lessons/school/served"
)

// tellsEvery is how often nodes tell each other whose pages they serve: twice before a phone of another
// node would be called away.
const tellsEvery = 8 * time.Second

// looksEvery is how often a node looks which class lists are due.
const looksEvery = time.Minute

// marksEvery is how often what came of rooms is kept, where it is not yet.
const marksEvery = time.Minute

// clockEvery is how often the clock of the database's server is read: this computer's own may be set
// meanwhile, or run too fast.
const clockEvery = 30 * time.Second

// serve serves a school until the program is stopped.
func serve(ctx context.Context, r *cli.Run, o options, doors Doors) (err error) {
	ctx = r.UntilStopped(ctx)
	if err := called(o); err != nil {
		return err
	}
	if o.check {
		return check(ctx, o, r.Out)
	}
	if o.fetch {
		return fetchAll(ctx, o, r.Out)
	}
	p, err := partsOf(ctx, o)
	if err != nil {
		return err
	}
	log := slog.New(slog.NewJSONHandler(r.Err, nil))
	fail := func(err error) { log.Error("went wrong", "why", err.Error()) }
	s, err := r.OpenUnrecorded(ctx)
	if err != nil {
		return err
	}
	of, err := r.Tasks()
	if err != nil {
		return err
	}
	j := journal.Over(p.db)
	defer func() { err = errors.Join(err, j.Close()) }() // last of all
	hall := class.NewHall(j, makers(ctx, p, func(secret []byte) class.Maker {
		return class.MakerOf(secret, s.Library, of, served.NoLathe)
	}), p.clock.Now, fail)
	leave := hall.Sharing(ctx, j)
	defer leave()
	running := served.NewRunning(hall.Opened)
	fetched, sent := logged(log, running)
	lists := p.rosters(fetched)
	server, err := served.New(served.Options{Settings: p.settings, DB: p.db, Sessions: school.Sessions{DB: p.db, Clock: p.clock.Now}, Audit: school.Audit{DB: p.db, Clock: p.clock.Now},
		SignOn: p.signOn, Hall: hall, Rosters: lists, Book: p.book(), Sent: sent, Rooms: j.Of, Session: s, Clock: p.clock.Now, Study: study(r, p, doors), Fail: fail,
		Behind: !o.tls.On(), Earlier: earlier(o.earlier, !o.tls.On(), fail)})
	if err != nil {
		return err
	}
	meeting, apart := context.WithCancel(context.WithoutCancel(ctx))
	var met sync.WaitGroup
	met.Go(func() { server.Meet(meeting, time.Tick(tellsEvery)) })
	met.Go(func() { server.KeepMarks(meeting, time.Tick(marksEvery)) })
	if p.service != nil {
		met.Go(func() { lists.Keep(meeting, time.Tick(looksEvery), fail) })
	}
	met.Go(func() { p.clock.Keep(meeting, time.Tick(clockEvery)) })
	defer func() { apart(); met.Wait() }()
	counted := running.Count(server.Handler(), func(page string, status int, took time.Duration) {
		log.Info("served", "page", page, "status", status, "ms", took.Milliseconds())
	})
	stopping := func() bool { return ctx.Err() != nil }
	handler := served.Health(counted, func(req *http.Request) error {
		if stopping() {
			return errors.New("stopping")
		}
		return p.db.PingContext(req.Context())
	})
	told, end, err := tellMetrics(o.metrics, running.Handler())
	if err != nil {
		return err
	}
	l, err := net.Listen("tcp", o.listen)
	if err != nil {
		return fmt.Errorf("can't serve at %s: %w; --listen takes another address", o.listen, err)
	}
	return errors.Join(cli.ServeUntil(ctx, l, handler, server.Stop, o.tls, func() error {
		scheme := "http"
		if o.tls.On() {
			scheme = "https"
		}
		log.Info("serving", "at", l.Addr().String(), "metrics", told)
		_, err := fmt.Fprintf(r.Out, "%s://%s\n%s\n", scheme, l.Addr(), p.settings.Address)
		return err
	}), end())
}
