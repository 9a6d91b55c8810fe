package content

import (
	"maps"
	"strings"
	"testing"
	"testing/fstest"
)

func own(files map[string]string) *Library {
	fsys := fstest.MapFS{}
	for name, text := range files {
		fsys[name] = &fstest.MapFile{Data: []byte(text)}
	}
	return Reading("mine", fsys)
}

// Words of a task are replaced field by field, and of what goes by names name by name.
func TestOverride(t *testing.T) {
	ours, err := Shipped().Task("compound-travel")
	if err != nil {
		t.Fatal(err)
	}
	lib := own(map[string]string{"tasks/compound-travel.yaml": "hint: House hint.\nslips:\n  no-angle: House words.\n"})
	w, err := lib.Task("compound-travel")
	if err != nil {
		t.Fatal(err)
	}
	if w.Hint != "House hint." || w.Slips["no-angle"] != "House words." || w.Title != ours.Title || len(w.Slips) != len(ours.Slips) || !maps.Equal(w.Ask, ours.Ask) {
		t.Errorf("%+v", w)
	}
	if again, _ := Shipped().Task("compound-travel"); again.Slips["no-angle"] == "House words." {
		t.Error("our own words were written to")
	}
	if lib.Version("compound-travel") == Shipped().Version("compound-travel") || lib.Version("single-depth") != Shipped().Version("single-depth") {
		t.Error("other words have another mark, the same ones the same")
	}
	asked, err := own(map[string]string{"tasks/compound-travel.yaml": "ask: {1: House question}\n"}).Task("compound-travel")
	if err != nil || len(asked.Ask) != 1 { // a level that is not written asks like the one below, not like ours
		t.Errorf("%v, %v", asked.Ask, err)
	}
	if _, err := own(map[string]string{"tasks/compound-travel.yaml": "hnit: x\n"}).Task("compound-travel"); err == nil || !strings.Contains(err.Error(), `mine/tasks/compound-travel.yaml:1: unknown key "hnit"`) {
		t.Error(err)
	}
}

// What is printed to be changed is read again as it was.
func TestWordsText(t *testing.T) {
	lib := own(map[string]string{"tasks/compound-travel.yaml": "hint: House hint.\n", "questions/mine.yaml": "title: Mine\n"})
	for _, task := range []string{"compound-travel", "single-depth", "infeed-left"} {
		text, where, err := lib.WordsText(task)
		if err != nil || where != "tasks/"+task+".yaml" {
			t.Fatalf("%s: %v", where, err)
		}
		before, _ := lib.Task(task)
		after, err := own(map[string]string{where: string(text)}).Task(task)
		if err != nil || before.Hint != after.Hint || !maps.Equal(before.Slips, after.Slips) || !maps.Equal(before.Ask, after.Ask) || !maps.Equal(before.Options, after.Options) {
			t.Errorf("%s: %v\n%s", task, err, text)
		}
	}
	if text, where, err := lib.WordsText("mine"); err != nil || where != "questions/mine.yaml" || string(text) != "title: Mine\n" {
		t.Errorf("%s %q %v", where, text, err)
	}
	if _, _, err := lib.WordsText("nothing"); !ErrNotThere(err) {
		t.Error(err)
	}
}

// The words of a question are marked as the instructor's own, and a task of ours stands in
// front of a question of its name.
func TestQuestionWords(t *testing.T) {
	lib := own(map[string]string{"questions/mine.yaml": "title: Mine\nask: How long is ${L}?\nmistakes: {m: {say: no}}\ninputs: {L: {list: [1], means: length}}\n"})
	w, err := lib.Task("mine")
	if err != nil || w.Title != "Mine (own)" || w.Ask[1] != "Instructor's question. How long is ${L}?" || w.Slips["m"] != "no" || w.Symbols["L"] != "length" {
		t.Errorf("%+v %v", w, err)
	}
	if lib.Version("mine") == "" || lib.Version("nothing") != "" {
		t.Error("a question has a mark of its words")
	}
	if _, err := lib.Task("nothing"); !ErrNotThere(err) {
		t.Error(err)
	}
}

// A question that stands where none is read is told, and other files are someone's own.
func TestMisplaced(t *testing.T) {
	asks := "title: t\nkind: choice\nask: q\n"
	lib := own(map[string]string{"top.yaml": asks, "tasks/one.yaml": asks, "questions/week1/two.yaml": asks, "old/three.yaml": "kind: order\nask: a: b\n", "lessons/five.yml": asks,
		"sets/week.yaml": "set: a\nkind: x\n", "lathe.yaml": "name: my lathe\n", "questions/fine.yaml": asks, "questions/six.yaml.txt": asks})
	found := lib.Check(Known{}).Error()
	for _, want := range []string{"mine/top.yaml: not read: a question belongs in questions/", "mine/tasks/one.yaml: not read", "mine/questions/week1/two.yaml: not read", "mine/old/three.yaml: not read",
		"mine/lessons/five.yml: not read", "mine/questions/six.yaml.txt: only files that end in .yaml are read; did you mean six.yaml?"} {
		if !strings.Contains(found, want) {
			t.Errorf("no %q in %s", want, found)
		}
	}
	for _, not := range []string{"mine/sets", "mine/lathe.yaml", "mine/questions/fine.yaml: not read"} {
		if strings.Contains(found, not) {
			t.Errorf("%q is in its place", not)
		}
	}
	for name, want := range map[string]bool{"questions/a.yaml": true, "a.yaml": true, "lessons/a.yaml": true, "notes/a.yaml": false} {
		if got := LooksOwn(fstest.MapFS{name: {Data: []byte(asks)}}); got != want {
			t.Errorf("%s looks like own content: %v", name, got)
		}
	}
}

// A caution of one's own that names no source there is: its file, its line and what is near.
func TestCautionsOfOnesOwn(t *testing.T) {
	found := own(map[string]string{"safety.yaml": "mine:\n  title: A\n  text: B\n  source: commn-practice\nbare:\n  title: C\n"}).Check(Known{}).Error()
	for _, want := range []string{"mine/safety.yaml:4: no source is called commn-practice; did you mean common-practice?; scratchpass sources lists all", "mine/safety.yaml:5: the caution bare wants a title and a text"} {
		if !strings.Contains(found, want) {
			t.Errorf("no %q in %s", want, found)
		}
	}
}

// The lines of a question run on as they were typed: a blank line parts paragraphs.
func TestParagraphs(t *testing.T) {
	for text, want := range map[string]string{
		"": "", "one": "one", "a\nb\n": "a b", "a\nb\n\nc\n  d\n": "a b\nc d", "\n\na\n\n\n\nb": "a\nb",
		"Look at:\n- one\n- two\n  and more\nWhat now?": "Look at:\n- one\n- two and more What now?",
		"a \n b": "a b",
	} {
		if got := paragraphs(text); got != want {
			t.Errorf("%q is %q, want %q", text, got, want)
		}
	}
	lib := own(map[string]string{"questions/mine.yaml": "title: Mine\nask: |\n  How\n  long?\n\n  Now?\nhint: |\n  a\n  b\noptions: {o: \"x\\ny\"}\nmistakes: {m: {say: \"n\\no\"}}\nat_the_lathe: |\n  c\n  d\n"})
	w, err := lib.Task("mine")
	if err != nil || w.Ask[1] != "Instructor's question. How long?\nNow?" || w.Hint != "a b" || w.Options["o"] != "x y" || w.Slips["m"] != "n o" || w.AtTheLathe != "c d" {
		t.Errorf("%+v %v", w, err)
	}
}

// Names of folders and files that are nearly right are told, others are someone's own.
func TestLayout(t *testing.T) {
	lib := own(map[string]string{"question/a.yaml": "x", "lesson/a.yaml": "x", "sets/week.yaml": "x", "phrase.yaml": "x", "safety.yml": "x", "week-3.yaml": "x",
		"tasks/single-depth.yml": "x", "notes/README.md": "x", "questoins/notes.txt": "x"})
	found := lib.Check(Known{}).Error()
	for _, want := range []string{"mine/question: no folder of this name", "did you mean questions?", "mine/lesson:", "mine/phrase.yaml: no file of this name is read here; did you mean phrases.yaml?",
		"mine/safety.yml: no file of this name is read here; did you mean safety.yaml?", "mine/tasks/single-depth.yml: only files that end in .yaml are read; did you mean single-depth.yaml?"} {
		if !strings.Contains(found, want) {
			t.Errorf("no %q", want)
		}
	}
	for _, not := range []string{"mine/sets", "week-3", "mine/notes", "questoins"} {
		if strings.Contains(found, not) {
			t.Errorf("%q is someone's own", not)
		}
	}
}
