// Package browse serves one learner's pages to a browser on this computer.
package browse

import (
	"context"
	"crypto/rand"
	"errors"
	"fmt"
	"net"
	"net/http"
	"time"

	"github.com/spf13/cobra"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/face/web"
	"scratchpass/lessons/home"
	"scratchpass/lessons/record"
	"scratchpass/lessons/sitting"
)

// Doors opens what the home page leads to.
type Doors func(ctx context.Context, s *sitting.Session, rec *record.Record) home.Doors

// Lookups are the pages that can be looked up beside the talk, of other groups of commands.
type Lookups func(s *sitting.Session, rec *record.Record) []web.Lookup

// Command is browse.
func Command(r *cli.Run, doors Doors, lookups Lookups) *cobra.Command {
	listen := "127.0.0.1:0"
	cmd := &cobra.Command{
		Use:   "browse",
		Short: "The same lessons and practice in a browser on this computer",
		Long: `Serves the home page, lessons, practice, progress and the rehearsal to a browser on this
computer, for one learner and with the same record as at the terminal. The first line that it
prints is the link to open. It is private: who has it, answers as you.`,
		Args: cli.NoArguments,
		RunE: func(cmd *cobra.Command, _ []string) error { return serve(cmd.Context(), r, listen, doors, lookups) },
	}
	cmd.Flags().StringVar(&listen, "listen", listen, "`HOST:PORT` to serve at; port 0 takes a free one")
	return cmd
}

// serve serves until the learner leaves or the program is stopped.
func serve(ctx context.Context, r *cli.Run, listen string, doors Doors, lookups Lookups) error {
	host, _, err := net.SplitHostPort(listen)
	if err != nil {
		return cli.Usagef("--listen %q: give HOST:PORT, such as 127.0.0.1:8080", listen)
	}
	ctx = r.UntilStopped(ctx)
	talk := web.NewTalk(ctx)
	s, rec, err := r.OpenAt(ctx, talk)
	if err != nil {
		return err
	}
	s.Attended = true
	l, err := net.Listen("tcp", listen)
	if err != nil {
		return fmt.Errorf("can't serve at %s: %w; --listen takes another address", listen, err)
	}
	key := rand.Text()
	address, names := cli.Served(host, l.Addr())
	handler := web.Handler(talk, web.Options{Key: key, Hosts: names, Words: web.WordsOf(s.Say), Lookups: lookups(s, rec)})
	server := &http.Server{Handler: handler, ReadHeaderTimeout: 10 * time.Second}
	served := make(chan error, 1)
	go func() { served <- server.Serve(l) }()
	fmt.Fprintf(r.Out, "http://%s/?key=%s\n%s\n", address, key, s.Say("browse-how"))
	left := make(chan error, 1)
	go func() { left <- home.Run(s, doors(ctx, s, rec)) }()
	var end error
	select {
	case end = <-left:
		talk.End()
		talk.Seen(ctx) // the last page
	case end = <-served:
	case <-ctx.Done():
		end = <-left
	}
	quietly, cancel := context.WithTimeout(context.Background(), 2*time.Second)
	defer cancel()
	if err := server.Shutdown(quietly); err != nil && !errors.Is(err, context.DeadlineExceeded) {
		return errors.Join(end, err)
	}
	return end
}
