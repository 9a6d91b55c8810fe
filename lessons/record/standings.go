package record

import (
	"context"
	"time"

	"scratchpass/lessons/postgres"
)

// Standing is how a learner stands.
type Standing struct {
	Of      map[string]Summary // what the answers come to, by task
	Answers int
	Test    Test // the newest mixed test
	Tested  bool // there is one
}

// Standings are those of some learners in a database, by learner: however many they are, in two
// questions to it. Who has answered nothing has none.
func Standings(ctx context.Context, db *postgres.DB, learners []string) (map[string]Standing, error) {
	all := map[string]Standing{}
	learners = append([]string{}, learners...) // none is no array
	rows, err := db.QueryContext(ctx, "SELECT learner, task, state, sum FROM states WHERE learner = ANY($1)", learners)
	if err != nil {
		return nil, err
	}
	counts := map[string]*count{}
	err = eachState(rows, func(learner string) (map[string]Summary, *count) {
		if counts[learner] == nil {
			counts[learner], all[learner] = &count{}, Standing{Of: map[string]Summary{}}
		}
		return all[learner].Of, counts[learner]
	})
	if err != nil {
		return nil, err
	}
	for learner, c := range counts {
		one := all[learner]
		one.Answers = c.Answers
		all[learner] = one
	}
	rows, err = db.QueryContext(ctx, "SELECT DISTINCT ON (learner) learner, at_ms, got, of FROM tests WHERE learner = ANY($1) ORDER BY learner, at_ms DESC, rowid DESC", learners)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	for rows.Next() {
		var learner string
		var at int64
		var test Test
		if err := rows.Scan(&learner, &at, &test.Got, &test.Of); err != nil {
			return nil, err
		}
		test.At = time.UnixMilli(at)
		one := all[learner]
		one.Test, one.Tested = test, true
		all[learner] = one
	}
	return all, rows.Err()
}
