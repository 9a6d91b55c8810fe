package class

import (
	"cmp"
	"fmt"
	"slices"
	"time"

	"scratchpass/calc"
)

// Way is how a set is run.
type Way string

// The ways.
const (
	Together Way = "together" // a question at a time, for all, opened and locked by the instructor
	OwnPace  Way = "own-pace" // each as fast as they like, in a window of time if there is one
	Ticket   Way = "ticket"   // at the end of a lesson: how sure, what is unclear, no points
)

// Ways are all of them.
var Ways = []Way{Together, OwnPace, Ticket}

// ParseWay reads a way.
func ParseWay(text string) (Way, error) {
	if w := Way(text); slices.Contains(Ways, w) {
		return w, nil
	}
	return "", fmt.Errorf("there is no way %s to run a set: give one of %v", calc.Quoted(text), Ways)
}

// Room is the state of a room after some of its events.
type Room struct {
	Head Head
	Seq  int64 // of the last event that is in it
	Sets []*Asking
	Now  int // the set at hand

	Linked string   // host and port that its links lead to
	Rounds []*Round // at the bench
	round  int      // the one at hand; -1 where questions are

	Paused, Shut, Ended bool

	ended time.Time // when it was over for the last time

	people map[string]*Person
	order  []string          // ids in the order of the roster, then as they came
	device map[string]string // id by device
	gone   map[string]bool   // devices whose name another has now
	makes  Maker
}

// Maker makes a set of questions from a blueprint, for the people of a room.
type Maker func(blueprint string, people []string) (*Questions, error)

// Asking is a set of questions in a room.
type Asking struct {
	*Questions
	Way    Way
	Open   int       // the place that is at hand, when all go together; -1 before the first
	Locked bool      // it takes no more answers
	Until  time.Time // the end of the window; zero for none

	opened time.Time    // the question at hand, or the set
	shown  map[int]int  // by place: 1 for what came, and one more for each line of the working
	told   map[int]bool // by place: what came has been on the wall once, so no answer to it counts
	been   map[int]bool // by place: it was at hand
	closed map[int]bool // by place: it was at hand, and was closed then

	stopped map[int]time.Time // by place: when it took answers for the last time; none while it does
	put     map[int]bool      // by place: it took answers once
	counts  map[int]bool      // by place: the wall tells counts however few answers there are
	upTo    map[int]int       // by place: how many people were known when it was at hand first
}

// Been reports whether all were at a question before.
func (a *Asking) Been(place int) bool { return a.been[place] }

// NeverPut are the places of questions that took answers at no time: nobody was asked them.
func (a *Asking) NeverPut() map[int]bool {
	never := map[int]bool{}
	for place := range a.Places() {
		if !a.put[place] {
			never[place] = true
		}
	}
	return never
}

// putAll notes that all questions take answers, as where each goes at their own pace.
func (a *Asking) putAll() {
	for place := range a.Places() {
		a.put[place] = true
	}
}

// Told reports whether what came of a question was told to all: it takes no more answers.
func (a *Asking) Told(place int) bool { return a.told[place] }

// Shown is how much of what came of a question is on the wall: 0 for nothing, 1 for the spread
// of the answers, and one more for each line of the working.
func (a *Asking) Shown(place int) int { return a.shown[place] }

// Person is someone in the room.
type Person struct {
	ID      string
	Name    string
	Visitor bool     // by nickname, in no roster
	Device  string   // that has the name; empty before they came
	Claims  []string // other devices that want the name
	Extra   time.Duration
	Calls   bool // asks for the instructor
	Keeps   bool // wants the answers kept under this name
	Removed bool
	Is      string // the id of who this is, once they were made one; else empty

	Answers map[Question]Answer
	Hints   map[Question]bool
	Unclear map[int]string // by set
	Works   map[int]Work   // at the bench, by round

	seq    int64 // of the last event about them
	seen   Event // the last time that the instructor has seen to them
	marked map[int]marked
}

// Answer is what someone answered.
type Answer struct {
	Event
	Late    bool          // it came when the question took no more, or its working had been shown
	By      time.Duration // how late it came; 0 where that can't be said
	Changed int           // how often another came after it
	Told    bool          // what came of it was told at once: no other takes its place
}

// NewRoom is a room before its first event.
func NewRoom(h Head, makes Maker) *Room {
	r := &Room{Head: h, people: map[string]*Person{}, device: map[string]string{}, gone: map[string]bool{}, makes: makes, round: -1}
	for _, a := range h.Roster {
		r.add(&Person{ID: a.ID, Name: cmp.Or(a.Name, a.ID)})
	}
	return r
}

func (r *Room) add(p *Person) {
	p.Answers, p.Hints, p.Unclear = map[Question]Answer{}, map[Question]bool{}, map[int]string{}
	p.Works, p.marked = map[int]Work{}, map[int]marked{}
	r.people[p.ID], r.order = p, append(r.order, p.ID)
}

// Person is someone by the id; nil for nobody. Who was made one with another is that other.
func (r *Room) Person(id string) *Person {
	for p := r.people[id]; p != nil; p = r.people[p.Is] {
		if p.Is == "" {
			return p
		}
	}
	return nil
}

// Holder is who has a device; nil for nobody.
func (r *Room) Holder(device string) *Person {
	if device == "" {
		return nil
	}
	return r.Person(r.device[device])
}

// People are those in the room or on its roster, in the order of the roster and then as they
// came. Who was removed or is another now is left out.
func (r *Room) People() []*Person {
	var all []*Person
	for _, id := range r.order {
		if p := r.people[id]; !p.Removed && p.Is == "" {
			all = append(all, p)
		}
	}
	return all
}

// Everyone are all that ever were in the room, whose answers may be asked for.
func (r *Room) Everyone() []*Person {
	all := make([]*Person, len(r.order))
	for i, id := range r.order {
		all[i] = r.people[id]
	}
	return all
}

// Came are those that are counted as in the room, on all pages: who has a phone, and who has
// answered and gave it back.
func (r *Room) Came() []*Person {
	return slices.DeleteFunc(r.People(), func(p *Person) bool { return !p.came() })
}

func (p *Person) came() bool { return p.Device != "" || len(p.Answers) > 0 }

// Asking is the set that is run now; nil before the first.
func (r *Room) Asking() *Asking {
	if r.Now >= len(r.Sets) {
		return nil
	}
	return r.Sets[r.Now]
}

// Ends is when someone's time in a set is up; ok is false where there is no end.
func (r *Room) Ends(p *Person, set int) (at time.Time, ok bool) {
	a := r.Sets[set]
	if a.Until.IsZero() {
		return time.Time{}, false
	}
	return a.Until.Add(p.Extra), true
}
