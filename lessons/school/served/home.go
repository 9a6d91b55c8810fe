package served

import (
	"net/http"
	"strconv"

	"scratchpass/lessons/school"
)

// homePage is where someone who has signed on can go.
type homePage struct {
	Person school.Person
	Study  bool
	Groups []groupLink
	Audit  bool
	People bool
	Nobody bool // the sign-on knows them, and they have no part here
}

// groupLink is a group in a list.
type groupLink struct{ Name, Title, Department string }

func (s *Server) home(w http.ResponseWriter, _ *http.Request, p school.Person) {
	may := func(act school.Act) bool { return s.o.Settings.May(p, act, "") }
	h := homePage{Person: p, Study: may(school.Study), Audit: may(school.ReadAudit), People: may(school.Delete), Nobody: len(s.o.Settings.PartsOf(p, "")) == 0}
	for _, name := range s.o.Settings.Groups(p, school.Watch) {
		g, d, _ := s.o.Settings.Group(name)
		h.Groups = append(h.Groups, groupLink{g.Name, g.Title, d.Name})
	}
	s.write(w, "home", h)
}

// auditPage is a page of the audit.
type auditPage struct {
	Entries []school.Entry
	Older   int64 // before which the next page begins; 0 for none
}

// auditRows is how many entries a page has.
const auditRows = 100

func (s *Server) audit(w http.ResponseWriter, r *http.Request, _ school.Person) {
	before, _ := strconv.ParseInt(r.URL.Query().Get("before"), 10, 64) // nothing sensible: from the latest on
	entries, err := s.o.Audit.Before(r.Context(), before, auditRows)
	if err != nil {
		s.trouble(w, err)
		return
	}
	page := auditPage{Entries: entries}
	if len(entries) == auditRows {
		page.Older = entries[auditRows-1].Number
	}
	s.write(w, "audit", page)
}
