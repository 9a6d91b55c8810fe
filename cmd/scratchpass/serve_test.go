package main

import (
	"bufio"
	"encoding/json"
	"io"
	"net/http"
	"net/http/cookiejar"
	"net/http/httptest"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"scratchpass/lessons/postgres"
	"scratchpass/lessons/postgres/postgrestest"
	"scratchpass/lessons/school"
)

const schoolSettings = `address: http://localhost
sign-on: {issuer: "ISSUER", client: scratchpass, scopes: groups}
administrators: [it-staff]
departments:
  - name: Machining
    groups:
      - {name: turning-1, title: First year, instructors: [teach-1], roster: roster.csv}
`

// newSchool is a folder with a school's settings and a key; the sign-on only says who it is.
func newSchool(t *testing.T) shop {
	t.Helper()
	s := newShop(t)
	var issuer string
	provider := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) {
		_ = json.NewEncoder(w).Encode(map[string]string{"issuer": issuer, "authorization_endpoint": issuer + "/in", "token_endpoint": issuer + "/token", "jwks_uri": issuer + "/keys"})
	}))
	t.Cleanup(provider.Close)
	issuer = provider.URL
	s.write("school.yaml", strings.ReplaceAll(schoolSettings, "ISSUER", issuer))
	if out := s.run("serve", "--new-seal", "seal.key"); out != "seal.key\n" {
		t.Error(out)
	}
	return s
}

// fails runs the program, which is to end with a code and to say all of some texts.
func (s shop) fails(code int, args []string, says ...string) {
	s.t.Helper()
	cmd := s.command(args...)
	out, err := cmd.CombinedOutput()
	if err == nil || cmd.ProcessState.ExitCode() != code {
		s.t.Errorf("%v: %v\n%s", args, err, out)
	}
	for _, text := range says {
		if !strings.Contains(string(out), text) {
			s.t.Errorf("%v: no %q in %s", args, text, out)
		}
	}
}

// What is missing is named, all at once; a key is nobody else's to read, and is never written over.
func TestServeCalled(t *testing.T) {
	t.Setenv("SCRATCHPASS_DATABASE", "")
	s := newSchool(t)
	s.fails(2, []string{"serve"}, "serve needs --settings FILE, --database ADDRESS, --seal FILE too")
	s.fails(2, []string{"serve", "--check", "--settings", "school.yaml"}, "serve needs --database ADDRESS, --seal FILE too")
	all := []string{"serve", "--settings", "school.yaml", "--seal", "seal.key", "--database"}
	s.fails(2, append(all, "file.db"), `--database "file.db": give the address of a PostgreSQL database`)
	s.fails(2, append(all, "postgres://127.0.0.1:1/x", "--check", "--cert", "c.pem"), "--cert and --key: give both, or none")
	path := filepath.Join(s.dir, "seal.key")
	before, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if info, err := os.Stat(path); err != nil || runtime.GOOS != "windows" && info.Mode().Perm() != 0o600 {
		t.Error(info.Mode(), err)
	}
	s.fails(1, []string{"serve", "--new-seal", "seal.key"}, "seal.key", "the key is not written")
	if after, err := os.ReadFile(path); err != nil || string(after) != string(before) {
		t.Error("a key that was there is another: ", err)
	}
}

// All that is wrong with a set-up is said at once, and what is good; a check makes nothing that would
// bind the database to its key.
func TestServeCheck(t *testing.T) {
	s := newSchool(t)
	s.write("bad.key", "short\n")
	s.write("bad.yaml", strings.NewReplacer("roster.csv", "nowhere.csv", `"ISSUER"`, `"http://127.0.0.1:1"`).Replace(schoolSettings))
	s.write("worse.yaml", "address: threads\nsign-on: {issuer: x}\n")
	bad := []string{"serve", "--check", "--seal", "bad.key", "--database", "postgres://127.0.0.1:1/x", "--settings"}
	s.fails(1, append(bad, "bad.yaml", "--cert", "no.pem", "--key", "no.pem"), "settings: good", "key: bad.key: the key has to be 32 bytes in base64, as serve --new-seal writes it",
		"database: the database postgres://127.0.0.1:1/x can't be opened", "sign-on: the sign-on is out of reach: http://127.0.0.1:1", "roster of turning-1: ", "nowhere.csv", "certificate: ", "mend what is named above")
	s.fails(1, append(bad, "worse.yaml"), "settings: ", "client: give the name", "administrators: give a group", `address "threads"`, "departments: give one", "key: ", "database: ")

	at := postgrestest.Address(t)
	good := []string{"serve", "--check", "--settings", "school.yaml", "--database", at, "--seal"}
	for range 2 {
		if out := s.run(append(good, "seal.key")...); out != "settings: good\nkey: good\ndatabase: good\nclock: good\nsign-on: good\nthe sign-on has to send people back to http://localhost/back\nroster of turning-1: good\nsecret of turning-1: good\n" {
			t.Error(out)
		}
	}
	s.run("serve", "--new-seal", "other.key")
	s.run(append(good, "other.key")...) // nothing was sealed with the first yet
	db, err := postgres.Open(t.Context(), at)
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	seal, err := school.NewSeal(school.NewKey())
	if err != nil {
		t.Fatal(err)
	}
	if _, err := (school.Secrets{DB: db, Seal: seal}).Of(t.Context(), "turning-1"); err != nil {
		t.Fatal(err)
	}
	if _, err := db.ExecContext(t.Context(), `INSERT INTO rooms (code, began_ms, head, of_group) VALUES ('ACDEFH', 1, '{"code": "ACDEFH", "group": "turning-1", "draws": 1}', 'turning-1')`); err != nil {
		t.Fatal(err)
	}
	s.fails(1, append(good, "other.key", "--earlier", "http://127.0.0.1:1"), "have not ended: 1 (ACDEFH)", "earlier version: ", "connection refused")
	s.fails(2, append(good, "other.key", "--earlier", "127.0.0.1:1"), `--earlier "127.0.0.1:1": give the address`)
	s.fails(1, append(good, "other.key"), `secret of turning-1: the secret of the group "turning-1": it was sealed with another key`)
}

// localhost is a browser that has come to the program by the name that the settings give.
type localhost struct{ cookie string }

func (l localhost) RoundTrip(r *http.Request) (*http.Response, error) {
	r = r.Clone(r.Context())
	r.Host = "localhost"
	if l.cookie != "" {
		r.AddCookie(&http.Cookie{Name: "school", Value: l.cookie})
	}
	return http.DefaultTransport.RoundTrip(r)
}

func (c serving) browser(cookie string) phone {
	jar, err := cookiejar.New(nil)
	if err != nil {
		c.t.Fatal(err)
	}
	return phone{c, &http.Client{Jar: jar, Transport: localhost{cookie}}}
}

// A school from its first line to the last: it tells how it does, a room runs in it, the log names
// nobody, and it ends when it is told to although someone is looking.
func TestServe(t *testing.T) {
	at := postgrestest.Address(t)
	s := newSchool(t)
	c := serving{shop: s, cmd: s.command("serve", "--settings", "school.yaml", "--seal", "seal.key", "--database", at, "--listen", "127.0.0.1:0", "--metrics", "127.0.0.1:0")}
	out, err := c.cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	log, err := c.cmd.StderrPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := c.cmd.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = c.cmd.Process.Kill() }) // it may have ended
	first, err := bufio.NewReader(out).ReadString('\n')
	if err != nil {
		said, _ := io.ReadAll(log)
		t.Fatalf("no address: %v %s", err, said)
	}
	c.base = strings.TrimSpace(first)
	lines := bufio.NewReader(log)
	begun, err := lines.ReadString('\n')
	var serves struct{ Msg, At, Metrics string }
	if err != nil || json.Unmarshal([]byte(begun), &serves) != nil || serves.Msg != "serving" || "http://"+serves.At != c.base {
		t.Fatal(begun, err)
	}
	var logged strings.Builder
	var reading sync.WaitGroup
	reading.Go(func() { _, _ = io.Copy(&logged, lines) })

	nobody := c.browser("")
	if page := nobody.get("/healthz"); page != "runs\n" {
		t.Error(page)
	}
	if page := nobody.get("/readyz"); page != "ready\n" {
		t.Error(page)
	}
	db, err := postgres.Open(t.Context(), at)
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	token, err := school.Sessions{DB: db, Clock: time.Now}.Begin(t.Context(), school.Person{ID: "x Cato", Name: "Cato Wood", Groups: []string{"teach-1"}})
	if err != nil {
		t.Fatal(err)
	}
	cato := c.browser(token)
	cato.post("/groups/turning-1/rooms", "tasks", "compound-travel", "way", "together")
	_, code, _ := strings.Cut(cato.get("/groups/turning-1"), `href="/desk/`)
	code, _, ok := strings.Cut(code, `"`)
	if !ok {
		t.Fatal("no room: ", cato.get("/groups/turning-1"))
	}
	ada := c.browser("")
	ada.post("/r/"+code+"/join", "name", "Ada Brink")
	cato.post("/desk/"+code+"/do", "do", "open", "place", "0")
	if page := ada.post("/r/"+code+"/answer", "set", "0", "place", "0", "answer", "0.731 in", "key", "k1"); !strings.Contains(page, "Your answer is kept: 0.731 in") {
		t.Error(page)
	}
	measured, err := http.Get("http://" + serves.Metrics + "/metrics")
	if err != nil {
		t.Fatal(err)
	}
	if text := nobody.read(measured, nil); !strings.Contains(text, `scratchpass_request_seconds_count{page="POST /r/{code}/answer",status="303"} 1`) || !strings.Contains(text, "scratchpass_rooms_open 1") || strings.Contains(text, code) {
		t.Error(text)
	}
	stream, err := ada.client.Get(c.base + "/r/" + code + "/events")
	if err != nil || stream.Header.Get("Content-Type") != "text/event-stream" {
		t.Fatal(stream.Status, err)
	}
	defer stream.Body.Close()
	if runtime.GOOS == "windows" { // which has no such signal
		_ = c.cmd.Process.Kill()
	} else if err := c.cmd.Process.Signal(syscall.SIGTERM); err != nil {
		t.Fatal(err)
	}
	if _, err := io.Copy(io.Discard, stream.Body); err != nil && runtime.GOOS != "windows" {
		t.Error("a stream was cut off, not ended: ", err)
	}
	reading.Wait()
	if _ = c.cmd.Wait(); runtime.GOOS != "windows" && c.cmd.ProcessState.ExitCode() != 130 {
		t.Error("stopped, it ended with ", c.cmd.ProcessState)
	}
	for line := range strings.Lines(logged.String()) {
		var entry struct{ Level, Msg, Page string }
		if err := json.Unmarshal([]byte(line), &entry); err != nil || entry.Level != "INFO" || entry.Msg != "served" {
			t.Errorf("logged: %s", line)
		}
	}
	for _, no := range []string{code, "Ada", "Cato", "0.731", token, "deadline"} {
		if strings.Contains(logged.String(), no) {
			t.Errorf("%q stands in the log: %s", no, logged.String())
		}
	}
	if !strings.Contains(logged.String(), `"page":"POST /r/{code}/answer"`) {
		t.Error("an answer is not in the log: ", logged.String())
	}
}
