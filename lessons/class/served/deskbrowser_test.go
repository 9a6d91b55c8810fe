package served

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
	"github.com/chromedp/chromedp"
)

// What the project's own check sets, as for the pages of a lesson; and a folder for pictures of
// all states.
const (
	deskAxe      = "AXE_CORE"
	deskMustLook = "SCRATCHPASS_BROWSER"
	deskPictures = "SCRATCHPASS_PICTURES"
)

func deskBrowser(t *testing.T) context.Context {
	t.Helper()
	if _, err := exec.LookPath("chromium"); err != nil {
		if os.Getenv(deskMustLook) != "" {
			t.Fatal("no Chromium: ", err)
		}
		t.Skip("no Chromium here")
	}
	ctx, cancel := context.WithTimeout(t.Context(), 8*time.Minute)
	t.Cleanup(cancel)
	ctx, cancel = chromedp.NewContext(ctx)
	t.Cleanup(cancel)
	return ctx
}

// enter opens the private link, which leaves the key in the browser.
func (r *deskRoom) enter(ctx context.Context) {
	r.t.Helper()
	if err := chromedp.Do(ctx, chromedp.Navigate(r.url+"/desk/ACDEFH?key="+r.key)); err != nil {
		r.t.Fatal(err)
	}
	where, err := chromedp.Run(ctx, chromedp.Location())
	if err != nil || strings.Contains(where, r.key) {
		r.t.Fatal("the address that is seen: ", where, err)
	}
}

// script works out an expression in the page.
func deskScript[T any](t *testing.T, ctx context.Context, what string) T {
	t.Helper()
	got, err := chromedp.Run(ctx, chromedp.Evaluate[T](what, chromedp.EvalAwaitPromise))
	if err != nil {
		t.Fatal(what, ": ", err)
	}
	return got
}

// until waits for an expression to become true in the page.
func deskUntil(t *testing.T, ctx context.Context, what string) {
	t.Helper()
	if !deskScript[bool](t, ctx, `new Promise(done => { const end = Date.now() + 30000; (function look() { if (`+what+`) done(true); else if (Date.now() > end) done(false); else setTimeout(look, 50); })(); })`) {
		t.Fatal("never true: ", what, "\n", deskScript[string](t, ctx, `document.body.innerText`))
	}
}

// The instructor's pages and the wall pass axe-core in every state, light and dark; none is
// wider than its window, and what is on the wall can be read from afar.
func TestDeskInABrowser(t *testing.T) {
	ctx := deskBrowser(t)
	axe, err := os.ReadFile(os.Getenv(deskAxe))
	if err != nil && os.Getenv(deskAxe) != "" {
		t.Fatal(deskAxe, ": ", err)
	}
	for _, state := range deskStates {
		t.Run(state.name, func(t *testing.T) {
			r := state.make(t)
			r.enter(ctx)
			for _, name := range []string{"desk", "person", "wall"} {
				if name == "person" && state.name != "troubled" && state.name != "ended" {
					continue // it is the same there
				}
				path := map[string]string{"desk": "/desk/ACDEFH", "person": "/desk/ACDEFH/person/p4", "wall": "/wall/ACDEFH"}[name]
				for _, c := range []struct {
					theme         string
					width, height int64
				}{{"light", 1024, 768}, {"dark", 1440, 900}, {"dark", 1024, 768}, {"light", 1440, 900}} {
					if os.Getenv(deskPictures) == "" && (c.theme == "light") == (c.width > 1024) {
						continue
					}
					r.look(ctx, c.theme, c.width, c.height, path, fmt.Sprint(name, "-", state.name), string(axe))
				}
			}
		})
	}
}

// look opens a page and looks at it.
func (r *deskRoom) look(ctx context.Context, theme string, width, height int64, path, name, axe string) {
	t := r.t
	t.Helper()
	media := emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: theme}}}
	if _, err := chromedp.Call(ctx, emulation.SetEmulatedMedia, media); err != nil {
		t.Fatal(err)
	}
	if err := chromedp.Do(ctx, chromedp.EmulateViewport(width, height), chromedp.Navigate(r.url+path)); err != nil {
		t.Fatal(err)
	}
	where := fmt.Sprintf("%s, %s, %d wide", name, theme, width)
	if wide := deskScript[int64](t, ctx, `document.documentElement.scrollWidth`); wide > width {
		t.Errorf("%s: it is %d wide", where, wide)
	}
	if strings.HasPrefix(path, "/wall") {
		if small := deskScript[string](t, ctx, `[...document.querySelectorAll("main *")].filter(e=>[...e.childNodes].some(n=>n.nodeType===3&&n.data.trim())&&!e.closest("svg")&&parseFloat(getComputedStyle(e).fontSize)<28).map(e=>e.outerHTML).join("\n")`); small != "" {
			t.Errorf("%s: too small to be read from afar: %s", where, small)
		}
	}
	if dir := os.Getenv(deskPictures); dir != "" {
		picture, err := chromedp.Run(ctx, chromedp.CaptureScreenshot())
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(dir, fmt.Sprintf("%s-%s-%d.png", name, theme, width)), picture, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	if axe == "" || os.Getenv(deskPictures) != "" {
		return
	}
	if err := chromedp.Do(ctx, chromedp.Evaluate[chromedp.Void](axe)); err != nil {
		t.Fatal(err)
	}
	if found := deskScript[string](t, ctx, `axe.run({rules:{"target-size":{enabled:true}}}).then(r=>r.violations.map(v=>v.id+": "+v.nodes.map(n=>n.html+" "+n.failureSummary).join(" | ")).join("\n"))`); strings.TrimSpace(found) != "" {
		t.Errorf("%s: %s", where, found)
	}
}
