package cli

import (
	"context"
	"errors"
	"net"
	"net/http"
	"time"

	"scratchpass/lessons/page"
)

// longestDrain is how long requests may take that go on when a server is stopped.
const longestDrain = 5 * time.Second

// ServeUntil serves at a listener until the context ends, over TLS with a certificate if there is
// one. begun is called once it serves; what it returns ends it. streams ends what never ends by itself.
// Stopped by the context, the error is page.ErrStopped.
func ServeUntil(ctx context.Context, l net.Listener, h http.Handler, streams func(), cert, key string, begun func() error) error {
	server := &http.Server{Handler: h, ReadHeaderTimeout: 10 * time.Second, IdleTimeout: time.Minute, MaxHeaderBytes: 16 << 10}
	server.RegisterOnShutdown(streams)
	ended := make(chan error, 1)
	go func() {
		if cert != "" {
			ended <- server.ServeTLS(l, cert, key)
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
