package content

import (
	"strings"
	"testing"
)

// What is no YAML is told so that someone who never heard of it can mend it, at the line that
// is the cause.
func TestMend(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"title: A thing: with colon\nkind: choice", ":1: a colon stands inside this text: put the text in quotes"},
		{"title: T\nask:\n\tWhat?\nkind: choice", ":3: a tab stands in front of this line: use blanks, not a tab"},
		{"title: T\nmistakes:\n\ta: {say: no}\n", ":3: a tab stands"},
		{"title: \"lone\nkind: choice", ":1: a quote \" opens this text and none closes it"},
		{"title: 'Don't do'\nkind: choice", ":1: a quote ' stands inside this text: put the whole text between \" and \""},
		{"title: T\nhint: \"4\"\" wide\"\nkind: choice", ":2: a quote \" stands inside this text: put the whole text between ' and '"},
		{"title: @foo\nkind: choice", ":1: a text can't begin with @: put the text in quotes"},
		{"title: %x", ":1: a text can't begin with %"},
		{"title: T\noptions:\n  a: *bold*", ":3: a text can't begin with *"},
		{"title: [x] y", ":1: a text can't begin with ["},
		{"title: T\nmistakes:\n  a: {say: It is: so}\n", ":3: a colon stands inside this text"},
		{"title: T\nmistakes:\n  a: {say: \"x}\n", ":3: a quote \" stands alone on this line"},
		{"title: T\nmistakes:\n  a:\n    say: Stop: never do\n    gives: [a]\n", ":4: a colon stands inside"},
		{"title: T\nmistakes:\n  a: {say: Stop, never}\n", ":3: unknown key \"never\"; here the keys are formula, gives, say; did you mean gives?; or, if it is the rest of a text with a comma, put the text in quotes"},
		{"title: T\n  kind: choice\n", ":2: this line stands too far in"},
		{"title: T\noptions:\n  a: one\n b: two", ":4: keys of one block begin in one column"},
		{"title: T\nright: [a\nhint: b\n", ":2: [ opens here and no ] closes it"},
		{"ask: |\nWhat is it?\n", ":2: the lines below | begin two blanks further in"},
		{"title: T\nhint: | text here\n", ":2: a text can't begin with |"},
		{"right: name\n", ":1: a text stands where a list (lines that begin with -) is wanted, such as right: [name]"},
		{"title: T\nright: tailstock-away-from-it\n", ":2: a text stands where a list (lines that begin with -) is wanted, such as right: [tailstock-away-from-it]"},
		{"right: a, b\n", "such as right: [a, b]"},
		{"right: [a]\neither: [a, b]\n", "such as either: [[a, b]]"},
	} {
		var q Question
		err := Decode("q.yaml", []byte(c.text), &q)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%q: %v, want %q", c.text, err, c.want)
		}
	}
}

// What is sound is not complained about, whatever stands in it.
func TestMendLeavesSoundFiles(t *testing.T) {
	for _, kind := range []string{"choice", "several", "order", "number"} {
		text, err := ExampleQuestion(kind)
		if err != nil {
			t.Fatal(err)
		}
		if line, advice, ok := mend(text); ok {
			t.Errorf("%s:%d: %s", kind, line, advice)
		}
	}
	for _, text := range []string{
		"ask: |\n  A colon: here, \"and a quote\n\n  - and this: that\nhint: b\n", "a: \"x: y\" # why: so\n", "a:\n- b\n- c: d\n  e: f\n", "a: {b: \"c: d\", e: [f, g]}\n",
		"a:\n  - text: x\n    more: y\n  - text: z\nb: c\n", "a: b\n# c: d: e\nf: g\n", "a: It's fine.\n", "a: >-\n  x: y: z\nb: c\n",
	} {
		if line, advice, ok := mend([]byte(text)); ok {
			t.Errorf("%q:%d: %s", text, line, advice)
		}
	}
}

func FuzzMend(f *testing.F) {
	f.Add([]byte("a: |\n b\n c: [\n\t- x: \"y"))
	f.Fuzz(func(t *testing.T, text []byte) {
		line, advice, ok := mend(text)
		if ok != (advice != "") || ok && (line < 1 || line > strings.Count(string(text), "\n")+1) {
			t.Errorf("%d %q %v", line, advice, ok)
		}
	})
}
