package served

import (
	"html/template"
	"net/http"
	"slices"

	"scratchpass/lessons/face/web"
	"scratchpass/lessons/page"
	"scratchpass/lessons/record"
	"scratchpass/lessons/school"
)

// learnerPage is how one learner of a group stands: what is missing, and what keeps going wrong.
type learnerPage struct {
	Group    string
	Title    string
	Person   school.Person
	Ready    template.HTML
	Progress template.HTML
	HandOut  bool // all that is kept of them may be given out
}

// learner is the page of one learner, for who sees how their group stands.
func (s *Server) learner(w http.ResponseWriter, r *http.Request, p school.Person) {
	g, _, _ := s.o.Settings.Group(r.PathValue("group"))
	of, err := s.o.Sessions.Known(r.Context(), r.PathValue("person"))
	if err != nil {
		s.trouble(w, err)
		return
	}
	if !slices.Contains(s.o.Settings.PartsOf(of, g.Name), school.Learner) {
		s.tell(w, http.StatusNotFound, "school-not-yours")
		return
	}
	if err := s.o.Audit.Note(r.Context(), p, school.SawLearner, of.ID); err != nil {
		s.trouble(w, err)
		return
	}
	shown := learnerPage{Group: g.Name, Title: g.Title, Person: of, HandOut: s.o.Settings.May(p, school.HandOut, g.Name)}
	if shown.Ready, shown.Progress, err = s.stands(of); err != nil {
		s.trouble(w, err)
		return
	}
	s.write(w, "learner", shown)
}

// stands is how far a learner is from the lathe, and what their record comes to.
func (s *Server) stands(of school.Person) (ready, all template.HTML, err error) {
	v, err := s.view()
	if err != nil {
		return "", "", err
	}
	v = v.Of(record.In(s.o.DB, of.ID), of.Name)
	now := s.o.Clock()
	far, err := v.Ready(now)
	if err != nil {
		return "", "", err
	}
	if ready, err = web.Blocks(far.Whole(v.Speaker()), page.Prompt{}); err != nil {
		return "", "", err
	}
	p, err := v.Page(now, true)
	if err != nil {
		return "", "", err
	}
	all, err = web.Blocks(p, page.Prompt{})
	return ready, all, err
}
