package served_test

import (
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/chromedp"

	"scratchpass/lessons/face/inspect"
	"scratchpass/lessons/record"
	"scratchpass/lessons/school/oneroster/onerostertest"
)

// A school's pages in a browser, each by someone who gets it: as narrow as a phone with large letters
// and wide, light and dark, by keyboard, with axe-core.
func TestSchoolInABrowser(t *testing.T) {
	ctx := inspect.Browser(t)
	c := newCampus(t)
	n := c.node(t)
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.Host = host; strings.HasPrefix(r.URL.Path, "/elsewhere") {
			r.Host = "elsewhere.example"
		}
		n.handler.ServeHTTP(w, r)
	}))
	t.Cleanup(server.Close)
	teacher, auditor, admin, stranger := n.token("Cato Wood", "teach-1"), n.token("Ina Field", "inspectors"), n.token("Ira Stone", "it-staff"), n.token("Eve Hill", "choir")
	for _, name := range []string{"Ada Brook", "Bartholomew Featherstonehaugh-Carrington", "Chi Ng"} {
		n.token(name, "first-year", "a-group-of-the-sign-on-with-a-long-name")
		if err := record.In(n.db, "https://login.example.school "+name).SetPlace("dial-book", 1); err != nil {
			t.Fatal(err)
		}
	}
	code := n.room(teacher, "turning-1")
	n.page(teacher, "/desk/"+code)
	n.phone(code, "Ada Brook")
	n.phone(code, "Bartholomew Featherstonehaugh", "visitor", "yes")
	getsWrong(t, n, "Ada Brook", "Chi Ng")
	n.sends(teacher, "/groups/turning-1/rooms", "do", "keep", "blueprint", "set: depths-before-the-first-pass\ntitle: Depths\nunits: in\nslots:\n- {tasks: [compound-travel]}\n")
	second := n.token("Dora Lane", "teach-2")
	n.sends(second, "/groups/turning-2/list")
	c.service.Fail(func(r *http.Request) onerostertest.Failure {
		if strings.HasSuffix(r.URL.Path, "/students") {
			return onerostertest.Failure{Status: http.StatusForbidden, Body: `{"imsx_description": "the client has no right to the students of this class"}`}
		}
		return onerostertest.Failure{}
	})
	n.sends(second, "/groups/turning-2/list")
	c.service.Class("17", onerostertest.Student{ID: "a1", Given: "Ada", Family: "Brook"}) // Ben Carr is refused
	for _, p := range []struct{ name, token, path, do string }{
		{"door", "", "/", ""},
		{"wrong code", "", "/?code=ACDEFG", ""},
		{"home", teacher, "/home", ""},
		{"home of a stranger", stranger, "/home", ""},
		{"group", teacher, "/groups/turning-1", ""},
		{"group with a room refused", teacher, "/groups/turning-1", `document.querySelector("form[action$=rooms] .primary").click()`},
		{"learner", teacher, "/groups/turning-1/learners/" + url.PathEscape("https://login.example.school Ada Brook"), ""},
		{"blueprint to go", teacher, "/groups/turning-1", `document.querySelector("form[action$=delete] button").click()`},
		{"room", teacher, "/groups/turning-1/rooms/" + code, ""},
		{"group with a list that is fetched", second, "/groups/turning-2", ""},
		{"room, marks sent", teacher, "/groups/turning-1/rooms/" + code, `document.querySelector("main li button").click()`},
		{"audit", auditor, "/audit", ""},
		{"people", admin, "/people", ""},
		{"people, asked first", admin, "/people", `document.querySelector("td button").click()`},
		{"refused", stranger, "/groups/turning-1", ""},
		{"another name", "", "/elsewhere", ""},
	} {
		if _, err := chromedp.Call(ctx, network.SetExtraHTTPHeaders, network.SetExtraHTTPHeadersParams{Headers: network.Headers(map[string]any{"Cookie": "school=" + p.token})}); err != nil {
			t.Fatal(err)
		}
		inspect.Open(t, ctx, server.URL+p.path)
		if p.do != "" {
			if err := chromedp.Do(ctx, chromedp.Evaluate[chromedp.Void](`window.before = true; `+p.do)); err != nil {
				t.Fatal(err)
			}
			inspect.Until(t, ctx, `!window.before && document.readyState === "complete"`)
		}
		for _, theme := range []string{"light", "dark"} {
			if os.Getenv("SCRATCHPASS_PICTURES") == "" {
				break
			}
			media := emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: theme}}}
			if _, err := chromedp.Call(ctx, emulation.SetEmulatedMedia, media); err != nil {
				t.Fatal(err)
			}
			inspect.Pictures(t, ctx, p.name+" "+theme)
		}
		inspect.Page(t, ctx, p.name)
	}
}
