package served

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"

	"scratchpass/lessons/class"
	"scratchpass/lessons/face/inspect"
)

// deskPictures names a folder for pictures of all states.
const deskPictures = "SCRATCHPASS_PICTURES"

func deskBrowser(t *testing.T) context.Context {
	t.Helper()
	inspect.Needed(t)
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

// until waits for an expression to become true in the page.
func deskUntil(t *testing.T, ctx context.Context, what string) {
	t.Helper()
	if !inspect.Evaluated[bool](t, ctx, `new Promise(done => { const end = Date.now() + 30000; (function look() { if (`+what+`) done(true); else if (Date.now() > end) done(false); else setTimeout(look, 50); })(); })`) {
		t.Fatal("never true: ", what, "\n", inspect.Evaluated[string](t, ctx, `document.body.innerText`))
	}
}

// The instructor's pages and the wall pass axe-core in every state, light and dark; none is
// wider than its window, and what is on the wall can be read from afar.
func TestDeskInABrowser(t *testing.T) {
	ctx := deskBrowser(t)
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
					if os.Getenv(deskPictures) == "" && (c.theme == "light") == (c.width > 1024) || c.theme == "dark" && !state.dark && os.Getenv(deskPictures) == "" {
						continue
					}
					r.look(ctx, c.theme, c.width, c.height, path, fmt.Sprint(name, "-", state.name))
				}
			}
		})
	}
}

// look opens a page and looks at it.
func (r *deskRoom) look(ctx context.Context, theme string, width, height int64, path, name string) {
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
	if wide := inspect.Evaluated[int64](t, ctx, `document.documentElement.scrollWidth`); wide > width {
		t.Errorf("%s: it is %d wide", where, wide)
	}
	if strings.HasPrefix(path, "/wall") {
		if small := inspect.Evaluated[string](t, ctx, `[...document.querySelectorAll("main *")].filter(e=>[...e.childNodes].some(n=>n.nodeType===3&&n.data.trim())&&!e.closest("svg")&&parseFloat(getComputedStyle(e).fontSize)<28).map(e=>e.outerHTML).join("\n")`); small != "" {
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
	if os.Getenv(deskPictures) == "" {
		inspect.Axe(t, ctx, where)
	}
}

// The wall is walked through by the keys of a clicker, and back; the instructor's page follows,
// on one stream, and keeps what was typed there, what is folded open and where the focus is.
func TestTheWallIsWalkedInABrowser(t *testing.T) {
	ctx := deskBrowser(t)
	r := newDeskRoom(t, "end", class.Together, 24)
	r.come(0, 24)
	r.enter(ctx)
	wall, cancel := chromedp.NewContext(ctx)
	defer cancel()
	if err := chromedp.Do(wall, chromedp.EmulateViewport(1024, 768), chromedp.Navigate(r.url+"/wall/ACDEFH")); err != nil {
		t.Fatal(err)
	}
	inspect.Evaluated[bool](t, ctx, `(() => { document.querySelector("[data-key=one-more]").open = true; const f = document.getElementById("task"); f.focus(); f.value = "xyzzy"; document.querySelector(".scrolls").scrollLeft = 7; return true; })()`)
	press := func(key string) {
		t.Helper()
		inspect.Evaluated[bool](t, wall, fmt.Sprintf(`dispatchEvent(new KeyboardEvent("keydown", {key: %q, cancelable: true}))`, key))
	}
	position := func() string {
		return inspect.Evaluated[string](t, wall, `document.querySelector("footer").dataset.at`)
	}
	for _, c := range []struct{ key, then string }{
		{"PageUp", "0.-1.n.0"}, // nothing before it
		{"PageDown", "0.0.n.0"}, {"ArrowRight", "0.0.y.0"}, {" ", "0.0.y.1"}, {"ArrowDown", "0.0.y.2"}, {"ArrowLeft", "0.0.y.1"}, {"PageDown", "0.0.y.2"},
	} {
		for range 4 { // what is below the edge is shown first
			if position() == c.then {
				break
			}
			press(c.key)
			inspect.Evaluated[bool](t, wall, `new Promise(done => setTimeout(() => done(true), 300))`)
		}
		deskUntil(t, wall, fmt.Sprintf(`document.querySelector("footer").dataset.at === %q`, c.then))
	}
	deskUntil(t, ctx, `document.querySelector("input[name=from]").value === "0.0.y.2"`)
	if kept := inspect.Evaluated[string](t, ctx, `[document.activeElement.id, document.getElementById("task").value, document.querySelector("[data-key=one-more]").open].join()`); kept != "task,xyzzy,true" {
		t.Error("after the page has changed: ", kept)
	}
	r.event(class.Event{Kind: class.Called, Who: "p20"})
	deskUntil(t, ctx, `document.querySelector("tbody tr").dataset.key === "p20"`)
	if kept := inspect.Evaluated[string](t, ctx, `[document.activeElement.id, document.getElementById("task").value].join()`); kept != "task,xyzzy" {
		t.Error("after the rows have changed places: ", kept)
	}
	inspect.Evaluated[bool](t, ctx, `(document.querySelector("button[value=ask]").click(), true)`)
	deskUntil(t, ctx, `[...document.querySelectorAll("[role=alert]")].some((e) => e.checkVisibility() && e.textContent.includes("xyzzy"))`)
}
