package served_test

import (
	"errors"
	"fmt"
	"net/url"
	"os"
	"regexp"
	"strings"
	"testing"
	"time"

	"scratchpass/lessons/postgres/postgrestest"
	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
	"scratchpass/lessons/school"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
)

// manyLearners is a school whose learners have their records already: those that TestManyLearners of
// lessons/record has written to the database SCRATCHPASS_MANY, else thirty with a few answers. They are
// in classes of thirty, and the first class is the group turning-1.
func manyLearners(b *testing.B) (*node, int) {
	b.Helper()
	address := os.Getenv("SCRATCHPASS_MANY")
	own := address == ""
	if own {
		address = postgrestest.Address(b)
	}
	n := campusAt(b, address).node(b)
	if own {
		for i := range 30 {
			keepSome(b, n, fmt.Sprint("https://login.example.school learner-", i))
		}
	}
	_, err := n.db.ExecContext(b.Context(), `INSERT INTO people (id, name, groups, seen_ms)
		SELECT learner, 'Learner ' || i, CASE WHEN i < 30 THEN '["first-year"]' ELSE '["class-' || i / 30 || '"]' END, 0
		FROM (SELECT learner, CAST(split_part(learner, '-', 2) AS int) AS i FROM states WHERE task = '') AS known
		ON CONFLICT DO NOTHING`)
	if err != nil {
		b.Fatal(err)
	}
	var people int
	if err := n.db.QueryRowContext(b.Context(), "SELECT count(*) FROM people").Scan(&people); err != nil {
		b.Fatal(err)
	}
	return n, people
}

func keepSome(b *testing.B, n *node, learner string) {
	b.Helper()
	book, err := schedule.NewBook(record.In(n.db, learner), machine.Imperial)
	if err != nil {
		b.Fatal(err)
	}
	for i, it := range schedule.Catalogue(machine.Imperial)[:5] {
		if err := book.Keep(record.Answer{At: time.UnixMilli(1_700_000_000_000 + int64(i)*60_000), Task: it.Task, Code: fmt.Sprintf("%s@1-%08x", it.Task, i), Given: "1", Verdict: answer.Wrong}); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkMany are the pages that hang on how much is kept: an instructor's page of thirty learners and
// that of one of them, and a learner's way from an answer to the next problem.
func BenchmarkMany(b *testing.B) {
	n, people := manyLearners(b)
	b.Logf("%d learners", people)
	teacher := n.token("Cato", "teach-1")
	page := n.page(teacher, "/groups/turning-1")
	if got := strings.Count(page, "/groups/turning-1/learners/"); got != 30 {
		b.Fatal(got, " learners of the group")
	}
	for name, path := range map[string]string{
		"group-of-30": "/groups/turning-1",
		"one-learner": "/groups/turning-1/learners/" + url.PathEscape("https://login.example.school learner-7"),
	} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				n.page(teacher, path)
			}
		})
	}
	b.Run("answer-and-next-problem", func(b *testing.B) { answerOn(b, n) })
	b.Run("sign-on-to-study", func(b *testing.B) {
		for b.Loop() {
			token := signOnAgain(b, n, "learner-9")
			n.page(token, "/study")
			n.sends(token, "/sign-off")
			n.server.Leave("https://login.example.school learner-9")
		}
	})
}

// signOnAgain signs someone on whose name and groups stay what they are.
func signOnAgain(b *testing.B, n *node, subject string) string {
	b.Helper()
	p, err := n.sessions.Known(b.Context(), "https://login.example.school "+subject)
	if err == nil && p.ID == "" {
		err = errors.New("nobody is called " + subject)
	}
	if err != nil {
		b.Fatal(err)
	}
	token, err := n.sessions.Begin(b.Context(), school.Person{ID: p.ID, Name: p.Name, Groups: p.Groups})
	if err != nil {
		b.Fatal(err)
	}
	return token
}

// practise is the line of a menu that leads to problems.
var practise = regexp.MustCompile(`name="answer" value="(\d+)">(?:Answer what is due|Practi)`)

// answerOn practises. What is told as next-ms is the form that brings an answer's verdict and the page with
// the next problem that comes of it; a problem may take another form before, which asks how sure one is.
func answerOn(b *testing.B, n *node) {
	ada := signOnAgain(b, n, "learner-8")
	answers := func() int {
		_, answers, err := record.In(n.db, "https://login.example.school learner-8").Summaries()
		if err != nil {
			b.Fatal(err)
		}
		return answers
	}
	page, had := n.page(ada, "/study"), answers()
	var next time.Duration
	problems := 0
	for b.Loop() {
		marked := false
		for forms := 0; !marked; forms++ {
			if forms == 20 {
				b.Fatal("nothing is marked any more: ", page)
			}
			choice, name := "1", "answer"
			if found := practise.FindStringSubmatch(page); found != nil {
				choice = found[1]
			} else if strings.Contains(page, `<button class="primary" name="answer" value=""`) { // nothing but to go on
				choice = ""
			} else if forms > 3 { // "1" is no answer to it
				choice, name = "pass", "word"
			}
			began := time.Now()
			n.sends(ada, "/study/answer", "prompt", prompt(b, page), name, choice)
			page = n.page(ada, "/study")
			took := time.Since(began)
			if marked = answers() > had; marked {
				had++
				problems++
				next += took
			}
		}
	}
	b.ReportMetric(next.Seconds()*1000/float64(problems), "next-ms")
}
