package school

import (
	"context"
	"errors"
	"fmt"
	"net"
	"net/http"
	"time"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/class"
	"scratchpass/lessons/face/web"
	"scratchpass/lessons/home"
	"scratchpass/lessons/page"
	"scratchpass/lessons/record"
	"scratchpass/lessons/school"
	"scratchpass/lessons/sitting"
)

// Doors opens what the home page leads to, of other groups of commands.
type Doors struct {
	Progress func(s *sitting.Session, rec *record.Record, name string) error
	Rehearse func(*record.Record) Rehearsals
	Flows    []sitting.Flow // what a sitting may be of that goes on, besides rehearsals
}

// Rehearsals are rehearsals with their moves in a record: each is a sitting.
type Rehearsals interface {
	sitting.Flow
	Begin(*sitting.Session) error // chooses a job and goes to the bench
}

// study runs a learner's study at a browser: what was going on goes on, then the home page, until they
// leave.
func study(r *cli.Run, p parts, doors Doors) func(who school.Person, at *web.Talk) error {
	return func(who school.Person, at *web.Talk) error {
		rec := record.In(p.db, who.ID)
		s, err := r.OpenWith(at, rec)
		if err != nil {
			return err
		}
		s.Clock = p.clock.Now
		rehearsals := doors.Rehearse(rec)
		err = s.GoOn(append([]sitting.Flow{rehearsals}, doors.Flows...)...)
		if errors.Is(err, sitting.ErrChanged) { // a newer program: who is told of it goes on from the menu
			err = s.Face.Show(page.Page{page.Paragraph{Text: s.Say("school-changed")}})
		}
		if err != nil && !errors.Is(err, sitting.ErrNothingStored) && !errors.Is(err, page.ErrStopped) {
			return err
		}
		return home.Run(s, home.Doors{
			Progress:  func() error { return doors.Progress(s, rec, who.Name) },
			Rehearse:  func() error { return rehearsals.Begin(s) },
			OneRecord: true,
			AtMenu:    func() error { return rec.Sittings().ClearAll() },
		})
	}
}

// makers makes the questions of rooms, with the secret of the group that each is of.
func makers(ctx context.Context, p parts, of func(secret []byte) class.Maker) func(class.Head) class.Maker {
	secrets := school.Secrets{DB: p.db, Seal: p.seal}
	return func(h class.Head) class.Maker {
		return func(blueprint string, people []string) (*class.Questions, error) {
			if _, _, ok := p.settings.Group(h.Group); !ok {
				return nil, fmt.Errorf("the room is of the group %q, which the settings do not know", h.Group)
			}
			secret, err := secrets.Of(ctx, h.Group)
			if err != nil {
				return nil, err
			}
			return of(secret)(blueprint, people)
		}
	}
}

// tellMetrics tells at an address of its own how the program does: told is which it took. end ends
// that.
func tellMetrics(at string, how http.Handler) (told string, end func() error, err error) {
	if at == "" {
		return "", func() error { return nil }, nil
	}
	l, err := net.Listen("tcp", at)
	if err != nil {
		return "", nil, fmt.Errorf("can't tell how the program does at %s: %w; --metrics takes another address", at, err)
	}
	mux := http.NewServeMux()
	mux.Handle("GET /metrics", how)
	server := &http.Server{Handler: mux, ReadHeaderTimeout: 10 * time.Second}
	go func() { _ = server.Serve(l) }() // it ends when it is closed
	return l.Addr().String(), server.Close, nil
}
