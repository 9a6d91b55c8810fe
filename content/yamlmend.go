package content

import (
	"fmt"
	"slices"
	"strings"
)

// mend says what to do about a file that is no YAML, for people who never heard of it: the
// line that is the cause and not the one at which the reader gave up. ok is false where no
// cause is known.
func mend(text []byte) (line int, advice string, ok bool) {
	m := mender{}
	for i, s := range strings.Split(string(text), "\n") {
		if advice := m.line(strings.TrimRight(s, " \r")); advice != "" {
			return i + 1, advice, true
		}
	}
	return 0, "", false
}

// keyed is a key and its text, as they stand on a line. A hyphen may stand in front.
var keyed = lazily(`^((?:- +)*)([A-Za-z0-9_-]+):(?: +(.*))?$`)

// mender goes through the lines of a file.
type mender struct {
	columns []int // where the blocks begin that are open
	closed  bool  // the last key has its text: nothing stands deeper below it
	below   int   // the column of a key with | or >, whose lines are plain text; 0 is none, else one more
	fresh   bool  // no line of it was read yet
}

// line returns what is wrong with a line, or nothing.
func (m *mender) line(s string) string {
	bare := strings.TrimLeft(s, " ")
	column := len(s) - len(bare)
	switch {
	case bare == "" || strings.HasPrefix(bare, "#") && m.below == 0:
		return ""
	case m.below > 0 && column >= m.below:
		m.fresh = false
		return ""
	case strings.HasPrefix(bare, "\t"):
		return "a tab stands in front of this line: use blanks, not a tab"
	}
	fresh := m.fresh
	m.below, m.fresh = 0, false
	parts := keyed().FindStringSubmatch(bare)
	if parts == nil {
		if fresh {
			return "the lines below | begin two blanks further in than their key"
		}
		return loneItem(bare)
	}
	if advice := m.placed(column); advice != "" {
		return advice
	}
	for n := len(parts[1]); n > 0; n = 0 { // what follows a hyphen is a block of its own
		m.columns = append(m.columns, column+n)
	}
	value := parts[3]
	m.closed = value != "" && !strings.HasPrefix(value, "#")
	if value != "" && strings.ContainsAny(value[:1], "|>") && len(strings.Trim(value, "|>+-0123456789")) == 0 {
		m.below, m.fresh = column+len(parts[1])+1, true
		return ""
	}
	return wrongText(value)
}

// placed looks at the column in which a key begins.
func (m *mender) placed(column int) string {
	for len(m.columns) > 0 && m.columns[len(m.columns)-1] > column {
		m.columns = m.columns[:len(m.columns)-1]
		m.closed = false
		if len(m.columns) > 0 && m.columns[len(m.columns)-1] < column {
			return "keys of one block begin in one column: move this line"
		}
	}
	if slices.Contains(m.columns, column) {
		return ""
	}
	if m.closed && len(m.columns) > 0 {
		return "this line stands too far in: keys of one block begin in one column"
	}
	m.columns = append(m.columns, column)
	return ""
}

// loneItem looks at a line without a key: an item of a list, or the rest of a text.
func loneItem(bare string) string {
	if item, ok := strings.CutPrefix(bare, "- "); ok {
		return wrongText(strings.TrimSpace(item))
	}
	return ""
}

// wrongText says why a text that stands behind a key can't be read.
func wrongText(value string) string {
	if value == "" {
		return ""
	}
	switch first := value[:1]; first {
	case `"`, `'`:
		return wrongQuotes(value, first)
	case "{", "[":
		return wrongFlow(value)
	case "@", "`", "%", "*", "&", "!", "|", ">":
		return fmt.Sprintf("a text can't begin with %s: put the text in quotes", first)
	case "#":
		return ""
	}
	return colonInside(value)
}

func colonInside(value string) string {
	value, _, _ = strings.Cut(value, " #")
	if strings.Contains(value, ": ") || strings.HasSuffix(value, ":") {
		return "a colon stands inside this text: put the text in quotes"
	}
	return ""
}

// wrongQuotes looks at a text in quotes.
func wrongQuotes(value, quote string) string {
	rest := value[1:]
	double := map[string]string{`"`: `\"`, `'`: `''`}[quote]
	rest = strings.ReplaceAll(rest, double, "")
	_, behind, closed := strings.Cut(rest, quote)
	behind = strings.TrimSpace(behind)
	switch {
	case !closed:
		return "a quote " + quote + " opens this text and none closes it: end the text with one, or take it out"
	case behind != "" && !strings.HasPrefix(behind, "#"):
		other := map[string]string{`"`: `'`, `'`: `"`}[quote]
		return "a quote " + quote + " stands inside this text: put the whole text between " + other + " and " + other
	}
	return ""
}

// flowText is a key and its text inside { }.
var flowText = lazily(`[{,] *[A-Za-z0-9_-]+: +([^"'{\[][^,}\]]*)`)

// wrongFlow looks at a block or a list on one line.
func wrongFlow(value string) string {
	for _, part := range flowText().FindAllStringSubmatch(value, -1) {
		if advice := colonInside(part[1]); advice != "" {
			return advice
		}
	}
	open := value[:1]
	shut := map[string]string{"{": "}", "[": "]"}[open]
	plain, _, _ := strings.Cut(value, " #")
	plain = strings.TrimSpace(plain)
	for _, quote := range []string{`"`, `'`} {
		if n := strings.Count(plain, quote); n%2 == 1 && (quote == `"` || strings.Contains(plain, ": '") || strings.Contains(plain, "['")) {
			return "a quote " + quote + " stands alone on this line: close the text with one, or take it out"
		}
	}
	switch {
	case !strings.Contains(plain, shut):
		return fmt.Sprintf("%s opens here and no %s closes it: add it, or put the text in quotes", open, shut)
	case !strings.HasSuffix(plain, shut):
		return fmt.Sprintf("a text can't begin with %s: put the text in quotes", open)
	}
	return ""
}

// sourceLine is a line of a file as it was typed.
func sourceLine(text []byte, line int) string {
	lines := strings.Split(string(text), "\n")
	if line < 1 || line > len(lines) {
		return ""
	}
	return strings.TrimSpace(lines[line-1])
}

// listWanted and strayKey are messages of the YAML reader.
var (
	listWanted = lazily("^line \\d+: cannot unmarshal !!\\w+ `.*` into \\[\\]string$")
	strayKey   = lazily(`^line \d+: field (.+) not found in type`)
)

// instead shows what to write in place of a line that has the wrong type, or behind an unknown
// key that is the rest of a text; it is empty where nothing better is known.
func instead(source, message string) string {
	if m := strayKey().FindStringSubmatch(message); m != nil {
		at := strings.Index(source, m[1])
		if before, behind := source[:max(at, 0)], source[max(at, 0):]; at > 0 && strings.Contains(before, "{") && strings.HasSuffix(strings.TrimRight(before, " "), ",") && !strings.HasPrefix(behind[len(m[1]):], ":") {
			return "; or, if it is the rest of a text with a comma, put the text in quotes"
		}
		return ""
	}
	key, value, ok := strings.Cut(source, ":")
	if !listWanted().MatchString(message) || !ok {
		return ""
	}
	value = strings.TrimSpace(value)
	switch {
	case key == "either" && strings.HasPrefix(value, "["):
		return "; pairs are lists in a list, such as either: [" + shortened(value) + "]"
	case value != "" && !strings.ContainsAny(value[:1], "[{|>\"'#"):
		return ", such as " + shortened(key) + ": [" + shortened(value) + "]"
	}
	return ""
}
