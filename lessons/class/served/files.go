package served

import (
	"context"
	"embed"
	"io/fs"
	"net/http"
	"strings"
	"sync"

	"scratchpass/lessons/face/web"
)

//go:embed static
var static embed.FS

// own are the files of rooms. Those of all pages are the face's.
func own() fs.FS {
	files, err := fs.Sub(static, "static")
	if err != nil {
		panic("served: the files are part of the program: " + err.Error())
	}
	return files
}

// addresses are those of all files that pages of rooms ask for.
var addresses = sync.OnceValue(func() web.Addresses { return web.AddressesOf(web.Static(), own()) })

// asset is the address of a style sheet or a script, with a sum of what is in it: a browser keeps what
// it has fetched, and a page never gets the script of another version of the program.
func asset(name string) (string, error) { return addresses().Address(name) }

// files serves style sheets and scripts. One of another version is that of the earlier program.
func (s *Server) files() http.Handler {
	ours, shared := http.StripPrefix("/static/", http.FileServerFS(own())), web.Assets()
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		version := r.URL.Query().Get("v")
		known, err := asset(r.PathValue("name"))
		switch {
		case err == nil && version != "" && known != r.URL.Path+"?v="+version && s.o.Earlier != nil:
			s.atEarlier(w, r)
			return
		case err != nil || version == "":
			w.Header().Set("Cache-Control", "public, max-age=300")
		default:
			w.Header().Set("Cache-Control", "public, max-age=31536000, immutable")
		}
		if _, err := fs.Stat(own(), r.PathValue("name")); err == nil {
			ours.ServeHTTP(w, r)
			return
		}
		shared.ServeHTTP(w, r)
	})
}

// atEarlier has a request answered by the earlier version of the program, which draws the numbers of a
// room that it began, until that ends. Without one it says what has to be done.
func (s *Server) atEarlier(w http.ResponseWriter, r *http.Request) {
	if s.o.Earlier == nil {
		http.Error(w, s.say("class-other-draws"), http.StatusServiceUnavailable)
		return
	}
	clear(w.Header()) // what is said of pages is said there
	if strings.HasSuffix(r.Pattern, "/events") {
		ctx, end := context.WithCancel(r.Context())
		defer end()
		go func() { // a stream never ends by itself, and that program goes on when this one stops
			select {
			case <-s.stopped:
				end()
			case <-ctx.Done():
			}
		}()
		r = r.WithContext(ctx)
	}
	s.o.Earlier.ServeHTTP(w, r)
}
