package set

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"
)

// styleKind is what the style of a number makes of it.
type styleKind int

const (
	plainStyle styleKind = iota
	dateStyle
	timeStyle
	percentStyle
)

// styleOf is what a format makes of a number. The ids below 164 are those that every
// spreadsheet has; a code is read without what stands in quotes or brackets.
func styleOf(id int, code string) styleKind {
	switch {
	case id == 9 || id == 10:
		return percentStyle
	case id >= 14 && id <= 17 || id == 22 || id >= 27 && id <= 31 || id >= 50 && id <= 58:
		return dateStyle
	case id >= 18 && id <= 21 || id >= 32 && id <= 36 || id >= 45 && id <= 47:
		return timeStyle
	case code == "" || strings.EqualFold(code, "general"):
		return plainStyle
	}
	var bare strings.Builder
	for i, inside := 0, byte(0); i < len(code); i++ {
		switch c := code[i]; {
		case inside != 0:
			if c == inside {
				inside = 0
			}
		case c == '"':
			inside = '"'
		case c == '[':
			inside = ']'
		case c == '\\' || c == '_' || c == '*':
			i++
		default:
			bare.WriteByte(c)
		}
	}
	plain := strings.ToLower(bare.String())
	switch {
	case strings.ContainsAny(plain, "dy"):
		return dateStyle
	case strings.ContainsAny(plain, "hs"):
		return timeStyle
	case strings.Contains(plain, "m"):
		return dateStyle
	case strings.Contains(plain, "%"):
		return percentStyle
	}
	return plainStyle
}

// columnIndex is the number of a column, from 0: B7 is 1; -1 where it is none.
func columnIndex(ref string) int {
	n := 0
	for _, r := range strings.ToUpper(ref) {
		if r < 'A' || r > 'Z' || n > mostColumns {
			break
		}
		n = n*26 + int(r-'A') + 1
	}
	return n - 1
}

// text is a cell as it is shown, on one line.
func (w *workbook) text(c sheetCell) (string, error) {
	text := c.Value
	if text == "" && c.Type != "inlineStr" && c.Sum != "" { // a sum that nobody worked out is no blank
		return "=" + c.Sum, nil
	}
	switch c.Type {
	case "s":
		i, err := strconv.Atoi(strings.TrimSpace(c.Value))
		if err != nil || i < 0 || i >= len(w.shared) {
			return "", fmt.Errorf("cell %.20q has a text that is not there", c.Ref)
		}
		text = w.shared[i]
	case "inlineStr":
		text = c.Inline.String()
	case "b", "str", "e", "d":
	default:
		text = w.number(strings.TrimSpace(c.Value), c.Style)
	}
	if len(text) > longestRow {
		return "", fmt.Errorf("cell %.20q has more than %d bytes", c.Ref, longestRow)
	}
	return strings.Join(strings.Fields(text), " "), nil
}

// number is a number as it was typed: 0.0556, not 5.5599999999999997E-2; 5 % for 0.05; a date
// for the days since the first.
func (w *workbook) number(text string, style int) string {
	x, err := strconv.ParseFloat(text, 64)
	if err != nil || math.Abs(x) > 1e15 {
		return text
	}
	kind := plainStyle
	if style >= 0 && style < len(w.styles) {
		kind = w.styles[style]
	}
	switch {
	case kind == percentStyle:
		return typedNumber(x*100) + " %"
	case (kind == dateStyle || kind == timeStyle) && x >= 0 && x < 1:
		return time.Time{}.Add(time.Duration(math.Round(x*86400)) * time.Second).Format("15:04:05")
	case (kind == dateStyle || kind == timeStyle) && x >= 1 && x < 100_000:
		if w.from1904 {
			x += 1462
		}
		return dayOf(int(x)).Format(time.DateOnly)
	}
	return typedNumber(x)
}

// typedNumber prints a number with the digits that someone typed: a spreadsheet keeps 15.
func typedNumber(x float64) string {
	x, _ = strconv.ParseFloat(strconv.FormatFloat(x, 'g', 15, 64), 64)
	return strconv.FormatFloat(x, 'f', -1, 64)
}

// dayOf is the day that a spreadsheet counts so.
func dayOf(days int) time.Time { return time.Date(1899, 12, 30+days, 0, 0, 0, 0, time.UTC) }
