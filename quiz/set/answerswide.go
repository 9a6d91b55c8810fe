package set

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"scratchpass/calc"
)

// wideColumns finds the answer to each question in a row, and how sure someone is of it
// ("3 sure"), by question. A column that looks like one of these and is none is an error:
// an answer in it would be lost.
func wideColumns(file string, head header) (answers, sures map[int]int, err error) {
	if !head.has("code") {
		return nil, nil, noColumns(file, head)
	}
	answers, sures = map[int]int{}, map[int]int{}
	for i, name := range head.names {
		name = columnKey(name)
		n, isSure, ok := question(name)
		switch {
		case ok:
			into := answers
			if isSure {
				into = sures
			}
			if first, twice := into[n]; twice {
				return nil, nil, fmt.Errorf("%s: the columns %s and %s are one: leave one out", file, calc.Quoted(head.names[first]), calc.Quoted(head.names[i]))
			}
			into[n] = i
		case name != "" && name != "code" && !slices.Contains(rowColumns, name):
			return nil, nil, fmt.Errorf("%s: the column %s is not known, and what stands in it would be lost: beside code give 1, 2, 3 and so on, the numbers of the questions, 1 sure, 2 sure, and of %s what you like",
				file, calc.Quoted(head.names[i]), strings.Join(rowColumns, ", "))
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
	if err := head.nameless(t.file, r); err != nil {
		return err
	}
	if t.absent(head, r) {
		return nil
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
