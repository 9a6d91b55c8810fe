package calc

import (
	"fmt"
	"strconv"
	"strings"
)

const designationWant = "a thread such as 1/2-13 UNC-2A, 10-32 UNF, 1-1/8-7 UNC-2B-LH, M12x1.75-6g, M20 or M16xPh3P1.5"

var (
	inchForm = lazily(`^(#?\d{1,2}|\d{0,2}\.\d{1,5}|(?:\d{1,2}[ -])?\d{1,2}/\d{1,2})"? ?- ?` +
		`(?:(\d{1,2}(?:\.\d{1,3}| 1/2|-1/2)?)|(\d?\.\d{1,5}) ?P ?- ?(\d{0,2}\.\d{1,5}) ?L)(?:[ -]+(UNC|UNF|UNEF|UNS|UNRC|UNRF|UNR|UN))?(?:[ -]+([123][AB]))?$`)
	startsForm = lazily(`[ -]*\(? ?(\d{1,2}|TWO|THREE|FOUR) ?-?STARTS? ?\)?$`)
	handForm   = lazily(`[ -]+(LH|RH)$`)
)

// ParseDesignation reads a thread as a drawing or a workshop calls it out: inch
// sizes by number, fraction or decimal, with or without series and class; metric
// coarse and fine; LH; several starts. It refuses what contradicts itself and says
// what would work.
func ParseDesignation(text string) (Designation, error) {
	fail := func(err error) (Designation, error) {
		return Designation{}, fmt.Errorf("%s: %w", Quoted(text), err)
	}
	upper, hand, starts, err := handAndStarts(text)
	if err != nil {
		return fail(err)
	}
	d := Designation{Starts: starts, Hand: hand}
	s := plainCallout(text) // class letters of metric threads are read from s
	s = s[:min(len(s), len(upper))]
	if strings.HasPrefix(upper, "M") {
		d, err = metricDesignation(d, s)
	} else {
		d, err = inchDesignation(d, upper)
	}
	if err != nil {
		return fail(err)
	}
	return d, nil
}

// plainCallout is a callout with single spaces and one kind of sign for "by".
func plainCallout(text string) string {
	s := strings.Join(strings.Fields(wordBreaks.Replace(text)), " ")
	return strings.NewReplacer("×", "x", "*", "x").Replace(s)
}

// handAndStarts takes hand and number of starts off the end of a callout, and returns
// what stands before them in capitals.
func handAndStarts(text string) (upper string, hand Hand, starts int, err error) {
	starts = 1
	s := plainCallout(text)
	if len(text) > longestInput || s == "" {
		return "", hand, starts, fmt.Errorf("not a thread: give %s", designationWant)
	}
	upper = strings.ToUpper(s)
	for range 2 { // hand and starts stand in either order
		if m := startsForm().FindStringSubmatch(upper); m != nil {
			starts = map[string]int{"TWO": 2, "THREE": 3, "FOUR": 4}[m[1]]
			if starts == 0 {
				starts, _ = strconv.Atoi(m[1])
			}
			upper = strings.TrimSuffix(upper, m[0])
		}
		if m := handForm().FindStringSubmatch(upper); m != nil {
			if m[1] == "LH" {
				hand = LeftHand
			}
			upper = strings.TrimSuffix(upper, m[0])
		}
	}
	if starts < 1 || starts > 12 {
		return "", hand, starts, fmt.Errorf("starts %d: give 1 to 12", starts)
	}
	return upper, hand, starts, nil
}

// threadsAndStarts are the threads per inch and the starts of an inch callout: of the threads
// it writes, or of its pitch and lead, which must not contradict the starts it counts.
func threadsAndStarts(threads, pitch, lead string, counted int) (ThreadsPerInch, int, error) {
	if pitch == "" {
		n, err := ParseNumber(threads)
		return ThreadsPerInch(n), counted, err
	}
	n, starts, err := pitchAndLead(pitch, lead)
	if err == nil && counted > 1 && counted != starts {
		err = fmt.Errorf("%d starts and a lead of %s in contradict each other; give one of them", counted, lead)
	}
	return n, starts, err
}

func inchDesignation(d Designation, upper string) (Designation, error) {
	m := inchForm().FindStringSubmatch(upper)
	if m == nil && IsAcme(upper) {
		return d, fmt.Errorf("an Acme thread has an angle of 29 degrees, and only threads of 60 are read here: scratchpass thread has its depth and tool flat, the lesson acme-threads why")
	}
	if m == nil {
		return d, fmt.Errorf("not a thread: give %s", designationWant)
	}
	var err error
	d.TPI, d.Starts, err = threadsAndStarts(m[2], m[3], m[4], d.Starts)
	if err != nil {
		return d, err
	}
	if d.Pitch, err = d.TPI.Pitch(); err != nil {
		return d, err
	}
	number, isNumber := strings.CutPrefix(m[1], "#")
	if i, notWhole := strconv.Atoi(number); notWhole == nil && number != strconv.Itoa(i) {
		// 00 and 000 are sizes of their own, smaller than 0: never read one as the other
		return d, fmt.Errorf("size %s: give a numbered size from 0 to 12, without a zero before it", m[1])
	}
	if isNumber {
		i, _ := strconv.Atoi(number)
		d.Nominal, err = NumberSize(i)
		d.Size = number
		if inches, e := nominalOf(number, d.TPI); err == nil && (e != nil || inches != d.Nominal) {
			d.Size = m[1] // without its sign it would read as inches
		}
	} else {
		d.Nominal, err = nominalOf(m[1], d.TPI)
		d.Size = plainSize(m[1], d.Nominal)
	}
	if err == nil {
		err = checkNominal(d.Nominal, d.Pitch)
	}
	if err != nil {
		return d, err
	}
	d.Series = Series(strings.Replace(m[5], "UNR", "UN", 1))
	if d.Series == "" {
		d.Series = seriesOf(d.Size, d.TPI)
	}
	d.Class = m[6]
	return d, checkSeries(d)
}

// plainSize writes a size the usual way: fractions of 64ths as a fraction, number
// sizes as they came, everything else with four places.
func plainSize(written string, nominal Length) string {
	if i, err := strconv.Atoi(written); err == nil {
		return strconv.Itoa(i)
	}
	if text, ok := FractionText(nominal); ok && (strings.Contains(text, "/")) {
		return text
	}
	return Fixed(nominal.Inches(), 4)
}
