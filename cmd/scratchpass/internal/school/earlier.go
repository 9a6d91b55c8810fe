package school

import (
	"context"
	"fmt"
	"io"
	"net/http"
	"net/http/httputil"
	"net/url"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/postgres"
	"scratchpass/lessons/school"
	"scratchpass/quiz/problem"
)

// earlierAt reads the address of an earlier version; nil for none.
func earlierAt(address string) (*url.URL, error) {
	if address == "" {
		return nil, nil
	}
	u, err := url.Parse(address)
	if err != nil || u.Scheme != "http" && u.Scheme != "https" || u.Host == "" || u.Path != "" || u.RawQuery != "" || u.User != nil {
		return nil, cli.Usagef("--earlier %q: give the address where the earlier version serves, such as http://127.0.0.1:8461", address)
	}
	return u, nil
}

// earlier passes requests on to an earlier version, under the name that browsers know; nil for none. What
// goes wrong there is told by fail. behind is whether a proxy has said where requests come from.
func earlier(address string, behind bool, fail func(error)) http.Handler {
	at, err := earlierAt(address)
	if at == nil || err != nil { // which called has refused
		return nil
	}
	return &httputil.ReverseProxy{
		Rewrite: func(r *httputil.ProxyRequest) {
			r.SetURL(at)
			r.Out.Host = r.In.Host
			r.SetXForwarded()
			if said := r.In.Header["X-Forwarded-For"]; behind && len(said) > 0 {
				r.Out.Header["X-Forwarded-For"] = said
			}
		},
		ErrorHandler: func(w http.ResponseWriter, r *http.Request, err error) {
			if r.Context().Err() == nil { // else a phone has gone, and nothing is wrong there
				fail(fmt.Errorf("the earlier version at %s: %w", at, err))
			}
			w.Header().Set("Retry-After", "5")
			http.Error(w, "the earlier version of the program can't be reached", http.StatusBadGateway)
		},
	}
}

// tellOpen tells of rooms that an earlier version began and that have not ended.
func tellOpen(ctx context.Context, settings school.Settings, db *postgres.DB, out io.Writer) error {
	open, err := school.Marks{DB: db}.Unended(ctx, school.Names(settings.AllGroups()), problem.Draws)
	if err != nil {
		return err
	}
	if len(open) > 0 {
		fmt.Fprintf(out, "rooms that an earlier version began and that have not ended: %d (%s); they go on while that version runs, with --earlier and its address\n", len(open), open[0])
	}
	return nil
}

// checkEarlier returns an error if no earlier version serves at an address.
func checkEarlier(ctx context.Context, address string) error {
	r, err := http.NewRequestWithContext(ctx, http.MethodGet, address+"/healthz", nil)
	if err != nil {
		return err
	}
	got, err := http.DefaultClient.Do(r)
	if err != nil {
		return err
	}
	defer got.Body.Close()
	if got.StatusCode != http.StatusOK {
		return fmt.Errorf("%s answers %s", r.URL, got.Status)
	}
	return nil
}
