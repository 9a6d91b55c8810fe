package classroom

import (
	"context"
	"errors"
	"fmt"
	"os"
	"strings"
	"time"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/class"
	"scratchpass/lessons/class/served"
	"scratchpass/lessons/face/web"
	"scratchpass/lessons/page"
	"scratchpass/lessons/sitting"
)

// serve serves a class until the program is stopped.
func serve(ctx context.Context, r *cli.Run, args []string, o options) error {
	way, err := class.ParseWay(o.way)
	if err != nil {
		return cli.UsageError(err)
	}
	if err := o.tls.Check(); err != nil {
		return err
	}
	at, err := readPlace(o.listen)
	if err != nil {
		return err
	}
	ctx = r.UntilStopped(ctx)
	s, err := r.OpenUnrecorded(ctx)
	if err != nil {
		return err
	}
	q, err := begun(r, s, args, o, way)
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
	makes := class.MakerOf(key, s.Library, of, q.lathe)
	if q.room == "" {
		if q, err = q.ofToday(ctx, r, s, makes, o.level); err != nil {
			return err
		}
	} else if q, err = q.afterEnded(ctx, r, s, makes, o); err != nil {
		return err
	}
	j, err := q.room.Open(ctx)
	if err != nil {
		return err
	}
	fail := func(err error) { fmt.Fprintln(r.Err, err) }
	hall := class.NewHall(j, func(h class.Head) class.Maker {
		return h.With(key, makes)
	}, time.Now, fail)
	q.secret = class.SecretSum(key)
	leave := hall.Sharing(ctx, j)
	live, err := q.begin(ctx, r, s, j, hall, o, way)
	if err == nil {
		err = q.rehearse(ctx, live)
	}
	if err == nil {
		err = listen(ctx, r, s, hall, live, at, o, q.next, fail)
	}
	leave()
	return errors.Join(err, j.Close())
}

// listen serves the rooms of a hall at an address, and says where.
func listen(ctx context.Context, r *cli.Run, s *sitting.Session, hall *class.Hall, live *class.Live, at place, o options, further []served.Further, fail func(error)) error {
	var last string
	live.See(func(room *class.Room) { last = room.Linked })
	at, err := at.where(last, func(found []cli.Reach) (cli.Reach, error) { return chooseReach(r, s, found) })
	if err != nil {
		return err
	}
	l, err := at.listen()
	if err != nil {
		return err
	}
	address, names := cli.Served(at.host, l.Addr())
	if address != last {
		if last != "" {
			fmt.Fprintln(r.Err, s.Say("class-other-links", "before", last))
		}
		if err := live.Do(ctx, class.Event{Kind: class.Linked, Text: address}); err != nil {
			return errors.Join(err, l.Close())
		}
	}
	options := served.Options{Hosts: names, Words: web.WordsOf(s.Say), Session: s, Clock: time.Now, Address: address, Secure: o.tls.On(), Fail: fail, Further: further}
	server := served.New(hall, options)
	return cli.ServeUntil(ctx, l, server.Handler(), server.Stop, o.tls, func() error { return tell(ctx, r, s, live, options) })
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

// chooseReach asks which address the phones can reach, where this computer has several; nobody
// there to be asked, it is the one that it speaks from.
func chooseReach(r *cli.Run, s *sitting.Session, found []cli.Reach) (cli.Reach, error) {
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
		return cli.Reach{}, err
	}
	return found[i], nil
}
