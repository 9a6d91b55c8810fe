package school

import "slices"

// Person is someone who has signed on.
type Person struct {
	ID     string   // the issuer of their sign-on and their subject there: names may be shared, or change
	Name   string   // as the sign-on gives it
	Groups []string // of the sign-on that they are in
}

// Act is something that one may or may not do.
type Act string

// The acts. Those about a group are of one group; a person's own record is always theirs to use, to
// take along and to delete.
const (
	Study     Act = "study"      // learn and practise, with a record of their own
	Watch     Act = "watch"      // see how the people of a group stand
	Teach     Act = "teach"      // begin rooms of a group, run them, and see keys before they are told
	Grade     Act = "grade"      // change marks of a group, and give out its results
	HandOut   Act = "hand-out"   // give someone all that is kept of them, on request
	Delete    Act = "delete"     // delete all that is kept of someone, on request
	ReadAudit Act = "read-audit" // see who looked at keys, changed marks, gave out or deleted
	Run       Act = "run"        // see how the program does: nodes, rooms, sign-ons
)

// Acts are all of them.
var Acts = []Act{Study, Watch, Teach, Grade, HandOut, Delete, ReadAudit, Run}

// ofGroup are the acts that are about one group.
var ofGroup = []Act{Watch, Teach, Grade, HandOut}

// Part is what someone is in a school, or in one group of it.
type Part string

// The parts.
const (
	Learner       Part = "learner"
	Instructor    Part = "instructor" // of a group
	Head          Part = "head"       // of the department that a group is in
	Auditor       Part = "auditor"
	Administrator Part = "administrator"
)

// Parts are all of them.
var Parts = []Part{Learner, Instructor, Head, Auditor, Administrator}

// may is what each part may do: of its own group or department where the act is about one.
var may = map[Part][]Act{
	Learner:       {Study},
	Instructor:    {Study, Watch, Teach, Grade, HandOut},
	Head:          {Study, Watch, Teach, Grade, HandOut},
	Auditor:       {ReadAudit},
	Administrator: {HandOut, Delete, ReadAudit, Run},
}

// PartsOf are the parts that someone has with regard to a group; without a name, those in the whole
// school and in any group of it.
func (s Settings) PartsOf(p Person, group string) []Part {
	in := func(groups []string) bool {
		return slices.ContainsFunc(groups, func(g string) bool { return slices.Contains(p.Groups, g) })
	}
	has := map[Part]bool{Administrator: in(s.Administrators), Auditor: in(s.Auditors)}
	for _, d := range s.Departments {
		for _, g := range d.Groups {
			if group == "" || g.Name == group {
				has[Learner] = has[Learner] || in(g.Learners)
				has[Instructor] = has[Instructor] || in(g.Instructors)
				has[Head] = has[Head] || in(d.Heads)
			}
		}
	}
	return slices.DeleteFunc(slices.Clone(Parts), func(p Part) bool { return !has[p] })
}

// May reports whether someone may do something. An act about a group wants the name of one, which
// there is; what a part of the whole school may do it may do in each.
func (s Settings) May(p Person, act Act, group string) bool {
	if slices.Contains(ofGroup, act) {
		if _, _, ok := s.Group(group); !ok {
			return false
		}
	} else {
		group = ""
	}
	return slices.ContainsFunc(s.PartsOf(p, group), func(part Part) bool { return slices.Contains(may[part], act) })
}

// Groups are the names of those of which someone may do something, in the order of the settings.
func (s Settings) Groups(p Person, act Act) (names []string) {
	for _, g := range s.AllGroups() {
		if s.May(p, act, g.Name) {
			names = append(names, g.Name)
		}
	}
	return names
}
