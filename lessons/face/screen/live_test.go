package screen

import (
	"errors"
	"strconv"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"

	"scratchpass/lessons/page"
	"scratchpass/quiz/drawing"
)

// still is a picture that is done after so many keys.
type still struct{ keys []string }

func (s *still) Advance(float64) {}
func (s *still) Key(key string)  { s.keys = append(s.keys, key) }
func (s *still) Done() bool      { return len(s.keys) > 1 }
func (s *still) Scene() page.Scene {
	return page.Scene{Track: page.Track{ThreadFrom: 0.2, ThreadTo: 0.8, Tool: 0.5}, Lines: []string{"The spindle turns.", "Space closes."}}
}

func TestRunGivesKeysToThePicture(t *testing.T) {
	for keys, want := range map[string]string{" |s": "space,s", "x|esc": "x", "x|ctrl+c": "x"} {
		picture, m, done := &still{}, at(80, 24), make(chan error, 1)
		m.Update(play{picture, done})
		if !strings.Contains(m.seen(), "The spindle turns.") {
			t.Error(m.seen())
		}
		m.types(strings.Split(keys, "|")...)
		if err := <-done; strings.Join(picture.keys, ",") != want || errors.Is(err, page.ErrStopped) != strings.HasSuffix(keys, "ctrl+c") {
			t.Errorf("%q: %v, %v", keys, picture.keys, err)
		}
		if strings.Contains(m.seen(), "The spindle turns.") {
			t.Errorf("the picture stays:\n%s", m.seen())
		}
	}
}

// A frame fits its window at every size, the dial only where it can be made out, and the
// tool stands where it is on its way.
func TestFrame(t *testing.T) {
	dial := drawing.Curve("", []float64{1, 2}, 0, 0)
	for _, size := range [][2]int{{40, 24}, {80, 24}, {120, 40}, {40, 8}} {
		scene := (&still{}).Scene()
		scene.Dial = &dial
		frame := ansi.Strip(drawFrame(scene, at(size[0], size[1])))
		scene.Lines = append(scene.Lines, "and more", strings.Repeat("of what was said ", 8))
		if more := ansi.Strip(drawFrame(scene, at(size[0], size[1]))); dots(more) != dots(frame) {
			t.Errorf("%v: the dial has another size where more is said", size)
		}
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
	// As at the lathe: the headstock at the left, the start of the thread at the right.
	const row = "##..........====================.........."
	for _, c := range []struct {
		tool float64
		at   int
	}{{0, 41}, {0.5, 21}, {1, 1}} {
		rows := strings.Split(track(page.Track{ThreadFrom: 0.25, ThreadTo: 0.75, Tool: c.tool}, 42), "\n")
		if v := strings.Index(rows[0], "V"); v != c.at || rows[1] != row {
			t.Errorf("the tool at %v stands at %d\n%s", c.tool, v, rows[1])
		}
	}
}

// While time runs out the frame says how much is left, and that it is over; then nothing of
// it stays.
func TestCountdown(t *testing.T) {
	m := at(80, 24)
	m.asks(number, page.Where{Text: "Problem 1"}, page.Question{Text: "How far?"})
	says := func(left int) string { return "left: " + strconv.Itoa(left) }
	for _, c := range []struct {
		seconds float64
		says    func(int) string
		want    string
	}{{60, says, "left: 60"}, {0.001, says, "left: 0"}, {0, nil, "Scratchpass"}} {
		_, beat := m.Update(countdown{time.Now().Add(time.Duration(c.seconds * float64(time.Second))), c.seconds, c.says})
		time.Sleep(2 * time.Millisecond)
		if seen := strings.SplitN(m.seen(), "\n", 2)[0]; c.says == nil && strings.Contains(seen, "left") || !strings.Contains(seen, c.want) || (beat != nil) != (c.says != nil) {
			t.Errorf("%v s: %q", c.seconds, seen)
		}
	}
}

// dots are the rows of a frame that a picture is in.
func dots(frame string) string {
	var rows []string
	for i, row := range strings.Split(frame, "\n") {
		if strings.ContainsFunc(row, func(r rune) bool { return r >= 0x2800 && r < 0x2900 }) {
			rows = append(rows, strconv.Itoa(i)+row)
		}
	}
	return strings.Join(rows, "\n")
}
