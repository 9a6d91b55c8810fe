package record

import (
	"context"
	"errors"

	"scratchpass/lessons/postgres"
)

// In is the record of a learner in a database that is open, and stays so when the record is
// closed.
func In(db *postgres.DB, learner string) *Record {
	return &Record{Learner: learner, shared: true, db: db.DB, free: func() error { return nil }}
}

// openShared opens the record of a learner on a server. There is no file to look through or to
// mend: that the server's disks are sound, and that there are copies of them, is up to whoever
// runs it. What is the learner's is looked through where that is asked for.
func openShared(address, learner string, when check) (*Record, error) {
	db, err := postgres.Open(context.Background(), address)
	if err != nil {
		return nil, err
	}
	r := In(db, learner)
	r.free = db.Close
	if when == checkedNow {
		if err := r.soundHere(); err != nil {
			return nil, errors.Join(err, db.Close())
		}
	}
	return r, nil
}

// soundHere returns an error where an answer or a rehearsal of the learner's is not as it was kept.
func (r *Record) soundHere() error {
	for _, err := range r.Answers() {
		if err != nil {
			return err
		}
	}
	_, err := r.Rehearsals()
	return err
}
