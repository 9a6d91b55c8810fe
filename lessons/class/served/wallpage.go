package served

import (
	"html/template"
	"net/http"
	"time"

	"scratchpass/lessons/class"
	"scratchpass/lessons/face/web"
	"scratchpass/lessons/page"
)

// wallData is what all may see.
type wallData struct {
	class.Wall
	Version  string
	Address  string
	Until    string // a time of day; empty for none
	QR       template.HTML
	Body     template.HTML
	Bars     []bar
	Working  template.HTML
	Cautions template.HTML
	Round    *wallRound // the bench round at hand; nil where questions are
}

// bar is how many gave one kind of answer.
type bar struct {
	Says  string
	Times int
	Of    int
	Right bool
}

// mostBars is how many common errors the wall tells apart; the rest are counted together.
const mostBars = 4

func (s *Server) wallPage(w http.ResponseWriter, r *http.Request, l *class.Live) {
	d, err := s.wallOf(l)
	if err != nil {
		s.trouble(w, err)
		return
	}
	s.live(w, r, "wall", d.Version, d)
}

// wallOf makes the wall.
func (s *Server) wallOf(l *class.Live) (d wallData, err error) {
	l.See(func(room *class.Room) {
		d.Version = s.deskVersion(room)
		if d.Wall, err = room.Wall(); err == nil {
			d.Round, err = s.wallRoundOf(room, s.o.Clock())
		}
	})
	if err != nil {
		return d, err
	}
	d.Address = s.o.Address
	if !d.Wall.Until.IsZero() {
		d.Until = d.Wall.Until.In(time.Local).Format("15:04")
	}
	if d.Place < 0 && !d.Ended {
		if d.QR, err = qrSVG(s.o.Link(d.Head.Code)); err != nil {
			return d, err
		}
	}
	if d.Item.Problem == nil || d.Round != nil {
		return d, nil
	}
	d.Bars = s.bars(d.Wall)
	for _, part := range []struct {
		to *template.HTML
		p  page.Page
	}{{&d.Body, d.Asked(s.o.Session)}, {&d.Working, d.Wall.Working(s.o.Session)}, {&d.Cautions, d.Wall.Cautions(s.o.Session)}} {
		if *part.to, err = web.Blocks(part.p, page.Prompt{}); err != nil {
			return d, err
		}
	}
	return d, nil
}

// bars are what came of the question: what was right first, then the common errors. It is empty
// where too few have answered, and where what came is not shown.
func (s *Server) bars(w class.Wall) []bar {
	if w.Shown == 0 || w.Few() {
		return nil
	}
	all := []bar{{s.say("class-bar-right"), w.Spread.Right, w.Answered, true}}
	other := w.Spread.Wrong
	for i, m := range w.Spread.Mistakes() {
		if i >= mostBars {
			other += m.Times
			continue
		}
		all = append(all, bar{w.Says(m), m.Times, w.Answered, false})
	}
	for _, rest := range []struct {
		phrase string
		times  int
	}{{"class-bar-partly", w.Spread.Partly}, {"class-bar-other", other}, {"class-bar-passed", w.Spread.Passed}, {"class-bar-open", w.Spread.Open}} {
		if rest.times > 0 {
			all = append(all, bar{s.say(rest.phrase), rest.times, w.Answered, false})
		}
	}
	return all
}
