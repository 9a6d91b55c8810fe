package set

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/quiz/answer"
)

// Given is one answer that came back.
type Given struct {
	Code      string // of the sheet, or of the problem where the apprentice worked on a screen
	Item      int    // as printed, from 1; 0 with a problem's code
	Text      string
	Certainty answer.Certainty
	Who       string // whose it is: the name or id in the row, or the file it came in
	Row       bool   // Who stands in a row beside the answer
	Comma     bool   // the file is of a country that writes decimals with a comma
	Where     string // file and row, for errors
}

// mostAnswers is the longest file of answers that is read.
const mostAnswers = 1_200_000

// ReadAnswers reads answers in one of three forms:
//   - CSV, a row an answer: code, item, answer, and sure where it was asked
//   - CSV, a row an apprentice: code, 1, 2, 3, ...
//   - the answer file that quiz --out writes: JSON lines
func ReadAnswers(path string) ([]Given, error) {
	text, err := os.ReadFile(path)
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
	head, rows, err := readCSV(file, text, mostAnswers)
	if err != nil {
		return nil, err
	}
	switch {
	case head.has("code", "item", "answer"):
		return longAnswers(file, head, rows)
	case head.has("code"):
		return wideAnswers(file, head, rows)
	}
	return nil, fmt.Errorf("%s: the columns are %s: give code, item, answer (a row an answer) or code, 1, 2, 3 (a row an apprentice)", file, calc.Quoted(strings.Join(head.names, ", ")))
}

func longAnswers(file string, head header, rows []line) ([]Given, error) {
	var all []Given
	var errs []error
	for _, r := range rows {
		item, err := strconv.Atoi(head.of(r, "item"))
		sure, known := readSure(head.of(r, "sure"))
		switch {
		case err != nil || item < 1 || item > mostItems:
			errs = append(errs, rowError(file, r.row, "item %s: give the number of a question", calc.Quoted(head.of(r, "item"))))
		case !known:
			errs = append(errs, sureError(file, r.row, "sure", head.of(r, "sure")))
		default:
			all = append(all, Given{Code: cleanCode(head.of(r, "code")), Item: item, Text: answerText(head.of(r, "answer")), Certainty: sure, Who: head.who(r), Row: true, Comma: head.comma, Where: fmt.Sprintf("%s, row %d", file, r.row)})
		}
	}
	return all, firstErrors(errs)
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
		case strings.ContainsAny(name, "0123456789") || strings.Contains(name, "sure"): // it was meant for one; remarks are nobody's answer
			return nil, nil, fmt.Errorf("%s: the column %s is not known, and what stands in it would be lost: beside code give 1, 2, 3 and so on, the numbers of the questions, and 1 sure, 2 sure",
				file, calc.Quoted(head.names[i]))
		}
	}
	if len(answers) == 0 {
		return nil, nil, fmt.Errorf("%s: the columns are %s: beside code give 1, 2, 3 and so on, the numbers of the questions", file, calc.Quoted(strings.Join(head.names, ", ")))
	}
	return answers, sures, nil
}

func wideAnswers(file string, head header, rows []line) ([]Given, error) {
	answers, sures, err := wideColumns(file, head)
	if err != nil {
		return nil, err
	}
	cell := func(r line, i int, ok bool) string {
		if !ok || i >= len(r.cells) {
			return ""
		}
		return answerText(r.cells[i])
	}
	var all []Given
	var errs []error
	for _, r := range rows {
		for _, item := range slices.Sorted(maps.Keys(answers)) {
			at, ok := sures[item]
			text := cell(r, at, ok)
			sure, known := readSure(text)
			if !known {
				errs = append(errs, sureError(file, r.row, fmt.Sprintf("%d sure", item), text))
			}
			all = append(all, Given{Code: cleanCode(head.of(r, "code")), Item: item, Text: cell(r, answers[item], true), Certainty: sure, Who: head.who(r), Row: true, Comma: head.comma, Where: fmt.Sprintf("%s, row %d", file, r.row)})
		}
	}
	return all, firstErrors(errs)
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
	var errs []error
	for i, raw := range bytes.Split(bytes.TrimPrefix(text, []byte("\ufeff")), []byte("\n")) {
		if len(bytes.TrimSpace(raw)) == 0 {
			continue
		}
		var k Kept
		if err := json.Unmarshal(raw, &k); err != nil || k.Code == "" || !k.Certainty.Known() {
			errs = append(errs, rowError(file, i+1, "this is no line of an answer file: %s", calc.Quoted(string(raw))))
			continue
		}
		if len(all) >= mostAnswers {
			return nil, fmt.Errorf("%s has more than %d answers", file, mostAnswers)
		}
		all = append(all, Given{Code: k.Code, Text: answerText(k.Given), Certainty: k.Certainty, Who: who, Where: fmt.Sprintf("%s, row %d", file, i+1)})
	}
	return all, firstErrors(errs)
}

// answerText is what was written, without what a terminal would obey, and no longer
// than an answer is.
func answerText(text string) string {
	runes := []rune(strings.TrimSpace(content.Printable(strings.ReplaceAll(text, "\n", " "))))
	if len(runes) > 200 {
		runes = runes[:200]
	}
	return string(runes)
}
