package served

import (
	"context"
	"net/http"
	"strconv"
	"time"

	"scratchpass/lessons/face/web"
	"scratchpass/lessons/school"
	"scratchpass/lessons/school/oneroster"
)

// sentPage is what came of sending the marks of a set to the school's book of grades.
type sentPage struct {
	Group, Code, Title string
	Set                int
	oneroster.Sent
	Visitors []string // of whom nothing was sent: they are on no list
	Why      string   // it broke off; empty where it did not
}

// longestSend is how long a sending may take. What is not sent by then is sent by the next.
const longestSend = 50 * time.Second

// sends reports whether marks of a group can be sent to the school's book.
func (s *Server) sends(g school.Group) bool { return s.o.Book != nil && g.Class != "" }

// send sends the marks of a set. It goes on if who sends goes away meanwhile: half of a class in the
// book is worse than all of it.
func (s *Server) send(w http.ResponseWriter, r *http.Request, p school.Person) {
	g, _, _ := s.o.Settings.Group(r.PathValue("group"))
	n, err := strconv.Atoi(r.PathValue("n"))
	if err != nil || !s.sends(g) {
		s.tell(w, http.StatusNotFound, "school-not-yours")
		return
	}
	m, ok := s.marksIn(w, r, p, n)
	if !ok {
		return
	}
	ctx, cancel := context.WithTimeout(context.WithoutCancel(r.Context()), longestSend)
	defer cancel()
	page := sentPage{Group: g.Name, Code: m.code, Title: m.Title, Set: n, Visitors: m.Visitors,
		Sent: s.o.Book.Send(ctx, oneroster.Marks{Room: s.o.Settings.Address + "/r/" + m.code, Set: n, Class: g.Class, Title: m.Title, Date: m.began, Of: m.Of})}
	s.o.Sent(page.Sent)
	status := http.StatusOK
	if page.Broke != nil {
		page.Why, status = web.Problem(page.Broke), http.StatusBadGateway
	}
	s.writeAs(w, status, "sent", page)
}
