package content

import (
	"fmt"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"
)

// What a file of words may hold at most: several times what any has that ships, and so
// little that no shape of it takes long to read, or a hundred megabytes of memory.
const (
	mostBytes    = 1 << 18
	mostNodes    = 20_000 // keys, texts, lists and blocks in all
	mostKeys     = 2000   // in one block
	mostDeep     = 40     // blocks and lists inside one another
	mostLetters  = 4000   // in one text
	mostOneLine  = 200    // in a title, a name and the like
	mostFindings = 100    // told of one file: who mends those sees the next ones
	mostQuoted   = 100    // letters of what a finding quotes
)

// oneLiners are the keys whose texts stand in a line of something: in a list, on top of a
// sheet, in front of a file of codes.
var oneLiners = []string{"title", "name", "label", "skill", "set", "thread", "source"}

// byNodes looks at a file as YAML has read it, before any meaning is given to it: what a
// quoted text hides, such as "\e", stands in no line of the file. fit is false where the
// file is so large or so deep that reading it further would take long.
func byNodes(file string, text []byte) (found Findings, fit bool) {
	var root yaml.Node
	if yaml.Unmarshal(text, &root) != nil {
		return nil, true // the strict reader says why
	}
	l := nodeReader{file: file}
	l.read(&root, 0)
	return l.found, !l.tooMuch
}

type nodeReader struct {
	file    string
	nodes   int
	found   Findings
	tooMuch bool
}

func (l *nodeReader) say(n *yaml.Node, format string, args ...any) {
	l.found = append(l.found, Finding{l.file, n.Line, fmt.Sprintf(format, args...)})
}

// stop says what there is too much of; nothing is read after it.
func (l *nodeReader) stop(n *yaml.Node, format string, args ...any) {
	l.say(n, format, args...)
	l.tooMuch = true
}

// read looks at a node and at what is below it.
func (l *nodeReader) read(n *yaml.Node, deep int) {
	l.nodes++
	switch {
	case l.tooMuch || len(l.found) >= mostFindings:
		return
	case l.nodes > mostNodes:
		l.stop(n, "the file has more than %d keys and texts; split it", mostNodes)
		return
	case deep > mostDeep:
		l.stop(n, "blocks and lists stand inside one another more than %d deep", mostDeep)
		return
	case n.Kind == yaml.MappingNode && len(n.Content) > 2*mostKeys:
		l.stop(n, "the block has %d keys: give at most %d", len(n.Content)/2, mostKeys)
		return
	case n.Kind == yaml.AliasNode:
		l.say(n, "*%.40s points at another place; write the text itself", Printable(n.Value))
		return
	case n.Kind == yaml.ScalarNode:
		l.scalar(n)
	}
	for i, c := range n.Content {
		l.read(c, deep+1)
		if n.Kind != yaml.MappingNode || i%2 == 0 && c.Kind != yaml.ScalarNode {
			continue
		}
		if key := n.Content[i-i%2].Value; i%2 == 0 || slices.Contains(oneLiners, key) {
			l.oneLine(c, key)
		}
	}
}

// scalar looks at one text or number.
func (l *nodeReader) scalar(n *yaml.Node) {
	switch tag := n.ShortTag(); {
	case tag == "!!binary": // it would be decoded only later
		l.say(n, "%s is not allowed here; write plain text", tag)
	case tag == "!!int" && len(n.Value) > 1 && n.Value[0] == '0':
		l.say(n, "%.40s would be read as an octal number; write it without the leading 0", n.Value)
	}
	if r, bad := forbidden(strings.ReplaceAll(n.Value, "\n", " ")); bad {
		l.say(n, "the character %U is not allowed here; write plain text", r)
	}
	if longer(n.Value, mostLetters) {
		l.say(n, "the text has more than %d letters; split it", mostLetters)
	}
}

// oneLine looks at what stands in a line of something else.
func (l *nodeReader) oneLine(n *yaml.Node, key string) {
	switch {
	case n.Kind != yaml.ScalarNode:
	case strings.Contains(n.Value, "\n"):
		l.say(n, "%q has a line break; write it on one line", shortened(key))
	case longer(n.Value, mostOneLine):
		l.say(n, "%q has more than %d letters; say it shorter", shortened(key), mostOneLine)
	}
}

// longer reports whether a text has more letters than so many.
func longer(text string, most int) bool {
	return len(text) > most && len([]rune(text)) > most
}

// shortened is a text as a finding quotes it.
func shortened(text string) string {
	if runes := []rune(text); len(runes) > mostQuoted {
		return string(runes[:mostQuoted]) + "..."
	}
	return text
}
