package content

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"reflect"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"
	"unicode"

	"gopkg.in/yaml.v3"
)

// Finding is one thing wrong in a file of words.
type Finding struct {
	File string
	Line int // 0 when the file as a whole is meant
	Text string
}

func (f Finding) String() string {
	if f.Line > 0 {
		return fmt.Sprintf("%s:%d: %s", f.File, f.Line, f.Text)
	}
	return f.File + ": " + f.Text
}

// Findings is an error with all that is wrong, in file and line order.
type Findings []Finding

func (fs Findings) Error() string {
	lines := make([]string, len(fs))
	for i, f := range fs {
		lines[i] = f.String()
	}
	return strings.Join(lines, "\n")
}

func (fs Findings) sorted() Findings {
	slices.SortStableFunc(fs, func(a, b Finding) int {
		if c := strings.Compare(a.File, b.File); c != 0 {
			return c
		}
		return a.Line - b.Line
	})
	return slices.Compact(fs)
}

// decode reads one YAML document into out and reports all that is wrong with it:
// unknown keys with the keys that are accepted, repeated keys, wrong types, a
// second document, an empty file, and characters that a terminal would obey. byHand looks
// at what only a second reading of the file finds: what quoted texts hide, more than a
// file of words has, octal numbers.
func decode(file string, text []byte, out any, byHand bool) Findings {
	var found Findings
	say := func(line int, format string, args ...any) {
		found = append(found, Finding{file, line, fmt.Sprintf(format, args...)})
	}
	if len(text) > mostBytes {
		say(0, "the file has more than %d bytes, which is the most for a file of words", mostBytes)
		return found
	}
	for i, line := range bytes.Split(text, []byte("\n")) {
		if r, bad := forbidden(string(bytes.TrimSuffix(line, []byte("\r")))); bad && len(found) < mostFindings {
			say(i+1, "the character %U is not allowed here; write plain text", r)
		}
	}
	if len(found) > 0 {
		return found // the YAML reader would only repeat it less clearly
	}
	if byHand {
		var fit bool
		if found, fit = byNodes(file, text); !fit {
			return found
		}
	}
	d := yaml.NewDecoder(bytes.NewReader(text))
	d.KnownFields(true)
	err := d.Decode(out)
	var typed *yaml.TypeError
	switch {
	case errors.Is(err, io.EOF):
		say(0, "the file is empty; it wants %s", acceptedBy(reflect.TypeOf(out).Elem()))
		return found
	case errors.As(err, &typed):
		for _, e := range typed.Errors[:min(len(typed.Errors), mostFindings)] {
			line, what := plainYAML(e, reflect.TypeOf(out).Elem())
			say(line, "%s%s", what, instead(sourceLine(text, line), e))
		}
	case err != nil:
		line, what := plainYAML(strings.TrimPrefix(err.Error(), "yaml: "), nil)
		if cause, advice, ok := mend(text); ok {
			line, what = cause, advice
		}
		say(line, "%s", what)
		return found
	}
	var second yaml.Node
	if err := d.Decode(&second); !errors.Is(err, io.EOF) {
		say(second.Line, "a second document starts here; a file holds one")
	}
	return found
}

// Decode reads one YAML document strictly into out, a pointer to a struct: a file
// that someone wrote by hand. The error lists all findings.
func Decode(file string, text []byte, out any) error {
	if found := decode(file, text, out, true); len(found) > 0 {
		return found.sorted()
	}
	return nil
}

func walk(n *yaml.Node, do func(*yaml.Node)) {
	do(n)
	for _, c := range n.Content {
		walk(c, do)
	}
}

// obeyed reports whether a terminal, a browser or a reader of lines would obey a character
// and not show it: control characters, format characters (bidirectional overrides, what
// has no width) and the separators of lines that are no newline.
func obeyed(r rune) bool {
	return unicode.IsControl(r) || unicode.In(r, unicode.Cf, unicode.Zl, unicode.Zp)
}

// forbidden finds a character that has no place in words for a terminal.
func forbidden(s string) (rune, bool) {
	for i, r := range s {
		if r == unicode.ReplacementChar || r != '\t' && obeyed(r) {
			if r == '\ufeff' && i == 0 {
				continue // a byte-order mark in front does no harm
			}
			return r, true
		}
	}
	return 0, false
}

// Printable returns s without the characters that a terminal would obey: control
// characters other than newline and separators of lines become a space, format characters
// go.
func Printable(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\n':
			return r
		case unicode.Is(unicode.Cf, r), r == unicode.ReplacementChar:
			return -1
		case obeyed(r):
			return ' '
		}
		return r
	}, s)
}

// OneLine is Printable for what stands in one line of something: newlines become a space too.
func OneLine(s string) string { return strings.ReplaceAll(Printable(s), "\n", " ") }

// lazily makes a regular expression when it is first asked for: most runs ask for none of
// these.
func lazily(form string) func() *regexp.Regexp {
	return sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(form) })
}

var (
	linePart    = lazily(`^line (\d+): `)
	unknownKey  = lazily(`^field (.+) not found in type \w+\.(\w+)$`)
	repeatedKey = lazily(`^(?:mapping )?key (.+) already (?:defined|set).*$`)
	wrongType   = lazily("^cannot unmarshal !!(\\w+)(?: `(.*)`)? into (.+)$")
)

// plainYAML turns a message of the YAML reader into one that says what to do.
func plainYAML(message string, root reflect.Type) (line int, text string) {
	if m := linePart().FindStringSubmatch(message); m != nil {
		line, _ = strconv.Atoi(m[1])
		message = message[len(m[0]):]
	}
	if m := unknownKey().FindStringSubmatch(message); m != nil {
		keys := keysOf(root, m[2])
		return line, fmt.Sprintf("unknown key %q; here the keys are %s%s", shortened(m[1]), keys, meant(m[1], strings.Split(keys, ", ")))
	}
	if m := repeatedKey().FindStringSubmatch(message); m != nil {
		return line, fmt.Sprintf("the key %s stands twice; keep one", shortened(m[1]))
	}
	if m := wrongType().FindStringSubmatch(message); m != nil {
		return line, fmt.Sprintf("%s stands where %s is wanted", yamlWord(m[1]), typeWord(m[3]))
	}
	return line, shortened(message)
}

func yamlWord(tag string) string {
	switch tag {
	case "seq":
		return "a list"
	case "map":
		return "a block of keys"
	case "int", "float":
		return "a number"
	}
	return "a text"
}

func typeWord(goType string) string {
	switch {
	case strings.HasPrefix(goType, "[]"):
		return "a list (lines that begin with -)"
	case strings.HasPrefix(goType, "map["), strings.Contains(goType, "."):
		return "a block of keys"
	case goType == "int":
		return "a whole number"
	case goType == "float64":
		return "a number"
	case goType == "bool":
		return "true or false"
	}
	return "a text"
}

// keysOf lists the keys of the struct of that name anywhere below root.
func keysOf(root reflect.Type, name string) string {
	if t := findStruct(root, name); t != nil {
		return acceptedBy(t)
	}
	return "listed in the format's description"
}

func acceptedBy(t reflect.Type) string {
	if t.Kind() != reflect.Struct {
		return "keys with their texts"
	}
	var keys []string
	for i := range t.NumField() {
		if key, _, _ := strings.Cut(t.Field(i).Tag.Get("yaml"), ","); key != "" && key != "-" {
			keys = append(keys, key)
		}
	}
	return strings.Join(keys, ", ")
}

func findStruct(t reflect.Type, name string) reflect.Type {
	switch t.Kind() {
	case reflect.Slice, reflect.Map, reflect.Pointer:
		return findStruct(t.Elem(), name)
	case reflect.Struct:
		if t.Name() == name {
			return t
		}
		for i := range t.NumField() {
			if found := findStruct(t.Field(i).Type, name); found != nil {
				return found
			}
		}
	}
	return nil
}
