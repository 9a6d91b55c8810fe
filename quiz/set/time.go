package set

import (
	"regexp"
	"strconv"
	"strings"
)

// spans are the lengths of time that a blueprint may name, as people write them.
var spans = regexp.MustCompile(`^(\d{1,3})\s*(seconds?|s|minutes?|mins?|hours?|h)\.?$`)

// Seconds is the time of a blueprint as a learning system holds to it; ok is false where it
// is left out or says something else, such as "one lesson". Then it is only printed.
func (b *Blueprint) Seconds() (seconds int, ok bool) {
	found := spans.FindStringSubmatch(strings.ToLower(strings.TrimSpace(b.Time)))
	if found == nil {
		return 0, false
	}
	n, err := strconv.Atoi(found[1])
	if err != nil || n == 0 {
		return 0, false
	}
	switch found[2][0] {
	case 's':
		return n, true
	case 'm':
		return n * 60, true
	}
	return n * 3600, true
}
