package set

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"scratchpass/calc"
	"scratchpass/content"
)

// Given is one answer that came back.
type Given struct {
	Code      string // of the sheet, or of the problem where the apprentice worked on a screen
	Item      int    // as printed, from 1; 0 with a problem's code
	Text      string
	Certainty string // guess, fairly or bet; empty where it was not asked
	Who       string // of several who have one form: the name, or the file it came in
	Comma     bool   // the file is of a country that writes decimals with a comma
	Where     string // file and row, for errors
}

// mostAnswers is the longest file of answers that is read.
const mostAnswers = 1_200_000

// certainties are how sure someone may be, as the record has it.
var certainties = []string{"", "guess", "fairly", "bet"}

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
		sure := strings.ToLower(head.of(r, "sure"))
		switch {
		case err != nil || item < 1 || item > mostItems:
			errs = append(errs, rowError(file, r.row, "item %s: give the number of a question", calc.Quoted(head.of(r, "item"))))
		case !slices.Contains(certainties, sure):
			errs = append(errs, rowError(file, r.row, "sure %s: give guess, fairly, bet or nothing", calc.Quoted(sure)))
		default:
			all = append(all, Given{Code: cleanCode(head.of(r, "code")), Item: item, Text: answerText(head.of(r, "answer")), Certainty: sure, Who: head.who(r), Comma: head.comma, Where: fmt.Sprintf("%s, row %d", file, r.row)})
		}
	}
	return all, firstErrors(errs)
}

func wideAnswers(file string, head header, rows []line) ([]Given, error) {
	var items []int // by column; 0 for the others
	some := false
	for _, name := range head.names {
		n, err := strconv.Atoi(strings.TrimSpace(name))
		if err != nil || n < 1 || n > mostItems {
			n = 0
		}
		items, some = append(items, n), some || n > 0
	}
	if !some {
		return nil, fmt.Errorf("%s: the columns are %s: beside code give 1, 2, 3 and so on, the numbers of the questions", file, calc.Quoted(strings.Join(head.names, ", ")))
	}
	var all []Given
	for _, r := range rows {
		for i, item := range items {
			if item > 0 && i < len(r.cells) {
				all = append(all, Given{Code: cleanCode(head.of(r, "code")), Item: item, Text: answerText(r.cells[i]), Who: head.who(r), Comma: head.comma, Where: fmt.Sprintf("%s, row %d", file, r.row)})
			}
		}
	}
	return all, nil
}

// Kept is one line of an answer file.
type Kept struct {
	Code      string  `json:"code"`
	Given     string  `json:"given"`
	Certainty string  `json:"certainty,omitempty"`
	Hint      bool    `json:"hint,omitempty"`
	Seconds   float64 `json:"seconds"`
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
		if err := json.Unmarshal(raw, &k); err != nil || k.Code == "" || !slices.Contains(certainties, k.Certainty) {
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
