package served_test

import (
	"context"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"

	"scratchpass/lessons/face/inspect"
)

// picturesIn names a folder for pictures of all pages, for who looks at them.
const picturesIn = "SCRATCHPASS_PICTURES"

// patience is how long a page may take to show what it must.
const patience = 90 * time.Second

// chromium starts a browser; without one there is no test, but in the project's own check that is
// an error.
func chromium(t *testing.T) context.Context {
	t.Helper()
	inspect.Needed(t)
	ctx, cancel := chromedp.NewContext(t.Context())
	t.Cleanup(cancel)
	if err := chromedp.Do(ctx); err != nil {
		t.Fatal(err)
	}
	return ctx
}

// tab is a page in a browser that shares nothing with others: a phone.
type tab struct {
	t    *testing.T
	s    *shop
	ctx  context.Context
	name string
}

// watch notes what the content policy had to refuse.
const watch = `addEventListener("securitypolicyviolation", (e) => { (window.refused ??= []).push(e.violatedDirective + " " + e.blockedURI + " " + e.sourceFile + ":" + e.lineNumber); });`

// tab opens a phone; scripts run before those of each page.
func (s *shop) tab(browser context.Context, name string, scripts ...string) *tab {
	s.t.Helper()
	ctx, cancel := chromedp.NewContext(browser, chromedp.WithNewBrowserContext())
	s.t.Cleanup(cancel)
	return s.tabIn(ctx, name, scripts...)
}

// second is another page of the same phone.
func (p *tab) second() *tab {
	p.t.Helper()
	ctx, cancel := chromedp.NewContext(p.ctx)
	p.t.Cleanup(cancel)
	return p.s.tabIn(ctx, p.name)
}

func (s *shop) tabIn(ctx context.Context, name string, scripts ...string) *tab {
	s.t.Helper()
	p := &tab{t: s.t, s: s, ctx: ctx, name: name}
	p.try(chromedp.Do(ctx, chromedp.EmulateViewport(360, 740)))
	for _, script := range append(scripts, watch) {
		_, err := chromedp.Call(ctx, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: script})
		p.try(err)
	}
	return p
}

func (p *tab) try(err error) {
	p.t.Helper()
	if err != nil {
		p.t.Fatal(p.name, ": ", err)
	}
}

func (p *tab) goes(path string) {
	p.t.Helper()
	p.try(chromedp.Do(p.ctx, chromedp.Navigate(p.s.base+path)))
}

// js runs a script; what it gives comes as text.
func (p *tab) js(script string) string {
	p.t.Helper()
	got, err := chromedp.Run(p.ctx, chromedp.Evaluate[string]("String("+script+")"))
	p.try(err)
	return got
}

// until waits until something is true on the page, whatever pages come in between.
func (p *tab) until(what string) {
	p.t.Helper()
	for end := time.Now().Add(patience); ; {
		ctx, cancel := context.WithTimeout(p.ctx, patience)
		ok, err := chromedp.Run(ctx, chromedp.Evaluate[bool](`Boolean((() => { try { return `+what+`; } catch { return false; } })())`))
		cancel()
		if ok && err == nil {
			return
		}
		if time.Now().After(end) {
			text, _ := chromedp.Run(p.ctx, chromedp.Evaluate[string](`location.href + " " + document.body.innerText`))
			p.t.Fatal(p.name, ": never ", what, "; the page says ", text, " ", err)
		}
		select { // the page is asked again, not timed
		case <-time.After(30 * time.Millisecond):
		case <-p.ctx.Done():
			p.t.Fatal(p.ctx.Err())
		}
	}
}

// scene waits for a scene, at a question if there is one.
func (p *tab) scene(scene, question string) {
	p.t.Helper()
	at := `document.querySelector("#seat > div")`
	p.until(at + `.dataset.scene === "` + scene + `"` + map[bool]string{true: ` && ` + at + `.dataset.place === "` + question + `"`}[question != ""])
}

// tells waits for a state of the line at the foot of the page.
func (p *tab) tells(state string) {
	p.t.Helper()
	p.until(`document.getElementById("sent").dataset.state === "` + state + `"`)
}

// comesIn takes a name.
func (p *tab) comesIn() {
	p.t.Helper()
	p.goes("/" + roomCode)
	p.try(chromedp.Do(p.ctx, chromedp.SetValue(chromedp.CSS("#name"), p.name), chromedp.Click(chromedp.CSS("main form:last-of-type button.primary"))))
}

// types types an answer as someone would: a number, options by their numbers, readings one after
// another.
func (p *tab) types(text string) {
	p.t.Helper()
	quoted, err := json.Marshal(text)
	p.try(err)
	p.js(`((text) => {
		const all = [...document.querySelectorAll("#answer input[name=answer]")], put = (f, v) => { f.value = v; f.dispatchEvent(new Event("input", { bubbles: true })); };
		if (all[0].type === "radio" || all[0].type === "checkbox") { const given = text.split(/[ ,]+/); for (const f of all) if (f.checked !== given.includes(f.value)) f.click(); }
		else if (all.length > 1) { text.split(/[ ,;]+/).forEach((v, i) => put(all[i], v)); }
		else put(all[0], text);
	})(` + string(quoted) + `)`)
}

// sends sends what was typed.
func (p *tab) sends() { p.js(`document.querySelector("#answer button.primary").click()`) }

// sure says how sure someone is.
func (p *tab) sure(value string) {
	p.js(`document.querySelector("#answer input[name=sure][value=` + value + `]").click()`)
}

// picture keeps a picture of the page for who looks at them.
func (p *tab) picture(name string) {
	p.t.Helper()
	folder := os.Getenv(picturesIn)
	if folder == "" {
		return
	}
	b, err := chromedp.Run(p.ctx, chromedp.CaptureScreenshot())
	p.try(err)
	p.try(os.WriteFile(filepath.Join(folder, name+".png"), b, 0o644))
}

// smallest finds what is too low for a thumb: lines of text that have a link in them may be.
const smallest = `[...document.querySelectorAll("a[href]:not(.skip),button,summary,input:not([type=hidden]):not([type=checkbox]):not([type=radio]),label.choice")].filter((e) => e.checkVisibility() && e.getBoundingClientRect().height < 43.5).map((e) => e.outerHTML).join("\n")`

// sound checks a page as it is: narrow and light, wide and dark. Nothing is wider than a window of
// 320 pixels, every target is high enough for a thumb, axe-core finds nothing, the content policy
// had nothing to refuse.
func (p *tab) sound(what string) {
	p.t.Helper()
	if p.s.in.File() == "" {
		return // the same page was looked at with the room in a file
	}
	p.picture(what)
	for _, look := range []struct {
		theme string
		width int64
	}{{"light", 320}, {"dark", 1440}} {
		media := emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: look.theme}}}
		_, err := chromedp.Call(p.ctx, emulation.SetEmulatedMedia, media)
		p.try(err)
		p.try(chromedp.Do(p.ctx, chromedp.EmulateViewport(look.width, 740)))
		if wide := p.js(`document.documentElement.scrollWidth`); wide > fmt.Sprint(look.width) {
			p.t.Errorf("%s: %d wide: the page is %s wide", what, look.width, wide)
		}
		if small := p.js(smallest); small != "" {
			p.t.Errorf("%s: %d wide: too low for a thumb: %s", what, look.width, small)
		}
		inspect.Axe(p.t, p.ctx, fmt.Sprintf("%s: %s, %d wide", what, look.theme, look.width))
	}
	if refused := p.js(`(window.refused ?? []).join("; ")`); refused != "" {
		p.t.Errorf("%s: refused by the policy: %s", what, refused)
	}
	_, err := chromedp.Call(p.ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{})
	p.try(err)
	p.try(chromedp.Do(p.ctx, chromedp.EmulateViewport(360, 740)))
}

// closes closes the page.
func (p *tab) closes() error { return chromedp.Cancel(p.ctx) }
