package main

import (
	"bufio"
	"encoding/json"
	"io"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"scratchpass/lessons/postgres/postgrestest"
	"scratchpass/lessons/school/oneroster/onerostertest"
)

// newListedSchool is a school whose one group has its list from a service.
func newListedSchool(t *testing.T) (shop, *onerostertest.Server) {
	t.Helper()
	s, service := newSchool(t), onerostertest.New(t)
	service.Class("17", onerostertest.Students(28)...)
	settings := strings.Replace(s.read("school.yaml"), "administrators:", "one-roster: {address: \""+service.URL+"\", token: \""+service.URL+"/token\", client: "+onerostertest.Client+", secret-file: service-secret}\nadministrators:", 1)
	s.write("school.yaml", strings.Replace(settings, "roster: roster.csv", "class: \"17\"", 1))
	s.write("service-secret", onerostertest.Secret+"\n")
	return s, service
}

func (s shop) read(name string) string {
	s.t.Helper()
	text, err := os.ReadFile(filepath.Join(s.dir, name))
	if err != nil {
		s.t.Fatal(err)
	}
	return string(text)
}

// A check tells whether the service can be had, gives tokens and knows the classes; lists are fetched
// by a command too, which says what came of each and keeps what was there when one fails.
func TestServeLists(t *testing.T) {
	at := postgrestest.Address(t)
	s, service := newListedSchool(t)
	with := func(what string) []string {
		return []string{"serve", what, "--settings", "school.yaml", "--seal", "seal.key", "--database", at}
	}
	if out := s.run(with("--check")...); !strings.Contains(out, "one-roster: good\nclass of turning-1: good\n") {
		t.Error(out)
	}
	if out := s.run(with("--fetch-lists")...); out != "turning-1: 28 people\n" {
		t.Error(out)
	}
	service.Class("17")
	s.fails(1, with("--fetch-lists"), "turning-1: the OneRoster service gives an empty class, where there were people before", "1 of 1 lists could not be fetched; those from before are kept")
	s.fails(1, with("--check"), "one-roster: good", `class of turning-1: the class "17" has nobody in it`)
	s.write("other.yaml", strings.Replace(s.read("school.yaml"), `"17"`, `"18"`, 1))
	other := with("--check")
	other[3] = "other.yaml"
	s.fails(1, other, `class of turning-1: the OneRoster service has no class "18": the OneRoster service says 404 unknownobject`)
	service.Class("17", onerostertest.Students(2)...)
	service.NoMarks()
	s.fails(1, with("--check"), `one-roster: for https://purl.imsglobal.org/spec/or/v1p2/scope/gradebook.createput: the OneRoster service gives no token: it says "invalid_scope"`)
	s.write("lists.yaml", strings.Replace(s.read("school.yaml"), "secret-file: service-secret", "secret-file: service-secret, lists-only: true", 1))
	lists := with("--check")
	lists[3] = "lists.yaml"
	if out := s.run(lists...); !strings.Contains(out, "one-roster: good\nclass of turning-1: good\n") {
		t.Error(out)
	}
	s.write("service-secret", "another\n")
	s.fails(1, with("--check"), `one-roster: for https://purl.imsglobal.org/spec/or/v1p2/scope/roster.readonly: the OneRoster service gives no token: it says "invalid_client"; see to client, secret-file and the scopes`)
	s.write("plain.yaml", strings.Replace(schoolSettings, "ISSUER", "https://login.example.school", 1))
	plain := with("--fetch-lists")
	plain[3] = "plain.yaml"
	s.fails(1, plain, "no group has a list that is fetched")
}

// A node fetches what is due when it starts. The log has how many, and the service's own words stand
// nowhere in it: they may name someone.
func TestServeFetches(t *testing.T) {
	for _, fails := range []bool{false, true} {
		s, service := newListedSchool(t)
		if fails {
			service.Fail(func(r *http.Request) onerostertest.Failure {
				if r.URL.Path == "/token" {
					return onerostertest.Failure{}
				}
				return onerostertest.Failure{Status: 403, Body: `{"imsx_description": "not for Given1 Family1"}`}
			})
		}
		cmd := s.command("serve", "--settings", "school.yaml", "--seal", "seal.key", "--database", postgrestest.Address(t), "--listen", "127.0.0.1:0")
		log, err := cmd.StderrPipe()
		if err != nil {
			t.Fatal(err)
		}
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		lines := bufio.NewScanner(log)
		for lines.Scan() {
			var entry struct {
				Msg, Group, Why string
				People          int
			}
			if err := json.Unmarshal(lines.Bytes(), &entry); err != nil {
				t.Fatal(lines.Text())
			}
			if strings.Contains(lines.Text(), "Given1") {
				t.Error("the log names someone: ", lines.Text())
			}
			if strings.HasPrefix(entry.Msg, "class list") {
				if fails && (entry.Msg != "class list not fetched" || entry.Why != "the OneRoster service says 403") || !fails && (entry.Msg != "class list fetched" || entry.People != 28) || entry.Group != "turning-1" {
					t.Error(lines.Text())
				}
				break
			}
		}
		_ = cmd.Process.Kill()
		_, _ = io.Copy(io.Discard, log)
		_ = cmd.Wait() // it was killed
	}
}
