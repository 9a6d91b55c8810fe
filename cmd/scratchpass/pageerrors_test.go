package main

import (
	"net/http"
	"net/http/cookiejar"
	"regexp"
	"strings"
	"testing"
)

// terminals finds what only who sits at a terminal can type.
var terminals = regexp.MustCompile(`--[a-z]|scratchpass [a-z]|work -`)

// alerts finds what a page says was wrong.
var alerts = regexp.MustCompile(`(?s)role="alert"[^>]*>(.*?)</p>`)

// A page tells what was wrong in words for a page: nobody there can type an option or a command.
func TestErrorsOnPages(t *testing.T) {
	link := browsed(t)
	base, _, _ := strings.Cut(link, "/?")
	jar, err := cookiejar.New(nil)
	if err != nil {
		t.Fatal(err)
	}
	s := newShop(t)
	c := s.serve()
	browse := phone{serving{shop: s, base: base}, &http.Client{Jar: jar}}
	browse.get(strings.TrimPrefix(link, base))
	desk := c.phone()
	desk.get("/desk/" + c.code + "?key=" + c.key)
	check := func(what, page, shows string) {
		t.Helper()
		said := strings.Join(alerts.FindAllString(page, -1), "\n")
		if !strings.Contains(said, shows) {
			t.Errorf("%s: no %q in %s", what, shows, page)
		}
		if found := terminals.FindString(said); found != "" {
			t.Errorf("%s: a page says %q: %s", what, found, said)
		}
	}
	for path, shows := range map[string]string{
		"/work?task=nosuch":                                       "nosuch",
		"/work?task=compound-travel&tpi=x":                        "x",
		"/work?task=compound-travel&tpi=12&pitch=0.1":             "pitch",
		"/work?task=compound-travel&angle=29.5":                   "pitch",
		"/work?task=blank-diameter&diameter=0.5&tpi=13&largest=1": "",
		"/thread?designation=half+an+inch":                        "half an inch",
		"/card?job=nosuch":                                        "nosuch",
		"/nowhere":                                                "no such page",
	} {
		check(path, browse.get(path), shows)
	}
	for _, form := range [][]string{{"do", "ask", "task", "nosuch", "level", "1"}, {"do", "ask", "task", "", "level", "9"}, {"do", "nothing"}, {"do", "way", "way", "race"}} {
		check(strings.Join(form, " "), desk.post("/desk/"+c.code+"/do", form...), "")
	}
	check("a task that is none", desk.post("/desk/"+c.code+"/do", "do", "ask", "task", "nosuch", "level", "1"), "nosuch")
}
