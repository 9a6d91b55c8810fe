package class

import (
	"fmt"
	"slices"
	"strings"
	"time"
)

// Apply goes on with the next event. Events that no longer fit, because others were quicker,
// change nothing: of two phones that take one name, the second waits. A set or a bench round that
// can't be made is an error, and so is an event out of its order; the room is as before then.
func (r *Room) Apply(e Event) error {
	if e.Seq != r.Seq+1 {
		return fmt.Errorf("event %d of room %s comes after event %d", e.Seq, r.Head.Code, r.Seq)
	}
	if begin, ok := begins[e.Kind]; ok {
		if err := begin(r, e); err != nil {
			return err
		}
	}
	r.Seq = e.Seq
	if do, ok := ofRoom[e.Kind]; ok {
		do(r, e)
		return nil
	}
	if do, ok := ofSet[e.Kind]; ok && e.Set >= 0 && e.Set < len(r.Sets) {
		a := r.Sets[e.Set]
		do(a, e)
		if _, had := a.upTo[a.Open]; !had && a.Open >= 0 {
			a.upTo[a.Open] = len(r.order)
		}
		r.Now = e.Set
		r.toQuestions()
		return nil
	}
	if p := r.Person(e.Who); p != nil {
		if do, ok := ofPerson[e.Kind]; ok {
			do(r, p, e)
			p.seq = e.Seq
		}
	}
	return nil
}

// begins are the events that may be errors: what they begin may be impossible to make.
var begins = map[Kind]func(*Room, Event) error{Asked: (*Room).asked, Benched: (*Room).benched}

// ofRoom is what events do that are about the whole room.
var ofRoom = map[Kind]func(*Room, Event){
	Paused:  func(r *Room, _ Event) { r.Paused = true },
	Resumed: func(r *Room, _ Event) { r.Paused = false },
	Shut:    func(r *Room, _ Event) { r.Shut = true },
	Unshut:  func(r *Room, _ Event) { r.Shut = false },
	Ended:   (*Room).end,
	Goes:    func(r *Room, _ Event) { r.Ended = false },
	Joined:  (*Room).joined,
	Linked:  func(r *Room, e Event) { r.Linked = e.Text },
	Halted:  (*Room).halted,
}

// ofSet is what events do that are about one of its sets.
var ofSet = map[Kind]func(*Asking, Event){
	Ran: func(a *Asking, e Event) {
		if w, err := ParseWay(e.Text); err == nil {
			a.Way, a.Locked, a.Until = w, false, time.Time{}
			a.free(e)
			if w != Together {
				a.putAll()
			}
		}
	},
	Opened: func(a *Asking, e Event) {
		if e.Place >= 0 && e.Place < a.Places() {
			a.stop(a.Open, e.At) // of the question that is left
			if e.N == 0 {
				delete(a.stopped, e.Place)
			}
			a.Open, a.Locked, a.opened = e.Place, e.N > 0, e.At
			a.been[e.Place], a.closed[e.Place] = true, a.Locked
			a.put[e.Place] = a.put[e.Place] || !a.Locked
		}
	},
	Turned: func(*Asking, Event) {},
	Locked: (*Asking).lock,
	Freed:  (*Asking).free,
	Showed: func(a *Asking, e Event) {
		a.shown[e.Place] = max(0, e.N)
		a.counts[e.Place] = a.counts[e.Place] || e.Name == WithCounts
		if e.N > 0 {
			a.stop(e.Place, e.At)
			a.told[e.Place], a.closed[e.Place] = true, true
			a.Locked = a.Locked || e.Place == a.Open
		}
	},
	Until: func(a *Asking, e Event) { a.Until, _ = time.Parse(time.RFC3339, e.Text) }, // none ends it
}

// ofPerson is what events do that are about someone.
var ofPerson = map[Kind]func(*Room, *Person, Event){
	Longer:  func(_ *Room, p *Person, e Event) { p.Extra = time.Duration(e.N) * time.Minute },
	Let:     (*Room).let,
	Refused: func(_ *Room, p *Person, e Event) { p.Claims = without(p.Claims, e.Text) },
	Renamed: func(_ *Room, p *Person, e Event) { p.Name = e.Text },
	Merged:  (*Room).merged,
	Removed: func(r *Room, p *Person, _ Event) {
		delete(r.device, p.Device)
		p.Removed, p.Device, p.Calls = true, "", false
	},
	Left:     (*Room).left,
	Answered: (*Room).answered,
	Counted: func(_ *Room, p *Person, e Event) {
		if a, ok := p.Answers[e.question()]; ok {
			a.Late = false
			p.Answers[e.question()] = a
		}
	},
	Hinted:  func(_ *Room, p *Person, e Event) { p.Hints[e.question()] = true },
	Called:  func(_ *Room, p *Person, _ Event) { p.Calls = true },
	Seen:    func(_ *Room, p *Person, e Event) { p.Calls, p.seen = false, e },
	Unclear: func(_ *Room, p *Person, e Event) { p.Unclear[e.Set] = e.Text },
	Keeps:   func(_ *Room, p *Person, e Event) { p.Keeps = e.N > 0 },
	Moved:   (*Room).moved,
	Nudged:  (*Room).hintedAtBench,
}

func (r *Room) asked(e Event) error {
	q, err := r.makes(e.Text, r.Head.ids())
	if err != nil {
		return err
	}
	way, err := ParseWay(e.Name)
	if err != nil {
		return err
	}
	a := &Asking{Questions: q, Way: way, Open: -1, opened: e.At,
		shown: map[int]int{}, told: map[int]bool{}, been: map[int]bool{}, closed: map[int]bool{}, put: map[int]bool{}, upTo: map[int]int{}, counts: map[int]bool{}, stopped: map[int]time.Time{}}
	if way != Together {
		a.putAll()
	}
	r.Sets = append(r.Sets, a)
	r.Now = len(r.Sets) - 1
	r.toQuestions()
	return nil
}

// joined gives a device a name. One that another device has already waits for the instructor.
func (r *Room) joined(e Event) {
	if r.Shut || r.Ended {
		return
	}
	p := r.Person(e.Who)
	if p == nil {
		if r.onRoster(e.Name) || strings.TrimSpace(e.Name) == "" || r.called(e.Name) || r.visitors() >= mostVisitors {
			return
		}
		r.add(&Person{ID: e.Who, Name: e.Name, Visitor: true})
		p = r.people[e.Who]
	}
	p.seq = e.Seq
	switch {
	case p.Device == e.Text:
	case p.Device != "":
		if !slices.Contains(p.Claims, e.Text) { // who asked last is there to be asked back
			p.Claims = append(p.Claims[max(0, len(p.Claims)-mostClaims+1):len(p.Claims):len(p.Claims)], e.Text)
		}
	default:
		r.give(p, e.Text)
		p.Removed = false
	}
}

// mostClaims is how many devices can wait for one name.
const mostClaims = 5

// left makes a phone nobody's again. The name is free, so that who comes back to this phone, or
// another, goes on where they were.
func (r *Room) left(p *Person, e Event) {
	p.Claims = without(p.Claims, e.Text)
	if e.Text != "" && p.Device == e.Text {
		delete(r.device, e.Text)
		p.Device = ""
	}
}

// give gives a device a name, and takes it from who had it before.
func (r *Room) give(p *Person, device string) {
	if before := r.Holder(device); before != nil && before != p {
		before.Device = ""
	}
	if p.Device != "" && p.Device != device {
		r.gone[p.Device] = true
	}
	delete(r.gone, device)
	delete(r.device, p.Device)
	p.Device, r.device[device] = device, p.ID
	p.Claims = without(p.Claims, device)
}

func (r *Room) let(p *Person, e Event) {
	if slices.Contains(p.Claims, e.Text) {
		r.give(p, e.Text)
	}
}

// merged makes two people one: a visitor turns out to be someone on the roster. Where both
// have answered, the answer of who is kept stays.
func (r *Room) merged(p *Person, e Event) {
	to := r.Person(e.Text)
	if to == nil || to == p {
		return
	}
	for q, a := range p.Answers {
		if _, has := to.Answers[q]; !has && !p.Visitor { // a visitor's numbers were others
			to.Answers[q] = a
		}
	}
	to.mergeWork(p)
	if to.Device == "" && p.Device != "" {
		r.give(to, p.Device)
	}
	delete(r.device, p.Device)
	p.Is, p.Device = to.ID, ""
	to.seq = e.Seq // marks are made again, and the phone is told
}

// answered takes an answer. Where what came is told at once, the first one counts, which is late
// for good if it came late: more than its mark has been told by then. Else the last that came in
// time counts.
func (r *Room) answered(p *Person, e Event) {
	if e.Set < 0 || e.Set >= len(r.Sets) || e.Place < 0 || e.Place >= r.Sets[e.Set].Places() {
		return
	}
	q := e.question()
	a := Answer{Event: e, Late: !r.Takes(p, q, e.At), By: r.lateBy(p, q, e.At), Told: r.Sets[q.Set].AtOnce() && r.Sets[q.Set].Way != Together}
	before, has := p.Answers[q]
	switch {
	case !has:
	case before.Told, a.Told, a.Late && !before.Late:
		return
	case before.Text == a.Text && before.Certainty == a.Certainty && before.Late == a.Late: // a form sent twice
		return
	default:
		a.Changed = before.Changed + 1
	}
	p.Answers[q] = a
}

func (r *Room) onRoster(name string) bool {
	return slices.ContainsFunc(r.Head.Roster, func(a Apprentice) bool { return plainName(a.Name) == plainName(name) })
}

func without(all []string, one string) []string {
	return slices.DeleteFunc(slices.Clone(all), func(s string) bool { return s == one })
}
