package served

import (
	"cmp"
	"crypto/rand"
	"fmt"
	"html/template"
	"net/http"
	"strconv"
	"strings"

	"scratchpass/content"
	"scratchpass/lessons/class"
	"scratchpass/lessons/face/web"
	"scratchpass/lessons/page"
	"scratchpass/lessons/rehearsal"
)

// onePass is the pass of a round with what is said of it.
func (s *Server) onePass(round class.Round) (rehearsal.OnePass, error) {
	words, err := s.bench()
	return rehearsal.OnePass{Flow: rehearsal.Flow{Session: s.o.Session}, OnePass: round.Pass, Words: words}, err
}

// benchSeat is what a phone shows of a bench round, or, once the lesson is over, of all in which
// its person did something.
func (s *Server) benchSeat(p *seatPage, at class.At) error {
	for _, b := range at.Did {
		o, err := s.onePass(b.Round)
		if err != nil {
			return err
		}
		p.Seat.Body = append(append(p.Seat.Body, page.Heading{Text: b.Title(o)}), b.Came(o)...)
	}
	if at.Bench == nil {
		return nil
	}
	o, err := s.onePass(at.Bench.Round)
	if err != nil {
		return err
	}
	p.Seat = at.Bench.Seat(at.Scene, o)
	p.ID = fmt.Sprint(p.Who, ".bench", at.Bench.N, ".", len(at.Bench.Work.Moves)) // what was typed is for the lathe as it stands
	return nil
}

// benchForm puts the panel of the lathe on the page, and takes a move.
func (s *Server) benchForm(p *seatPage, b class.Bench, d draft) (err error) {
	if p.Panel == nil {
		return nil
	}
	var panel template.HTML
	if panel, err = web.Panel(*p.Panel); err != nil {
		return err
	}
	p.Body += panel
	f := web.Form{To: "/r/" + p.Code + "/move", Prompt: p.Prompt, Panel: p.Panel, Given: d.given, Still: true,
		Hidden: []web.Sent{{Name: "round", Value: strconv.Itoa(b.N)}, {Name: "moves", Value: strconv.Itoa(len(b.Work.Moves))}, {Name: "who", Value: p.Who}, {Name: "key", Value: rand.Text()}}} // pressed twice, it is one move
	p.Form, err = f.Write(s.o.Words)
	return err
}

// move takes a move at the bench, or a word that helps instead of one. It is acknowledged when it
// is on disk. One that can't be read, or that is for a lathe that stands otherwise by now, is not
// kept: why is said on the page as it is now.
func (s *Server) move(w http.ResponseWriter, r *http.Request, l *class.Live) {
	id, ok := s.sender(w, r, l)
	if !ok {
		return
	}
	e, err := moveOf(r, id)
	if err != nil {
		s.refuse(w, r, http.StatusBadRequest, s.say("class-no-question"))
		return
	}
	var b class.Bench
	kept := false
	l.See(func(room *class.Room) {
		p := room.Person(id)
		if kept = room.Moved(p, e.Set, e.Key); kept {
			return
		}
		if round, n := room.Round(); round != nil {
			b = class.Bench{Round: *round, N: n, Work: room.Work(p, n)}
		}
	})
	if kept { // it comes again, because the word that it is kept was lost
		s.done(w, r, "")
		return
	}
	d, err := s.meant(r, l, b, &e, web.Typed(r.PostForm, page.Prompt{}))
	switch {
	case err != nil:
		s.trouble(w, err)
	case d.aid != nil:
		s.showSeat(w, l, id, partOf(r), d)
	default:
		s.makes(w, r, l, e)
	}
}

// makes keeps a move, and says so. Another may have come in between, from a second page of the
// phone, or the close of the round: then it is kept, and was not made.
func (s *Server) makes(w http.ResponseWriter, r *http.Request, l *class.Live, e class.Event) {
	if err := l.Do(r.Context(), e); err != nil {
		s.trouble(w, err)
		return
	}
	made := false
	l.See(func(room *class.Room) { made = room.Moved(room.Person(e.Who), e.Set, e.Key) })
	if !made {
		s.showSeat(w, l, e.Who, partOf(r), draft{wish: -1, aid: page.Page{page.Paragraph{Text: s.say("class-move-stale")}}})
		return
	}
	s.done(w, r, "")
}

// moveOf reads for which lathe a move is: of which round, after how many moves.
func moveOf(r *http.Request, id string) (e class.Event, err error) {
	e = class.Event{Kind: class.Moved, Who: id, Key: cmp.Or(keyOf(r, id), rand.Text())}
	if e.Set, err = strconv.Atoi(r.PostFormValue("round")); err != nil {
		return e, err
	}
	e.N, err = strconv.Atoi(r.PostFormValue("moves"))
	return e, err
}

// meant puts into an event the move that was typed, as the bench writes it. Where there is none,
// or it is not taken, the draft has what is to be shown instead.
func (s *Server) meant(r *http.Request, l *class.Live, b class.Bench, e *class.Event, typed string) (d draft, err error) {
	say := func(text string) draft {
		return draft{wish: -1, given: given(typed), aid: page.Page{page.Paragraph{Text: text}}}
	}
	if b.Round.Name == "" || b.N != e.Set {
		return say(s.say("class-move-closed")), nil
	}
	o, err := s.onePass(b.Round)
	if err != nil {
		return d, err
	}
	if aid, hint := helped(o, b, typed); aid != nil {
		if hint {
			err = l.Do(r.Context(), class.Event{Kind: class.Nudged, Who: e.Who, Set: e.Set})
		}
		return draft{wish: -1, aid: aid}, err
	}
	if e.N != len(b.Work.Moves) { // the number of a move that was tapped is of another list
		return say(s.say("class-move-stale")), nil
	}
	move, wants, err := o.Move(b.Work.Bench, typed)
	switch {
	case wants != "":
		d = say(o.Figure(wants))
		d.given = wants + " "
		return d, nil
	case err != nil:
		return say(s.say("bench-unread", "problem", strings.TrimSuffix(err.Error(), "?"))), nil
	}
	e.Text = move.Write(o.Plan.Job.System())
	refused := class.Taken
	l.See(func(room *class.Room) { refused = room.Refuses(room.Person(e.Who), *e, move) })
	if refused != class.Taken {
		return say(s.say("class-move-" + string(refused))), nil
	}
	return d, nil
}

// given is what was typed as it is shown again: not what nobody types.
func given(typed string) string {
	if len(typed) > mostLetters {
		return ""
	}
	return content.OneLine(typed)
}

// helped is what a word that helps is answered with; nil for no such word.
func helped(o rehearsal.OnePass, b class.Bench, typed string) (aid page.Page, hint bool) {
	word, _ := page.Typed(typed, []string{page.WordHelp, page.WordRepeat, rehearsal.WordCard, page.WordHint})
	switch {
	case word == page.WordHelp:
		return o.AllMoves(b.Work.Bench), false
	case word == page.WordRepeat:
		return o.Asks(), false
	case word == rehearsal.WordCard:
		return o.Card(), false
	case word == page.WordHint && b.Round.Hints && b.Work.End == class.GoesOn:
		return page.Page{page.Paragraph{Text: o.Hint(b.Work.Bench)}}, true
	}
	aid, _ = o.Explained(typed)
	return aid, false
}
