// Package inspect looks at pages in a real browser, for tests: what a person with a phone, a
// keyboard, a screen reader or large letters would run into.
package inspect

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
)

// What stands in the environment.
const (
	axeFile       = "AXE_CORE"             // the file of axe-core (npm), which the project's own check fetches
	looks         = "SCRATCHPASS_BROWSER"  // 1: a browser must be here; 0: it was looked already, and is not again
	pictureFolder = "SCRATCHPASS_PICTURES" // a folder for pictures of the pages; without it none are made
)

// watcher is run before a page: it notes what the page's own policy refuses.
const watcher = `addEventListener("securitypolicyviolation", e => (window.refused ||= []).push(e.violatedDirective + " " + e.blockedURI));`

// Needed skips a test where no browser is to be started: there is none, the test is to be short,
// or its pages were looked at already. In the project's own check a missing one is an error.
func Needed(t *testing.T) {
	t.Helper()
	must := os.Getenv(looks)
	if must == "0" || testing.Short() && must == "" {
		t.Skip("no browser wanted")
	}
	if _, err := exec.LookPath("chromium"); err != nil {
		if must != "" {
			t.Fatal("no Chromium: ", err)
		}
		t.Skip("no Chromium here")
	}
}

// Browser starts a browser, where one is Needed.
func Browser(t *testing.T) context.Context {
	t.Helper()
	Needed(t)
	ctx, cancel := context.WithTimeout(t.Context(), 5*time.Minute)
	t.Cleanup(cancel)
	ctx, cancel = chromedp.NewContext(ctx)
	t.Cleanup(cancel)
	if err := chromedp.Do(ctx); err != nil {
		t.Fatal(err)
	}
	if _, err := chromedp.Call(ctx, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: watcher}); err != nil {
		t.Fatal(err)
	}
	return ctx
}

// Open opens an address in a window of a phone.
func Open(t *testing.T, ctx context.Context, address string) {
	t.Helper()
	if err := chromedp.Do(ctx, chromedp.EmulateViewport(320, 740), chromedp.Navigate(address)); err != nil {
		t.Fatal(address, ": ", err)
	}
}

// Evaluated is what a script in the page comes to.
func Evaluated[T any](t *testing.T, ctx context.Context, script string) T {
	t.Helper()
	v, err := chromedp.Run(ctx, chromedp.Evaluate[T](script, chromedp.EvalAwaitPromise))
	if err != nil {
		t.Fatalf("%.200s: %v", script, err)
	}
	return v
}

// Until waits until something holds in the page, which may be another one meanwhile.
func Until(t *testing.T, ctx context.Context, holds string) {
	t.Helper()
	for range 200 {
		ok, err := chromedp.Run(ctx, chromedp.Evaluate[bool](`new Promise(done => setTimeout(() => done(!!(`+holds+`)), 50))`, chromedp.EvalAwaitPromise))
		if err == nil && ok {
			return
		}
		if ctx.Err() != nil {
			break
		}
	}
	t.Fatalf("it never came to %s: %s", holds, Evaluated[string](t, ctx, `document.body.innerText`))
}

// Page looks at the page that is open: language and title, what its policy refused, what it
// asked for outside and how large it is; narrow and light, at 200 % and wide and dark: nothing
// wider than the window, every control high enough for a thumb, axe-core without a finding;
// and every control is reached by Tab in its order, and shows that it has the focus.
func Page(t *testing.T, ctx context.Context, name string) {
	t.Helper()
	t.Logf("%s: %s", name, Evaluated[string](t, ctx, `document.title`))
	for what, script := range map[string]string{
		"no language or title": `document.documentElement.lang && document.title ? "" : document.documentElement.outerHTML.slice(0, 300)`,
		"refused":              `(window.refused || []).join("\n")`,
		"from outside":         `performance.getEntriesByType("resource").map(e => e.name).filter(n => !n.startsWith(location.origin + "/")).join("\n")`,
		"not one main heading": `document.querySelectorAll("h1").length === 1 ? "" : document.title + ": " + document.querySelectorAll("h1").length`,
	} {
		if found := Evaluated[string](t, ctx, script); found != "" {
			t.Errorf("%s: %s: %s", name, what, found)
		}
	}
	if size := Evaluated[int](t, ctx, `performance.getEntries().reduce((n, e) => n + (e.decodedBodySize || 0), 0)`); size > 100_000 {
		t.Errorf("%s: %d bytes with all that it needs", name, size)
	}
	for _, window := range []struct {
		width int64
		theme string
	}{{320, "light"}, {640, "light"}, {1440, "dark"}} {
		at(t, ctx, window.width, window.theme)
		sizes(t, ctx, fmt.Sprintf("%s, %d wide", name, window.width), window.width)
		if window.width != 640 {
			Axe(t, ctx, fmt.Sprintf("%s, %s, %d wide", name, window.theme, window.width))
		}
	}
	walk(t, ctx, name)
}

// at makes the window so wide, in a light or a dark theme.
func at(t *testing.T, ctx context.Context, width int64, theme string) {
	t.Helper()
	media := emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: theme}}}
	if _, err := chromedp.Call(ctx, emulation.SetEmulatedMedia, media); err != nil {
		t.Fatal(err)
	}
	if err := chromedp.Do(ctx, chromedp.EmulateViewport(width, 740)); err != nil {
		t.Fatal(err)
	}
}

// controls are what can be pressed or filled in. A link inside a sentence may be as low as it.
const controls = `[...document.querySelectorAll("button,select,summary,input:not([type=hidden]):not([type=checkbox]),label.choice,a:not(.skip)")].filter(e => e.checkVisibility() && !e.closest("p:not(.name):has(a:not(:only-child))"))`

func sizes(t *testing.T, ctx context.Context, name string, width int64) {
	t.Helper()
	if wide := Evaluated[int64](t, ctx, `document.documentElement.scrollWidth`); wide > width {
		t.Errorf("%s: the page is %d wide", name, wide)
	}
	if low := Evaluated[string](t, ctx, controls+`.filter(e => { const r = e.getBoundingClientRect(); return r.height < 43.9 || r.width < 24; }).map(e => e.outerHTML.slice(0, 200)).join("\n")`); low != "" {
		t.Errorf("%s: too small for a thumb: %s", name, low)
	}
}

// Axe lets axe-core look at the page that is open, where it is here.
func Axe(t *testing.T, ctx context.Context, name string) {
	t.Helper()
	file := os.Getenv(axeFile)
	if file == "" {
		return
	}
	source, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(axeFile, ": ", err)
	}
	if !Evaluated[bool](t, ctx, `!!window.axe`) {
		if err := chromedp.Do(ctx, chromedp.Evaluate[chromedp.Void](string(source))); err != nil {
			t.Fatal(err)
		}
	}
	found := Evaluated[string](t, ctx, `axe.run({rules:{"target-size":{enabled:true}}}).then(r=>r.violations.map(v=>v.id+": "+v.nodes.map(n=>n.html+" "+n.failureSummary).join(" | ")).join("\n"))`)
	if strings.TrimSpace(found) != "" {
		t.Errorf("%s: %s", name, found)
	}
}

// mostTabs is how far a walk goes on a page with many links.
const mostTabs = 40

// walk goes from control to control by Tab, from the first on.
func walk(t *testing.T, ctx context.Context, name string) {
	t.Helper()
	const reached = `window.walked = [...document.querySelectorAll("a[href],button,select,summary,input:not([type=hidden]),[tabindex='0']")].filter(e => e.checkVisibility() && !e.disabled); document.activeElement.blur(); walked[0]?.focus({focusVisible: true}); walked.length`
	n := Evaluated[int](t, ctx, reached)
	for i := range min(n, mostTabs) {
		if i > 0 {
			if err := chromedp.Do(ctx, chromedp.KeyEvent("\t")); err != nil {
				t.Fatal(err)
			}
		}
		wrong := Evaluated[string](t, ctx, fmt.Sprintf(`(() => { const e = document.activeElement, s = getComputedStyle(e);
			if (e !== walked[%d]) return "at " + e.outerHTML.slice(0, 120) + " instead of " + walked[%d].outerHTML.slice(0, 120);
			if (%d === 0) return ""; // no key has brought it there
			return s.outlineStyle !== "none" && parseFloat(s.outlineWidth) >= 2 ? "" : "no focus to be seen at " + e.outerHTML.slice(0, 120); })()`, i, i, i))
		if wrong != "" {
			t.Errorf("%s: %d times Tab: %s", name, i, wrong)
			return
		}
	}
}

// Pictures keeps pictures of the page that is open at the sizes that pages are made for, where
// a folder is named for them.
func Pictures(t *testing.T, ctx context.Context, name string) {
	t.Helper()
	folder := os.Getenv(pictureFolder)
	if folder == "" {
		return
	}
	for _, window := range [][2]int64{{360, 740}, {1024, 768}, {1440, 900}} {
		if err := chromedp.Do(ctx, chromedp.EmulateViewport(window[0], window[1])); err != nil {
			t.Fatal(err)
		}
		picture, err := chromedp.Run(ctx, chromedp.FullScreenshot(90))
		if err != nil {
			t.Fatal(err)
		}
		file := filepath.Join(folder, fmt.Sprintf("%s-%dx%d.png", name, window[0], window[1]))
		if err := os.WriteFile(file, picture, 0o600); err != nil {
			t.Fatal(err)
		}
	}
}
