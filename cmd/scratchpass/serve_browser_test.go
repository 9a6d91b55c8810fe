package main

import (
	"net/http"
	"net/http/httptest"
	"net/http/httputil"
	"net/url"
	"strings"
	"testing"
	"time"

	"scratchpass/lessons/face/inspect"
	"scratchpass/lessons/postgres"
	"scratchpass/lessons/postgres/postgrestest"
	"scratchpass/lessons/record"
	"scratchpass/lessons/school"
)

// A few moves at the bench of a school in a browser: the panel, the picture of a pass by the clock with
// its script, the debrief; narrow and wide, by keyboard, with axe-core.
func TestServeABenchInABrowser(t *testing.T) {
	ctx := inspect.Browser(t)
	at := postgrestest.Address(t)
	node := newSchool(t).node(at)
	db, err := postgres.Open(t.Context(), at)
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	token, err := school.Sessions{DB: db, Clock: time.Now}.Begin(t.Context(), school.Person{ID: "x Ada", Name: "Ada", Groups: []string{"teach-1"}})
	if err != nil {
		t.Fatal(err)
	}
	to, err := url.Parse(node.base)
	if err != nil {
		t.Fatal(err)
	}
	proxy := httptest.NewServer(&httputil.ReverseProxy{Rewrite: func(r *httputil.ProxyRequest) {
		r.SetURL(to)
		r.Out.Host = "localhost" // as the settings name it
		r.Out.AddCookie(&http.Cookie{Name: "school", Value: token})
	}})
	t.Cleanup(proxy.Close)
	inspect.Open(t, ctx, proxy.URL+"/study")
	does := func(script, then string) { // until the page that comes of it is there
		t.Helper()
		inspect.Evaluated[bool](t, ctx, `window.before = true, `+script+`, true`)
		inspect.Until(t, ctx, `!window.before && document.readyState === "complete"`)
		if text := inspect.Evaluated[string](t, ctx, `document.body.textContent`); !strings.Contains(text, then) {
			t.Fatalf("no %q in %s", then, text)
		}
	}
	presses := func(label, then string) {
		t.Helper()
		does(`[...document.querySelectorAll("main button")].find(b => b.textContent.trim().startsWith("`+label+`")).click()`, then)
	}
	types := func(move, then string) {
		t.Helper()
		does(`document.querySelector("main input[name=answer]").value = "`+move+`", document.querySelector("main input[name=answer]").form.requestSubmit()`, then)
	}
	presses("Look round", "Rehearse a whole job")
	presses("Rehearse a whole job", "Which job?")
	presses("Adjusting screw", "How do you want to cut?")
	presses("With a real clock", "What do you do?")
	inspect.Page(t, ctx, "bench of a school")
	for _, move := range []string{"dress", "key out", "feed off", "speed 70", "gears 32/40", "angle 29.5 tailstock", "height", "square", "gibs", "oil", "start", "touch", "zero cross", "zero compound", "cross out 0.2", "return", "cross to 0", "compound in 0.002"} {
		types(move, move)
	}
	types("close", "Start the clock")
	inspect.Page(t, ctx, "pass of a school")
	presses("Step by step instead", "What do you do?")
	types("done", "How it came out")
	inspect.Page(t, ctx, "debrief of a school")
	logs, err := record.In(db, "x Ada").Logs()
	if err != nil || len(logs) != 1 || !strings.Contains(logs[0].Text, "\nhands real\ndress\n") || !strings.HasSuffix(logs[0].Text, "\ncompound in 0.002\ndone\n") {
		t.Error(logs, err)
	}
}
