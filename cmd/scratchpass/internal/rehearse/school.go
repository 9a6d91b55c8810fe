package rehearse

import (
	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/record"
	"scratchpass/lessons/rehearsal"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/bench"
)

// Kept is a rehearsal of a job that ships, with its moves in the learner's record. As a sitting it is
// stored by its job and the name of its log alone: all else is played from that, at whichever computer
// it goes on.
type Kept struct {
	Job  string
	Log  int64 // record.Log.ID
	Live bool

	run    *cli.Run
	record *record.Record
}

// InRecord are rehearsals with their moves in a record.
func InRecord(r *cli.Run, rec *record.Record) Kept { return Kept{run: r, record: rec} }

// Name is under which it is stored.
func (k Kept) Name() string { return "rehearsal" }

// Farewell is what is said to someone who leaves in the middle of it.
func (k Kept) Farewell(st *sitting.Sitting) string { return st.Say("bench-stopped") }

// Begin goes to the bench with a job that is chosen there. What was broken off is offered again.
func (k Kept) Begin(s *sitting.Session) (err error) {
	flow := rehearsal.Flow{Session: s}
	if k.Job, err = flow.ChooseJob(); err != nil {
		return err
	}
	h, log, err := k.at(s)
	if err != nil {
		return err
	}
	l := &moveLog{kept: log, session: s, rehearsal: h}
	if err := l.takeUp(&call{}); err != nil {
		return err
	}
	if l.resumed {
		k.Live, err = h.Bench.Live, log.goOn()
	} else if k.Live, err = flow.ChooseClock(); err == nil {
		err = log.another()
	}
	if err != nil {
		return err
	}
	k.Log = log.id
	_, err = s.Run(k)
	return err
}

// at is the rehearsal before its first move, and what its moves are kept in.
func (k Kept) at(s *sitting.Session) (*rehearsal.Rehearsal, *recordLog, error) {
	run := *k.run
	if written, err := s.Library.Job(k.Job); err == nil && written.Lathe != "" { // whatever units the school works in
		run.Units = ""
	}
	h, job, err := findJob(&run, s.Library, k.Job, &jobFlags{})
	if err != nil {
		return nil, nil, err
	}
	h.Bench = bench.New(job)
	return &h, newRecordLog(k.record, s, &h), nil
}

// Run plays what its log has, and goes on from there.
func (k Kept) Run(st *sitting.Sitting) error {
	h, log, err := k.at(st.Session)
	if err != nil {
		return err
	}
	h.Bench.Live = k.Live
	if _, _, err := log.read(); err != nil {
		return err
	}
	there, err := log.use(k.Log)
	if err != nil {
		return err
	}
	l := &moveLog{kept: log, open: there.Text != "", session: st.Session, rehearsal: h}
	if l.open {
		played, ok := playedLog(h, []byte(there.Text))
		if !ok {
			return sitting.ErrChanged
		}
		h.Bench, h.TakenBack = played.Bench, played.TakenBack
	}
	h.Keep = l.keep
	return rehearsal.Flow{Session: st.Session}.Run(h)
}
