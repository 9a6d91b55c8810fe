package served

import (
	"context"
	"fmt"
	"testing"
	"time"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"

	"scratchpass/lessons/class"
	"scratchpass/lessons/face/inspect"
)

// point moves the mouse to the middle of an element.
func point(t *testing.T, ctx context.Context, selector string) {
	t.Helper()
	at := inspect.Evaluated[[]float64](t, ctx, fmt.Sprintf(`(() => { const b = document.querySelector(%q).getBoundingClientRect(); return [b.x + b.width / 2, b.y + b.height / 2]; })()`, selector))
	if err := chromedp.Do(ctx, chromedp.MouseEvent(input.DispatchMouseEventTypeMouseMoved, at[0], at[1])); err != nil {
		t.Fatal(err)
	}
}

// Under the pointer, or the focus, rows stay where they are, whatever comes above them; once the
// table is left, or on request, they are put in order. That they wait is said.
func TestRowsStayUnderThePointerInABrowser(t *testing.T) {
	ctx := deskBrowser(t)
	r := newDeskRoom(t, "end", class.Together, 24)
	r.come(0, 24)
	r.enter(ctx)
	if err := chromedp.Do(ctx, chromedp.EmulateViewport(1024, 768)); err != nil {
		t.Fatal(err)
	}
	const first, held = `document.querySelector("tbody tr").dataset.key`, `!document.getElementById("held").hidden`
	place := func() string {
		return inspect.Evaluated[string](t, ctx, `(() => { const rows = [...document.querySelectorAll("tbody tr")], i = rows.findIndex((r) => r.dataset.key === "p3"); return i + " at " + Math.round(rows[i].getBoundingClientRect().top); })()`)
	}
	calls := func(who string) {
		t.Helper()
		r.event(class.Event{Kind: class.Called, Who: who})
		deskUntil(t, ctx, fmt.Sprintf(`document.querySelector("tr[data-key=%s]").innerText.includes("Asks for you")`, who))
	}
	point(t, ctx, "tr[data-key=p3] th")
	was := place()
	calls("p20")
	if now := place(); now != was || !inspect.Evaluated[bool](t, ctx, held) {
		t.Errorf("the row under the pointer was %s and is %s", was, now)
	}
	point(t, ctx, "header")
	deskUntil(t, ctx, first+` === "p20" && !(`+held+`)`)

	inspect.Evaluated[bool](t, ctx, `(document.querySelector("tr[data-key=p3] a").focus(), true)`)
	was = place()
	calls("p15")
	if now := place(); now != was {
		t.Errorf("the row with the focus was %s and is %s", was, now)
	}
	if err := chromedp.Do(ctx, chromedp.Click(chromedp.CSS("#sort"))); err != nil {
		t.Fatal(err)
	}
	deskUntil(t, ctx, first+` === "p15" && !(`+held+`)`)

	point(t, ctx, "tr[data-key=p3] th") // whose phone goes dark, with that of another
	was = place()
	r.after.Add(int64(time.Minute))
	for i := range 24 {
		if i != 3 && i != 4 {
			r.server.presence.heard(fmt.Sprint("phone ", i), r.server.o.Clock())
		}
	}
	calls("p21")
	if now := place(); now != was {
		t.Errorf("the row of who is away was %s and is %s", was, now)
	}
	point(t, ctx, "header")
	deskUntil(t, ctx, `[...document.querySelectorAll("tbody[data-key=gone] tr")].map((r) => r.dataset.key).join() === "group,p3,p4"`)
}

// To close a set that tells what came takes two presses, in place, and one of them alone does
// nothing.
func TestTellingIsAskedFirstInABrowser(t *testing.T) {
	ctx := deskBrowser(t)
	r := newDeskRoom(t, "end", class.OwnPace, 3)
	r.come(0, 3)
	r.enter(ctx)
	before := r.seq()
	if err := chromedp.Do(ctx, chromedp.Click(chromedp.CSS("[data-key=lock] summary"))); err != nil {
		t.Fatal(err)
	}
	deskUntil(t, ctx, `document.querySelector("button[value=lock]").checkVisibility()`)
	if r.seq() != before {
		t.Fatal("one press closes the questions")
	}
	if err := chromedp.Do(ctx, chromedp.Click(chromedp.CSS("button[value=lock]"))); err != nil {
		t.Fatal(err)
	}
	deskUntil(t, ctx, `!document.querySelector("button[value=lock]") && document.getElementById("now").innerText === "These questions are closed."`)
}
