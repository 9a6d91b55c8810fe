package served

import (
	"net/http"
	"slices"

	"scratchpass/lessons/record"
	"scratchpass/lessons/school"
)

// peoplePage is who has ever signed on, to give out or to delete what is kept of them on request.
type peoplePage struct {
	People []school.Person
	Asked  string // the name that was looked for
	Sure   *school.Person
	Says   string
}

// mostFound is how many people a search shows.
const mostFound = 50

func (s *Server) people(w http.ResponseWriter, r *http.Request, _ school.Person) {
	s.peopleAs(w, r, "")
}

func (s *Server) peopleAs(w http.ResponseWriter, r *http.Request, says string) {
	page := peoplePage{Asked: r.URL.Query().Get("name"), Says: says}
	var err error
	if page.People, err = s.o.Sessions.Named(r.Context(), page.Asked, mostFound); err != nil {
		s.trouble(w, err)
		return
	}
	s.write(w, "people", page)
}

// record is all that is kept of a person, on request: for who teaches a group that they learn in, or
// for an administrator.
func (s *Server) record(w http.ResponseWriter, r *http.Request, p school.Person) {
	of, err := s.o.Sessions.Known(r.Context(), r.PathValue("person"))
	switch {
	case err != nil:
		s.trouble(w, err)
	case of.ID == "" || !s.handsOut(p, of):
		s.tell(w, http.StatusNotFound, "school-not-yours")
	default:
		s.giveOut(w, r, p, of.ID)
	}
}

// handsOut reports whether someone may give out what is kept of another.
func (s *Server) handsOut(p, of school.Person) bool {
	learns := func(group string) bool { return slices.Contains(s.o.Settings.PartsOf(of, group), school.Learner) }
	if slices.ContainsFunc(s.o.Settings.Groups(p, school.HandOut), learns) {
		return true
	}
	return s.o.Settings.May(p, school.Delete, "") // who may delete all of it may give it out first
}

// deletePerson deletes all that is kept of a person: the record, and that they were here. The audit
// keeps that it was deleted, and of whom. They are signed off first: what they answered meanwhile, at
// another node, would be kept of someone whom nobody finds any more.
func (s *Server) deletePerson(w http.ResponseWriter, r *http.Request, p school.Person) {
	of, err := s.o.Sessions.Known(r.Context(), r.PostFormValue("person"))
	if err != nil {
		s.trouble(w, err)
		return
	}
	if of.ID == "" {
		s.tell(w, http.StatusNotFound, "school-not-yours")
		return
	}
	if r.PostFormValue("sure") != "yes" {
		s.write(w, "people", peoplePage{Sure: &of})
		return
	}
	if err := s.o.Audit.Note(r.Context(), p, school.DeletedAll, of.ID); err != nil {
		s.trouble(w, err)
		return
	}
	if err := s.o.Sessions.EndAll(r.Context(), of.ID); err != nil {
		s.trouble(w, err)
		return
	}
	s.study.leave(of.ID)
	f, err := record.In(s.o.DB, of.ID).Forget()
	if err == nil {
		err = s.o.Sessions.Forget(r.Context(), of.ID)
	}
	if err != nil {
		s.trouble(w, err)
		return
	}
	s.peopleAs(w, r, s.say("school-deleted", "name", of.Name, "n", f.Answers))
}
