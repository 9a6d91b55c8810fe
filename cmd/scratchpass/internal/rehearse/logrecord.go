package rehearse

import (
	"strings"
	"time"

	"scratchpass/lessons/page"
	"scratchpass/lessons/record"
	"scratchpass/lessons/rehearsal"
	"scratchpass/lessons/sitting"
)

// recordLog keeps a log in the learner's record, which has those of others beside it: any computer can
// go on with it, and nothing that one holds must be given back.
type recordLog struct {
	moves   *record.Moves
	session *sitting.Session
	last    record.Log // of the job, before this sitting
	id      int64      // of the log at hand; 0 for none
}

func newRecordLog(rec *record.Record, s *sitting.Session, h *rehearsal.Rehearsal) *recordLog {
	return &recordLog{moves: rec.Moves(h.Name, record.SumOfJob(h.As)), session: s}
}

func (k *recordLog) read() (text []byte, written time.Time, err error) {
	k.last, err = k.moves.Newest()
	return []byte(k.last.Text), k.last.At, err
}

// goOn gives the log a name of its own for this sitting: who has it by the one before hears of that.
func (k *recordLog) goOn() (err error) {
	if k.id, err = k.moves.Renew(k.last.ID); err == nil {
		_, err = k.use(k.id)
	}
	return err
}

// another names a log that is to be begun.
func (k *recordLog) another() (err error) {
	if k.id, err = k.moves.New(); err == nil {
		_, err = k.use(k.id)
	}
	return err
}

// use takes a log at hand by its name.
func (k *recordLog) use(id int64) (record.Log, error) {
	k.id = id
	return k.moves.Use(id)
}

func (k *recordLog) begin(lines []string) error {
	if k.id == 0 {
		if err := k.another(); err != nil {
			return err
		}
	}
	if err := k.add(lines); err != nil || k.last.ID == 0 {
		return err
	}
	return k.session.Face.Show(page.Page{page.Paragraph{Text: k.session.Say("bench-moves-aside")}})
}

func (k *recordLog) add(lines []string) error {
	return k.session.Patiently(strings.Join(lines, "; "), func() error { return k.moves.Append(k.session.Clock(), lines...) })
}

func (k *recordLog) close() error { return nil }
