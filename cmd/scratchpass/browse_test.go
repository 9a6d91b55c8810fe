package main

import (
	"bufio"
	"context"
	"os"
	"os/exec"
	"strings"
	"testing"

	"scratchpass/lessons/face/inspect"
)

// browsed is the program that serves one learner, and the link that it printed.
func browsed(t *testing.T, args ...string) (link string) {
	t.Helper()
	exe, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(exe, append([]string{"browse"}, args...)...)
	cmd.Env = append(os.Environ(), "HOME="+t.TempDir(), "XDG_CONFIG_HOME="+t.TempDir(), "XDG_DATA_HOME="+t.TempDir(), "SCRATCHPASS_TEST_MAIN=1")
	cmd.Stderr = os.Stderr
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = cmd.Process.Kill(); _ = cmd.Wait() })
	line, err := bufio.NewReader(out).ReadString('\n')
	if err != nil || !strings.HasPrefix(line, "http://127.0.0.1:") {
		t.Fatalf("the first line is %q, %v", line, err)
	}
	return strings.TrimSpace(line)
}

// lookups are the pages with an address of their own, and what each must show.
var lookups = []struct{ name, path, shows string }{
	{"thread", "/thread", "Thread"},
	{"thread-found", "/thread?designation=1/2-13+UNC-2A", "1/2-13 UNC-2A"},
	{"thread-acme", "/thread?designation=1-5+ACME-2G", "Acme"},
	{"thread-refused", "/thread?designation=half+an+inch", "half an inch"},
	{"terms", "/terms", "Parts of the lathe"},
	{"terms-part", "/terms?word=carriage", "carriage"},
	{"terms-none", "/terms?word=xyzzy", "xyzzy"},
	{"safety", "/safety", "Chuck key"},
	{"sources", "/sources", "For"},
	{"work", "/work", "Choose what to work out"},
	{"work-form", "/work?task=compound-travel", "angle"},
	{"work-done", "/work?task=compound-travel&tpi=12&angle=29.5", "0.0587"},
	{"work-refused", "/work?task=compound-travel&tpi=x", "x"},
	{"cards", "/card", "Adjusting screw"},
	{"card", "/card?job=adjusting-screw", "Card for rehearsal"},
	{"card-none", "/card?job=/etc/passwd", "no job is called"},
	{"progress-empty", "/progress", "Progress"},
	{"ready", "/ready", "lathe"},
	{"no-page", "/nowhere", "no such page"},
}

// What can be looked up is for anyone to read and use: empty, found and refused.
func TestLookupsInABrowser(t *testing.T) {
	ctx := inspect.Browser(t)
	link := browsed(t)
	base, _, _ := strings.Cut(link, "/?")
	inspect.Open(t, ctx, base)
	seen(t, ctx, "no-key", "Open the link")
	inspect.Open(t, ctx, link)
	for _, l := range lookups {
		inspect.Open(t, ctx, base+l.path)
		seen(t, ctx, l.name, l.shows)
	}
}

// So is the way from home through a lesson, practice and the bench to the end.
func TestWayThroughInABrowser(t *testing.T) {
	ctx := inspect.Browser(t)
	inspect.Open(t, ctx, browsed(t))
	seen(t, ctx, "home-first", "Start here")
	for _, step := range []struct{ name, press, shows string }{
		{"lesson", "Start here", "Safety first"},
		{"lesson-problem", "Go on", "First try"},
		{"lesson-hint", "hint", ""},
		{"lesson-help", "help", ""},
		{"lesson-unread", "Mark it", "Not marked"},
		{"lesson-wrong", "Mark it", "Not right"},
		{"home", "stop", "Home"},
		{"progress-now", "See my progress", "answer"},
		{"bench-which", "Rehearse", "Which job"},
		{"bench-clock", "Adjusting screw", "How do you want to cut"},
		{"bench", "With a real clock", "Spindle"},
		{"bench-look", "look", "What you see"},
		{"home-again", "leave", "Home"},
		{"ended", "Leave", "That is all"},
	} {
		if step.name == "lesson-wrong" {
			inspect.Evaluated[int](t, ctx, `document.querySelector("input[type=checkbox][value='5']").click(), 0`)
		}
		press(t, ctx, step.press)
		seen(t, ctx, step.name, step.shows)
	}
}

// seen looks at the page that is open.
func seen(t *testing.T, ctx context.Context, name, shows string) {
	t.Helper()
	if text := inspect.Evaluated[string](t, ctx, `document.body.innerText`); !strings.Contains(strings.ToLower(text), strings.ToLower(shows)) {
		t.Errorf("%s: %q is not there:\n%.2000s", name, shows, text)
	}
	inspect.Pictures(t, ctx, name)
	inspect.Page(t, ctx, name)
}

// press presses the button that begins so, and waits for the page that comes of it.
func press(t *testing.T, ctx context.Context, text string) {
	t.Helper()
	found := inspect.Evaluated[bool](t, ctx, `(() => { window.old = true; const b = [...document.querySelectorAll("button")].find(b => b.innerText.startsWith("`+text+`")); b?.click(); return !!b; })()`)
	if !found {
		t.Fatalf("no button %q:\n%s", text, inspect.Evaluated[string](t, ctx, `document.body.innerText`))
	}
	inspect.Until(t, ctx, `!window.old && document.readyState === "complete"`)
}
