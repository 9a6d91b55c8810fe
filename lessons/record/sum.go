package record

import (
	"database/sql"
	"encoding/binary"
	"fmt"
	"hash/crc64"
	"math"
	"time"
)

// row is an answer as it lies in the file.
type row struct {
	id int64 // in the file
	Answer
	n   int64 // the learner's first is 1, and none is left out
	sum int64 // over all the rest, to notice damage that the database does not
}

// table is the polynomial of ECMA-182.
var table = crc64.MakeTable(crc64.ECMA)

// seal is the sum over what is kept of an answer, but for the sum itself. The order and the
// form never change: sums that were written have to hold.
func (w row) seal() int64 {
	h := crc64.New(table)
	var number [8]byte
	putInt := func(x int64) {
		binary.LittleEndian.PutUint64(number[:], uint64(x))
		h.Write(number[:]) // a hash never returns an error
	}
	putText := func(s string) {
		putInt(int64(len(s)))
		h.Write([]byte(s))
	}
	putText(w.Learner)
	for _, x := range []int64{w.n, w.At.UnixMilli(), int64(zoneOf(w.At)), flag(w.Hint), int64(math.Float64bits(w.Points)), int64(math.Float64bits(w.Seconds))} {
		putInt(x)
	}
	for _, s := range []string{w.Task, w.Code, w.Given, string(w.Verdict), w.Slip, w.Cause, string(w.Certainty), w.Situation, w.Key, w.Content} {
		putText(s)
	}
	return int64(h.Sum64())
}

// zoneOf is how many seconds east of Greenwich a time was given.
func zoneOf(t time.Time) int {
	_, offset := t.Zone()
	return offset
}

// moment is a time as it was where it was given.
func moment(ms, zone int64) time.Time {
	t := time.UnixMilli(ms)
	if _, here := t.Zone(); int64(here) == zone {
		return t // with the name that the zone has here
	}
	return t.In(time.FixedZone("", int(zone)))
}

// sealAll gives the answers of an older form what the newest has. Where they were given is
// not known: the days are taken to be those of the place where the computer is.
func sealAll(tx *sql.Tx) error {
	for w, err := range everyRow(tx) {
		if err != nil {
			return err
		}
		w.At = time.UnixMilli(w.At.UnixMilli())
		if _, err := tx.Exec("UPDATE answers SET zone_s = ?, sum = ? WHERE id = ?", zoneOf(w.At), w.seal(), w.id); err != nil {
			return err
		}
	}
	return sealTests(tx)
}

// sealTests is sealAll for mixed tests.
func sealTests(tx *sql.Tx) error {
	rows, err := readAll(tx, "SELECT rowid, learner, at_ms, got, of FROM tests")
	if err != nil {
		return err
	}
	for _, row := range rows {
		if _, err := tx.Exec("UPDATE tests SET sum = ? WHERE rowid = ?", sealOf(row[1:]...), row[0]); err != nil {
			return err
		}
	}
	return nil
}

// sealOf is the sum over some values of one row of another table.
func sealOf(values ...any) int64 {
	h := crc64.New(table)
	for _, v := range values {
		fmt.Fprintf(h, "%q ", fmt.Sprint(v))
	}
	return int64(h.Sum64())
}

// spoilt says that an answer is not as it was kept.
type spoilt struct {
	learner string
	n       int64
}

func (e spoilt) Error() string {
	return fmt.Sprintf("answer %d of %q is not as it was kept: the file is damaged", e.n, e.learner)
}
