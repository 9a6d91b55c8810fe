package set

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"path/filepath"
	"slices"
	"strconv"
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
//   - CSV, a row an answer: code, item, answer, and sure where it was asked
//   - CSV, a row an apprentice: code, 1, 2, 3, ...
//   - the answer file that quiz --out writes: JSON lines
func ReadAnswers(path string) ([]Given, error) {
	text, err := files.Read(path, mostAnswerBytes)
	if err != nil {
		return nil, err
	}
	return ParseAnswers(path, text)
}

// ParseAnswers is ReadAnswers for a text.
func ParseAnswers(file string, text []byte) ([]Given, error) {
	if bytes.HasPrefix(bytes.TrimSpace(bytes.TrimPrefix(text, []byte("\ufeff"))), []byte("{")) {
		return jsonAnswers(file, text)
	}
	t := table{file: file}
	head, err := eachRow(file, text, MostAnswers, func(head header, r line) error {
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

	columns, sures map[int]int // of a row an apprentice; nil before the first
}

// add takes an answer of one row.
func (t *table) add(head header, r line, item int, text string, sure answer.Certainty) {
	t.answers = append(t.answers, Given{Code: cleanCode(head.of(r, "code")), Item: item, Text: answerText(text), Certainty: sure,
		Who: head.who(r), ID: strings.TrimSpace(content.Printable(head.of(r, "id"))), Row: true, Comma: head.comma, File: t.file, Line: r.row})
}

// long reads a row that is an answer.
func (t *table) long(head header, r line) error {
	if i := slices.IndexFunc(head.names, isNumber); i >= 0 {
		return fmt.Errorf("%s: beside the columns item and answer stands a column %s, and what stands in it would be lost: give a row an answer, or a row an apprentice", t.file, calc.Quoted(head.names[i]))
	}
	item, err := strconv.Atoi(head.of(r, "item"))
	sure, known := readSure(head.of(r, "sure"))
	switch {
	case err != nil || item < 1 || item > mostItems:
		t.wrong.add(rowError(t.file, r.row, "item %s: give the number of a question", calc.Quoted(head.of(r, "item"))))
	case !known:
		t.wrong.add(sureError(t.file, r.row, "sure", head.of(r, "sure")))
	default:
		t.add(head, r, item, head.of(r, "answer"), sure)
	}
	return nil
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

// wideColumns finds the answer to each question in a row, and how sure someone is of it
// ("3 sure"), by question. A column that looks like one of these and is none is an error:
// an answer in it would be lost.
func wideColumns(file string, head header) (answers, sures map[int]int, err error) {
	if !head.has("code") {
		return nil, nil, noColumns(file, head)
	}
	answers, sures = map[int]int{}, map[int]int{}
	for i, name := range head.names {
		name = strings.ToLower(strings.TrimSpace(content.Printable(name)))
		number, isSure := strings.CutSuffix(name, " sure")
		n, err := strconv.Atoi(strings.TrimSpace(number))
		switch {
		case err == nil && n >= 1 && n <= mostItems:
			into := answers
			if isSure {
				into = sures
			}
			if first, twice := into[n]; twice {
				return nil, nil, fmt.Errorf("%s: the columns %s and %s are one: leave one out", file, calc.Quoted(head.names[first]), calc.Quoted(head.names[i]))
			}
			into[n] = i
		case strings.ContainsFunc(name, unicode.IsNumber) || strings.Contains(name, "sure"): // it was meant for one; remarks are nobody's answer
			return nil, nil, fmt.Errorf("%s: the column %s is not known, and what stands in it would be lost: beside code give 1, 2, 3 and so on, the numbers of the questions, and 1 sure, 2 sure",
				file, calc.Quoted(head.names[i]))
		}
	}
	if len(answers) == 0 {
		return nil, nil, fmt.Errorf("%s: the columns are %s: beside code give 1, 2, 3 and so on, the numbers of the questions", file, calc.Quoted(strings.Join(head.names, ", ")))
	}
	return answers, sures, nil
}

// wide reads a row that has all answers of an apprentice.
func (t *table) wide(head header, r line) (err error) {
	if t.columns == nil {
		if t.columns, t.sures, err = wideColumns(t.file, head); err != nil {
			return err
		}
	}
	if first, second, ok := cutInTwo(r.cells); ok {
		t.wrong.add(rowError(t.file, r.row, "%s and %s stand in two cells: is it one number with a decimal comma? Put it into quotation marks, or part the cells by semicolons", first, second))
		return nil
	}
	cell := func(i int, ok bool) string {
		if !ok || i >= len(r.cells) {
			return ""
		}
		return answerText(r.cells[i])
	}
	for _, item := range slices.Sorted(maps.Keys(t.columns)) {
		at, ok := t.sures[item]
		text := cell(at, ok)
		sure, known := readSure(text)
		if !known {
			t.wrong.add(sureError(t.file, r.row, fmt.Sprintf("%d sure", item), text))
		}
		t.add(head, r, item, cell(t.columns[item], true), sure)
	}
	if len(t.answers) > MostAnswers {
		return fmt.Errorf("%s has more than %d answers: give that many at most", t.file, MostAnswers)
	}
	return nil
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
