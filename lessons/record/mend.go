package record

import (
	"database/sql"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	sqlite3 "modernc.org/sqlite/lib"

	"scratchpass/quiz/files"
)

// Mended tells what became of a file that was found damaged: what could be read of it, and
// what the copy of an earlier day has besides, is in a new file under its name.
type Mended struct {
	Aside          string    // where the damaged file lies, whole
	Kept           int       // the learner's answers that are there again
	FromCopy       int       // of these, those that only the copy had
	Lost           int       // the learner's answers that are gone
	CopyOf         time.Time // when that copy was made; zero where there was none
	LostRehearsals int       // the learner's rehearsals that are gone
	Unsure         bool      // there may have been more: nothing that could be read tells how many
}

// mend makes a sound file of a damaged one, or finds that another program has done so: then
// there is nothing to tell. No other program has the file open meanwhile.
func mend(path, learner string, why error) (*Mended, error) {
	free, err := files.Lock(path+lockEnding, openWait)
	switch {
	case errors.Is(err, files.ErrHeld):
		return nil, fmt.Errorf("%w; it can't be mended while another program has it open: close that first", why)
	case err != nil: // a disk that has no locks
		free = func() error { return nil }
	}
	m, err := mendAlone(path, learner)
	if err != nil {
		err = fmt.Errorf("%w; it can't be mended: %w", why, err)
	}
	return m, errors.Join(err, free())
}

func mendAlone(path, learner string) (*Mended, error) {
	if r, err := open(path, learner); err == nil {
		err = r.sound()
		if e := r.db.Close(); err == nil {
			err = e
		}
		if err == nil {
			return nil, nil // another program was first
		}
	}
	work, err := os.MkdirTemp(filepath.Dir(path), ".scratchpass-*") // on the same disk
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(work)
	passing("damage found")
	found, m, err := salvageBoth(path, work, learner)
	if err != nil {
		return nil, err
	}
	passing("read what can be read")
	mended := filepath.Join(work, "mended.db")
	if err := write(mended, found); err != nil {
		return nil, err
	}
	passing("mended file written")
	if m.Aside, err = setAside(path, path+asideEnding+time.Now().Format("20060102-150405")); err != nil {
		return nil, err
	}
	passing("set aside")
	if err := os.Rename(mended, path); err != nil {
		return nil, err
	}
	passing("in its place")
	return m, files.SyncFolder(filepath.Dir(path))
}

// salvageBoth reads what can be read of a file and of its copy.
func salvageBoth(path, work, learner string) (salvaged, *Mended, error) {
	found, err := salvage(path, work)
	if err != nil {
		return found, nil, err
	}
	m := &Mended{Unsure: len(found.counted[learner]) == 0}
	if info, err := os.Stat(path + copyEnding); err == nil {
		older := filepath.Join(work, "older")
		if err := os.Mkdir(older, 0o700); err != nil {
			return found, nil, err
		}
		if copied, err := salvage(path+copyEnding, older); err == nil {
			m.CopyOf, m.FromCopy = info.ModTime(), found.merge(copied)[learner]
		}
	}
	m.Kept, m.Lost, m.LostRehearsals = len(found.answers[learner]), len(found.gaps(learner)), len(found.rehearsalGaps(learner))
	return found, m, nil
}

// write writes what was found into a new file.
func write(path string, found salvaged) error {
	r, err := open(path, "")
	if err != nil {
		return err
	}
	err = r.change(func(tx *sql.Tx) error {
		for _, learner := range found.learners() {
			if err := found.writeAnswers(tx, learner); err != nil {
				return err
			}
		}
		return found.writeAsides(tx)
	})
	return errors.Join(err, r.db.Close())
}

// writeAnswers writes the answers of a learner under their numbers, and the numbers of answers
// and rehearsals that are lost.
func (s salvaged) writeAnswers(tx *sql.Tx, learner string) error {
	for _, n := range slices.Sorted(maps.Keys(s.answers[learner])) {
		if err := insert(tx, s.answers[learner][n].Answer, n); err != nil {
			return err
		}
	}
	for table, gaps := range map[string][]int64{"lost": s.gaps(learner), "lost_rehearsals": s.rehearsalGaps(learner)} {
		for _, n := range gaps {
			if _, err := tx.Exec("INSERT INTO "+table+" (learner, n, at_ms, said) VALUES (?, ?, ?, 0)", learner, n, time.Now().UnixMilli()); err != nil {
				return err
			}
		}
	}
	return nil
}

// writeAsides writes the rows of the other tables. A value that can't be was spoilt: its row is
// left out.
func (s salvaged) writeAsides(tx *sql.Tx) error {
	for table, columns := range asides {
		marks := strings.Repeat(", ?", strings.Count(columns, ",")+1)[2:]
		for _, values := range s.others[table] {
			_, err := tx.Exec("INSERT OR IGNORE INTO "+table+" ("+columns+") VALUES ("+marks+")", values...)
			if err != nil && codeOf(err) != sqlite3.SQLITE_CONSTRAINT {
				return err
			}
		}
	}
	return nil
}

// passing is called at the moments at which a kill might leave something half done: tests
// kill the program there.
var passing = func(moment string) {}

// asideEnding is what stands between the name of a record and the time when it was set aside.
const asideEnding = ".damaged-"

// setAside gives a damaged record and what belongs to it a name that is free, and returns it.
// The record keeps its own name as well, until the mended one takes that: at no moment is
// there none.
func setAside(path, name string) (aside string, err error) {
	for i := 1; ; i++ {
		aside = name
		if i > 1 {
			aside = fmt.Sprintf("%s-%d", name, i)
		}
		err = os.Link(path, aside)
		if err != nil && !errors.Is(err, fs.ErrExist) { // a disk without links
			err = copyFile(path, aside)
		}
		if !errors.Is(err, fs.ErrExist) {
			break
		}
	}
	if err != nil {
		return "", fmt.Errorf("the record %s is damaged and can't be set aside: %w", path, err)
	}
	passing("the damaged file has its other name")
	for _, ending := range belongings[1:] { // they would be taken for those of the mended one
		if err := os.Rename(path+ending, aside+ending); err != nil && !errors.Is(err, fs.ErrNotExist) {
			return "", fmt.Errorf("the record %s is damaged and can't be set aside: %w", path, err)
		}
	}
	return aside, nil
}
