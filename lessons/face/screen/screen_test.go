package screen

import (
	"bytes"
	"context"
	"errors"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"

	"scratchpass/lessons/face/text"
	"scratchpass/lessons/internal/scripted"
	"scratchpass/lessons/page"
	"scratchpass/quiz/drawing"
)

// The words are the same however wide the window is; only pictures are extra.
func TestLayKeepsTheWords(t *testing.T) {
	p := page.Page{
		page.Heading{Text: "Part 1. How deep"},
		page.Question{Text: "The drawing calls for 1-1/2-6 UNC-3A.", Lines: []string{"one, two; three", strings.Repeat("word ", 40)}},
		page.Working{{Line: "h = 0.649519 x P - 0.866025 x f = 0.649519 x 0.1667 - 0.866025 x 0.0290 = 0.083160 in"}},
		page.Figure{Pictures: []drawing.Drawing{drawing.Curve("", []float64{1, 2}, 0, 0)}},
		page.Caution{Text: "CAUTION: stop."},
	}
	for _, width := range []int{text.NarrowestWidth, 39, 70} {
		var words []string
		for _, line := range Lay(p, width) {
			plain := ansi.Strip(line)
			if utf8.RuneCountInString(plain) > width {
				t.Errorf("width %d: a line of %d: %q", width, utf8.RuneCountInString(plain), plain)
			}
			if !strings.ContainsFunc(plain, func(r rune) bool { return r >= 0x2800 && r < 0x2900 }) {
				words = append(words, strings.Fields(plain)...)
			}
		}
		got := strings.Join(words, " ")
		for _, label := range []string{" 2 ", " 0 "} { // the ends of the curve's scale
			got = strings.Replace(got, label, " ", 1)
		}
		if got != scripted.Words(p) {
			t.Errorf("width %d: words changed:\n%s\n%s", width, got, scripted.Words(p))
		}
	}
}

func TestShorten(t *testing.T) {
	for label, want := range map[string]string{"short": "short", "a label of twenty-one": "a label of twent...", "\x1b[2Jabc": " [2Jabc"} {
		if got := shorten(label, 19); got != want {
			t.Errorf("shorten(%q) = %q, want %q", label, got, want)
		}
	}
}

// typing is a screen whose keys are typed.
func typing(keys string) (*Screen, *bytes.Buffer) {
	var out bytes.Buffer
	return &Screen{Stop: context.Background(), In: strings.NewReader(keys), Out: &out, Size: func() (int, int) { return 80, 24 }, More: "more"}, &out
}

func TestAskLeavesQuestionAndAnswer(t *testing.T) {
	s, out := typing("0.0587\r")
	reply, err := s.Ask(page.Prompt{Text: "Answer in inches", Takes: page.Number{Unit: "in", Places: 4}})
	if err != nil || reply != "0.0587" || !strings.Contains(ansi.Strip(out.String()), "Answer in inches\n> 0.0587\n") {
		t.Errorf("%q, %v\n%s", reply, err, ansi.Strip(out.String()))
	}
}

// Enter takes the line at hand; what was taken stays on the screen. That a digit goes to its
// line is tested on a pseudo-terminal: here the Enter would come before it has got there.
func TestChoose(t *testing.T) {
	for keys, want := range map[string]string{"\r": "1"} {
		s, out := typing(keys)
		reply, err := s.Ask(page.Prompt{Text: "Which?", Takes: page.Menu{Options: []string{"one", "two", "three"}, Back: true}})
		if err != nil || reply != want || !strings.Contains(ansi.Strip(out.String()), "> "+want+") ") {
			t.Errorf("%q: %q, %v\n%s", keys, reply, err, ansi.Strip(out.String()))
		}
	}
}

// Ctrl-C stops; so does a context that has ended, before anything is asked.
func TestStops(t *testing.T) {
	s, _ := typing("\x03")
	if _, err := s.Ask(page.Prompt{Text: "?"}); !errors.Is(err, page.ErrStopped) {
		t.Errorf("Ctrl-C: %v", err)
	}
	ended, cancel := context.WithCancel(context.Background())
	cancel()
	s, _ = typing("1\r")
	s.Stop = ended
	if _, err := s.Ask(page.Prompt{Text: "?"}); !errors.Is(err, page.ErrStopped) {
		t.Errorf("ended: %v", err)
	}
	if err := s.Run(&still{}); !errors.Is(err, page.ErrStopped) {
		t.Errorf("ended: %v", err)
	}
}

// A page that is longer than the window is held up until Enter; other keys are not taken
// for it.
func TestLongPagesAreHeldUp(t *testing.T) {
	long := page.Page{page.Paragraph{Text: strings.TrimSpace(strings.Repeat("line\n", 40))}}
	s, out := typing("x\r")
	if err := s.Show(long); err != nil {
		t.Fatal(err)
	}
	if said := ansi.Strip(out.String()); strings.Count(said, "line") != 40 {
		t.Error(said)
	}
	s, out = typing("x\x03") // Ctrl-C is let through
	if err := s.Show(long); !errors.Is(err, page.ErrStopped) || strings.Count(ansi.Strip(out.String()), "line") != 21 {
		t.Errorf("%v after %d lines", err, strings.Count(ansi.Strip(out.String()), "line"))
	}
}

// still is a picture that is done after so many keys.
type still struct{ keys []string }

func (s *still) Advance(float64) {}
func (s *still) Key(key string)  { s.keys = append(s.keys, key) }
func (s *still) Done() bool      { return len(s.keys) > 1 }
func (s *still) Scene() page.Scene {
	return page.Scene{Track: page.Track{ThreadFrom: 0.2, ThreadTo: 0.8, Tool: 0.5}, Lines: []string{"The spindle turns.", "Space closes."}}
}

func TestRunGivesKeysToThePicture(t *testing.T) {
	m := &still{}
	s, _ := typing(" s")
	if err := s.Run(m); err != nil || strings.Join(m.keys, ",") != "space,s" {
		t.Errorf("%v, %v", m.keys, err)
	}
}

// A frame fits its window at every size, the dial only where it can be made out, and the
// tool stands where it is on its way.
func TestFrame(t *testing.T) {
	dial := drawing.Curve("", []float64{1, 2}, 0, 0)
	for _, size := range [][2]int{{40, 24}, {80, 24}, {120, 40}, {40, 8}} {
		scene := (&still{}).Scene()
		scene.Dial = &dial
		frame := Frame(scene, size[0], size[1])
		rows := strings.Split(frame, "\n")
		if len(rows) > size[1] {
			t.Errorf("%v: %d rows", size, len(rows))
		}
		for _, row := range rows {
			if utf8.RuneCountInString(row) > size[0] {
				t.Errorf("%v: a row of %d", size, utf8.RuneCountInString(row))
			}
		}
		if drawn := strings.ContainsFunc(frame, func(r rune) bool { return r >= 0x2800 && r < 0x2900 }); drawn != (size[1] > 8) {
			t.Errorf("%v: dial drawn %v", size, drawn)
		}
	}
	rows := strings.Split(track(page.Track{ThreadFrom: 0.25, ThreadTo: 0.75, Tool: 1}, 42), "\n")
	if v, wall := strings.Index(rows[0], "V"), strings.Index(rows[1], "#"); v != wall || strings.Count(rows[1], "=") != 20 {
		t.Errorf("the tool that hits stands at %d, the wall at %d\n%s", v, wall, rows[1])
	}
}
