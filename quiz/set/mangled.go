package set

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"
	"time"

	"scratchpass/quiz/problem"
)

// months by their names, short and long, in English and as short names of a few neighbours.
var months = sync.OnceValue(func() map[string]int {
	all := map[string]int{"sept": 9, "mrz": 3, "mär": 3, "mai": 5, "okt": 10, "dez": 12, "févr": 2, "avr": 4, "août": 8, "déc": 12, "ene": 1, "abr": 4, "ago": 8, "dic": 12}
	for m := time.January; m <= time.December; m++ {
		name := strings.ToLower(m.String())
		all[name], all[name[:3]] = int(m), int(m)
	}
	return all
})

// dateForms are the ways in which spreadsheets show a day: 01-Feb, Mar-64, 01-Feb-2026,
// 2026-02-01, 01/02/2026, 08:10:00.
var dateForms = sync.OnceValue(func() []*regexp.Regexp {
	const day, month, gap = `(?P<d>\d{1,2})`, `(?P<mon>\p{L}{3,9})\.?`, `[-/. ]`
	var all []*regexp.Regexp
	for _, form := range []string{
		day + gap + month, month + gap + `(?P<y>\d{2}|\d{4})`, day + gap + month + gap + `(?P<y>\d{2}|\d{4})`,
		`(?P<y>\d{4})-(?P<m>\d{2})-(?P<d>\d{2})(?:[T ][\d:.]+Z?)?`, day + `[-/.](?P<m>\d{1,2})[-/.](?P<y>\d{4})`,
		`(?P<h>\d{1,2}):(?P<min>\d{2}):\d{2}(?: [AaPp][Mm])?`,
	} {
		all = append(all, regexp.MustCompile(`^`+form+`$`))
	}
	return all
})

// The days since 1899 that are taken for a date: from 1930 to 2099. Two figures of a year mean
// these.
const (
	firstSerial = 10_959
	lastSerial  = 73_050
)

// mostPlain is the largest right answer beside which five figures are taken for a date.
const mostPlain = 5000

// mangled is what was probably typed where a spreadsheet has made a date of an answer: 1/2 or
// 2/1 for 01-Feb. It is empty where the text is no date. Nobody can know which was typed, so
// it is for the instructor to decide.
func mangled(p *problem.Problem, text string) string {
	text = strings.TrimSpace(text)
	for _, form := range dateForms() {
		m := form.FindStringSubmatch(text)
		if m == nil {
			continue
		}
		part := func(name string) string {
			if i := form.SubexpIndex(name); i >= 0 {
				return m[i]
			}
			return ""
		}
		if part("h") != "" {
			return clean(part("h")) + ":" + part("min")
		}
		month := number(part("m"))
		if name := part("mon"); name != "" {
			month = months()[strings.ToLower(name)]
		}
		if day := number(part("d")); month >= 1 && month <= 12 && day <= 31 {
			return typedDate(p, day, month, part("y"))
		}
		return swapped(p, number(part("d")), month, part("y"))
	}
	return mangledSerial(p, text)
}

// swapped is the date with month and day the other way round, where that is one.
func swapped(p *problem.Problem, day, month int, year string) string {
	if day >= 1 && day <= 12 && month > 12 && month <= 31 {
		return typedDate(p, month, day, year)
	}
	return ""
}

// mangledSerial finds a date that a spreadsheet shows as days since 1899: 46054.
func mangledSerial(p *problem.Problem, text string) string {
	days, err := strconv.Atoi(strings.TrimSuffix(text, ".0"))
	if err != nil || len(text) < 5 || days < firstSerial || days > lastSerial {
		return ""
	}
	kind := p.Task.Kind
	small := kind.OneNumber() && math.Abs(p.Expected.Key.X*p.Expected.Unit.Factor) < mostPlain
	if !small && !kind.Guessable() {
		return ""
	}
	day := dayOf(days)
	return typedDate(p, day.Day(), int(day.Month()), day.Format("2006"))
}

// typedDate lists what gives a day when it is typed, the likeliest first. day is 0 where only
// month and year are shown.
func typedDate(p *problem.Problem, day, month int, year string) string {
	short := ""
	if len(year) >= 2 {
		short = clean(year[len(year)-2:])
	}
	var pairs [][2]int
	if day > 0 {
		pairs = append(pairs, [2]int{day, month}, [2]int{month, day})
	}
	if y := number(short); y > 0 && day <= 1 {
		pairs = append(pairs, [2]int{month, y}, [2]int{y, month})
	}
	switch kind := p.Task.Kind; {
	case day == 0 || len(year) != 4 || kind.Numeric() || kind.Guessable():
	case kind.Worded(): // two or three numbers in a row
		return fmt.Sprintf("%d-%d or %d-%d or %d-%d-%s", month, day, day, month, month, day, short)
	default: // a designation: 1/4-20
		return fmt.Sprintf("%d/%d-%s or %d/%d-%s", month, day, short, day, month, short)
	}
	slices.SortStableFunc(pairs, func(a, b [2]int) int { return odd(a) - odd(b) })
	const most = 3
	between := "/"
	if !p.Task.Kind.Numeric() {
		between = "-"
	}
	var all []string
	for _, pair := range pairs {
		if text := strconv.Itoa(pair[0]) + between + strconv.Itoa(pair[1]); !slices.Contains(all, text) && len(all) < most {
			all = append(all, text)
		}
	}
	return strings.Join(all, " or ")
}

// odd is how unlikely a fraction is in a shop: a part of an inch is the likeliest.
func odd(pair [2]int) int {
	switch over, under := pair[0], pair[1]; {
	case over >= under || under == 0:
		return 2
	case under&(under-1) == 0 && under <= 64 && over%2 == 1:
		return 0
	}
	return 1
}

func number(text string) int {
	n, _ := strconv.Atoi(text) // figures only, or empty
	return n
}

// clean is a number without its leading zeros.
func clean(text string) string { return strconv.Itoa(number(text)) }
