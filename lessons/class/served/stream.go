package served

import (
	"fmt"
	"net/http"
	"time"

	"scratchpass/lessons/class"
)

// Streams tell pages that something has changed, never what: a page fetches that itself. So a
// page that was cut off, a restart and another node are one case.
const (
	beat     = 15 * time.Second       // a word now and then, so that who has gone is noticed
	calm     = 200 * time.Millisecond // changes that come together are told once
	writeFor = 10 * time.Second       // a phone that takes nothing for so long is let go
)

// stream sends version, whenever it is another than before, until the page has gone, the room has
// been closed or the server stops. A page whose stream has ended begins another.
func (s *Server) stream(w http.ResponseWriter, r *http.Request, l *class.Live, version func(*class.Room) string) {
	defer l.Hold()()
	out := http.NewResponseController(w)
	h := w.Header()
	h.Set("Content-Type", "text/event-stream")
	h.Set("X-Accel-Buffering", "no")
	send := func(text string) error {
		if err := out.SetWriteDeadline(time.Now().Add(writeFor)); err != nil {
			return err
		}
		if _, err := fmt.Fprint(w, text); err != nil {
			return err
		}
		return out.Flush()
	}
	last, beats := "", time.NewTicker(beat)
	defer beats.Stop()
	for !l.Left() {
		now, seq := "", int64(0)
		l.See(func(room *class.Room) { now, seq = version(room), room.Seq })
		if now != last {
			if send("data: "+now+"\n\n") != nil {
				return
			}
			last = now
			if now == nobody {
				return
			}
			if !s.pause(r, calm) {
				return
			}
		}
		select {
		case <-l.Changed(seq):
		case <-beats.C:
			if send(": beat\n\n") != nil {
				return
			}
		case <-r.Context().Done():
			return
		case <-s.stopped:
			return
		}
	}
}

// pause waits; ok is false where there is nobody to wait for.
func (s *Server) pause(r *http.Request, d time.Duration) (ok bool) {
	select {
	case <-time.After(d):
		return true
	case <-r.Context().Done():
	case <-s.stopped:
	}
	return false
}

// seatEvents is the stream of one phone.
func (s *Server) seatEvents(w http.ResponseWriter, r *http.Request, l *class.Live) {
	_, device, _ := who(l, r)
	if !knows(l, r) {
		http.Error(w, errNoDevice.Error(), http.StatusForbidden)
		return
	}
	if !s.presence.enter(device, s.o.Clock()) {
		s.tooFast(w)
		return
	}
	defer func() { s.presence.exit(device, s.o.Clock()) }()
	s.stream(w, r, l, func(room *class.Room) string {
		if p := room.Holder(device); p != nil {
			return room.Version(p, s.o.Clock())
		}
		if room.Claimed(device) != nil {
			return "waits"
		}
		return nobody
	})
}

// nobody is the last version of a phone whose name has gone to another, or was refused.
const nobody = "nobody"
