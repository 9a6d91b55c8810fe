package cli

import (
	"context"
	"errors"
	"net"
	"net/http"
	"time"

	"github.com/spf13/pflag"

	"scratchpass/lessons/page"
)

// TLS is what pages are served over TLS with: the files of a certificate and of its private key, or
// neither.
type TLS struct{ Cert, Key string }

// AddTo adds the options. without says what is done where there is none; it may be empty.
func (t *TLS) AddTo(f *pflag.FlagSet, without string) {
	f.StringVar(&t.Cert, "cert", "", "`FILE` with a certificate, to serve over TLS; with --key"+without)
	f.StringVar(&t.Key, "key", "", "`FILE` with the certificate's private key")
}

// On reports whether pages are served over TLS.
func (t TLS) On() bool { return t.Cert != "" }

// Check is an error for one file without the other.
func (t TLS) Check() error {
	if (t.Cert == "") != (t.Key == "") {
		return Usagef("--cert and --key: give both, or none")
	}
	return nil
}

// longestDrain is how long requests may take that go on when a server is stopped.
const longestDrain = 5 * time.Second

// ServeUntil serves at a listener until the context ends, over TLS if there is a
// certificate. begun is called once it serves; what it returns ends it. streams ends what never ends by itself.
// Stopped by the context, the error is page.ErrStopped.
func ServeUntil(ctx context.Context, l net.Listener, h http.Handler, streams func(), t TLS, begun func() error) error {
	server := &http.Server{Handler: h, ReadHeaderTimeout: 10 * time.Second, IdleTimeout: time.Minute, MaxHeaderBytes: 16 << 10}
	server.RegisterOnShutdown(streams)
	ended := make(chan error, 1)
	go func() {
		if t.On() {
			ended <- server.ServeTLS(l, t.Cert, t.Key)
			return
		}
		ended <- server.Serve(l)
	}()
	err := begun()
	if err == nil {
		select {
		case err = <-ended:
		case <-ctx.Done():
			err = page.ErrStopped
		}
	}
	quietly, cancel := context.WithTimeout(context.Background(), longestDrain)
	defer cancel()
	return errors.Join(err, server.Shutdown(quietly))
}
