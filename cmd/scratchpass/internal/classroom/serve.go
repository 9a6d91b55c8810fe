package classroom

import (
	"context"
	"crypto/rand"
	"errors"
	"fmt"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"time"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/class"
	"scratchpass/lessons/class/journal"
	"scratchpass/lessons/class/served"
	"scratchpass/lessons/face/web"
	"scratchpass/lessons/page"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/files"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/set"
)

// serve serves a class until the program is stopped.
func serve(ctx context.Context, r *cli.Run, args []string, o options) error {
	way, err := class.ParseWay(o.way)
	if err != nil {
		return cli.UsageError(err)
	}
	if (o.cert == "") != (o.key == "") {
		return cli.Usagef("--cert and --key: give both, or none")
	}
	ctx = r.UntilStopped(ctx)
	s, err := r.OpenUnrecorded(ctx)
	if err != nil {
		return err
	}
	q, err := questionsOf(args, o, s)
	if err != nil {
		return err
	}
	at, err := place(o.listen, func(found []reach) (reach, error) { return chooseReach(r, s, found) })
	if err != nil {
		return err
	}
	of, err := r.Tasks()
	if err != nil {
		return err
	}
	key, err := cli.ClassSecret(r.Err, o.secret, cli.MakeFirst, s.Library)
	if err != nil {
		return err
	}
	j, err := q.room.Open(ctx)
	if err != nil {
		return err
	}
	fail := func(err error) { fmt.Fprintln(r.Err, err) }
	hall := class.NewHall(j, func(h class.Head) class.Maker {
		return h.With(key, class.MakerOf(key, s.Library, of, q.lathe))
	}, time.Now, fail)
	q.secret = class.SecretSum(key)
	leave := share(ctx, hall, j)
	live, err := q.begin(ctx, r, s, j, hall, o, way)
	if err == nil {
		err = listen(ctx, r, s, hall, live, at, o, fail)
	}
	leave()
	return errors.Join(err, j.Close())
}

// looks is how often rooms are looked at that other programs may have kept something in.
const looks = 2 * time.Second

// share reads what others keep in the rooms of a hall, where its journal has others, until leave
// is called.
func share(ctx context.Context, hall *class.Hall, j class.Journal) (leave func()) {
	shared, ok := j.(class.Shared)
	if !ok {
		return func() {}
	}
	hall.Notices(shared)
	ctx, cancel := context.WithCancel(context.WithoutCancel(ctx)) // while the last pages are served, too
	var sharing sync.WaitGroup
	sharing.Go(func() { hall.Share(ctx, shared, time.Tick(looks)) })
	return func() { cancel(); sharing.Wait() }
}

// listen serves the rooms of a hall at an address, and says where.
func listen(ctx context.Context, r *cli.Run, s *sitting.Session, hall *class.Hall, live *class.Live, at string, o options, fail func(error)) error {
	l, err := net.Listen("tcp", at)
	if err != nil {
		return fmt.Errorf("can't serve at %s: %w; --listen takes another address", at, err)
	}
	address := shown(l.Addr())
	options := served.Options{Hosts: hosts(l.Addr()), Words: web.WordsOf(s.Say), Session: s, Clock: time.Now, Address: address, Secure: o.cert != "", Fail: fail}
	server := served.New(hall, options)
	web := &http.Server{Handler: server.Handler(), ReadHeaderTimeout: 10 * time.Second, IdleTimeout: time.Minute, MaxHeaderBytes: 16 << 10}
	web.RegisterOnShutdown(server.Stop)
	ended := make(chan error, 1)
	go func() {
		if o.cert != "" {
			ended <- web.ServeTLS(l, o.cert, o.key)
			return
		}
		ended <- web.Serve(l)
	}()
	if err = tell(ctx, r, s, live, options); err == nil {
		select {
		case err = <-ended:
		case <-ctx.Done():
			err = page.ErrStopped
		}
	}
	quietly, cancel := context.WithTimeout(context.Background(), 5*time.Second)
	defer cancel()
	return errors.Join(err, web.Shutdown(quietly))
}

// tell prints the address first, then the private link and the rest.
func tell(ctx context.Context, r *cli.Run, s *sitting.Session, live *class.Live, o served.Options) error {
	var code, key string
	live.See(func(room *class.Room) { code, key = room.Head.Code, room.Head.Key })
	base := "http://" + o.Address
	if o.Secure {
		base = "https://" + o.Address
	}
	fmt.Fprintf(r.Out, "%s/%s\n", base, code)
	fmt.Fprintf(r.Out, "%s/desk/%s?key=%s\n", base, code, key)
	if picture, err := served.QRText(o.Link(code)); err == nil && r.Pictures() {
		fmt.Fprint(r.Out, inWhiteOnBlack(picture))
	}
	how := page.Page{page.Paragraph{Text: s.Say("class-how", "code", code)}}
	if strings.HasPrefix(o.Address, "127.") {
		how = append(how, page.Caution{Text: s.Say("class-alone")})
	}
	return r.ShowText(ctx, how)
}

// inWhiteOnBlack makes a picture of light squares light on dark whatever the ground of the
// terminal is: cameras read it so.
func inWhiteOnBlack(picture string) string {
	if os.Getenv("NO_COLOR") != "" {
		return picture
	}
	var b strings.Builder
	for line := range strings.Lines(picture) {
		b.WriteString("\x1b[97;40m" + strings.TrimSuffix(line, "\n") + "\x1b[0m\n")
	}
	return b.String()
}

// questions are what a class is asked, and where its room is kept.
type questions struct {
	blueprint string
	title     string
	room      journal.At
	secret    string // its sum
	lathe     func(string) (machine.Lathe, error)
}

// questionsOf reads a blueprint, or makes one of tasks.
func questionsOf(args []string, o options, s *sitting.Session) (questions, error) {
	var q questions
	b, name, beside := "", args[0], ""
	if len(args) == 1 && (strings.HasSuffix(name, ".yaml") || strings.HasSuffix(name, ".yml")) {
		beside = filepath.Dir(name)
		text, err := files.Read(name, files.MostWords)
		if err != nil {
			return q, err
		}
		b = string(text)
	} else {
		b, name = ofTasks(args, o.level, s), strings.ReplaceAll(args[0], "/", "-")
	}
	q.lathe = set.LatheBeside(args[0])
	read, err := set.ParseBlueprint(name, []byte(b), s.Tasks, q.lathe)
	if err != nil {
		return q, cli.UsageError(err)
	}
	q.blueprint, q.title, q.room = b, read.Title, journal.At(o.file)
	if q.room == "" {
		q.room = journal.At(filepath.Join(beside, read.Set+".class"))
	}
	return q, nil
}

// ofTasks is a blueprint of tasks and stages, a question each.
func ofTasks(names []string, level int, s *sitting.Session) string {
	var b strings.Builder
	fmt.Fprintf(&b, "set: %s\ntitle: %s\nunits: %s\nslots:\n", "class-"+time.Now().Format(time.DateOnly), s.Say("class-title"), s.System)
	for _, name := range names {
		fmt.Fprintf(&b, "  - {tasks: [%q], level: %d}\n", name, level)
	}
	return b.String()
}

// begun is the head of the room that is gone on with; class.ErrNoRoom where there is none.
func (q questions) begun(ctx context.Context, j class.Journal) (class.Head, error) {
	if d, ok := j.(*journal.Database); ok {
		return d.GoesOn(ctx, q.blueprint)
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
	last, err := q.begun(ctx, j)
	if err == nil {
		return q.goOn(ctx, hall, last)
	}
	if !errors.Is(err, class.ErrNoRoom) {
		return nil, err
	}
	head := class.Head{Code: class.NewCode(), Title: q.title, Key: rand.Text(), Listed: o.listed, Secret: q.secret}
	if o.roster != "" {
		if head.Roster, err = set.ReadRoster(o.roster, func(n set.Note) {
			fmt.Fprintln(r.Err, s.Say(n.Says, "where", n.Where(), "text", n.Text))
		}); err != nil {
			return nil, cli.UsageError(err)
		}
	}
	live, err := hall.Begin(ctx, head, q.blueprint, way)
	for errors.Is(err, class.ErrTaken) {
		head.Code = class.NewCode()
		live, err = hall.Begin(ctx, head, q.blueprint, way)
	}
	return live, err
}

// goOn opens the room that was begun.
func (q questions) goOn(ctx context.Context, hall *class.Hall, head class.Head) (*class.Live, error) {
	if head.Draws != problem.Draws {
		return nil, fmt.Errorf("%s was begun by a program that draws other numbers (%d, this one %d): end the class with that one, or give another file with --room", q.room, head.Draws, problem.Draws)
	}
	live, err := hall.Room(ctx, head.Code)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", q.room, err)
	}
	same, begun := false, false
	live.See(func(room *class.Room) {
		if begun = len(room.Sets) > 0; begun {
			same = room.Sets[0].Text == q.blueprint
		}
	})
	switch {
	case !begun: // it was cut off before its first set was kept
		return live, live.Ask(ctx, q.blueprint, class.Together)
	case !same:
		return nil, fmt.Errorf("%s holds a class with another blueprint than this one now is: give another file with --room, or change the blueprint back", q.room)
	}
	return live, nil
}

// chooseReach asks which address the phones can reach, where this computer has several; nobody
// there to be asked, it is the one that it speaks from.
func chooseReach(r *cli.Run, s *sitting.Session, found []reach) (reach, error) {
	if !s.Attended {
		fmt.Fprintln(r.Err, s.Say("class-took", "ip", found[0].IP))
		return found[0], nil
	}
	var options []string
	for _, f := range found {
		options = append(options, s.Say("class-reach", "ip", f.IP, "name", f.Interface))
	}
	i, err := sitting.Choose(s, s.Face, s.Say("class-which"), page.Menu{Options: options})
	err = errors.Join(err, cli.LeaveScreen(s))
	if err != nil {
		return reach{}, err
	}
	return found[i], nil
}
