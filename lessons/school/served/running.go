package served

import (
	"fmt"
	"net/http"
	"time"

	"github.com/VictoriaMetrics/metrics"

	"scratchpass/lessons/school/oneroster"
)

// Running is what tells whether the program does well, for whoever runs it: without names, rooms or
// answers.
type Running struct{ all *metrics.Set }

// NewRunning counts from now on. open is how many rooms are open at this node.
func NewRunning(open func() int) *Running {
	r := &Running{metrics.NewSet()}
	r.all.NewGauge("scratchpass_rooms_open", func() float64 { return float64(open()) })
	return r
}

// bounds are those of the classes in which requests are counted by how long they took, in seconds.
var bounds = []float64{.005, .01, .025, .05, .1, .15, .25, .5, 1, 2.5, 5}

// Handler tells what was counted, and how the process does, in the open text format that programs
// which gather such numbers read.
func (r *Running) Handler() http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) {
		w.Header().Set("Content-Type", "text/plain; version=0.0.4; charset=utf-8")
		r.all.WritePrometheus(w)
		metrics.WriteProcessMetrics(w)
	})
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
		r.all.GetOrCreatePrometheusHistogramExt(fmt.Sprintf("scratchpass_request_seconds{page=%q,status=\"%d\"}", page, seen.status), bounds).Update(took.Seconds())
		log(page, seen.status, took)
	})
}

// Fetched counts a class list that was fetched, or was to be.
func (r *Running) Fetched(f oneroster.Fetched) {
	how := "well"
	if f.Err != nil {
		how = "failed"
	}
	r.all.GetOrCreateCounter(fmt.Sprintf("scratchpass_lists_fetched_total{how=%q}", how)).Inc()
}

// Sent counts marks that were sent to the school's book.
func (r *Running) Sent(s oneroster.Sent) {
	for how, n := range map[string]int{"taken": s.Taken, "refused": len(s.Refused), "unsent": s.Unsent} {
		r.all.GetOrCreateCounter(fmt.Sprintf("scratchpass_marks_sent_total{how=%q}", how)).Add(n)
	}
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
