package served

import (
	"net/http"
	"strings"
	"testing"

	"scratchpass/lessons/class"
)

// After one more question the main button leads back to the set that was left. The next blueprint is
// not the main button then, and to start it is asked about first.
func TestTheDeskLeadsBack(t *testing.T) {
	r := newDeskRoom(t, "end", class.Together, 6)
	r.server.o.Further = []Further{{"Exit ticket", "set: dials\ntitle: Exit ticket\nunits: in\nslots:\n- {tasks: [single-depth]}\n", class.Ticket}}
	r.come(0, 6)
	r.step(3)
	r.do("do", "ask", "task", "no-cloth-on-turning-work", "level", "1")
	for range 9 {
		_, desk := r.page("/desk/ACDEFH")
		if strings.Contains(desk, "Back to question") {
			break
		}
		r.step(1)
	}
	page := r.shows("/desk/ACDEFH", []string{"Back to question 2 of 10"}, []string{"Nothing is left to do here."})
	if strings.Contains(page, `value="start" class="next"`) {
		t.Error("the next blueprint is the main button")
	}
	if status, body := r.do("do", "start", "n", "0", "way", "ticket"); status != http.StatusOK || !strings.Contains(text(body), "not asked yet: 9") || !strings.Contains(body, `name="way" value="ticket"`) {
		t.Error("it is not asked first: ", status, text(body))
	}
	r.step(1)
	r.shows("/desk/ACDEFH", []string{"Question 2 of 10 is open"}, nil)
}
