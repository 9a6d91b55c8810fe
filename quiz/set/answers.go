package set

import (
	"bytes"
	"encoding/json"
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"unicode"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/files"
)

// Given is one answer that came back.
type Given struct {
	Code      string // of the sheet, or of the problem where the apprentice worked on a screen
	Item      int    // as printed, from 1; 0 with a problem's code
	Text      string
	Certainty answer.Certainty
	Who       string // whose it is: the name or id in the row, or the file it came in
	ID        string // in the row, where there is one
	Row       bool   // Who stands in a row beside the answer
	Comma     bool   // the file is of a country that writes decimals with a comma
	File      string // that it came in
	Line      int    // of the file, from 1; 0 where there is none
}

// Where is the file and the row of an answer, for errors.
func (g Given) Where() string {
	if g.Line == 0 {
		return g.File
	}
	return fmt.Sprintf("%s, row %d", g.File, g.Line)
}

// typed reports whether an answer was typed to a problem on a screen, not written on paper.
func (g Given) typed() bool { return g.Item == 0 }

// MostAnswers is how many answers are marked at once, in one file or several.
const MostAnswers = 250_000

// mostAnswerBytes is the longest file of them.
const mostAnswerBytes = 16 << 20

// ReadAnswers reads answers in one of three forms:
//   - a table, a row an answer: code, item, answer, and sure where it was asked
//   - a table, a row an apprentice: code, 1, 2, 3, ...
//   - the answer file that quiz --out writes: JSON lines
func ReadAnswers(path string, note func(Note)) ([]Given, error) {
	text, err := files.Read(path, mostAnswerBytes)
	if err != nil {
		return nil, err
	}
	return parseAnswers(path, text, note)
}

// parseAnswers is ReadAnswers for a text.
func parseAnswers(file string, text []byte, note func(Note)) ([]Given, error) {
	if note == nil {
		note = func(Note) {}
	}
	if !isWorkbook(text) {
		plain, err := decoded(file, text, func(Note) {})
		if err == nil && bytes.HasPrefix(bytes.TrimSpace(plain), []byte("{")) {
			return jsonAnswers(file, plain)
		}
	}
	t := table{file: file}
	head, err := eachRow(file, text, MostAnswers, note, func(head header, r line) error {
		if head.has("code") && head.totals(r, "code") {
			note(Note{Says: "set-note-totals", File: file, Row: r.row, Text: strings.TrimSpace(strings.Join(r.cells, " "))})
			return nil
		}
		if !head.has("code", "item", "answer") {
			return t.wide(head, r)
		}
		return t.long(head, r)
	})
	if err == nil && !head.has("code") { // and no row has said so
		err = noColumns(file, head)
	}
	if err != nil {
		return nil, err
	}
	return t.answers, t.wrong.err()
}

func noColumns(file string, head header) error {
	return fmt.Errorf("%s: the columns are %s: give code, item, answer (a row an answer) or code, 1, 2, 3 (a row an apprentice)", file, calc.Quoted(strings.Join(head.names, ", ")))
}

// table is a CSV of answers while it is read.
type table struct {
	file    string
	answers []Given
	wrong   faults

	known          []string    // columns of a row an answer; nil before the first
	columns, sures map[int]int // of a row an apprentice; nil before the first
}

// absent reports whether a row says that no paper came back; that it has answers all the same
// is an error.
func (t *table) absent(head header, r line) bool {
	said := strings.ToLower(head.of(r, "handed_in"))
	switch said {
	case "", "yes", "y", "true", "1":
		return false
	case "no", "n", "false", "0":
	default:
		t.wrong.add(rowError(t.file, r.row, "handed_in %s: give yes, no or nothing", calc.Quoted(said)))
		return true
	}
	for i, cell := range r.cells {
		name := columnKey(head.names[i])
		if name != "code" && name != "item" && !slices.Contains(rowColumns, name) && !blank(cell) {
			t.wrong.add(rowError(t.file, r.row, "handed_in is no, and yet there is an answer: %s", calc.Quoted(cell)))
		}
	}
	return true
}

// add takes an answer of one row.
func (t *table) add(head header, r line, item int, text string, sure answer.Certainty) {
	t.answers = append(t.answers, Given{Code: cleanCode(head.of(r, "code")), Item: item, Text: answerText(text), Certainty: sure,
		Who: head.who(r), ID: strings.TrimSpace(content.Printable(head.theID(r))), Row: true, Comma: head.comma, File: t.file, Line: r.row})
}

// long reads a row that is an answer.
func (t *table) long(head header, r line) error {
	if t.known == nil {
		t.known = append([]string{"code", "item", "answer", "sure"}, rowColumns...)
		if err := t.checkLong(head); err != nil {
			return err
		}
	}
	if err := head.nameless(t.file, r); err != nil {
		return err
	}
	if t.absent(head, r) {
		return nil
	}
	item, isSure, ok := question(head.of(r, "item"))
	sure, known := readSure(head.of(r, "sure"))
	switch {
	case !ok || isSure:
		t.wrong.add(rowError(t.file, r.row, "item %s: give the number of a question", calc.Quoted(head.of(r, "item"))))
	case !known:
		t.wrong.add(sureError(t.file, r.row, "sure", head.of(r, "sure")))
	default:
		t.add(head, r, item, head.of(r, "answer"), sure)
	}
	return nil
}

// rowColumns are those that may stand beside the answers: whose they are, and remarks, which
// are nobody's answer.
var rowColumns = []string{"name", "id", "form", "first name", "last name", "id number", "handed_in", "remarks"}

// checkLong refuses columns in which something would be lost.
func (t *table) checkLong(head header) error {
	if i := slices.IndexFunc(head.names, func(name string) bool { _, _, ok := question(name); return ok }); i >= 0 {
		return fmt.Errorf("%s: beside the columns item and answer stands a column %s, and what stands in it would be lost: give a row an answer, or a row an apprentice", t.file, calc.Quoted(head.names[i]))
	}
	err := head.only(t.file, t.known)
	if err != nil && head.has("points") {
		err = fmt.Errorf("%w; points of your own stand in a file of decisions: code, item, points, reason", err)
	}
	return err
}

// isNumber reports whether the name of a column is the number of a question.
func isNumber(name string) bool {
	name = strings.TrimSpace(name)
	return name != "" && !strings.ContainsFunc(name, func(r rune) bool { return !unicode.IsNumber(r) })
}

// cutInTwo finds a number whose decimal comma has parted it into two cells: 0 and 0714.
func cutInTwo(cells []string) (first, second string, ok bool) {
	for i := range len(cells) - 1 {
		first, second = strings.TrimSpace(cells[i]), strings.TrimSpace(cells[i+1])
		if isNumber(first) && isNumber(second) && len(second) > 1 && second[0] == '0' {
			return first, second, true
		}
	}
	return "", "", false
}

// readSure reads how sure someone is, as the sheet has it or in one word: "fairly sure",
// "would bet the part on it", "guess".
func readSure(text string) (sure answer.Certainty, known bool) {
	for _, word := range strings.Fields(strings.ToLower(text)) {
		if c := answer.Certainty(word); c.Known() {
			return c, true
		}
	}
	return answer.NotAsked, strings.TrimSpace(text) == ""
}

func sureError(file string, row int, column, text string) error {
	return rowError(file, row, "%s %s: give guess, fairly, bet or nothing", column, calc.Quoted(text))
}

// Kept is one line of an answer file.
type Kept struct {
	Code      string           `json:"code"`
	Given     string           `json:"given"`
	Certainty answer.Certainty `json:"certainty,omitempty"`
	Hint      bool             `json:"hint,omitempty"`
	Seconds   float64          `json:"seconds"`
}

func jsonAnswers(file string, text []byte) ([]Given, error) {
	who := strings.TrimSuffix(filepath.Base(file), filepath.Ext(file))
	var all []Given
	var wrong faults
	row := 0
	for raw := range bytes.Lines(bytes.TrimPrefix(text, []byte("\ufeff"))) {
		row++
		if raw = bytes.TrimSpace(raw); len(raw) == 0 {
			continue
		}
		var k Kept
		if err := json.Unmarshal(raw, &k); err != nil || k.Code == "" || !k.Certainty.Known() {
			wrong.add(rowError(file, row, "this is no line of an answer file: %s", calc.Quoted(string(raw[:min(len(raw), 400)]))))
			continue
		}
		if len(all) >= MostAnswers {
			return nil, fmt.Errorf("%s has more than %d answers", file, MostAnswers)
		}
		all = append(all, Given{Code: k.Code, Text: answerText(k.Given), Certainty: k.Certainty, Who: who, File: file, Line: row})
	}
	return all, wrong.err()
}

// answerText is what was written, without what a terminal would obey, and no longer
// than an answer is.
func answerText(text string) string {
	const most, bytes = 200, 4000
	if len(text) > bytes {
		text = strings.ToValidUTF8(text[:bytes], "")
	}
	text = strings.TrimSpace(content.Printable(strings.ReplaceAll(text, "\n", " ")))
	if len(text) <= most {
		return text
	}
	runes := []rune(text)
	return string(runes[:min(len(runes), most)])
}
