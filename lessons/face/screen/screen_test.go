package screen

import (
	"context"
	"errors"
	"io"
	"strings"
	"sync"
	"testing"
	"time"
	"unicode/utf8"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"

	"scratchpass/lessons/page"
)

// at is a screen of a size, without a terminal.
func at(columns, rows int) *model {
	return &model{theme: newTheme(Look{}), columns: columns, rows: rows,
		words: Words{Name: "Scratchpass", More: "more below", Menu: "menu keys", Back: "Esc back", GoOn: "Enter go on", Answer: "Enter mark it"}}
}

// asks puts a question, and returns where its answer will be.
func (m *model) asks(q page.Prompt, pages ...page.Block) chan reply {
	answer := make(chan reply, 1)
	m.Update(asking{pages, q, answer})
	return answer
}

// types sends keys: runes, or names of bubbletea.
func (m *model) types(keys ...string) {
	for _, k := range keys {
		switch k {
		case "enter":
			m.Update(tea.KeyMsg{Type: tea.KeyEnter})
		case "esc":
			m.Update(tea.KeyMsg{Type: tea.KeyEsc})
		case "down":
			m.Update(tea.KeyMsg{Type: tea.KeyDown})
		case "up":
			m.Update(tea.KeyMsg{Type: tea.KeyUp})
		case "pgdown":
			m.Update(tea.KeyMsg{Type: tea.KeyPgDown})
		case "pgup":
			m.Update(tea.KeyMsg{Type: tea.KeyPgUp})
		case "ctrl+c":
			m.Update(tea.KeyMsg{Type: tea.KeyCtrlC})
		default:
			m.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(k)})
		}
	}
}

func (m *model) seen() string { return ansi.Strip(m.View()) }

// given is the answer that has come; none is an error of the test.
func given(t *testing.T, answer chan reply) (string, error) {
	t.Helper()
	select {
	case r := <-answer:
		return r.text, r.err
	default:
		t.Fatal("no answer has come")
	}
	return "", nil
}

func none(t *testing.T, answer chan reply) {
	t.Helper()
	select {
	case r := <-answer:
		t.Fatalf("an answer has come: %v", r)
	default:
	}
}

var number = page.Prompt{Text: "Answer in inches", Takes: page.Number{Unit: "in", Places: 4}, Words: []string{"hint", "stop"}}

// An answer goes to the flow, and stands below its question while the next page comes.
func TestAnAnswerStaysBelowItsQuestion(t *testing.T) {
	m := at(80, 24)
	answer := m.asks(number, page.Where{Text: "Problem 1 of 3", Of: 3}, page.Question{Text: "How far?"})
	if seen := m.seen(); !strings.Contains(seen, "Problem 1 of 3") || !strings.Contains(seen, "Enter mark it · hint · stop") {
		t.Error(seen)
	}
	m.types("0.05", "87", "enter")
	if got, err := given(t, answer); got != "0.0587" || err != nil {
		t.Errorf("%q, %v", got, err)
	}
	m.asks(page.Prompt{Takes: page.GoOn{}}, page.Verdict{Text: "Not right."})
	seen := m.seen()
	for _, want := range []string{"How far?", "> 0.0587", "✗ Not right.", "Enter go on"} {
		if !strings.Contains(seen, want) {
			t.Errorf("%q is not on\n%s", want, seen)
		}
	}
	m.types("enter")
	m.asks(number, page.Where{Text: "Problem 2 of 3", Done: 1, Of: 3}, page.Question{Text: "And now?"})
	if seen := m.seen(); strings.Contains(seen, "How far?") || !strings.Contains(seen, "And now?") || !strings.Contains(seen, "████░░░░░░░░") {
		t.Errorf("a new step stands on a clean sheet:\n%s", seen)
	}
}

// What came of a right answer stands above the next question if there is room for both,
// else it is read first.
func TestStepsAreReadOneByOneWhereTheyDoNotFit(t *testing.T) {
	long := page.Paragraph{Text: strings.TrimSpace(strings.Repeat("line\n", 11))}
	for rows, together := range map[int]bool{40: true, 24: false} {
		m := at(80, rows)
		answer := m.asks(number, page.Verdict{Right: true, Text: "Right."}, long, page.Where{Text: "Problem 2 of 3"}, page.Question{Text: "And now?"}, long)
		if strings.Contains(m.seen(), "And now?") != together {
			t.Errorf("%d rows:\n%s", rows, m.seen())
		}
		if !together {
			m.types("0.1")
			m.types("enter")
			none(t, answer)
		}
		if seen := m.seen(); !strings.Contains(seen, "And now?") || strings.Contains(seen, "Right.") != together {
			t.Errorf("%d rows:\n%s", rows, seen)
		}
		m.types("1", "enter")
		if got, err := given(t, answer); got != "1" || err != nil {
			t.Errorf("%d rows: %q, %v", rows, got, err)
		}
	}
}

// A page that is longer than the window is leafed through; an answer can be typed at once.
func TestLongPages(t *testing.T) {
	var b strings.Builder
	for i := range 60 {
		b.WriteString("line " + strings.Repeat("i", i) + "\n")
	}
	m := at(80, 24)
	answer := m.asks(number, page.Paragraph{Text: b.String()})
	last := "line " + strings.Repeat("i", 59)
	if seen := m.seen(); !strings.Contains(seen, "more below") || strings.Contains(seen, last) {
		t.Error(seen)
	}
	first := m.seen()
	m.types("down", "up", "pgdown", "pgup", "pgup")
	if m.seen() != first {
		t.Errorf("up and down again:\n%s", m.seen())
	}
	for range 10 {
		if strings.Contains(m.seen(), last) {
			break
		}
		m.types("enter")
		none(t, answer)
	}
	if seen := m.seen(); !strings.Contains(seen, last) || strings.Contains(seen, "more below") {
		t.Error(seen)
	}
	m = at(80, 24)
	answer = m.asks(number, page.Paragraph{Text: b.String()})
	m.types("7", "enter")
	if got, _ := given(t, answer); got != "7" {
		t.Error(got)
	}
}

// In a menu arrows and numbers lead to a line, and Enter takes it, also in the same breath.
func TestMenu(t *testing.T) {
	options := make([]string, 12)
	for i := range options {
		options[i] = "line " + string(rune('a'+i))
	}
	menu := page.Prompt{Text: "Which?", Takes: page.Menu{Options: options, Back: true}}
	for _, c := range []struct {
		keys []string
		want string
	}{
		{[]string{"enter"}, "1"}, {[]string{"3", "enter"}, "3"}, {[]string{"down", "down", "up", "enter"}, "2"}, {[]string{"1", "2", "enter"}, "12"},
		{[]string{"12", "enter"}, "12"}, {[]string{"9", "9", "enter"}, "9"}, {[]string{"0", "x", "4", "enter"}, "4"}, {[]string{"1", "down", "2", "enter"}, "2"}, {[]string{"esc"}, "12"},
	} {
		m := at(80, 24)
		answer := m.asks(menu)
		m.types(c.keys...)
		if got, err := given(t, answer); got != c.want || err != nil {
			t.Errorf("%q: %q, %v", c.keys, got, err)
		}
		m.asks(page.Prompt{Takes: page.GoOn{}}, page.Paragraph{Text: "next"})
		if seen := m.seen(); !strings.Contains(seen, "> "+c.want+") ") {
			t.Errorf("%q: what was chosen is not kept:\n%s", c.keys, seen)
		}
	}
}

// Ctrl-C and Esc stop; keys between two questions are lost on purpose.
func TestStops(t *testing.T) {
	for _, key := range []string{"ctrl+c", "esc"} {
		m := at(80, 24)
		m.types("9", "enter", key)
		answer := m.asks(number)
		none(t, answer)
		m.types("1", key)
		if _, err := given(t, answer); !errors.Is(err, page.ErrStopped) {
			t.Errorf("%s: %v", key, err)
		}
	}
	ended, cancel := context.WithCancel(context.Background())
	cancel()
	s := &Screen{Stop: ended}
	if _, err := s.Ask(number); !errors.Is(err, page.ErrStopped) {
		t.Errorf("ended: %v", err)
	}
	if err := s.Run(&still{}); !errors.Is(err, page.ErrStopped) {
		t.Errorf("ended: %v", err)
	}
}

// A window that changes its size is drawn anew, with what was typed.
func TestResize(t *testing.T) {
	m := at(120, 40)
	answer := m.asks(number, page.Question{Text: strings.Repeat("word ", 60)})
	m.types("0.05")
	for _, size := range [][2]int{{80, 24}, {40, 24}, {30, 8}, {120, 40}} {
		m.Update(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
		rows := strings.Split(m.seen(), "\n")
		if len(rows) != size[1] {
			t.Errorf("%v: %d rows", size, len(rows))
		}
		for _, row := range rows {
			if utf8.RuneCountInString(row) > size[0] {
				t.Errorf("%v: a row of %d: %q", size, utf8.RuneCountInString(row), row)
			}
		}
		if !strings.Contains(m.seen(), "> 0.05") {
			t.Errorf("%v: what was typed is gone:\n%s", size, m.seen())
		}
	}
	m.types("1", "enter")
	if got, _ := given(t, answer); got != "0.051" {
		t.Error(got)
	}
}

// terminal is what a screen writes to.
type terminal struct {
	mu   sync.Mutex
	text strings.Builder
}

func (o *terminal) Write(p []byte) (int, error) {
	o.mu.Lock()
	defer o.mu.Unlock()
	return o.text.Write(p)
}

func (o *terminal) said() string {
	o.mu.Lock()
	defer o.mu.Unlock()
	return ansi.Strip(o.text.String())
}

// The whole face over a pipe: a page with a pause waits, and what was never asked about is
// printed when the terminal is given back.
func TestScreen(t *testing.T) {
	in, keys := io.Pipe()
	out := &terminal{}
	s := &Screen{Stop: t.Context(), In: in, Out: out, Size: func() (int, int) { return 80, 24 }, Look: func() Look { return Look{} }, Words: Words{Name: "Scratchpass"}}
	once := func(text string) { // Enter, once it is seen
		for deadline := time.Now().Add(20 * time.Second); !strings.Contains(out.said(), text) && time.Now().Before(deadline); {
			time.Sleep(time.Millisecond)
		}
		if _, err := keys.Write([]byte("\r")); err != nil {
			t.Error(err)
		}
	}
	go once("Not right.")
	if err := s.Show(page.Page{page.Verdict{Text: "Not right."}, page.Pause{}}); err != nil {
		t.Fatal(err)
	}
	go once("only one")
	if got, err := s.Ask(page.Prompt{Text: "?", Takes: page.Menu{Options: []string{"only one"}}}); got != "1" || err != nil {
		t.Errorf("%q, %v", got, err)
	}
	if err := s.Show(page.Page{page.Paragraph{Text: "That was all."}}); err != nil {
		t.Fatal(err)
	}
	keys.Close()
	if err := s.Close(); err != nil {
		t.Error(err)
	}
	if said := out.said(); !strings.HasSuffix(said, "That was all.\n\n") {
		t.Errorf("%q", said)
	}
}
