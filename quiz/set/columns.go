package set

import (
	"regexp"
	"strconv"
	"strings"
	"sync"

	"scratchpass/content"
)

// columnNames are other names of columns, as learning systems have them.
var columnNames = map[string]string{
	"firstname": "first name", "given name": "first name", "forename": "first name",
	"lastname": "last name", "surname": "last name", "family name": "last name",
	"idnumber": "id number", "id no": "id number", "id no.": "id number", "student id": "id number", "student number": "id number",
	"full name": "name", "student name": "name", "email": "email address", "handed in": "handed_in", "remark": "remarks",
}

// columnKey is the name of a column as it is looked for.
func columnKey(name string) string {
	key := strings.ToLower(strings.TrimSpace(narrowDigits(content.Printable(name))))
	if known, ok := columnNames[key]; ok {
		return known
	}
	return key
}

// narrowDigits writes full-width letters and digits as plain ones.
func narrowDigits(text string) string {
	return strings.Map(func(r rune) rune {
		if r >= '\uff01' && r <= '\uff5e' {
			return r - 0xfee0
		}
		return r
	}, text)
}

var questionName = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^(?:(?:q|question|item|answer|response)[ .]*)?(\d{1,3})( sure)?$`)
})

// question reads the number of a question: 3, Q3, Question 3; and whether the column is how
// sure someone was of it, as in Q3 sure.
func question(name string) (n int, sure, ok bool) {
	m := questionName().FindStringSubmatch(columnKey(name))
	if m == nil {
		return 0, false, false
	}
	n, err := strconv.Atoi(m[1])
	return n, m[2] != "", err == nil && n >= 1 && n <= mostItems
}
