package content

import (
	"errors"
	"strings"
	"testing"
	"testing/fstest"
)

// Whatever a file of words has in it, reading and checking it ends in words or in
// findings. The library has the one file alone: to check all that is shipped each time
// would leave no time to try much.
func FuzzWords(f *testing.F) {
	for _, name := range []string{"tasks/compound-travel.yaml", "tasks/when-to-leave-compound.yaml", "lessons/010-safety-first.yaml", "safety.yaml", "bench.yaml"} {
		text, err := embedded.ReadFile(name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(text[:min(len(text), 2000)])
	}
	f.Add([]byte("title: a\nslips: {a: b}\nask: {1: c}\n"))
	f.Add([]byte("a: &a [*a]"))
	f.Fuzz(func(t *testing.T, text []byte) {
		file := &fstest.MapFile{Data: text}
		lib := &Library{[]folder{{fsys: fstest.MapFS{"tasks/a.yaml": file, "lessons/010-a.yaml": file, "safety.yaml": file, "bench.yaml": file, "jobs/a.yaml": file}}}}
		_, _ = lib.Task("a")
		_, _ = lib.Lesson("a")
		_, _ = lib.Bench()
		_, _ = lib.Job("a")
		for _, finding := range lib.Check(Known{}) {
			if finding.Text == "" || finding.File == "" {
				t.Errorf("%q: a finding without words: %+v", text, finding)
			}
		}
	})
}

// Whatever is decoded, no text in it has a character that a terminal would obey, and no
// title a line break.
func FuzzDecode(f *testing.F) {
	f.Add([]byte("title: a\ntext: |\n  b\n  c\n"))
	f.Add([]byte("title: \"\\e[2J\"\n? \"a\\nb\"\n: !!binary G10=\n"))
	f.Add([]byte("title: &a b\nlist: [*a, \"\\u202e\", 'c']\n"))
	f.Fuzz(func(t *testing.T, text []byte) {
		var out struct {
			Title string            `yaml:"title"`
			Text  string            `yaml:"text"`
			List  []string          `yaml:"list"`
			Keys  map[string]string `yaml:"keys"`
			Any   any               `yaml:"any"`
		}
		if Decode("f", text, &out) != nil {
			return
		}
		all := append([]string{out.Title, out.Text}, out.List...)
		for k, v := range out.Keys {
			if strings.Contains(k, "\n") {
				t.Errorf("%q: the key %q", text, k)
			}
			all = append(all, k, v)
		}
		for _, s := range all {
			if r, bad := forbidden(strings.ReplaceAll(s, "\n", " ")); bad {
				t.Errorf("%q: %q has %U", text, s, r)
			}
		}
		if strings.Contains(out.Title, "\n") {
			t.Errorf("%q: the title %q", text, out.Title)
		}
	})
}

// Whatever a text asks to be filled in, what has no figure stays as it is.
func FuzzFillFigures(f *testing.F) {
	f.Add("a ${pitch 8} b ${x}\n${not closed\n}")
	f.Add("${${}}$")
	f.Fuzz(func(t *testing.T, text string) {
		none := errors.New("none")
		same, err := FillFigures(text, func(string) (string, error) { return "", none })
		if same != text || (err == nil) == strings.Contains(text, "${") {
			t.Errorf("%q became %q, %v", text, same, err)
		}
	})
}
