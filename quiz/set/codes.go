package set

import (
	"encoding/csv"
	"fmt"
	"io"
	"strings"

	"scratchpass/calc"
	"scratchpass/quiz/files"
)

// Codes are the codes of a class's sheets.
func (m *Maker) Codes(class []Apprentice) (map[string]Apprentice, error) {
	codes := make(map[string]Apprentice, len(class))
	for _, a := range class {
		code := m.Code(a.ID)
		if other, twice := codes[code]; twice {
			return nil, fmt.Errorf("%s and %s have one code, by a rare chance: give the set another name", other.ID, a.ID)
		}
		codes[code] = a
	}
	return codes, nil
}

// ProblemCodes are the codes of a class's problems, each with the code of the sheet it
// stands on.
type ProblemCodes map[string]string

// Add takes the problems of one sheet. That another sheet has one of them too is an
// error: on a screen nothing would tell the two apart.
func (c ProblemCodes) Add(sheet string, items []Item) error {
	for _, it := range items {
		problem := it.Problem.Code.String()
		if other, twice := c[problem]; twice && other != sheet {
			return fmt.Errorf("the sheets %s and %s have the problem %s both, by a rare chance: give the set another name", other, sheet, problem)
		}
		c[problem] = sheet
	}
	return nil
}

// WriteCodes writes who has which sheet as a CSV: id, name, form, code.
func (m *Maker) WriteCodes(w io.Writer, class []Apprentice) error {
	c := csv.NewWriter(w)
	if err := c.Write([]string{"id", "name", "form", "code"}); err != nil {
		return err
	}
	for _, who := range class {
		if err := c.Write([]string{Safe(who.ID), Safe(who.Name), who.Form, m.Code(who.ID)}); err != nil {
			return err
		}
	}
	c.Flush()
	return c.Error()
}

// OtherSheet is an apprentice whose sheet was made from another blueprint or secret.
type OtherSheet struct {
	Who   Apprentice
	There string // the code of the sheet
	Here  string // the code that this set gives
}

// OtherSheets compares a class with the list that WriteCodes wrote beside its sheets, and
// returns those whose codes differ. Who has no sheet there has none to differ from; that
// nobody has one is an error, like a file that can't be read as such a list.
func (m *Maker) OtherSheets(list string, class []Apprentice) ([]OtherSheet, error) {
	text, err := files.Read(list, mostRosterBytes)
	if err != nil {
		return nil, err
	}
	head, rows, err := readCSV(list, text, mostApprentices, nil)
	if err != nil {
		return nil, err
	}
	if !head.has("id", "code") {
		return nil, fmt.Errorf("%s: the columns are %s: a list of sheets has id and code", list, calc.Quoted(strings.Join(head.names, ", ")))
	}
	there := make(map[string]string, len(rows))
	for _, r := range rows {
		there[head.of(r, "id")] = head.of(r, "code")
	}
	codes := make(map[string]bool, len(there))
	for _, code := range there {
		codes[code] = true
	}
	m.adopt(class, codes) // of two sheets of one person the list tells which is theirs
	var others []OtherSheet
	known := 0
	for _, who := range class {
		code, ok := there[Safe(who.ID)]
		if !ok {
			continue
		}
		known++
		if here := m.Code(who.ID); code != here {
			others = append(others, OtherSheet{who, code, here})
		}
	}
	if known == 0 {
		return nil, fmt.Errorf("%s: nobody of this class has a sheet there", list)
	}
	return others, nil
}
