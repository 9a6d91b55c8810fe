package set

import (
	"regexp"
	"slices"
	"strings"
	"sync"
)

// totalsWord is what stands at the head of a row of totals.
var totalsWord = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^(?:grand |class |sub-?)?(?:totals?|sum|average|mean|median|count)[ :=]*$`)
})

func isTotals(cell string) bool {
	return totalsWord().MatchString(strings.ToLower(strings.TrimSpace(cell)))
}

// totals reports whether a row is one of totals, as spreadsheets have them under a table: its
// column of that name says so, or is empty and the first cell with something in it does.
func (h header) totals(r line, column string) bool {
	if cell := h.of(r, column); cell != "" {
		return isTotals(cell)
	}
	i := slices.IndexFunc(r.cells, func(c string) bool { return strings.TrimSpace(c) != "" })
	return i >= 0 && isTotals(r.cells[i])
}
