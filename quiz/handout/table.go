package handout

import (
	"regexp"
	"slices"
	"sort"
	"sync"
)

// number is a number with a fraction, a range or a unit: "12", "-0.5", "1/2", "40–75 %", "0.0587 in".
var number = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^[-+−±]?\.?[0-9][0-9.,/]*( ?– ?[-+−]?\.?[0-9][0-9.,/]*)?( ?(%|°|\p{L}{1,4}))?$`)
})

// Named reports whether a table has a row of names.
func (t *Table) Named() bool {
	return slices.ContainsFunc(t.Columns, func(name string) bool { return name != "" })
}

// Numbers tells of each column whether it holds numbers and nothing else. A dash or an
// empty cell stands for a number that is not known.
func (t *Table) Numbers() []bool {
	all := make([]bool, len(t.Columns))
	for i := range all {
		known := 0
		all[i] = !slices.ContainsFunc(t.Rows, func(cells []string) bool {
			switch cell := cells[i]; {
			case cell == "", cell == "-", cell == "–":
				return false
			case number().MatchString(cell):
				known++
				return false
			}
			return true
		}) && known > 0
	}
	return all
}

// records are the rows of a table that is told rather than laid out: "name: cell" lines.
func (t *Table) records() [][]string {
	if len(t.Rows) == 0 {
		return [][]string{t.Columns}
	}
	all := make([][]string, len(t.Rows))
	for n, cells := range t.Rows {
		for i, cell := range cells {
			if cell != "" {
				all[n] = append(all[n], joined(" ", withColon(t.Columns[i]), cell))
			}
		}
	}
	return all
}

// span is how narrow a column may be, how wide its cells would be by themselves, and how
// wide its name would be.
type span struct{ least, want, name int }

// shared parts a room among columns: the narrow ones get what their cells want, and the
// wide ones the same width each of what is left. Names are broken first, as they stand
// there once. ok is false where there is too little room.
func shared(spans []span, room int) (widths []int, ok bool) {
	widths = make([]int, len(spans))
	at := func(level int) int {
		sum := 0
		for i, s := range spans {
			widths[i] = max(s.least, min(s.want, level))
			sum += widths[i]
		}
		return sum
	}
	over := sort.Search(room+1, func(level int) bool { return at(level) > room })
	rest := room - at(over-1)
	if rest < 0 {
		return nil, false
	}
	for i, s := range spans {
		if more := s.name - widths[i]; 0 < more && more <= rest {
			widths[i], rest = s.name, rest-more
		}
	}
	return widths, true
}
