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
	d := Designation{Starts: 1}
	s := strings.Join(strings.Fields(wordBreaks.Replace(text)), " ")
	s = strings.NewReplacer("×", "x", "*", "x").Replace(s)
	if len(text) > longestInput || s == "" {
		return fail(fmt.Errorf("not a thread: give %s", designationWant))
	}
	upper := strings.ToUpper(s) // class letters of metric threads are read from s
	for range 2 {               // hand and starts stand in either order
		if m := startsForm().FindStringSubmatch(upper); m != nil {
			d.Starts = map[string]int{"TWO": 2, "THREE": 3, "FOUR": 4}[m[1]]
			if d.Starts == 0 {
				d.Starts, _ = strconv.Atoi(m[1])
			}
			upper = strings.TrimSuffix(upper, m[0])
		}
		if m := handForm().FindStringSubmatch(upper); m != nil {
			if m[1] == "LH" {
				d.Hand = LeftHand
			}
			upper = strings.TrimSuffix(upper, m[0])
		}
	}
	if d.Starts < 1 || d.Starts > 12 {
		return fail(fmt.Errorf("starts %d: give 1 to 12", d.Starts))
	}
	s = s[:min(len(s), len(upper))]
	var err error
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

func inchDesignation(d Designation, upper string) (Designation, error) {
	m := inchForm().FindStringSubmatch(upper)
	if m == nil && strings.Contains(upper, "ACME") {
		return d, fmt.Errorf("an Acme thread has an angle of 29 degrees, and only threads of 60 are read here: the lesson acme-threads has its depth and tool flat")
	}
	if m == nil {
		return d, fmt.Errorf("not a thread: give %s", designationWant)
	}
	n, err := ParseNumber(m[2])
	d.TPI = ThreadsPerInch(n)
	if m[3] != "" {
		counted := d.Starts
		d.TPI, d.Starts, err = pitchAndLead(m[3], m[4])
		if err == nil && counted > 1 && counted != d.Starts {
			err = fmt.Errorf("%d starts and a lead of %s in contradict each other; give one of them", counted, m[4])
		}
	}
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
