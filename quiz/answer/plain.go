package answer

import (
	"regexp"
	"strings"
	"sync"

	"scratchpass/quiz/machine"
)

// narrow writes full-width letters, digits and signs, as some keyboards give them, as plain
// ones.
func narrow(text string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r >= '\uff01' && r <= '\uff5e':
			return r - 0xfee0
		case r == '\u3000':
			return ' '
		}
		return r
	}, text)
}

// numbered is an option by its number with a word in front: option 3, line 2, no. 2.
var numbered = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^(?:option|answer|choice|line|mark|step|number|no\.?|nr\.?) ?#?(\d+)$`)
})

// numberedEach are such words before each number of a list. There "no 2" may mean "not 2", so
// it wants its full stop.
var numberedEach = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)\b(?:options?|answers?|choices?|lines?|marks?|steps?|numbers?|nos?\.|nrs?\.) ?#?(\d)`)
})

// bareNumbers takes the words off the numbers of a list.
func bareNumbers(text string) string { return numberedEach().ReplaceAllString(text, "$1") }

// grouped is a number with commas or points between thousands.
var grouped = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^([+-]?)([1-9]\d{0,2})(?:((?:,\d{3})+)(\.\d+)?|((?:\.\d{3})+)(,\d+))($|[^\d.,])`)
})

// ungrouped takes what stands between thousands out of a number where it can be nothing else:
// 12,345.6 and 12.345,6 and 1,234,567. One comma before three digits, as in 1,500, may stand
// before decimals; in a unit that has none it can't.
func ungrouped(u machine.Unit, text string) string {
	m := grouped().FindStringSubmatch(text)
	if m == nil {
		return text
	}
	commas, decimals := m[3], m[4]
	if commas != "" && decimals == "" && strings.Count(commas, ",") == 1 && !u.Count && u.Places > 0 {
		return text
	}
	whole := strings.NewReplacer(",", "", ".", "").Replace(m[2] + commas + m[5])
	return m[1] + whole + decimals + strings.Replace(m[6], ",", ".", 1) + text[len(m[0])-len(m[7]):]
}
