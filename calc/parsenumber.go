package calc

import (
	"regexp"
	"strconv"
	"strings"
	"sync"
)

// wordBreaks maps what keyboards, phones and word processors put in place of a
// plain space, minus sign, quote or fraction.
var wordBreaks = strings.NewReplacer(
	"\u00a0", " ", "\u2009", " ", "\u202f", " ", "\t", " ",
	"\u2212", "-", "\u2013", "-", "\u2044", "/",
	"\u2033", `"`, "\u201d", `"`, "''", `"`, "\u2032", "'", "\u2019", "'", "\u00ba", "°",
	"½", " 1/2", "¼", " 1/4", "¾", " 3/4", "⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8",
)

// lazily compiles a pattern when it is first used: a program that reads no
// designation need not wait for one.
func lazily(pattern string) func() *regexp.Regexp {
	return sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(pattern) })
}

// longestInput is the most text any reader here looks at.
const longestInput = 80

var (
	decimalForm  = lazily(`^([+-]?)(\d{1,9})?(?:([.,])(\d{0,12}))?$`)
	fractionForm = lazily(`^([+-]?)(?:(\d{1,4})[ -]+)?(\d{1,4}) ?/ ?(\d{1,4})$`)
)

const numberWant = "a number such as 0.0556, .0556, 3/64 or 29 1/2"

// ParseNumber reads a decimal (0.0556, .0556, 5.), a fraction (3/64) or a whole
// number and a fraction (29 1/2, 1-3/4). A comma is read as a decimal point where
// it can't be anything else: 0,0556 and 1,5 are read, 1,500 is refused because it
// may be fifteen hundred or one and a half. Words, exponents, hexadecimal,
// underscores, NaN and Inf are refused.
func ParseNumber(text string) (float64, error) {
	refuse := func(want string) (float64, error) {
		return 0, &InputError{"can't read", Quoted(text), want}
	}
	if len(text) > longestInput {
		return refuse(numberWant)
	}
	s := strings.TrimSpace(wordBreaks.Replace(text))
	if m := fractionForm().FindStringSubmatch(s); m != nil {
		whole, top, bottom := digits(m[2]), digits(m[3]), digits(m[4])
		if bottom == 0 {
			return refuse("a fraction with a number other than 0 below the line")
		}
		return signed(m[1], whole+top/bottom), nil
	}
	m := decimalForm().FindStringSubmatch(s)
	if m == nil || m[2] == "" && m[4] == "" {
		return refuse(numberWant)
	}
	if m[3] == "," && len(m[4]) == 3 && strings.TrimLeft(m[2], "0") != "" {
		return refuse("the number without a comma, such as " + m[2] + "." + m[4] + " or " + m[2] + m[4])
	}
	x, err := strconv.ParseFloat("0"+m[2]+"."+m[4]+"0", 64)
	if err != nil {
		return refuse(numberWant)
	}
	return signed(m[1], x), nil
}

func digits(s string) float64 {
	n, _ := strconv.Atoi(s) // at most nine digits, or empty: 0
	return float64(n)
}

func signed(sign string, x float64) float64 {
	if sign == "-" && x != 0 {
		return -x
	}
	return x
}

// splitUnit parts a text into the number in front and the unit behind it, lower
// case, without a closing full stop: ".0556in." gives ".0556" and "in".
func splitUnit(text string) (number, unit string) {
	s := strings.TrimSpace(wordBreaks.Replace(text))
	cut := strings.LastIndexAny(s, "0123456789") + 1
	if cut < len(s) && (s[cut] == '.' || s[cut] == ',') { // "5." is a number
		cut++
	}
	return s[:cut], strings.ToLower(strings.Trim(s[cut:], " ."))
}

// ParseFraction reads an inch size written as a fraction, a decimal or a mixed
// number: 3/4, 0.75, 1-1/8, 1 1/8.
func ParseFraction(text string) (Length, error) {
	x, err := ParseNumber(text)
	return Inches(x), err
}

// FractionText prints a length as a mixed number of inches in lowest terms, with a
// denominator of at most 64, when it is one: 1-1/8, 3/4, 2. ok tells whether.
func FractionText(l Length) (text string, ok bool) {
	sixtyFourths := l.Inches() * 64
	if !isWhole(sixtyFourths) || sixtyFourths <= 0 || sixtyFourths > 64*1000 {
		return "", false
	}
	top, bottom := toInt(Round(sixtyFourths, 0)), 64
	for top%2 == 0 && bottom > 1 {
		top, bottom = top/2, bottom/2
	}
	whole, part := top/bottom, top%bottom
	switch {
	case part == 0:
		return strconv.Itoa(whole), true
	case whole == 0:
		return strconv.Itoa(part) + "/" + strconv.Itoa(bottom), true
	}
	return strconv.Itoa(whole) + "-" + strconv.Itoa(part) + "/" + strconv.Itoa(bottom), true
}
