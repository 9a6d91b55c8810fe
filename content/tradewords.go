package content

import (
	"path"
	"regexp"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"
)

// tradeWords are words of the trade that the glossary must explain where a lesson or a
// task uses them. A term's own name or another name of it will do.
var tradeWords = []string{
	"17/24", "acme", "acme thread", "allowance", "alternate flank", "anvil", "apron", "backlash", "basic bore",
	"best wire", "between centres", "blank", "blunt start", "boring bar", "british pipe", "burr", "buttress",
	"callout", "cam-lock", "carbide", "carriage", "centralizing", "centre drill", "centre gauge", "centre hole",
	"chamfer", "change gears", "chatter", "chuck", "class of fit", "clearance", "collet", "compound", "compound rest",
	"crest", "cross slide", "cross-slide stop", "cutting fluid", "dead centre", "depth of cut", "die nut", "dog",
	"drawbar", "drive plate", "electronic lead screw", "encoder", "external thread", "faceplate",
	"feed-reverse lever", "fishtail", "flank", "flank infeed", "follow rest", "four-jaw chuck", "full profile",
	"general purpose", "gib", "go plug", "go ring", "half-nut", "half-nut lever", "hand-tight", "headstock",
	"high-speed steel", "idler", "incomplete thread", "infeed", "insert", "internal thread", "lead angle",
	"lead screw", "leading flank", "length of engagement", "live centre", "major diameter", "mating part",
	"minor diameter", "mixed pair", "modified flank", "nominal diameter", "nose radius", "not-go", "overhang",
	"partial profile", "pitch diameter", "pitch line", "plating", "plug gauge", "plunge", "power feed",
	"quick-change gearbox", "rake", "read-out", "relief angle", "relief groove", "ring gauge", "root", "saddle",
	"safety data sheet", "scratch pass", "screw pitch gauge", "set-over", "setting gauge", "sharp height", "shoulder",
	"single depth", "spindle nose", "spring pass", "square thread", "steady rest", "swarf", "tailstock",
	"taper attachment", "thread chasing dial", "thread dial", "thread file", "thread micrometer", "threads per inch",
	"three wires", "three-jaw chuck", "tolerance", "tolerance class", "tool post", "touch-off", "trailing flank",
	"trapezoidal", "tumbler lever", "undercut", "whitworth",
}

// oldWords are words that the trade does not use today, with those that it does.
var oldWords = []struct {
	found *regexp.Regexp
	say   string
}{
	{oldWord(`outside threads?`), "external thread"},
	{oldWord(`inside threads?`), "internal thread"},
	{oldWord(`(?:over|count|on) the tops?`), "crests"},
	{oldWord(`helix angle of the thread`), "lead angle"},
	{oldWord(`first touch`), "touch-off"},
	{oldWord(`driving plate`), "drive plate"},
	{oldWord(`free way`), "clearance or travel"},
	{oldWord(`a tenth (?:short|less)`), "a tenth of the travel"},
	{oldWord(`reckon(?:s|ed|ing)?`), "work out"},
	{oldWord(`wrong road`), "wrong way"},
	{oldWord(`(?:is|was|been|were) told`), "said"},
	{oldWord(`handed out`), "given"},
}

func oldWord(pattern string) *regexp.Regexp { return regexp.MustCompile(`(?i)\b` + pattern + `\b`) }

// tradeWordsOf reports the trade words of a file that the glossary lacks, and
// its old words. Keys are names, not words that anyone reads.
func (c *checker) tradeWordsOf(file string, text []byte) {
	var root yaml.Node
	if yaml.Unmarshal(text, &root) != nil {
		return // said where the file is read
	}
	readable(&root, func(n *yaml.Node) {
		said := placeholders.ReplaceAllString(n.Value, " ")
		for _, old := range oldWords {
			if found := old.found.FindString(said); found != "" {
				c.say(file, n.Line, "%q is not what the trade says: write %s", found, old.say)
			}
		}
		for _, word := range c.unexplained {
			if asWord(word).MatchString(said) {
				c.say(file, n.Line, "%q has no entry in terms.yaml", word)
			}
		}
	})
}

var placeholders = regexp.MustCompile(`\$\{[^}]*\}`)

// asWord finds a word or its plural.
func asWord(word string) *regexp.Regexp {
	return regexp.MustCompile(`(?i)(?:^|[^\w-])` + regexp.QuoteMeta(word) + `s?(?:$|[^\w-])`)
}

// readable calls f for each text below n that is no key.
func readable(n *yaml.Node, f func(*yaml.Node)) {
	switch n.Kind {
	case yaml.ScalarNode:
		f(n)
	case yaml.MappingNode:
		for i := 1; i < len(n.Content); i += 2 {
			readable(n.Content[i], f)
		}
	case yaml.DocumentNode, yaml.SequenceNode:
		for _, child := range n.Content {
			readable(child, f)
		}
	}
}

// withoutATerm lists the trade words that neither are a term nor another name of one.
func withoutATerm(terms map[string]Term) []string {
	var names []string
	for name, t := range terms {
		names = append(names, strings.ToLower(name))
		for _, also := range t.Also {
			names = append(names, strings.ToLower(also))
		}
	}
	return slices.DeleteFunc(slices.Clone(tradeWords), func(word string) bool {
		return slices.Contains(names, word)
	})
}

// trade looks at the words of everything that a learner reads.
func (c *checker) trade() {
	terms, err := c.lib.Terms()
	if err != nil {
		return // said by terms
	}
	c.unexplained = withoutATerm(terms)
	var files []string
	for _, dir := range folders {
		for _, name := range c.lib.names(dir) {
			files = append(files, path.Join(dir, name+".yaml"))
		}
	}
	for _, name := range append(files, "bench.yaml", "drawings.yaml", "phrases.yaml", "safety.yaml", "screens.yaml", "symbols.yaml") {
		if f, err := c.lib.find(name); err == nil {
			c.tradeWordsOf(f.where, f.text)
		}
	}
}
