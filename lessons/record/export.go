package record

import (
	"bufio"
	"database/sql"
	"encoding/json"
	"errors"
	"fmt"
	"io"
)

// Export writes the learner's answers as JSON lines, oldest first, and returns how many
// it wrote.
func (r *Record) Export(w io.Writer) (n int, err error) {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	for a, err := range r.Answers() {
		if err != nil {
			return n, err
		}
		if err := e.Encode(a); err != nil {
			return n, err
		}
		n++
	}
	return n, nil
}

// longestLine is the longest line of an export that is read, in bytes.
const longestLine = 64 << 10

// Import reads answers from JSON lines into the learner's record and makes the summaries
// anew, all or nothing; whose they were does not matter. Answers that are there already
// are left out and counted as known, so that the same export may be read twice. The error
// names the line.
func (r *Record) Import(in io.Reader, fold Fold) (added, known int, err error) {
	err = r.change(func(tx *sql.Tx) error {
		if added, known, err = readIn(tx, in, r.Learner); err != nil {
			return err
		}
		return refold(tx, r.Learner, fold)
	})
	if err != nil {
		return 0, 0, fmt.Errorf("%w; nothing was read in", err)
	}
	return added, known, nil
}

func readIn(tx *sql.Tx, in io.Reader, learner string) (added, known int, err error) {
	scanner := bufio.NewScanner(in)
	scanner.Buffer(nil, longestLine)
	line := 1
	for ; scanner.Scan(); line++ {
		if len(scanner.Bytes()) == 0 {
			continue
		}
		var a Answer
		if err := json.Unmarshal(scanner.Bytes(), &a); err != nil {
			return 0, 0, fmt.Errorf("line %d is no answer: %w", line, err)
		}
		if a.Task == "" || a.Verdict == "" || a.At.IsZero() {
			return 0, 0, fmt.Errorf("line %d is no answer: task, verdict and at are wanted", line)
		}
		a.Learner = learner
		there, err := has(tx, a)
		if err != nil {
			return 0, 0, err
		}
		if there {
			known++
			continue
		}
		if err := insert(tx, a); err != nil {
			return 0, 0, err
		}
		added++
	}
	if err := scanner.Err(); errors.Is(err, bufio.ErrTooLong) {
		return 0, 0, fmt.Errorf("line %d is no answer: it has more than %d bytes", line, longestLine)
	} else if err != nil {
		return 0, 0, err
	}
	return added, known, nil
}

// has reports whether the learner gave this answer to this problem at this time already.
func has(tx *sql.Tx, a Answer) (there bool, err error) {
	err = tx.QueryRow("SELECT EXISTS (SELECT 1 FROM answers WHERE learner = ? AND at_ms = ? AND code = ? AND given = ?)",
		a.Learner, a.At.UnixMilli(), a.Code, a.Given).Scan(&there)
	return there, err
}
