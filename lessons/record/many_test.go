package record_test

import (
	"context"
	"fmt"
	"iter"
	"math/rand/v2"
	"os"
	"strconv"
	"testing"
	"time"

	"github.com/jackc/pgx/v5"

	"scratchpass/lessons/postgres"
	"scratchpass/lessons/postgres/postgrestest"
	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
)

// differing is how many learners' answers are drawn one by one; those of the others are the same
// under another name, so that very many are written in minutes.
const differing = 20

// TestManyLearners fills a database with the records of very many learners:
//
//	SCRATCHPASS_MANY=postgres://user@host/name SCRATCHPASS_LEARNERS=10000x1000 \
//		go test ./lessons/record -run TestManyLearners -timeout 2h -v
//
// They stay there, for the benchmarks of lessons/school/served. Without the first it fills a schema
// of its own with a few. Each record is as if it had been kept answer by answer.
func TestManyLearners(t *testing.T) {
	address, learners, answers := os.Getenv("SCRATCHPASS_MANY"), 30, 40
	if address == "" {
		address = postgrestest.Address(t)
	} else if _, err := fmt.Sscanf(os.Getenv("SCRATCHPASS_LEARNERS"), "%dx%d", &learners, &answers); err != nil {
		t.Skip("there are to be no more: SCRATCHPASS_LEARNERS says how many, such as 10000x1000")
	}
	db, err := postgres.Open(t.Context(), address)
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	began := time.Now()
	fillMany(t, db, address, learners, answers)
	t.Logf("%d learners with %d answers each in %s", learners, answers, time.Since(began).Round(time.Second))
	for _, n := range []int{0, learners / 2, learners - 1} {
		r := record.In(db, learnerName(n))
		if old, err := r.NeedsRefold(schedule.FoldVersion); old || err != nil {
			t.Error("the summaries are not those of the answers: ", old, err)
		}
		if got := len(kept(t, r)); got != answers { // each has the right sum
			t.Errorf("%d answers", got)
		}
	}
	tell(t, db)
}

// learnerName is the n-th learner as the school names them: by issuer and subject.
func learnerName(n int) string { return "https://login.example.school learner-" + strconv.Itoa(n) }

// manyOf is one learner's record, ready to be written under any name.
type manyOf struct {
	answers []record.Answer
	states  [][2]string // task and text
}

func fillMany(t *testing.T, db *postgres.DB, address string, learners, answers int) {
	t.Helper()
	var drawn []manyOf
	for n := range min(differing, learners) {
		drawn = append(drawn, oneFilled(t, n, answers))
	}
	c, err := pgx.Connect(t.Context(), address)
	if err != nil {
		t.Fatal(err)
	}
	defer c.Close(context.Background())
	states := func(yield func([]any) bool) {
		for n := range learners {
			for _, s := range drawn[n%len(drawn)].states {
				if !yield(record.StateRow(learnerName(n), s[0], s[1])) {
					return
				}
			}
		}
	}
	kept := func(yield func([]any) bool) {
		for i := range answers { // as they come: everyone a little each day
			for n := range learners {
				a := drawn[n%len(drawn)].answers[i]
				a.Learner = learnerName(n)
				if !yield(record.AnswerRow(a, int64(i+1))) {
					return
				}
			}
		}
	}
	for _, w := range []struct {
		table   string
		columns []string
		rows    iter.Seq[[]any]
	}{{"answers", record.AnswerColumns, kept}, {"states", record.StateColumns, states}} {
		next, stop := iter.Pull(w.rows)
		_, err := c.CopyFrom(t.Context(), pgx.Identifier{w.table}, w.columns, pgx.CopyFromFunc(func() ([]any, error) {
			row, _ := next()
			return row, nil // nil ends it
		}))
		stop()
		if err != nil {
			t.Fatal(err)
		}
	}
	if _, err := db.ExecContext(t.Context(), "ANALYZE answers, states"); err != nil {
		t.Fatal(err)
	}
}

// oneFilled is a learner who practises forty problems a day, on what is best to practise, and is right
// four times in five.
func oneFilled(t *testing.T, seed, answers int) (one manyOf) {
	t.Helper()
	random := rand.New(rand.NewPCG(uint64(seed), 1))
	items, named := schedule.Catalogue(machine.Imperial), map[string]*problem.Task{}
	for _, task := range tasks.All() {
		named[task.Name] = task
	}
	fold := schedule.Fold(items)
	of := map[string]record.Summary{}
	var recent []string
	for n := range answers {
		at := time.Date(2026, 1, 5+n/40, 17, 0, 0, 0, time.UTC).Add(time.Duration(n%40) * time.Minute)
		task := items[random.IntN(len(items))].Task
		if next, ok := schedule.Next(items, of, recent, at); ok {
			task = next.Item.Task
		}
		recent = append(recent, task)
		a := answered(t, random, named[task], at)
		of[task] = fold(of[task], a, n+1)
		one.answers = append(one.answers, a)
	}
	one.states = record.StateTexts(of, answers, schedule.FoldVersion)
	return one
}

func answered(t *testing.T, random *rand.Rand, task *problem.Task, at time.Time) record.Answer {
	t.Helper()
	system := machine.Imperial
	if !task.Allows(system) {
		system = machine.Metric
	}
	p, err := problem.New(task, problem.NewCode(task.Name, 1, system, random.Uint32(), machine.DefaultLathe(system)))
	if err != nil {
		t.Fatal(err)
	}
	a := record.Answer{At: at, Task: task.Name, Code: p.Code.String(), Given: p.Expected.Text(), Verdict: answer.Right, Points: 1, Seconds: float64(20 + random.IntN(100)),
		Situation: p.Values.Situation(), Key: p.Expected.Text(), Content: "00000000"}
	if random.IntN(5) == 0 {
		a.Given, a.Verdict, a.Points = "0.0613", answer.SafeWrong, 0
	}
	return a
}

// tell tells how large the tables and their indexes are.
func tell(t *testing.T, db *postgres.DB) {
	t.Helper()
	rows, err := db.QueryContext(t.Context(), `SELECT c.relname, c.reltuples, pg_table_size(c.oid) / 1000000, i.relname, pg_relation_size(i.oid) / 1000000
		FROM pg_class c JOIN pg_index x ON x.indrelid = c.oid JOIN pg_class i ON i.oid = x.indexrelid
		WHERE c.relname IN ('answers', 'states') AND pg_table_is_visible(c.oid) ORDER BY 1, 4`)
	if err != nil {
		t.Fatal(err)
	}
	defer rows.Close()
	for rows.Next() {
		var table, index string
		var tuples float64
		var size, indexSize int64
		if err := rows.Scan(&table, &tuples, &size, &index, &indexSize); err != nil {
			t.Fatal(err)
		}
		t.Logf("%s: %.0f rows, %d MB; %s %d MB", table, tuples, size, index, indexSize)
	}
	if err := rows.Err(); err != nil {
		t.Fatal(err)
	}
}
