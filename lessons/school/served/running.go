package served

import (
	"net/http"
	"strconv"
	"time"

	"github.com/prometheus/client_golang/prometheus"
)

// Running is what tells whether the program does well, for whoever runs it: without names, rooms or
// answers.
type Running struct {
	took *prometheus.HistogramVec
}

// NewRunning counts in a registry. open is how many rooms are open at this node.
func NewRunning(in prometheus.Registerer, open func() int) *Running {
	r := &Running{took: prometheus.NewHistogramVec(prometheus.HistogramOpts{
		Name: "scratchpass_request_seconds", Help: "How long requests took, by page and status; an answer is POST /r/{code}/answer.",
		Buckets: []float64{.005, .01, .025, .05, .1, .15, .25, .5, 1, 2.5, 5},
	}, []string{"page", "status"})}
	in.MustRegister(r.took, prometheus.NewGaugeFunc(prometheus.GaugeOpts{Name: "scratchpass_rooms_open", Help: "Rooms that are open at this node."},
		func() float64 { return float64(open()) }))
	return r
}

// Count counts requests and how long they took. Streams last for as long as someone looks, and are
// not counted. log is told of each, without what stands in its address.
func (r *Running) Count(next http.Handler, log func(page string, status int, took time.Duration)) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, req *http.Request) {
		begun, seen := time.Now(), &statusSeen{ResponseWriter: w, status: http.StatusOK}
		next.ServeHTTP(seen, req)
		page := req.Pattern
		if page == "" || page == "/" {
			page = "other"
		}
		if seen.Header().Get("Content-Type") == "text/event-stream" {
			return
		}
		took := time.Since(begun)
		r.took.WithLabelValues(page, strconv.Itoa(seen.status)).Observe(took.Seconds())
		log(page, seen.status, took)
	})
}

// statusSeen notes the status of an answer.
type statusSeen struct {
	http.ResponseWriter
	status int
}

func (s *statusSeen) WriteHeader(status int) {
	s.status = status
	s.ResponseWriter.WriteHeader(status)
}

// Unwrap is for who has to flush, or to set a deadline.
func (s *statusSeen) Unwrap() http.ResponseWriter { return s.ResponseWriter }

// Health adds the two addresses that tell a proxy or a service manager how this node does: that it
// runs, and that it can take people, which it can't without the database or while it stops.
func Health(next http.Handler, ready func(*http.Request) error) http.Handler {
	mux := http.NewServeMux()
	mux.HandleFunc("GET /healthz", func(w http.ResponseWriter, _ *http.Request) { _, _ = w.Write([]byte("runs\n")) })
	mux.HandleFunc("GET /readyz", func(w http.ResponseWriter, r *http.Request) {
		if err := ready(r); err != nil {
			http.Error(w, "not ready", http.StatusServiceUnavailable)
			return
		}
		_, _ = w.Write([]byte("ready\n"))
	})
	mux.Handle("/", next)
	return mux
}
