package calc

import (
	"fmt"
	"strings"
)

const acmeWant = "an Acme thread such as 1-5 ACME-2G, 1-1/2-4 ACME-2G-LH or 2.875-.4P-.8L ACME-2G"

// acmeForm is the callout of an Acme thread, as ASME B1.5 writes it: the diameter, the
// threads per inch or the pitch and the lead of several starts, and the class: 2G to 4G, or
// C for threads that keep screw and nut on one axis (5C and 6C on older drawings).
var acmeForm = lazily(`^(\d{0,2}\.\d{1,4}|\d{1,2}|(?:\d{1,2}[ -])?\d{1,2}/\d{1,2})"? ?- ?` +
	`(?:(\d{1,2}(?:\.\d{1,4}| 1/2|-1/2)?)|(\d?\.\d{1,5}) ?P ?- ?(\d{0,2}\.\d{1,5}) ?L)[ -]+ACME(?:[ -]+([2-4]G|[2-6]C))?$`)

// AcmeDesignation is an Acme thread as a drawing calls it out.
type AcmeDesignation struct {
	Size    string // as written, in its plainest form: "1", "1-1/2", "2.8750"
	Nominal Length
	Pitch   Length
	TPI     ThreadsPerInch
	Class   string // "2G"; empty when the drawing gives none
	Starts  int    // 1 unless the drawing says otherwise
	Hand    Hand
}

// Lead returns how far the thread advances in a turn: starts x pitch.
func (d AcmeDesignation) Lead() Length { return d.Pitch.Times(float64(d.Starts)) }

// String prints the designation in one form, 1-1/2-4 ACME-2G-LH 2 STARTS.
func (d AcmeDesignation) String() string {
	text := d.Size + "-" + Shortest(d.TPI.Number(), 4) + " ACME"
	if d.Class != "" {
		text += "-" + d.Class
	}
	if d.Hand == LeftHand {
		text += "-LH"
	}
	if d.Starts > 1 {
		text += fmt.Sprintf(" %d STARTS", d.Starts)
	}
	return text
}

// IsAcme reports whether a text means an Acme thread, well written or not.
func IsAcme(text string) bool { return strings.Contains(strings.ToUpper(text), "ACME") }

// ParseAcme reads the callout of an Acme thread. A stub Acme thread is refused: it is
// only about half as deep, and would be cut far too deep by these figures.
func ParseAcme(text string) (AcmeDesignation, error) {
	fail := func(err error) (AcmeDesignation, error) {
		return AcmeDesignation{}, fmt.Errorf("%s: %w", Quoted(text), err)
	}
	upper, hand, starts, err := handAndStarts(text)
	if err != nil {
		return fail(err)
	}
	if strings.Contains(upper, "STUB") {
		return fail(fmt.Errorf("a stub Acme thread is less deep, and has no figures here"))
	}
	m := acmeForm().FindStringSubmatch(upper)
	if m == nil {
		return fail(fmt.Errorf("not an Acme thread: give %s", acmeWant))
	}
	d := AcmeDesignation{Class: m[5], Starts: starts, Hand: hand}
	if d.TPI, d.Starts, err = threadsAndStarts(m[2], m[3], m[4], starts); err != nil {
		return fail(err)
	}
	if d.Pitch, err = d.TPI.Pitch(); err == nil {
		err = between("Acme pitch", d.Pitch, 0.05, 1)
	}
	if err != nil {
		return fail(err)
	}
	if d.Nominal, err = ParseFraction(m[1]); err == nil {
		err = checkNominal(d.Nominal, d.Pitch)
	}
	if err != nil {
		return fail(err)
	}
	d.Size = plainSize(m[1], d.Nominal)
	return d, nil
}
