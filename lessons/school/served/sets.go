package served

import (
	"errors"
	"net/http"
	"net/url"

	"scratchpass/lessons/school"
)

func (s *Server) sets() school.Sets { return school.Sets{DB: s.o.DB, Clock: s.o.Clock} }

// keepSet keeps a blueprint that was sent, under the name of its set. One that can't be read is not kept:
// it would be found out before a class.
func (s *Server) keepSet(w http.ResponseWriter, r *http.Request, p school.Person, given begun) {
	group := r.PathValue("group")
	read, err := s.readBlueprint(given.text())
	if err == nil && len(given.Tasks) > 0 {
		err = errors.New("there are a blueprint and tasks: the blueprint alone can be kept")
	}
	if err != nil {
		s.groupAs(w, r, p, http.StatusBadRequest, given, err)
		return
	}
	err = s.sets().Keep(r.Context(), group, school.Kept{Name: read.Set, Blueprint: given.text()}, p)
	switch {
	case errors.Is(err, school.ErrManySets):
		s.groupAs(w, r, p, http.StatusBadRequest, given, err)
		return
	case err != nil: // what the database says is for the log
		s.trouble(w, err)
		return
	}
	http.Redirect(w, r, "/groups/"+group+"?set="+url.QueryEscape(read.Set)+"#begin", http.StatusSeeOther)
}

// setPage asks whether a set is to go.
type setPage struct{ Group, Name string }

// deleteSet deletes a set that the group keeps, after it was asked.
func (s *Server) deleteSet(w http.ResponseWriter, r *http.Request, _ school.Person) {
	group, name := r.PathValue("group"), r.PostFormValue("name")
	if r.PostFormValue("sure") != "yes" {
		s.write(w, "set", setPage{group, name})
		return
	}
	err := s.sets().Delete(r.Context(), group, name)
	switch {
	case errors.Is(err, school.ErrNoSet):
		s.tell(w, http.StatusNotFound, "school-no-set")
	case err != nil:
		s.trouble(w, err)
	default:
		http.Redirect(w, r, "/groups/"+group, http.StatusSeeOther)
	}
}
