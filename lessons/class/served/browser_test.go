package served_test

import (
	"fmt"
	"net"
	"net/http"
	"slices"
	"strconv"
	"sync"
	"testing"
	"time"

	"scratchpass/lessons/class"
	"scratchpass/lessons/class/journal"
	"scratchpass/lessons/postgres"
	"scratchpass/quiz/set"
)

// three is a lesson of three questions, the second of which follows from the first.
const three = `set: three
title: Before your first thread
units: in
%s
slots:
- {name: travel, tasks: [compound-travel]}
- {tasks: [infeed-left], takes: {total: travel}}
- {tasks: [no-cloth-on-turning-work]}
`

// lesson is a class in a browser, and what was typed in it.
type lesson struct {
	*shop
	t     *testing.T
	mu    sync.Mutex
	typed map[string]string // by id and printed number
}

// each does something with all phones, a few at once.
func each(phones []*tab, do func(i int, p *tab)) {
	var all sync.WaitGroup
	few := make(chan struct{}, 4)
	for i, p := range phones {
		all.Go(func() {
			few <- struct{}{}
			defer func() { <-few }()
			do(i, p)
		})
	}
	all.Wait()
}

// gives types an answer on a phone, and notes it.
func (l *lesson) gives(p *tab, id string, place int, text string) {
	p.types(text)
	p.sends()
	l.notes(id, place, text)
}

func (l *lesson) notes(id string, place int, text string) {
	it := l.item(id, 0, place)
	l.mu.Lock()
	defer l.mu.Unlock()
	l.typed[id+" "+strconv.Itoa(it.Number)] = text
}

// check compares what was typed with the file that set mark reads, and the marks of the room with
// those that the set gives to it.
func (l *lesson) check(roster []class.Apprentice) {
	l.t.Helper()
	got := map[string]string{}
	for _, row := range l.answers(0) {
		got[row[5]+" "+row[1]] = row[2]
	}
	for who, text := range l.typed {
		if got[who] != text {
			l.t.Errorf("%s typed %q, and the file has %q", who, text, got[who])
		}
	}
	if len(got) != len(l.typed) {
		l.t.Errorf("%d answers went in and %d came out", len(l.typed), len(got))
	}
	l.see(func(r *class.Room) {
		k, err := set.NewMarker(l.t.Context(), r.Sets[0].Maker, roster, class.Given(r, 0, false))
		if err != nil {
			l.t.Fatal(err)
		}
		n := 0
		if err := k.Each(func(want set.Result) error {
			got, err := r.Marked(r.Person(roster[n].ID), 0)
			for i := range got.Items {
				if x, y := got.Items[i], want.Items[i]; x.Verdict != y.Verdict || x.Points != y.Points || x.Given != y.Given {
					l.t.Errorf("%s, question %d: in the room %+v, by the set %+v", want.Name, i+1, x, y)
				}
			}
			n++
			return err
		}); err != nil || n != len(roster) {
			l.t.Error(n, err)
		}
	})
	if len(l.fails) > 0 {
		l.t.Error(l.fails)
	}
}

// A class of 24 phones goes through a lesson together: one is loaded again while something is
// typed, one gets no word that its answer is kept, one answers while the computer is down, one
// comes late, one is a visitor, one goes to someone else, and one has to be let in.
func TestAClassOf24InABrowser(t *testing.T) { onBoth(t, aClassOf24) }

func aClassOf24(t *testing.T, in journal.At) {
	size := 24
	if postgres.Is(string(in)) { // what many at once come to is shown in a file already
		size = 12
	}
	roster := people(size + 1)
	s := openShopOn(t, in, class.Head{Roster: roster}, fmt.Sprintf(three, "rules: {feedback: end}"), class.Together)
	l := &lesson{shop: s, t: t, typed: map[string]string{}}
	browser := chromium(t)
	phones := make([]*tab, size)
	for i := range phones {
		phones[i] = s.tab(browser, roster[i].Name)
	}
	t.Log("phones are on")
	came := phones[:size-2]
	each(came, func(_ int, p *tab) {
		p.comesIn()
		p.scene("waits", "")
	})
	visitor := phones[size-1]
	visitor.name = "Zoe"
	visitor.comesIn()
	visitor.until(`document.querySelector("button[name=visitor]")`)
	visitor.js(`document.querySelector("button[name=visitor]").click()`)
	visitor.scene("waits", "")

	t.Log("all came in")
	s.do("open", "place", "0")
	each(came, func(i int, p *tab) {
		p.scene("asks", "0")
		text := "0.0" + strconv.Itoa(500+i)
		if i%2 == 0 {
			text = s.right(roster[i].ID, 0, 0)
		}
		switch i {
		case 3: // loaded again while it is typed
			p.types(text)
			p.goes("/" + roomCode)
			p.scene("asks", "0")
			p.until(`document.getElementById("typed").value === "` + text + `"`)
			p.sends()
			l.notes(roster[i].ID, 0, text)
		case 4, 5, 6: // later
			return
		default:
			l.gives(p, roster[i].ID, 0, text)
		}
		p.scene("kept", "0")
		p.tells("saved")
	})
	visitor.types("0.05")
	visitor.sends()
	visitor.tells("saved")

	t.Log("the first question is answered")
	s.cut.Store(2) // kept, and not acknowledged, twice
	l.gives(phones[4], roster[4].ID, 0, "0.0504")
	phones[4].tells("saved")
	if a, _ := s.kept(roster[4].ID, 0, 0); s.cut.Load() >= 0 || a.Changed != 0 {
		t.Errorf("%d answers were cut off, and it counts %d times more", 2-s.cut.Load(), a.Changed)
	}
	s.restart(func() { // the computer is down while two answer, of which one is loaded again after that
		for _, i := range []int{5, 6} {
			l.gives(phones[i], roster[i].ID, 0, "0.050"+strconv.Itoa(i))
			phones[i].tells("waiting")
		}
		phones[6].types("0.0999") // and this is what counts: the last
		phones[6].sends()
		l.notes(roster[6].ID, 0, "0.0999")
	})
	for _, i := range []int{5, 6} {
		phones[i].tells("saved")
		phones[i].scene("kept", "0")
	}

	t.Log("the computer was killed")
	second := s.tab(browser, roster[7].Name) // a second phone for a name
	second.comesIn()
	second.until(`document.body.hasAttribute("data-waits")`)
	device := ""
	s.see(func(r *class.Room) { device = r.Person(roster[7].ID).Claims[0] })
	s.do("let", "who", roster[7].ID, "device", device)
	second.scene("kept", "0")
	phones[7].until(`document.getElementById("name")`) // the first is nobody's now

	shared := phones[8] // goes to someone who has none
	shared.js(`document.querySelector("form[action$=leave] button").click()`)
	shared.until(`document.getElementById("name")`)
	if left := shared.js(`Object.keys(localStorage).join(" ")`); left != "" {
		t.Error("what someone typed stays on a shared phone: ", left)
	}
	shared.name = roster[size-2].Name
	shared.comesIn()
	shared.scene("asks", "0")
	l.gives(shared, roster[size-2].ID, 0, "0.0522")
	shared.scene("kept", "0")

	late := phones[size-2]
	late.name = roster[size-1].Name
	late.comesIn()
	late.scene("asks", "0") // where all are
	s.do("show", "place", "0", "n", "3")
	late.scene("tells", "0")

	t.Log("phones were changed")
	s.do("open", "place", "2")
	there := slices.Clone(phones)
	there[7] = second
	ids := make([]string, len(there))
	for i := range ids {
		ids[i] = roster[i].ID
	}
	ids[8], ids[size-2], ids[size-1] = roster[size-2].ID, roster[size-1].ID, ""
	each(there, func(i int, p *tab) {
		p.scene("asks", "2")
		text := strconv.Itoa(1 + i%3)
		if ids[i] == "" {
			p.types(text)
			p.sends()
		} else {
			l.gives(p, ids[i], 2, text)
		}
		p.scene("kept", "2")
	})
	s.do("lock")
	each(there, func(_ int, p *tab) { p.scene("closed", "2") })
	s.do("end")
	each(there, func(_ int, p *tab) { p.scene("over", "") })
	l.check(roster)
	s.see(func(r *class.Room) {
		if n := len(class.Given(r, 0, true)); n != 2 {
			t.Error(n, " answers of the visitor")
		}
	})
}

// Each at their own pace, in a window of time: who has more of it goes on, what can hurt someone
// stays open, answers are changed, and a question can be chosen. Then a ticket, with a line.
func TestOwnPaceInABrowser(t *testing.T) { onBoth(t, ownPace) }

func ownPace(t *testing.T, in journal.At) {
	roster := people(2)
	var mu sync.Mutex
	ahead := time.Duration(0)
	s := openShopOn(t, in, class.Head{Roster: roster}, fmt.Sprintf(three, "sure: true\nrules: {feedback: end}"), class.OwnPace)
	s.clock = func() time.Time { mu.Lock(); defer mu.Unlock(); return time.Now().Add(ahead) }
	l := &lesson{shop: s, t: t, typed: map[string]string{}}
	browser := chromium(t)
	ada, ben := s.tab(browser, roster[0].Name), s.tab(browser, roster[1].Name)
	for _, p := range []*tab{ada, ben} {
		p.comesIn()
		p.scene("asks", "0")
	}
	s.do("until", "n", "10")
	s.do("longer", "who", roster[1].ID, "n", "20")
	ada.types("0.05")
	ada.sends()
	ada.tells("sure") // is asked once
	l.gives(ada, roster[0].ID, 0, "0.05")
	ada.scene("kept", "0")
	ada.types("0.051") // and is changed
	ada.sure("bet")
	ada.sends()
	l.notes(roster[0].ID, 0, "0.051")
	ada.until(`document.querySelector(".says").innerText.includes("0.051")`)
	ada.js(`document.querySelector("a.button[data-goes]").click()`)
	ada.scene("asks", "1")
	ada.until(`document.querySelector("#seat").innerText.includes("0.051")`) // it follows from the first
	ada.js(`history.back()`)
	ada.scene("kept", "0")
	ada.until(`document.getElementById("typed").value === "0.051" && document.querySelector("[name=sure]:checked").value === "bet"`)

	mu.Lock()
	ahead = 15 * time.Minute
	mu.Unlock()
	ada.goes("/r/" + roomCode)
	ada.scene("asks", "2") // what can hurt someone
	ada.goes("/r/" + roomCode + "?at=1")
	ada.scene("closed", "1")
	ben.types(s.right(roster[1].ID, 0, 0))
	ben.sure("fairly")
	ben.sends()
	l.notes(roster[1].ID, 0, s.right(roster[1].ID, 0, 0))
	ben.scene("kept", "0") // ben has more time
	ada.goes("/r/" + roomCode)
	ada.sure("guess")
	l.gives(ada, roster[0].ID, 2, "2")
	ada.scene("kept", "2")

	s.do("way", "way", "ticket")
	s.do("endless")
	ada.goes("/r/" + roomCode)
	ada.scene("asks", "1")
	ada.sure("guess")
	l.gives(ada, roster[0].ID, 1, "0.1")
	ada.scene("kept", "1")
	ada.js(`document.querySelector("a.button[data-goes]").click()`)
	ada.scene("done", "")
	ada.js(`(() => { const f = document.getElementById("unclear"); f.value = "Why 29.5 and not 30?"; f.dispatchEvent(new Event("input", { bubbles: true })); })()`)
	s.restart(func() {
		ada.js(`document.querySelector("form[data-keeps] button").click()`)
		ada.tells("waiting")
	})
	ada.tells("saved")
	s.see(func(r *class.Room) {
		if text := r.Person(roster[0].ID).Unclear[0]; text != "Why 29.5 and not 30?" {
			t.Errorf("what is unclear: %q", text)
		}
	})
	s.do("lock")
	ben.goes("/r/" + roomCode + "?at=0")
	ben.scene("tells", "0")
	ben.until(`document.querySelector("#came .verdict.right")`)
	ada.goes("/r/" + roomCode + "?at=2")
	ada.scene("tells", "2")
	l.check(roster)
}

// Nothing that was typed is lost, whatever the network does: it is down, another computer answers
// at the address, too much was sent; the browser keeps nothing; a phone has two pages open.
func TestPoorNetworksInABrowser(t *testing.T) { onBoth(t, poorNetworks) }

func poorNetworks(t *testing.T, in journal.At) {
	roster := people(3)
	s := openShopOn(t, in, class.Head{Roster: roster}, fmt.Sprintf(three, "rules: {feedback: end}"), class.OwnPace)
	l := &lesson{shop: s, t: t, typed: map[string]string{}}
	browser := chromium(t)
	ada, ben := s.tab(browser, roster[0].Name), s.tab(browser, roster[1].Name)
	cy := s.tab(browser, roster[2].Name, `Object.defineProperty(window, "localStorage", { get() { throw new DOMException("forbidden"); } });`)
	for _, p := range []*tab{ada, ben, cy} {
		p.comesIn()
		p.scene("asks", "0")
	}
	other := ada.second()
	other.goes("/r/" + roomCode + "?at=1")
	other.scene("asks", "1")
	s.restart(func() {
		// In another network another computer has the address, and is glad about anything.
		stranger, err := net.Listen("tcp", s.at)
		if err != nil {
			t.Fatal(err)
		}
		asked := make(chan string, 1000)
		h := &http.Server{Handler: http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
			asked <- r.Method
			w.Header().Set("Content-Type", "text/html")
			fmt.Fprint(w, `<main id="seat"><div data-scene="over"><h1>Sign in</h1></div></main>`)
		})}
		go func() { _ = h.Serve(stranger) }()
		l.gives(ada, roster[0].ID, 0, "0.05")
		l.gives(other, roster[0].ID, 1, "0.06") // the same phone
		l.gives(ben, roster[1].ID, 0, "0.07")
		l.gives(cy, roster[2].ID, 0, "0.08")
		for _, p := range []*tab{ada, other, ben, cy} {
			p.tells("waiting")
		}
		for posts := 0; posts < 8; { // each has been taken for an answer, were it taken for one
			if <-asked == http.MethodPost {
				posts++
			}
		}
		if err := h.Close(); err != nil {
			t.Error(err)
		}
		other.try(other.closes()) // its answer goes out by the other page
	})
	for _, p := range []*tab{ada, ben, cy} {
		p.tells("saved")
		p.scene("kept", "0")
	}
	ada.until(`Object.keys(localStorage).filter((n) => n.includes(".out.")).length === 0`)

	device := 0
	for range 60 { // too much was sent from this phone, so its answer waits
		if got := ben.js(`fetch("/r/` + roomCode + `/call", { method: "POST" }) && 1`); got != "1" {
			t.Fatal(got)
		}
		device++
	}
	ben.types("0.071")
	ben.sends()
	l.notes(roster[1].ID, 0, "0.071")
	ben.until(`document.querySelector(".says").innerText.includes("0.071")`)
	if a, _ := s.kept(roster[1].ID, 0, 0); a.Changed != 1 {
		t.Error("it counts ", a.Changed, " times more")
	}

	// What is to be shown anew is slow, and is overtaken by news that take nothing from who types.
	ben.js(`(() => { const real = fetch; window.seats = 0; window.fetch = async (url, options) => {
		const r = await real(url, options);
		if (String(url).includes("/seat") && window.seats++ === 0) await new Promise(() => {});
		return r;
	}; dispatchEvent(new PopStateEvent("popstate")); })()`)
	ben.until(`window.seats > 0`)
	again := ben.second()
	again.goes("/r/" + roomCode + "?at=0")
	again.scene("kept", "0")
	l.gives(again, roster[1].ID, 0, "0.072")
	again.until(`document.querySelector(".says").innerText.includes("0.072")`)
	ben.until(`document.querySelector(".says").innerText.includes("0.072")`)
	l.check(roster)
}
