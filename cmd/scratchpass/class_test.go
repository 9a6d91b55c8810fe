package main

import (
	"bufio"
	"bytes"
	"io"
	"net/http"
	"net/http/cookiejar"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"syscall"
	"testing"
)

// shop is a folder with a blueprint, a roster and a home, and the program to run there.
type shop struct {
	t   *testing.T
	dir string
}

func newShop(t *testing.T) shop {
	t.Helper()
	s := shop{t, t.TempDir()}
	s.write("lesson.yaml", "set: lesson\ntitle: A lesson\nunits: in\nrules: {feedback: end}\nslots:\n- {name: travel, tasks: [compound-travel]}\n- {tasks: [infeed-left], takes: {total: travel}}\n- {tasks: [no-cloth-on-turning-work]}\n")
	s.write("roster.csv", "id,name\n1,Ada Brink\n2,Ben Corrie\n")
	return s
}

func (s shop) write(name, text string) {
	s.t.Helper()
	if err := os.WriteFile(filepath.Join(s.dir, name), []byte(text), 0o600); err != nil {
		s.t.Fatal(err)
	}
}

func (s shop) command(args ...string) *exec.Cmd {
	cmd := exec.Command(os.Args[0], args...)
	cmd.Dir = s.dir
	home := filepath.Join(s.dir, "home")
	cmd.Env = append(os.Environ(), "SCRATCHPASS_TEST_MAIN=1", "HOME="+home, "XDG_CONFIG_HOME="+filepath.Join(home, "config"), "XDG_DATA_HOME="+filepath.Join(home, "data"), "AppData="+home, "LocalAppData="+home)
	return cmd
}

// run runs the program and returns what it printed.
func (s shop) run(args ...string) string {
	s.t.Helper()
	out, err := s.command(args...).CombinedOutput()
	if err != nil {
		s.t.Fatalf("%v: %v\n%s", args, err, out)
	}
	return string(out)
}

// serving is a class that is being served.
type serving struct {
	shop
	cmd       *exec.Cmd
	base      string        // http://host:port
	notes     *bytes.Buffer // what it said beside, when it has ended
	code, key string
}

// serve starts a class of the blueprint and reads its links.
func (s shop) serve(args ...string) serving {
	s.t.Helper()
	return s.class(append([]string{"lesson.yaml", "--roster", "roster.csv", "--listen", "127.0.0.1:0"}, args...)...)
}

// class starts a class and reads its links.
func (s shop) class(args ...string) serving {
	s.t.Helper()
	c := serving{shop: s, cmd: s.command(append([]string{"class"}, args...)...), notes: &bytes.Buffer{}}
	out, err := c.cmd.StdoutPipe()
	if err != nil {
		s.t.Fatal(err)
	}
	c.cmd.Stderr = c.notes
	if err := c.cmd.Start(); err != nil {
		s.t.Fatal(err)
	}
	s.t.Cleanup(func() { _ = c.cmd.Process.Kill() }) // it may have ended
	lines := bufio.NewReader(out)
	phones, err := lines.ReadString('\n')
	if err != nil {
		s.t.Fatal("no address: ", err)
	}
	desk, err := lines.ReadString('\n')
	if err != nil {
		s.t.Fatal("no private link: ", err)
	}
	go func() { _, _ = io.Copy(io.Discard, lines) }()
	u, err := url.Parse(strings.TrimSpace(phones))
	if err != nil {
		s.t.Fatal(err)
	}
	c.base, c.code = "http://"+u.Host, strings.Trim(u.Path, "/")
	if u, err = url.Parse(strings.TrimSpace(desk)); err != nil {
		s.t.Fatal(err)
	}
	c.key = u.Query().Get("key")
	return c
}

// stop stops it as Ctrl-C does, or kills it.
func (c serving) stop(kill bool) {
	c.t.Helper()
	if kill || runtime.GOOS == "windows" {
		if err := c.cmd.Process.Kill(); err != nil {
			c.t.Fatal(err)
		}
		_ = c.cmd.Wait() // it was killed
		return
	}
	if err := c.cmd.Process.Signal(syscall.SIGINT); err != nil {
		c.t.Fatal(err)
	}
	if err := c.cmd.Wait(); err == nil || c.cmd.ProcessState.ExitCode() != 130 {
		c.t.Errorf("stopped, it ended with %v", err)
	}
}

// phone is a browser without a script.
type phone struct {
	serving
	client *http.Client
}

func (c serving) phone() phone {
	jar, err := cookiejar.New(nil)
	if err != nil {
		c.t.Fatal(err)
	}
	return phone{c, &http.Client{Jar: jar}}
}

// get and post return the page that comes.
func (p phone) get(path string) string { return p.read(p.client.Get(p.base + path)) }

func (p phone) post(path string, fields ...string) string {
	form := url.Values{}
	for i := 0; i < len(fields); i += 2 {
		form.Add(fields[i], fields[i+1])
	}
	return p.read(p.client.PostForm(p.base+path, form))
}

func (p phone) read(r *http.Response, err error) string {
	p.t.Helper()
	if err != nil {
		p.t.Fatal(err)
	}
	defer r.Body.Close()
	text, err := io.ReadAll(r.Body)
	if err != nil {
		p.t.Fatal(err)
	}
	return string(text)
}

// A class from its first line to the marks: people come in, answer, the computer is cut off and
// goes on with the same code and links, and set mark reads the file.
func TestAClass(t *testing.T) {
	s := newShop(t)
	s.write("exit.yaml", "set: exit\ntitle: At the end\nunits: in\nsure: true\nslots:\n- {tasks: [single-depth]}\n- {tasks: [dial-past-a-turn]}\n")
	c := s.serve("exit.yaml")
	ada, ben := c.phone(), c.phone()
	if page := ada.get("/" + strings.ToLower(c.code)); !strings.Contains(page, "Your name") {
		t.Fatal("no door: ", page)
	}
	room := "/r/" + c.code
	if page := ada.post(room+"/join", "name", "ada brink"); !strings.Contains(page, "Wait for the first question") {
		t.Fatal("not let in: ", page)
	}
	ben.post(room+"/join", "name", "Ben Corrie")
	desk := c.phone()
	if page := desk.post("/desk/"+c.code+"/do", "do", "open", "place", "0"); !strings.Contains(page, "private link") {
		t.Error("anyone can open a question: ", page)
	}
	desk.get("/desk/" + c.code + "?key=" + c.key)
	if page := desk.post("/desk/"+c.code+"/do", "do", "open", "place", "0"); !strings.Contains(page, "Next: At the end") {
		t.Error("the second blueprint is not offered: ", page)
	}
	if page := ada.get(room); !strings.Contains(page, "compound") {
		t.Error("the question did not come: ", page)
	}
	if page := ada.post(room+"/answer", "set", "0", "place", "0", "answer", "0.5 + 0.25 in", "key", "k1"); !strings.Contains(page, "Your answer is kept: 0.75 in") {
		t.Error("the answer was not kept: ", page)
	}
	ada.post(room+"/answer", "set", "0", "place", "0", "answer", "0.5 + 0.25 in", "key", "k1") // it came twice
	c.stop(true)

	again := s.serve() // port 0 takes that of before
	if again.base != c.base || again.code != c.code || again.key != c.key {
		t.Fatal("the links are others now: ", again.base, again.code, again.key, c.base, c.code, c.key)
	}
	ada.serving, ben.serving, desk.serving = again, again, again
	if page := ada.get(room); !strings.Contains(page, "0.75 in") {
		t.Error("after the restart the answer is gone: ", page)
	}
	ben.post(room+"/answer", "set", "0", "place", "0", "answer", "pass")
	ada.post(room+"/keep", "keep", "yes")
	visitor := again.phone()
	visitor.post(room+"/join", "name", "Zoe", "visitor", "yes")
	visitor.post(room+"/answer", "set", "0", "place", "0", "answer", "0.1")
	if page := desk.post("/desk/"+c.code+"/do", "do", "start", "n", "0"); !strings.Contains(page, "there is no further set") {
		t.Error("a set is started that the program was not given: ", page)
	}
	again.stop(false)

	both := s.serve("exit.yaml")
	ben.serving, desk.serving = both, both
	desk.post("/desk/"+c.code+"/do", "do", "start", "n", "0", "sure", "yes") // two questions of the first are unasked
	ben.post(room+"/answer", "set", "1", "place", "0", "answer", "0.05", "asked", "yes")
	both.stop(false)
	if out, err := s.command("class", "answers", "lesson.class").CombinedOutput(); err != nil || !strings.Contains(string(out), "The class was asked 2 sets. This is the first; --set 2") {
		t.Error("that there is another set is not said: ", string(out))
	}
	if out := s.run("class", "person", "lesson.class", "Ada", "Brink"); !strings.Contains(out, "Ada Brink in the class") {
		t.Error("a name of two words: ", out)
	}
	for typed, near := range map[string]string{"Ada": "Ada Brink", "Ada Brnik": "Ada Brink"} {
		if out, err := s.command("class", "person", "lesson.class", typed).CombinedOutput(); err == nil || !strings.Contains(string(out), "did you mean "+near) {
			t.Errorf("%s: %s", typed, out)
		}
	}
	if out := s.run("class", "answers", "lesson.class", "--set", "2"); !strings.Contains(out, "0.05") {
		t.Error("answers to the second: ", out)
	}

	out := s.run("set", "mark", "lesson.yaml", "--roster", "roster.csv", "--answers", "lesson.class", "--out", "marks")
	if !strings.Contains(out, "Questions that nobody was asked, by their places in the blueprint: 2, 3. They are left out: the marks are of 1 points.") {
		t.Error("it is not said what nobody was asked: ", out)
	}
	if !strings.Contains(out, "Zoe") {
		t.Error("it is not said that a visitor was left out: ", out)
	}
	marks, err := os.ReadFile(filepath.Join(s.dir, "marks", "marks.csv"))
	if err != nil {
		t.Fatal(err)
	}
	if strings.Count(string(marks), "not-asked") != 4 || strings.Contains(string(marks), ",3,") {
		t.Error("what nobody was asked is marked: ", string(marks))
	}
	if !strings.Contains(string(marks), "0.75 in") || strings.Contains(string(marks), "Zoe") {
		t.Error("marks: ", string(marks))
	}
	if out := s.run("class", "keep", "lesson.class"); !strings.Contains(out, "record of Ada Brink: 1.") || strings.Contains(out, "Left out") || !strings.Contains(out, `scratchpass progress --learner "Ada Brink"`) {
		t.Error("keep: ", out)
	}
	if out := s.run("progress", "--learner", "Ada Brink", "--json"); !strings.Contains(out, "compound-travel") {
		t.Error("her record: ", out)
	}
	if out := s.run("class", "person", "lesson.class", "ada brink", "--json"); !strings.Contains(out, "0.75 in") || !strings.Contains(out, `"kind": "answered"`) || strings.Contains(out, "0.1\"") {
		t.Error("her data: ", out)
	}
	told := strings.Join(strings.Fields(s.run("class", "person", "lesson.class", "ada brink")), " ")
	for _, text := range []string{"Ada Brink in the class A lesson", "Came in with a phone.", "Answered question 1 of set 1: 0.75 in, worked out from 0.5 + 0.25 in.", "Wanted the answers kept in a record.", "Typed: 0.75 in. The answer is", "0 of 1 points", "Not asked of anyone, so not in the points.", "far do you feed the compound"} {
		if !strings.Contains(told, text) {
			t.Errorf("no %q in what is told of her: %s", text, told)
		}
	}
	if out := s.run("class", "answers", "lesson.class", "--visitors"); !strings.Contains(out, "Zoe") || strings.Contains(out, "0.75") {
		t.Error("the visitors: ", out)
	}
	not := s.command("class", "forget", "lesson.class")
	not.Stdin = strings.NewReader("no\n")
	if out, err := not.CombinedOutput(); err == nil || not.ProcessState.ExitCode() != 130 || !strings.Contains(string(out), "Nothing was deleted.") {
		t.Errorf("after a no: %v\n%s", err, out)
	}
	if out := s.run("class", "forget", "lesson.class", "--yes"); !strings.Contains(out, "scratchpass progress forget --learner NAME") {
		t.Error("it is not said that her record stays: ", out)
	}
	left, err := filepath.Glob(filepath.Join(s.dir, "lesson.class*"))
	if err != nil || len(left) > 0 {
		t.Error("still there: ", left, err)
	}
}

// What is wrong with a call is said with what would do.
func TestClassCalledWrongly(t *testing.T) {
	s := newShop(t)
	s.write("other.yaml", "set: lesson\ntitle: Another\nunits: in\nslots:\n- {tasks: [single-depth]}\n")
	for _, c := range []struct {
		args []string
		says string
	}{
		{[]string{"class", "lesson.yaml", "other.yaml"}, `other.yaml: its set is called "lesson", as in the first: give it another name`},
		{[]string{"class", "lesson.yaml", "compound-travel"}, `"compound-travel": give blueprints (.yaml), or tasks, not both`},
		{[]string{"class", "lesson.yaml", "nowhere.yaml"}, "nowhere.yaml"},
		{[]string{"class", "lesson.yaml", "--way", "race"}, `there is no way "race" to run a set: give one of [together own-pace ticket]`},
		{[]string{"class", "lesson.yaml", "--listen", "nowhere"}, `--listen "nowhere": give HOST:PORT`},
		{[]string{"class", "lesson.yaml", "--cert", "c.pem"}, "--cert and --key: give both, or none"},
		{[]string{"class", "compound-travle"}, `did you mean compound-travel`},
		{[]string{"class", "lesson.yaml", "--room", "roster.csv"}, "holds no class, and is left as it is"},
		{[]string{"class", "forget", "roster.csv"}, "holds no class"},
		{[]string{"class", "forget", "nosuch.class"}, `there is no file "nosuch.class"`},
		{[]string{"class", "keep", "nosuch.class"}, `there is no file "nosuch.class"`},
	} {
		out, err := s.command(append(c.args, "--listen", "127.0.0.1:0")[:len(c.args)]...).CombinedOutput()
		if err == nil || !strings.Contains(string(out), c.says) {
			t.Errorf("%v: %v\n%s", c.args, err, out)
		}
	}
	c := s.serve()
	c.stop(true)
	out, err := s.command("class", "other.yaml", "--room", "lesson.class", "--listen", "127.0.0.1:0").CombinedOutput()
	if err == nil || !strings.Contains(string(out), "another blueprint") {
		t.Errorf("another blueprint: %v\n%s", err, out)
	}
}
