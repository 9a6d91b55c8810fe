package served

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/chromedp/chromedp"

	"scratchpass/lessons/class"
	"scratchpass/lessons/face/inspect"
)

// outside are the blocks of the wall that are not in the window as a whole.
const outside = `[...document.querySelectorAll("main p, main li, main h1, main dt, main svg, main footer")].filter((e) => e.checkVisibility() && !e.closest(".hidden")).filter((e) => { const b = e.getBoundingClientRect(); return b.top < -1 || b.left < -1 || b.bottom > innerHeight + 1 || b.right > innerWidth + 1; }).map((e) => e.tagName + " " + e.textContent.trim().slice(0, 60)).join("\n")`

// unseen are those that may not give way to others.
const unseen = `[...document.querySelectorAll("main .question p, main .bars li, main .working dt, main .verdict, main .caution, main footer p")].filter((e) => !e.checkVisibility()).map((e) => e.textContent.trim().slice(0, 60)).join("\n")`

// told is what is given, and what is asked for.
const told = `[...document.querySelectorAll("main .question p")].map((e) => e.innerText).join("\n")`

// At every step of every question of the sets that ship the wall shows what is given with what came
// of it, and nothing is outside of a projector's window.
func TestTheWallFitsInABrowser(t *testing.T) {
	ctx := deskBrowser(t)
	places := map[string]int{"first-thread": 12, "exit-ticket": 5}
	for name := range places {
		blueprint, err := os.ReadFile(filepath.Join("../../../content/sets", name+".yaml"))
		if err != nil {
			t.Fatal(err)
		}
		r := newDeskRoomOf(t, string(blueprint), class.Together, 6)
		r.come(0, 6)
		r.enter(ctx)
		if err := chromedp.Do(ctx, chromedp.EmulateViewport(1024, 768), chromedp.Navigate(r.url+"/wall/ACDEFH")); err != nil {
			t.Fatal(err)
		}
		steps, given := map[string]int{}, ""
		for range 200 {
			if status, _ := r.do("do", "next"); status != 303 {
				break
			}
			var w class.Wall
			r.live.See(func(room *class.Room) { w, err = room.Wall() })
			if err != nil {
				t.Fatal(err)
			}
			if w.Shown == 0 && !w.Locked {
				for who := range 6 {
					r.answers(who, w.Place, who-1, "")
				}
			}
			task := w.Item.Problem.Task.Name
			steps[task]++
			if w.Shown == 0 && w.Locked {
				continue // as it was when it was open
			}
			deskUntil(t, ctx, fmt.Sprintf(`document.querySelector("footer").dataset.at === %q`, w.Position))
			where := fmt.Sprintf("%s, %s %d", name, task, w.Shown)
			if dir := os.Getenv(deskPictures); dir != "" {
				picture, err := chromedp.Run(ctx, chromedp.CaptureScreenshot())
				if err != nil {
					t.Fatal(err)
				}
				if err := os.WriteFile(filepath.Join(dir, fmt.Sprintf("wall-%s-%02d-%s-%d.png", name, w.Place, task, w.Shown)), picture, 0o600); err != nil {
					t.Fatal(err)
				}
			}
			if out := inspect.Evaluated[string](t, ctx, outside); out != "" {
				t.Errorf("%s: outside the window: %s", where, out)
			}
			if out := inspect.Evaluated[string](t, ctx, unseen); out != "" {
				t.Errorf("%s: not shown: %s", where, out)
			}
			if w.Shown == 0 {
				given = inspect.Evaluated[string](t, ctx, told)
			} else if now := inspect.Evaluated[string](t, ctx, told); now != given {
				t.Errorf("%s: it was asked %q, and with what came it says %q", where, given, now)
			}
		}
		if len(steps) != places[name] {
			t.Errorf("%s: %d questions were looked at", name, len(steps))
		}
	}
}
