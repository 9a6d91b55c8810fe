package main

import (
	"bufio"
	"html"
	"io"
	"os"
	"regexp"
	"runtime"
	"strings"
	"syscall"
	"testing"
	"time"

	"scratchpass/lessons/postgres"
	"scratchpass/lessons/postgres/postgrestest"
	"scratchpass/lessons/record"
	"scratchpass/lessons/school"
)

// node starts one of the nodes of a school.
func (s shop) node(at string) serving {
	s.t.Helper()
	c := serving{shop: s, cmd: s.command("serve", "--settings", "school.yaml", "--seal", "seal.key", "--database", at, "--listen", "127.0.0.1:0")}
	out, err := c.cmd.StdoutPipe()
	if err != nil {
		s.t.Fatal(err)
	}
	if err := c.cmd.Start(); err != nil {
		s.t.Fatal(err)
	}
	s.t.Cleanup(func() { _ = c.cmd.Process.Kill() }) // it may have ended
	first, err := bufio.NewReader(out).ReadString('\n')
	if err != nil {
		s.t.Fatal(err)
	}
	go func() { _, _ = io.Copy(io.Discard, out) }()
	c.base = strings.TrimSpace(first)
	return c
}

var asked = regexp.MustCompile(`name="prompt" value="([^"]+)"`)

// types answers what is asked at someone's study, and returns the page that comes of it, with the name
// of the prompt that was answered.
func (p phone) types(field, text string) (page, prompt string) {
	p.t.Helper()
	page = p.get("/study")
	found := asked.FindStringSubmatch(page)
	if found == nil {
		p.t.Fatal("nothing is asked on ", page)
	}
	return html.UnescapeString(p.post("/study/answer", "prompt", found[1], field, text)), found[1]
}

// chooses takes the line of a menu that begins with a label.
func (p phone) chooses(label string) string {
	p.t.Helper()
	page := p.get("/study")
	found := regexp.MustCompile(`name="answer" value="(\d+)">` + label).FindStringSubmatch(page)
	if found == nil {
		p.t.Fatal("no ", label, " in ", page)
	}
	page, _ = p.types("answer", found[1])
	return page
}

// A learner at the bench of a school whose node is killed goes on at another with the very move: what
// was stored and not answered is there once, though the form is sent again; what was not is not. The
// debrief and the card are there, and nothing names a file.
func TestServeABench(t *testing.T) {
	at := postgrestest.Address(t)
	s := newSchool(t)
	way := postgrestest.Through(t, at)
	a, b := s.node(way.Address), s.node(at)
	db, err := postgres.Open(t.Context(), at)
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	token, err := school.Sessions{DB: db, Clock: time.Now}.Begin(t.Context(), school.Person{ID: "x Ada", Name: "Ada", Groups: []string{"teach-1"}})
	if err != nil {
		t.Fatal(err)
	}
	ada := a.browser(token)
	var pages strings.Builder
	wants := func(page string, texts ...string) {
		t.Helper()
		pages.WriteString(page)
		for _, text := range texts {
			if !strings.Contains(page, text) {
				t.Errorf("no %q in %s", text, page)
			}
		}
	}
	ada.chooses("Look")
	ada.chooses("Rehearse a whole job")
	ada.chooses("Pump stud")
	wants(ada.chooses("Step by step"), "Pump stud")
	page, _ := ada.types("answer", "dress")
	wants(page, "Glasses on")
	page, _ = ada.types("answer", "speed fast")
	wants(page, "speed")
	way.LoseCommits(1)
	page, prompt := ada.types("answer", "key out") // it is kept, and this node does not hear of it
	wants(page, "out of reach")
	a.stop(true)

	ada = b.browser(token)
	page = html.UnescapeString(ada.post("/study/answer", "prompt", prompt, "answer", "key out")) // as a browser sends it again
	wants(page, "Your last moves", "1. dress", "2. key out")
	if strings.Contains(page, "3. key out") {
		t.Error("it was done twice: ", page)
	}
	_, prompt = ada.types("answer", "feed off")
	if page := html.UnescapeString(ada.post("/study/answer", "prompt", prompt, "answer", "feed off")); strings.Contains(page, "4. feed off") {
		t.Error("sent twice, it was done twice: ", page)
	}
	page, prompt = ada.types("word", "card")
	wants(page, "Card for rehearsal")
	if runtime.GOOS == "windows" {
		b.stop(true)
	} else if err := b.cmd.Process.Signal(syscall.SIGTERM); err != nil {
		t.Fatal(err)
	} else {
		_ = b.cmd.Wait() // it was stopped
	}

	c := s.node(at)
	ada = c.browser(token)
	page = html.UnescapeString(ada.post("/study/answer", "prompt", prompt, "answer", "oil")) // asked by the node before, not stored there
	wants(page, "oil")
	page, _ = ada.types("word", "log")
	wants(page, "dress\nkey out\nfeed off\noil\n")
	page, _ = ada.types("answer", "done")
	wants(page, "How it came out", "The part binds.", "What would you like to do?")
	for _, no := range []string{".log", "dryrun", s.dir, os.TempDir()} {
		if strings.Contains(pages.String(), no) {
			t.Errorf("%q stands on a page", no)
		}
	}
	rec := record.In(db, "x Ada")
	logs, err := rec.Logs()
	if err != nil || len(logs) != 1 || !strings.HasSuffix(logs[0].Text, "\ndress\nkey out\nfeed off\noil\ndone\n") {
		t.Error(logs, err)
	}
	if all, err := rec.Rehearsals(); len(all) != 1 || err != nil {
		t.Error(all, err)
	}
	if export := ada.get("/mine.jsonl"); !strings.Contains(export, `"rehearsal":"pump-stud"`) || !strings.Contains(export, `key out\nfeed off\noil\ndone\n"}`) {
		t.Error(export)
	}
	// What an older program has stored and this one can't go on with is told of, and the menu comes.
	if err := rec.Sittings().Restart([]byte(`{"kind":"start","value":{"flow":"of another program"}}`)); err != nil {
		t.Fatal(err)
	}
	wants(html.UnescapeString(ada.get("/study")), "The program has changed since you were here.", "What would you like to do?")
}
