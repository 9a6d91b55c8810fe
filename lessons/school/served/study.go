package served

import (
	"context"
	"crypto/rand"
	"errors"
	"fmt"
	"hash/crc32"
	"net/http"
	"runtime/debug"
	"strconv"
	"sync"
	"sync/atomic"
	"time"

	"scratchpass/lessons/face/web"
	"scratchpass/lessons/page"
	"scratchpass/lessons/record"
	"scratchpass/lessons/school"
)

// studyIdle is how long a study that nobody looks at stays on a node. What was answered is in the
// record, and a sitting that was going on goes on from there.
const studyIdle = 30 * time.Minute

// study is one learner's study at this node.
type study struct {
	mu    sync.Mutex // held by who serves it, from the look at what is stored until that is known again
	talk  *web.Talk  // nil before the first
	leave context.CancelFunc
	ended chan struct{}
	used  time.Time
	name  string       // of the talk: no other has it
	place string       // how far the stored sitting was when this node had last gone on with it
	told  *atomic.Bool // that another node has gone on with it: the talk has ended by that
	gone  bool         // it was dropped: what is begun in it now nobody would end
}

// studies are those that go on at this node.
type studies struct {
	run   func(who school.Person, at *web.Talk) error
	place func(who string) (string, error)
	clock func() time.Time
	fail  func(error)

	mu   sync.Mutex
	of   map[string]*study
	gone bool // this node is stopping
}

// errLeft says that someone has left their study.
var errLeft = errors.New("the study was left")

// errStopping says that this node takes no more: another one does.
var errStopping = errors.New("this node is stopping")

// with serves the study of someone at this node, one request at a time. One whose sitting another node
// has gone on with in the meantime is begun anew, from what is stored. errLeft where they have left it.
func (s *studies) with(ctx context.Context, p school.Person, serve func(one *study)) error {
	one, err := s.find(p.ID)
	if err != nil {
		return err
	}
	return s.in(ctx, one, p, serve)
}

// in is with in a study that was found.
func (s *studies) in(ctx context.Context, one *study, p school.Person, serve func(one *study)) error {
	one.mu.Lock()
	defer one.mu.Unlock()
	if one.gone { // they signed off while this request waited
		return errLeft
	}
	place, err := s.place(p.ID)
	if err != nil {
		return err
	}
	if one.talk != nil && one.over() && !one.told.Load() { // they have left: the next time it is begun anew
		one.talk = nil
		return errLeft
	}
	if one.talk == nil || one.place != place || one.over() {
		one.end()
		stop, leave := context.WithCancel(context.Background())
		one.talk, one.leave, one.ended, one.name, one.told = web.NewTalk(stop), leave, make(chan struct{}), rand.Text(), new(atomic.Bool)
		go s.going(p, one.talk, one.ended, one.told)
		one.talk.View(ctx) // what the node before this one had begun to write is written by then
		if one.place, err = s.place(p.ID); err != nil {
			return err
		}
	}
	serve(one)
	place, err = s.place(p.ID)
	if err == nil {
		one.place = place
	}
	return err
}

// prompt is how forms name what is asked: within a sitting by how far that is and by what is asked there,
// so that another node can take the answer where it asks the same; else by this talk, so that no other
// does.
func (one *study) prompt(v web.View) string {
	if one.place != "" {
		return fmt.Sprintf("%s.%08x", one.place, crc32.ChecksumIEEE([]byte(v.Prompt.Text)))
	}
	return one.name + "." + strconv.Itoa(v.Number)
}

// find is the study of someone, begun or not. What nobody has looked at for a while is ended.
func (s *studies) find(who string) (*study, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.gone {
		return nil, errStopping
	}
	now := s.clock()
	for id, one := range s.of {
		if now.Sub(one.used) > studyIdle {
			go one.drop()
			delete(s.of, id)
		}
	}
	one := s.of[who]
	if one == nil {
		one = &study{}
		s.of[who] = one
	}
	one.used = now
	return one, nil
}

func (s *studies) going(p school.Person, at *web.Talk, ended chan struct{}, told *atomic.Bool) {
	defer close(ended)
	defer func() { // what goes wrong with one learner's study must not end the others'
		if p := recover(); p != nil {
			s.fail(fmt.Errorf("a study broke off: %v\n%s", p, debug.Stack()))
		}
		at.End()
	}()
	err := s.run(p, at)
	if told.Store(errors.Is(err, record.ErrElsewhere)); err != nil && !told.Load() && !errors.Is(err, page.ErrStopped) {
		s.fail(err)
	}
}

func (one *study) over() bool {
	select {
	case <-one.ended:
		return true
	default:
		return false
	}
}

// end ends the talk, if there is one, and waits for it.
func (one *study) end() {
	if one.talk != nil {
		one.leave()
		<-one.ended
	}
}

// drop is end when nobody is served.
func (one *study) drop() {
	one.mu.Lock()
	defer one.mu.Unlock()
	one.gone = true
	one.end()
}

// leave ends someone's study at this node.
func (s *studies) leave(who string) {
	s.mu.Lock()
	one := s.of[who]
	delete(s.of, who)
	s.mu.Unlock()
	if one != nil {
		one.drop()
	}
}

// stop ends all of them, and waits for them.
func (s *studies) stop() {
	s.mu.Lock()
	all := s.of
	s.of, s.gone = nil, true
	s.mu.Unlock()
	for _, one := range all {
		one.drop()
	}
}

// studyAt is the path of a learner's own study.
const studyAt = "/study"

func (s *Server) studyPage(w http.ResponseWriter, r *http.Request, p school.Person) {
	s.atStudy(w, r, p, web.Show)
}

func (s *Server) studyAnswer(w http.ResponseWriter, r *http.Request, p school.Person) {
	s.atStudy(w, r, p, web.Take)
}

func (s *Server) atStudy(w http.ResponseWriter, r *http.Request, p school.Person, do func(http.ResponseWriter, *http.Request, *web.Talk, web.Options)) {
	served := false
	err := s.study.with(r.Context(), p, func(one *study) {
		do(w, r, one.talk, web.Options{At: studyAt, Words: s.words, Prompt: one.prompt})
		served = true
	})
	switch {
	case errors.Is(err, errLeft):
		http.Redirect(w, r, "/home", http.StatusSeeOther)
	case err != nil && served: // the next request looks again
		s.o.Fail(err)
	case err != nil:
		s.trouble(w, err)
	}
}

// mine is all that is kept of who asks, as an export has it.
func (s *Server) mine(w http.ResponseWriter, r *http.Request, p school.Person) {
	s.giveOut(w, r, p, p.ID)
}

// giveOut sends all that is kept of someone.
func (s *Server) giveOut(w http.ResponseWriter, r *http.Request, p school.Person, of string) {
	if err := s.o.Audit.Note(r.Context(), p, school.GaveOut, of); err != nil {
		s.trouble(w, err)
		return
	}
	w.Header().Set("Content-Type", "application/jsonl; charset=utf-8")
	w.Header().Set("Content-Disposition", "attachment; filename=record.jsonl")
	if _, err := record.In(s.o.DB, of).Export(w); err != nil {
		s.o.Fail(err)
	}
}
