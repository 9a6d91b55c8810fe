// Package served serves rooms to browsers: to phones what their people do, to the instructor
// who needs help, to the wall what all may see.
package served

import (
	"context"
	"errors"
	"html/template"
	"net/http"
	"slices"
	"strings"
	"sync"
	"time"

	"scratchpass/content"
	"scratchpass/lessons/class"
	"scratchpass/lessons/face/web"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/set"
)

// Options are how rooms are served.
type Options struct {
	Hosts   []string // host and port that they are served under; any other name is refused
	Words   web.Words
	Session *sitting.Session // the words of the questions
	Clock   func() time.Time
	Address string // as it is said: 192.168.1.23:8080
	Secure  bool   // over TLS: cookies are sent over nothing else
	Fail    func(error)

	// May reports whether who asks may see to a room; nil where the room's private link is what lets
	// them.
	May     func(*http.Request, class.Head) bool
	Behind  bool      // a proxy: where a request comes from is what it says
	Further []Further // sets that the instructor may ask after the first

	// Earlier answers for rooms that an earlier version of the program began, which draws their numbers;
	// nil where there is none.
	Earlier http.Handler
}

// Link is the short address of a room, in the letters that make a small QR code.
func (o Options) Link(code string) string {
	scheme := "HTTP://"
	if o.Secure {
		scheme = "HTTPS://"
	}
	return scheme + strings.ToUpper(o.Address) + "/" + code
}

// Server serves the rooms of a hall.
type Server struct {
	hall *class.Hall
	o    Options
	say  func(string, ...any) string

	pages  *template.Template
	taught func() map[string]set.TaughtIn // where tasks are taught
	tasks  func() []taskName              // that can be asked on the spot
	jobs   func() []taskName              // that can be rehearsed on the spot
	bench  func() (content.BenchWords, error)

	presence presence
	limits   limits
	stopped  chan struct{} // closed when streams are to end
}

// New returns a server of a hall.
func New(h *class.Hall, o Options) *Server {
	o.Session.OnPages = true
	return &Server{hall: h, o: o, say: o.Session.Say, pages: templates(o.Session.Say), presence: newPresence(), limits: newLimits(o.Behind), stopped: make(chan struct{}),
		taught: sync.OnceValue(func() map[string]set.TaughtIn { return set.Taught(o.Session.Library) }), tasks: sync.OnceValue(func() []taskName { return tasksOf(o.Session) }),
		jobs: sync.OnceValue(func() []taskName { return jobsOf(o.Session.Library) }), bench: sync.OnceValues(o.Session.Library.Bench)}
}

// tasksOf are the tasks that can be asked, with their titles. One whose words can't be read is
// left out: asking it says why.
func tasksOf(s *sitting.Session) []taskName {
	var all []taskName
	for _, name := range s.Tasks.Names() {
		if w, err := s.Library.Task(name); err == nil {
			all = append(all, taskName{name, w.Title})
		}
	}
	return all
}

// Stop ends the streams, which never end by themselves.
func (s *Server) Stop() { close(s.stopped) }

// Handler is all that is served.
func (s *Server) Handler() http.Handler {
	mux := http.NewServeMux()
	mux.Handle("GET /static/{name}", s.files())
	mux.HandleFunc("GET /{$}", s.door)
	mux.HandleFunc("GET /{code}", s.short)
	mux.HandleFunc("GET /r/{code}/{$}", s.short)
	mux.HandleFunc("GET /r/{code}/{what}", s.short) // the address of a form, opened again
	for path, serve := range map[string]func(http.ResponseWriter, *http.Request, *class.Live){
		"GET /r/{code}":          s.seat,
		"GET /r/{code}/seat":     s.seatPart,
		"GET /r/{code}/events":   s.seatEvents,
		"POST /r/{code}/join":    s.join,
		"POST /r/{code}/answer":  s.answer,
		"POST /r/{code}/move":    s.move,
		"POST /r/{code}/call":    s.call,
		"POST /r/{code}/unclear": s.unclear,
		"POST /r/{code}/keep":    s.keep,
		"POST /r/{code}/leave":   s.leave,
	} {
		mux.HandleFunc(path, s.inRoom(serve))
	}
	s.desk(mux)
	return s.guarded(http.NewCrossOriginProtection().Handler(mux))
}

// guarded refuses other names of this host, and says how pages are to be treated: nothing of
// other hosts, no script but the program's own, in no frame.
func (s *Server) guarded(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := w.Header()
		web.Guard(h)
		h.Set("Cache-Control", "no-store")
		if !slices.Contains(s.o.Hosts, r.Host) {
			http.Error(w, "this program is not served under that name", http.StatusMisdirectedRequest)
			return
		}
		next.ServeHTTP(w, r)
	})
}

// inRoom finds the room of a request. Who tries many codes is slowed down.
func (s *Server) inRoom(serve func(http.ResponseWriter, *http.Request, *class.Live)) http.HandlerFunc {
	return func(w http.ResponseWriter, r *http.Request) {
		code := class.ReadCode(r.PathValue("code"))
		l := s.find(w, r, code)
		if l != nil {
			w.Header().Set("X-Room", code) // else a page of another network might be taken for an answer
			r.Body = http.MaxBytesReader(w, r.Body, mostTyped)
			serve(w, r, l)
			s.heardAtDoor(r, l, code)
		}
	}
}

// heardAtDoor notes that a phone that waits for a name is there, whatever it asked for: its page may
// have no stream, without a script or in the background.
func (s *Server) heardAtDoor(r *http.Request, l *class.Live, code string) {
	phone, waits := device(r, code), false
	if phone == "" {
		return
	}
	l.See(func(room *class.Room) { waits = room.Claimed(phone) != nil })
	if waits {
		s.presence.heard(phone, s.o.Clock())
	}
}

// mostTyped is how many bytes a form may have.
const mostTyped = 16 << 10

// find is the room with a code; nil after an error was sent. Who tries many codes is slowed
// down; who has a name in a room is let in there whatever others at the same address have tried.
func (s *Server) find(w http.ResponseWriter, r *http.Request, code string) *class.Live {
	if !class.IsCode(code) {
		s.noRoom(w, r)
		return nil
	}
	may := s.limits.mayGuess(r)
	if !may && (device(r, code) == "" || !s.limits.mayLook(r)) {
		s.tooFast(w)
		return nil
	}
	l, err := s.hall.Room(r.Context(), code)
	switch {
	case !may && (err != nil || !knows(l, r)): // the same for a room and for none
		s.tooFast(w)
		return nil
	case errors.Is(err, class.ErrNoRoom):
		s.limits.guessed(r)
		s.noRoom(w, r)
		return nil
	case errors.As(err, &class.OtherDraws{}):
		s.atEarlier(w, r)
		return nil
	case err != nil:
		s.trouble(w, err)
		return nil
	}
	return l
}

// noRoom says that there is no room with the code that was given.
func (s *Server) noRoom(w http.ResponseWriter, r *http.Request) {
	code := r.PathValue("code")
	if typed := r.URL.Query().Get("code"); code == "" {
		code = typed
	}
	s.writeAs(w, http.StatusNotFound, "door", doorPage{Says: s.say("class-no-room", "code", code)})
}

// tooFast says that someone sends more than a person could.
func (s *Server) tooFast(w http.ResponseWriter) {
	w.Header().Set("Retry-After", "5")
	http.Error(w, s.say("class-too-fast"), http.StatusTooManyRequests)
}

// trouble sends an error. That the journal is out of reach is said in the log once, by the hall; that
// someone has given up waiting is no trouble.
func (s *Server) trouble(w http.ResponseWriter, err error) {
	if errors.Is(err, class.ErrAway) || errors.Is(err, context.Canceled) {
		w.Header().Set("Retry-After", "1")
		http.Error(w, s.say("class-away"), http.StatusServiceUnavailable)
		return
	}
	s.o.Fail(err)
	http.Error(w, s.say("class-trouble"), http.StatusInternalServerError)
}
