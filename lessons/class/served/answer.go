package served

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"net/http"
	"net/url"
	"strconv"
	"strings"

	"scratchpass/content"
	"scratchpass/lessons/class"
	"scratchpass/lessons/face/web"
	"scratchpass/lessons/page"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/set"
)

// mostLetters is how long an answer, or a line of someone's own words, may be.
const mostLetters = 200

// answer takes an answer, or a word that helps instead of one. It is acknowledged when it is on
// disk. One that comes late is kept too: the instructor decides.
func (s *Server) answer(w http.ResponseWriter, r *http.Request, l *class.Live) {
	id, ok := s.sender(w, r, l)
	if !ok {
		return
	}
	e, it, err := s.answered(r, l, id)
	if err != nil {
		s.refuse(w, r, http.StatusBadRequest, s.say("class-no-question"))
		return
	}
	d := draft{wish: e.Place, given: line(answerOf(r, it)), sure: e.Certainty}
	if value := line(r.PostForm.Get("use")); value != "" { // it is put into the field, and not sent
		d.given = value
		s.showSeat(w, l, id, partOf(r), d)
		return
	}
	if s.asksPass(r, l, e) {
		d.pass = true
		if passes(d.given) {
			d.given = ""
		}
		s.showSeat(w, l, id, partOf(r), d)
		return
	}
	d.aid, err = s.aid(r.Context(), l, &e, it)
	switch {
	case err != nil:
		s.trouble(w, err)
	case d.aid != nil:
		d.use = worth(e.Text, it)
		s.showSeat(w, l, id, partOf(r), d)
	case s.asksSure(r, l, e):
		d.aid, d.asked = page.Page{page.Paragraph{Text: s.say("class-sure-once")}}, true
		s.showSeat(w, l, id, "seat", d)
	default:
		s.do(w, r, l, e, "?at="+strconv.Itoa(e.Place)+"#came")
	}
}

// answerOf is what stands in the field of the answer, whatever else was sent.
func answerOf(r *http.Request, it set.Item) string {
	return web.Typed(url.Values{"answer": r.PostForm["answer"]}, sitting.PromptOf(it.Problem, it.Words))
}

// asksSure reports whether someone is to be asked once how sure they are. A script asks before
// it sends.
func (s *Server) asksSure(r *http.Request, l *class.Live, e class.Event) (asks bool) {
	if wantsJSON(r) || e.Certainty != answer.NotAsked || passes(e.Text) || r.PostForm.Get("asked") != "" {
		return false
	}
	l.See(func(room *class.Room) { asks = room.Sets[e.Set].AsksSure() })
	return asks
}

// sender is who sent something; ok is false after an error was sent.
func (s *Server) sender(w http.ResponseWriter, r *http.Request, l *class.Live) (id string, ok bool) {
	id, device, ok := who(l, r)
	if !ok {
		s.refuse(w, r, http.StatusForbidden, s.say("class-no-device"))
		return "", false
	}
	if tag := r.PostFormValue("who"); tag != "" {
		another := false
		l.See(func(room *class.Room) { another = room.Tag(id) != tag })
		if another {
			s.refuse(w, r, http.StatusConflict, s.say("class-other-person"))
			return "", false
		}
	}
	if !s.limits.mayPost(device) {
		s.tooFast(w)
		return "", false
	}
	s.presence.heard(device, s.o.Clock())
	return id, true
}

// do keeps an event, and says so: to a script in a word, else by the page that comes next.
func (s *Server) do(w http.ResponseWriter, r *http.Request, l *class.Live, e class.Event, to string) {
	if err := l.Do(r.Context(), e); err != nil {
		s.trouble(w, err)
		return
	}
	s.done(w, r, to)
}

// done says that something is kept.
func (s *Server) done(w http.ResponseWriter, r *http.Request, to string) {
	if wantsJSON(r) {
		w.Header().Set("Content-Type", "application/json")
		_ = json.NewEncoder(w).Encode(map[string]any{"saved": true}) // who has gone asks again
		return
	}
	http.Redirect(w, r, "/r/"+class.ReadCode(r.PathValue("code"))+to, http.StatusSeeOther)
}

// partOf is what a help word is answered with: to a script the seat alone.
func partOf(r *http.Request) string {
	if wantsJSON(r) {
		return "seat-part"
	}
	return "seat"
}

func wantsJSON(r *http.Request) bool { return strings.Contains(r.Header.Get("Accept"), "json") }

// refuse answers what a person can put right: to a script as it is, else on a page.
func (s *Server) refuse(w http.ResponseWriter, r *http.Request, status int, says string) {
	if wantsJSON(r) {
		http.Error(w, says, status)
		return
	}
	s.writeAs(w, status, "door", doorPage{Says: says, Code: class.ReadCode(r.PathValue("code")), Back: true})
}

// answered reads an answer from a form, and finds the question that it is to.
func (s *Server) answered(r *http.Request, l *class.Live, id string) (e class.Event, it set.Item, err error) {
	e = class.Event{Kind: class.Answered, Who: id}
	if err := r.ParseForm(); err != nil {
		return e, it, fmt.Errorf("the form can't be read: %w", err)
	}
	var errs [2]error
	e.Set, errs[0] = strconv.Atoi(r.PostForm.Get("set"))
	e.Place, errs[1] = strconv.Atoi(r.PostForm.Get("place"))
	if err := errors.Join(errs[:]...); err != nil {
		return e, it, fmt.Errorf("the form has no question: %w", err)
	}
	l.See(func(room *class.Room) {
		if e.Set < 0 || e.Set >= len(room.Sets) {
			err = fmt.Errorf("there is no set %d", e.Set)
			return
		}
		it, err = room.Sets[e.Set].Item(id, e.Place)
	})
	if err != nil {
		return e, it, err
	}
	e.Key = keyOf(r, id)
	if e.Certainty = answer.Certainty(r.PostForm.Get("sure")); !e.Certainty.Known() {
		e.Certainty = answer.NotAsked
	}
	e.Text = line(web.Typed(r.PostForm, sitting.PromptOf(it.Problem, it.Words)))
	return e, it, nil
}

// keyOf is the key that a phone gave to what it sends: what comes again with it happened once. It
// has whose it is in it, so that no one's can be another's. It is empty for none.
func keyOf(r *http.Request, id string) string {
	if key := r.PostFormValue("key"); key != "" && len(key) <= 64 {
		return id + " " + key
	}
	return ""
}

// line is someone's own words as they are kept: in a line, of a length that is read.
func line(text string) string {
	text = strings.Join(strings.Fields(content.Printable(text)), " ")
	if letters := []rune(text); len(letters) > mostLetters {
		return string(letters[:mostLetters])
	}
	return text
}

// aid is what is shown for what is no answer: a word that helps, a text that can't be read. It
// is nil for an answer, of which a sum is replaced by its value.
func (s *Server) aid(ctx context.Context, l *class.Live, e *class.Event, it set.Item) (page.Page, error) {
	var at class.At
	var err error
	l.See(func(room *class.Room) {
		if e.Set == room.Now {
			at, err = room.At(room.Person(e.Who), e.Place, s.o.Clock())
		}
	})
	if err != nil {
		return nil, err
	}
	rules := sitting.Rules{NoHints: true}
	if at.Item.Place == e.Place && at.Item.Problem != nil {
		rules = at.Rules()
	}
	asked := page.Page{s.o.Session.QuestionOf(it.Problem, it.Words)}
	shown, hint, is := s.o.Session.Aid(it.Problem, it.Words, asked, e.Text, rules)
	if hint && !at.Hinted {
		err = l.Do(ctx, class.Event{Kind: class.Hinted, Who: e.Who, Set: e.Set, Place: e.Place})
	}
	if is {
		return shown, err
	}
	if worked := sitting.WorkedOut(it.Problem, e.Text); worked != e.Text {
		e.Name, e.Text = e.Text, worked
	}
	return nil, nil
}

// call asks for the instructor.
func (s *Server) call(w http.ResponseWriter, r *http.Request, l *class.Live) {
	id, ok := s.sender(w, r, l)
	if !ok {
		return
	}
	calls := false
	l.See(func(room *class.Room) { calls = room.Person(id).Calls })
	if calls {
		s.done(w, r, "")
		return
	}
	s.do(w, r, l, class.Event{Kind: class.Called, Who: id}, "")
}

// unclear keeps a line about what is still unclear.
func (s *Server) unclear(w http.ResponseWriter, r *http.Request, l *class.Live) {
	id, ok := s.sender(w, r, l)
	if !ok {
		return
	}
	e := class.Event{Kind: class.Unclear, Who: id, Text: line(r.PostFormValue("text")), Key: keyOf(r, id)}
	asked := false
	l.See(func(room *class.Room) {
		e.Set = room.Now
		if n, err := strconv.Atoi(r.PostFormValue("set")); err == nil {
			e.Set = n
		}
		asked = e.Set >= 0 && e.Set < len(room.Sets) && room.Sets[e.Set].Way == class.Ticket
	})
	if !asked {
		s.refuse(w, r, http.StatusBadRequest, s.say("class-no-question"))
		return
	}
	s.do(w, r, l, e, "")
}

// keep says whether someone's answers go into a record under their name.
func (s *Server) keep(w http.ResponseWriter, r *http.Request, l *class.Live) {
	id, ok := s.sender(w, r, l)
	if !ok {
		return
	}
	e := class.Event{Kind: class.Keeps, Who: id}
	if r.PostFormValue("keep") == "yes" {
		e.N = 1
	}
	s.do(w, r, l, e, "")
}
