package served_test

import (
	"context"
	"errors"
	"fmt"
	"html"
	"net/http"
	"net/url"
	"os"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"scratchpass/lessons/class"
	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
	"scratchpass/lessons/school"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
)

func write(t testing.TB, path, text string) {
	t.Helper()
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
}

// who are those that each page is tried by, and the groups of the sign-on that they are in.
var who = []struct{ name, groups string }{
	{"nobody", ""}, {"stranger", "else"}, {"learner", "first-year"}, {"instructor", "teach-1"}, {"other", "teach-2"},
	{"head", "metal-heads"}, {"other head", "evening-heads"}, {"auditor", "inspectors"}, {"admin", "it-staff"},
}

// Every page and every form is tried by everyone; what they get is the table in the README. A page that
// is new has to be put there.
func TestWhoGetsWhat(t *testing.T) {
	c := newCampus(t)
	n := c.node(t)
	teacher := n.token("the teacher", "teach-1")
	code := n.room(teacher, "turning-1")
	learner := "https://login.example.school Ada"
	n.token("Ada", "first-year")
	inRooms := []string{"GET /desk/{code}", "GET /desk/{code}/part", "GET /desk/{code}/person/{id}", "GET /desk/{code}/answers/{n}", "GET /desk/{code}/set/{n}", "POST /desk/{code}/do", "GET /wall/{code}", "GET /r/{code}"}
	var table strings.Builder
	fmt.Fprint(&table, "| page |")
	for _, w := range who {
		fmt.Fprintf(&table, " %s |", w.name)
	}
	fmt.Fprint(&table, "\n|---|"+strings.Repeat("---|", len(who))+"\n")
	for _, route := range append(n.server.Paths(), inRooms...) {
		method, path, _ := strings.Cut(route, " ")
		fmt.Fprintf(&table, "| `%s` |", route)
		path = strings.NewReplacer("{group}", "turning-1", "{code}", code, "{form}", "grades", "{n}", "0", "{id}", "a1", "{person}", url.PathEscape(learner)).Replace(path)
		for _, w := range who {
			token := ""
			if w.name != "nobody" {
				token = n.token(w.name, w.groups)
			}
			form := url.Values(nil)
			if method == "POST" {
				form = url.Values{"person": {"nobody that there is"}, "do": {"pause"}}
			}
			status, _, head := n.ask(token, path, form)
			got := "yes"
			switch {
			case status == http.StatusSeeOther && strings.HasPrefix(head.Get("Location"), "/sign-on"):
				got = "sign"
			case status == http.StatusForbidden:
				got = "no"
			case status == http.StatusNotFound && route != "POST /people/delete": // which finds nobody, once it may look
				got = "none"
			case status >= 500:
				t.Errorf("%s by %s: %d", route, w.name, status)
			}
			fmt.Fprintf(&table, " %s |", got)
		}
		fmt.Fprintln(&table)
	}
	readme, err := os.ReadFile("../README.md")
	if err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(string(readme), table.String()) {
		t.Errorf("the README has another table than\n%s", table.String())
	}
}

// An instructor begins a room; at another node it is there; phones come in by its code without an
// account; the desk is open to who teaches the group and to no link; marks come out; what was done is
// in the audit.
func TestARoomOfAGroup(t *testing.T) {
	c := newCampus(t)
	a, b := c.node(t), c.node(t)
	teacher := a.token("Cato", "teach-1")
	has(t, a.page(teacher, "/home"), "Hello, Cato", `href="/groups/turning-1"`)
	if strings.Contains(a.page(teacher, "/home"), "turning-2") {
		t.Error("a group of others is there")
	}
	code := a.room(teacher, "turning-1")
	has(t, b.page(teacher, "/groups/turning-1"), code, "2 on the class list")
	has(t, b.page(teacher, "/desk/"+code), "Ada Brook", "Ben Carr")
	has(t, b.page("", "/r/"+code), "Come in")
	if status, _, _ := a.ask("", "/desk/"+code+"?key=x", nil); status != http.StatusForbidden {
		t.Error("a link lets someone in: ", status)
	}
	has(t, b.page(teacher, "/groups/turning-1/rooms/"+code), "OneRoster")
	has(t, b.page(teacher, "/groups/turning-1/rooms/"+code+"/results/0"), "lineItemSourcedId", ",a1,")
	has(t, b.page(teacher, "/groups/turning-1/rooms/"+code+"/grades/0"), "id,name,grade", "b2,Ben Carr")
	for _, path := range []string{"/groups/turning-2/rooms/" + code, "/groups/turning-1/rooms/ACDEFH", "/groups/turning-1/rooms/" + code + "/grades/7", "/groups/turning-1/rooms/" + code + "/other/0", "/groups/turning-1/rooms/" + code + "/grades/x"} {
		if status, _, _ := b.ask(b.token("Head", "metal-heads"), path, nil); status != http.StatusNotFound {
			t.Error(path, status)
		}
	}
	seen := a.page(a.token("Ina", "inspectors"), "/audit")
	has(t, seen, "Cato", "began a room", "opened the instructor", "gave out answers or results", code)
	if strings.Contains(seen, "Ada Brook") {
		t.Error("people of the room are in the audit")
	}
}

// Who fetches the part of an instructor's page by itself sees the keys too, and that is noted; a page
// that is open and fetches it again and again is noted once.
func TestKeysByThePart(t *testing.T) {
	c := newCampus(t)
	a, b := c.node(t), c.node(t)
	cato, hedy := a.token("Cato", "teach-1"), a.token("Hedy", "metal-heads")
	code := a.room(cato, "turning-1")
	at := func(n *node, token string, paths ...string) {
		for _, path := range paths {
			n.page(token, "/desk/"+code+path)
		}
	}
	saw := func(want ...string) {
		t.Helper()
		entries, err := a.audit.Before(t.Context(), 0, 20)
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, e := range slices.Backward(entries) {
			if e.Did == school.SawKeys {
				got = append(got, e.Name)
			}
		}
		if !slices.Equal(got, want) {
			t.Error(got, want)
		}
	}
	at(a, cato, "", "/part", "/part")
	saw("Cato")
	at(a, hedy, "/part", "/person/a1/part")
	saw("Cato", "Hedy")
	at(b, cato, "/part", "/part")
	saw("Cato", "Hedy", "Cato")
	at(b, hedy, "/person/a1/part")
	saw("Cato", "Hedy", "Cato", "Hedy")
}

// getsWrong has learners make one common error three times.
func getsWrong(t *testing.T, n *node, names ...string) {
	t.Helper()
	for _, name := range names {
		book, err := schedule.NewBook(record.In(n.db, "https://login.example.school "+name), machine.Imperial)
		if err != nil {
			t.Fatal(err)
		}
		for i := range 3 {
			if err := book.Keep(record.Answer{At: time.Now().Add(time.Duration(i) * time.Minute), Task: "compound-travel", Code: "compound-travel@1-0000000" + strconv.Itoa(i), Given: "0.05", Verdict: answer.KnownError, Slip: "times-cos"}); err != nil {
				t.Fatal(err)
			}
		}
	}
}

// An instructor sees how each learner of a group stands, and what keeps going wrong with several of them;
// links lead there, and to the record that an administrator gives out.
func TestLearnersOfAGroup(t *testing.T) {
	n := newCampus(t).node(t)
	teacher, admin := n.token("Cato", "teach-1"), n.token("Ira", "it-staff")
	n.token("Ada Brook", "first-year")
	n.token("Ben Carr", "first-year")
	getsWrong(t, n, "Ada Brook", "Ben Carr")
	n.token("Eve", "second-year")
	page := n.page(teacher, "/groups/turning-1")
	has(t, page, "Ada Brook", "Ben Carr", "What keeps going wrong", "You multiplied by the cosine.", "Learners: 2, together 6 times.")
	link := regexp.MustCompile(`href="([^"]+)">Ada Brook<`).FindStringSubmatch(page)
	if link == nil {
		t.Fatal("no link to a learner in ", page)
	}
	one := n.page(teacher, html.UnescapeString(link[1]))
	has(t, one, "<h1>Ada Brook</h1>", "Readiness of Ada Brook", "Progress of Ada Brook", "NOT YET READY", "3 times")
	for _, not := range []string{"scratchpass ", "of https"} { // commands, and what the sign-on calls her
		if strings.Contains(one, not) {
			t.Errorf("%q stands there", not)
		}
	}
	if seen, err := n.audit.Before(t.Context(), 0, 1); err != nil || len(seen) != 1 || seen[0].Did != school.SawLearner || !strings.HasSuffix(seen[0].About, " Ada Brook") {
		t.Error(seen, err)
	}
	if status, _, _ := n.ask(teacher, "/groups/turning-1/learners/"+url.PathEscape("https://login.example.school Eve"), nil); status != http.StatusNotFound {
		t.Error("a learner of another group is shown: ", status)
	}
	has(t, n.page(admin, html.UnescapeString(regexp.MustCompile(`href="(/people/[^"]+)"`).FindStringSubmatch(n.page(admin, "/people?name=Ada"))[1])), `"task":"compound-travel"`)
}

// A blueprint that an instructor keeps is there for the others of the group, to begin a room with or to
// change; one that can't be read is not kept; it goes after it was asked.
func TestSetsOfAGroup(t *testing.T) {
	n := newCampus(t).node(t)
	cato, head := n.token("Cato", "teach-1"), n.token("Hedy", "metal-heads")
	const blueprint = "set: first-depths\ntitle: First depths\nunits: in\nslots:\n- {tasks: [compound-travel]}\n"
	status, page, _ := n.ask(cato, "/groups/turning-1/rooms", url.Values{"do": {"keep"}, "blueprint": {"set: first-depths\nnonsense: 1\n"}})
	if status != http.StatusBadRequest {
		t.Error("kept what can't be read: ", status)
	}
	has(t, page, "nonsense")
	to := n.sends(cato, "/groups/turning-1/rooms", "do", "keep", "blueprint", strings.ReplaceAll(blueprint, "\n", "\r\n"), "way", "together")
	if to != "/groups/turning-1?set=first-depths#begin" {
		t.Error(to)
	}
	page = n.page(head, "/groups/turning-1")
	has(t, page, "kept by Cato", `href="/groups/turning-1?set=first-depths#begin"`)
	if strings.Contains(n.page(head, "/groups/turning-2"), "first-depths") {
		t.Error("another group has it")
	}
	has(t, n.page(head, "/groups/turning-1?set=first-depths"), blueprint)
	n.sends(head, "/groups/turning-1/rooms", "do", "keep", "blueprint", strings.Replace(blueprint, "First depths", "Depths, again", 1))
	page = n.page(cato, "/groups/turning-1?set=first-depths")
	has(t, page, "Depths, again", "kept by Hedy")
	if strings.Count(page, "kept by") != 1 {
		t.Error("it is there twice")
	}
	code := strings.TrimPrefix(n.sends(cato, "/groups/turning-1/rooms", "do", "begin", "blueprint", strings.Replace(blueprint, "First depths", "Depths, again", 1), "way", "ticket"), "/desk/")
	has(t, n.page(cato, "/desk/"+code), "Depths, again", `href="/groups/turning-1"`)
	form := url.Values{"name": {"first-depths"}}
	if _, page, _ = n.ask(cato, "/groups/turning-1/sets/delete", form); !strings.Contains(page, "Delete the blueprint first-depths?") {
		t.Error("not asked: ", page)
	}
	if status, _, _ := n.ask(cato, "/groups/turning-2/sets/delete", url.Values{"name": {"first-depths"}, "sure": {"yes"}}); status != http.StatusNotFound {
		t.Error("deleted by way of another group: ", status)
	}
	n.sends(cato, "/groups/turning-1/sets/delete", "name", "first-depths", "sure", "yes")
	for path, form := range map[string]url.Values{"/groups/turning-1?set=first-depths": nil, "/groups/turning-1/sets/delete": {"name": {"first-depths"}, "sure": {"yes"}}} {
		if status, _, _ := n.ask(cato, path, form); status != http.StatusNotFound {
			t.Error(path, status)
		}
	}
}

// That a set can't be kept for a fault of the database is for the log; nobody reads there what the
// database said.
func TestSetThatCantBeKept(t *testing.T) {
	n := newCampus(t).node(t)
	cato := n.token("Cato", "teach-1")
	if _, err := n.db.ExecContext(t.Context(), "ALTER TABLE sets ADD CONSTRAINT disk_is_full CHECK (false) NOT VALID"); err != nil {
		t.Fatal(err)
	}
	status, page, _ := n.ask(cato, "/groups/turning-1/rooms", url.Values{"do": {"keep"}, "blueprint": {"set: s\ntitle: S\nunits: in\nslots:\n- {tasks: [compound-travel]}\n"}})
	if status != http.StatusInternalServerError || strings.Contains(page, "disk_is_full") {
		t.Error(status, page)
	}
	if n.mu.Lock(); len(n.fails) != 1 || !strings.Contains(n.fails[0].Error(), "disk_is_full") {
		t.Error(n.fails)
	}
	n.fails = nil // it was meant
	n.mu.Unlock()
}

// What no database can hold is told, and is no fault of the program.
func TestUnreadable(t *testing.T) {
	n := newCampus(t).node(t)
	teacher, admin := n.token("Cato", "teach-1"), n.token("Ira", "it-staff")
	for _, path := range []string{"/groups/turning-1?set=a%00b", "/groups/turning-1?set=%ff", "/groups/turning-1/learners/a%00b"} {
		if status, _, _ := n.ask(teacher, path, nil); status != http.StatusBadRequest {
			t.Error(path, status)
		}
	}
	for _, value := range []string{"a\x00b", "\xff", strings.Repeat("x", 300<<10)} {
		if status, page, _ := n.ask(admin, "/people/delete", url.Values{"person": {value}}); status != http.StatusBadRequest || !strings.Contains(page, "be read") {
			t.Error(len(value), status)
		}
	}
}

// What can't be a room is told, and nothing that was typed is lost.
func TestRoomsThatCantBegin(t *testing.T) {
	n := newCampus(t).node(t)
	teacher := n.token("Cato", "teach-1")
	for _, row := range []struct{ tasks, blueprint, way, want string }{
		{"", "", "together", "there are no questions"},
		{"compound-travel", "set: x\n", "together", "give one of both"},
		{"compound-travle", "", "together", "compound-travle"},
		{"compound-travel", "", "somehow", "there is no way"},
		{"", "set: x\nnonsense: 1\n", "together", "nonsense"},
		{"", "set: x\ntitle: T\nunits: in\nlathe: mine.yaml\nslots:\n- {tasks: [compound-travel]}\n", "together", "lathe"},
	} {
		status, page, _ := n.ask(teacher, "/groups/turning-1/rooms", url.Values{"tasks": {row.tasks}, "blueprint": {row.blueprint}, "way": {row.way}})
		if status != http.StatusBadRequest {
			t.Error(row.want, status)
		}
		has(t, page, row.want)
		if row.tasks == "compound-travel" {
			has(t, page, `value="compound-travel" checked`)
		}
		if row.blueprint != "" {
			has(t, page, strings.Split(row.blueprint, "\n")[0]+"\n", "<details open><summary>Or a blueprint")
		}
	}
	if rooms, err := n.hall, error(nil); rooms.Opened() != 0 || err != nil {
		t.Error("a room was begun")
	}
}

// Nodes on computers whose clocks differ by minutes are of one time: a question that one of them
// closes at a time is open until then at the other, nobody is signed off, and
// what was done has times in its order.
func TestClocksThatDiffer(t *testing.T) {
	c := newCampus(t)
	ahead := c.nodeBy(t, func() time.Time { return time.Now().Add(3 * time.Minute) })
	behind := c.nodeBy(t, func() time.Time { return time.Now().Add(-3 * time.Minute) })
	teacher := behind.token("Cato", "teach-1")
	code := strings.TrimPrefix(behind.sends(teacher, "/groups/turning-1/rooms", "tasks", "compound-travel single-depth", "way", "own-pace"), "/desk/")
	behind.sends(teacher, "/desk/"+code+"/do", "do", "until", "n", "2")
	for at, name := range map[*node]string{ahead: "Ada Brook", behind: "Ben Carr"} {
		p := at.phone(code, name)
		if status, page := p.do(at, http.MethodPost, "/r/"+code+"/answer", url.Values{"set": {"0"}, "place": {"0"}, "answer": {"0.05"}}); status != http.StatusSeeOther {
			t.Error(status, page)
		}
	}
	late := ahead.token("Ada", "first-year")
	for _, n := range []*node{ahead, behind} {
		if err := n.hall.Look(t.Context(), n.journal); err != nil {
			t.Fatal(err)
		}
		l, err := n.hall.Room(t.Context(), code)
		if err != nil {
			t.Fatal(err)
		}
		l.See(func(r *class.Room) {
			for _, id := range []string{"a1", "b2"} {
				if a, ok := r.Person(id).Answers[class.Question{}]; !ok || a.Late {
					t.Errorf("the answer of %s: %+v", id, a)
				}
			}
		})
		n.page(teacher, "/desk/"+code)
		n.page(late, "/study")
	}
	entries, err := ahead.audit.Before(t.Context(), 0, 10)
	if err != nil || !slices.IsSortedFunc(entries, func(a, b school.Entry) int { return b.At.Compare(a.At) }) || len(entries) < 2 {
		t.Error(entries, err)
	}
}

// A phone at one node is not away at the other.
func TestPhonesOfAnotherNode(t *testing.T) {
	c := newCampus(t)
	a, b := c.node(t), c.node(t)
	teacher := a.token("Cato", "teach-1")
	code := a.room(teacher, "turning-1")
	a.phone(code, "Ada Brook")
	has(t, a.page(teacher, "/desk/"+code), "In the room: 1")
	if page := b.page(teacher, "/desk/"+code); !strings.Contains(page, "Phone away: 1") {
		t.Error("the other node knows of the phone already: ", page)
	}
	tick := make(chan time.Time)
	ctx, stop := context.WithCancel(t.Context())
	var met sync.WaitGroup
	met.Go(func() { a.server.Meet(ctx, tick) })
	met.Go(func() { b.server.Meet(ctx, nil) })
	for strings.Contains(b.page(teacher, "/desk/"+code), "Phone away: 1") { // it may not listen yet
		tick <- time.Now()
	}
	stop()
	met.Wait()
}

// A learner goes on at whichever node the proxy sends them to: within a sitting at the very question,
// with what was answered; a form of a page that is behind is not taken for another answer.
func TestStudyAtTwoNodes(t *testing.T) {
	c := newCampus(t)
	a, b := c.node(t), c.node(t)
	ada := a.token("Ada", "first-year")
	menu := a.page(ada, "/study")
	has(t, menu, `action="/study/answer"`)
	stale := prompt(t, menu)
	open := func(n *node, label string) { // the line of the menu with a label
		t.Helper()
		page := n.page(ada, "/study")
		found := regexp.MustCompile(`name="answer" value="(\d+)">` + label).FindStringSubmatch(page)
		if found == nil {
			t.Fatal("no ", label, " in ", page)
		}
		n.sends(ada, "/study/answer", "prompt", prompt(t, page), "answer", found[1])
	}
	open(a, "Look round")
	open(a, "Practi")
	question := a.page(ada, "/study")
	at := prompt(t, question)
	if again := prompt(t, b.page(ada, "/study")); again != at {
		t.Error("another question at the other node: ", again, at)
	}
	b.sends(ada, "/study/answer", "prompt", stale, "answer", "1") // of a menu that is long gone
	if again := prompt(t, b.page(ada, "/study")); again != at {
		t.Error("an old form was taken for an answer")
	}
	b.sends(ada, "/study/answer", "prompt", at, "answer", "1")
	behind := prompt(t, question)
	a.sends(ada, "/study/answer", "prompt", behind, "answer", "2") // the first node's page, sent late
	now := a.page(ada, "/study")
	if prompt(t, now) == at {
		t.Error("the first node does not know of the answer")
	}
	if prompt(t, b.page(ada, "/study")) != prompt(t, now) {
		t.Error("the nodes differ")
	}
	for turn := 0; ; turn++ { // from node to node, until it is marked: they may ask how sure she is
		_, answers, err := record.In(a.db, "https://login.example.school Ada").Summaries()
		if err != nil || turn == 5 {
			t.Fatal(answers, " answers, ", err)
		}
		if answers == 1 {
			break
		}
		n := []*node{a, b}[turn%2]
		n.sends(ada, "/study/answer", "prompt", prompt(t, n.page(ada, "/study")), "answer", "1")
	}
	a.sends(ada, "/study/answer", "prompt", prompt(t, a.page(ada, "/study")), "word", "stop")
	has(t, b.page(ada, "/mine.jsonl"), `"given":"1"`)
	a.sends(ada, "/sign-off")
	if status, _, head := b.ask(ada, "/study", nil); status != http.StatusSeeOther || head.Get("Location") != "/sign-on?to=%2Fstudy" {
		t.Error("signed off: ", status, head.Get("Location"))
	}
}

// All of a person goes when an administrator deletes it, after being asked; that it went stays in the
// audit, and nothing of others goes.
func TestDeletePerson(t *testing.T) {
	n := newCampus(t).node(t)
	n.token("Ada", "first-year")
	n.token("Ben", "first-year")
	for _, name := range []string{"Ada", "Ben"} {
		rec := record.In(n.db, "https://login.example.school "+name)
		moves := rec.Moves("stud", "")
		if _, err := moves.Use(1); err != nil {
			t.Fatal(err)
		}
		if err := errors.Join(rec.SetPlace("dial-book", 1), moves.Append(time.Now(), "job stud", "dress")); err != nil {
			t.Fatal(err)
		}
		has(t, n.page(n.token(name, "first-year"), "/mine.jsonl"), `"moves":"job stud\ndress\n"`)
	}
	admin := n.token("Ira", "it-staff")
	has(t, n.page(admin, "/people?name=aD"), "Ada", "first-year")
	form := url.Values{"person": {"https://login.example.school Ada"}}
	status, page, _ := n.ask(admin, "/people/delete", form)
	if status != http.StatusOK || !strings.Contains(page, "deleted for good") {
		t.Error("not asked first: ", status)
	}
	form.Set("sure", "yes")
	status, page, _ = n.ask(admin, "/people/delete", form)
	has(t, page, "Everything about Ada is deleted")
	if p, err := n.sessions.Known(t.Context(), "https://login.example.school Ada"); status != http.StatusOK || p.ID != "" || err != nil {
		t.Error(status, p, err)
	}
	for name, want := range map[string]int{"Ada": 0, "Ben": 1} {
		if places, err := record.In(n.db, "https://login.example.school "+name).Places(); len(places) != want || err != nil {
			t.Error(name, places, err)
		}
		if logs, err := record.In(n.db, "https://login.example.school "+name).Logs(); len(logs) != want || err != nil {
			t.Error(name, logs, err)
		}
	}
	entries, err := n.audit.Before(t.Context(), 0, 1)
	if err != nil || len(entries) != 1 || entries[0].Did != school.DeletedAll || entries[0].Name != "Ira" || !strings.HasSuffix(entries[0].About, " Ada") {
		t.Error(entries, err)
	}
}

// Pages are under one name, in no frame, asked for by no other site, and kept by nobody.
func TestGuards(t *testing.T) {
	n := newCampus(t).node(t)
	ada := n.token("Ada", "first-year")
	_, _, head := n.ask(ada, "/home", nil)
	if !strings.Contains(head.Get("Content-Security-Policy"), "frame-ancestors 'none'") || head.Get("Cache-Control") != "no-store" || head.Get("Strict-Transport-Security") == "" {
		t.Error(head)
	}
	for name, change := range map[string]func(r *http.Request){
		"another host":  func(r *http.Request) { r.Host = "other.example" },
		"another site":  func(r *http.Request) { r.Header.Set("Sec-Fetch-Site", "cross-site") },
		"another place": func(r *http.Request) { r.Header.Del("Sec-Fetch-Site"); r.Header.Set("Origin", "https://other.example") },
	} {
		if status := n.changed(ada, "/sign-off", change); status != http.StatusMisdirectedRequest && status != http.StatusForbidden {
			t.Error(name, status)
		}
	}
	if _, _, head := n.ask(ada, "/home", nil); head.Get("Location") != "" {
		t.Error("someone else has signed her off")
	}
}

// Someone whose record is being deleted can answer nowhere any more, for as long as that takes.
func TestSignedOffBeforeTheirRecordGoes(t *testing.T) {
	c := newCampus(t)
	n, other := c.node(t), c.node(t)
	ada, admin := n.token("Ada", "first-year"), n.token("Ira", "it-staff")
	if status, _, _ := other.ask(ada, "/study", nil); status != http.StatusOK {
		t.Fatal(status)
	}
	id := "https://login.example.school Ada"
	held, err := n.db.BeginTx(t.Context(), nil) // her record, by another program
	if err != nil {
		t.Fatal(err)
	}
	defer held.Rollback()
	if _, err := held.ExecContext(t.Context(), "SELECT pg_advisory_xact_lock(hashtextextended(current_schema() || ' record ' || $1, 0))", id); err != nil {
		t.Fatal(err)
	}
	deleted := make(chan int)
	go func() {
		status, _, _ := n.ask(admin, "/people/delete", url.Values{"person": {id}, "sure": {"yes"}})
		deleted <- status
	}()
	status := http.StatusOK
	for until := time.Now().Add(10 * time.Second); status == http.StatusOK && time.Now().Before(until); {
		status, _, _ = other.ask(ada, "/study", nil)
	}
	if status != http.StatusSeeOther {
		t.Error("while her record is deleted she goes on: ", status)
	}
	if err := held.Rollback(); err != nil {
		t.Fatal(err)
	}
	if status := <-deleted; status != http.StatusOK {
		t.Error(status)
	}
}
