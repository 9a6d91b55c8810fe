package lessons

import (
	"bytes"
	"context"
	"errors"
	"io"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"

	"scratchpass/quiz"
)

func plainOver(input string) (Terminal, *bytes.Buffer) {
	var out bytes.Buffer
	return NewPlain(context.Background(), strings.NewReader(input), &out, 60, true), &out
}

func TestPlainStopsAtTheEndOfTheInput(t *testing.T) {
	for input, want := range map[string]int{"": 0, "one\n": 1, "one\ntwo": 1, "one\r\ntwo\n": 2, strings.Repeat("x", 100000) + "\nnext\n": 2} {
		term, _ := plainOver(input)
		n := 0
		for {
			line, err := term.Ask(Question{Prompt: "?"})
			if err != nil {
				if !errors.Is(err, ErrStopped) {
					t.Errorf("%.20q: %v", input, err)
				}
				break
			}
			if len(line) > longestLine || strings.ContainsAny(line, "\r\n") {
				t.Errorf("%.20q: read %d bytes", input, len(line))
			}
			n++
		}
		if n != want {
			t.Errorf("%.20q: %d lines were answers, want %d", input, n, want)
		}
	}
}

func TestPlainPassesNothingOnToTheTerminal(t *testing.T) {
	term, out := plainOver("\x1b[2J\u202e\x07evil\n")
	if err := term.Show(Text{{Plain, "a\x1b[31mb\u009bc\u202ed"}}); err != nil {
		t.Fatal(err)
	}
	if _, err := term.Ask(Question{Prompt: "?"}); err != nil {
		t.Fatal(err)
	}
	for _, bad := range []string{"\x1b", "\u009b", "\u202e", "\x07"} {
		if strings.Contains(out.String(), bad) {
			t.Errorf("%q went out: %q", bad, out)
		}
	}
}

func TestPlainStopsWithItsContext(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	r, w := io.Pipe() // never written: the reader waits for ever
	defer w.Close()
	term := NewPlain(ctx, r, io.Discard, 0, false)
	time.AfterFunc(10*time.Millisecond, cancel)
	if _, err := term.Ask(Question{Prompt: "?"}); !errors.Is(err, ErrStopped) {
		t.Errorf("got %v", err)
	}
}

func TestWrap(t *testing.T) {
	test := func(text string, width int, want string) {
		t.Helper()
		if got := Wrap(text, width); got != want {
			t.Errorf("Wrap(%q, %d) =\n%s\nwant\n%s", text, width, got, want)
		}
	}
	test("The drawing calls for 1-1/2-6 UNC-3A and nothing else.", 34, "The drawing calls for 1-1/2-6\nUNC-3A and nothing else.") // no break in the name
	test("1) one two three four five six seven", 30, "1) one two three four five six\n   seven")
	test("  - one two three four five six seven", 30, "  - one two three four five\n    six seven")
	test("a\n\nb", 40, "a\n\nb")
	test("short", 5, "short") // never narrower than the narrowest
	for _, width := range []int{30, 38, 78, 200} {
		for _, line := range strings.Split(Wrap(strings.Repeat("0.0556, 55.6 thou; 29.5 ", 40), width), "\n") {
			if utf8.RuneCountInString(line) > width {
				t.Errorf("a line of %d at width %d", utf8.RuneCountInString(line), width)
			}
		}
	}
}

// Whatever the text: every word comes out whole and in its order, a line is too wide
// only if it is one word, and no line ends before it is full. All letters here are one
// column wide: a word of wider ones that fills a line to the last column may stand out.
func TestWrapKeepsWords(t *testing.T) {
	pieces := []string{"1/2-13", "UNC-2A-LH", "M16xL3-P1.5", "-0.0032", "+/-0.002", "1,500", "29.5\u00a0deg", "60°", "⌀0.500", "½", "a", "feed", "(0.0556", "in)",
		"1)", "-", "–", "Zoë", "A\u030angstro\u0308m", "ο\u0301", "⠉⠒", "≤", "a-word-that-no-line-of-thirty-columns-could-hold"}
	words := func(text string) []string {
		return strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == '\n' })
	}
	rng := rand.New(rand.NewPCG(7, 26))
	for range 20000 {
		var text strings.Builder
		text.WriteString([]string{"", "", "  ", "      ", "- ", "  12) "}[rng.IntN(6)])
		for range rng.IntN(40) {
			text.WriteString(pieces[rng.IntN(len(pieces))])
			if rng.IntN(4) > 0 {
				text.WriteString(" ")
			}
		}
		width := rng.IntN(120)
		limit := max(width, NarrowestWidth)
		got := Wrap(text.String(), width)
		if !slices.Equal(words(got), words(text.String())) {
			t.Fatalf("other words: width %d\n%q\n%q", width, text.String(), got)
		}
		lines := strings.Split(got, "\n")
		for i, line := range lines {
			in := words(line)
			if lead := words(text.String()); i == 0 && listItem(strings.TrimLeft(text.String(), " ")) > 0 && len(lead) > 1 && len(in) == 2 {
				in = in[1:] // the mark of a list item stands before its word
			}
			if ansi.StringWidth(line) > limit && len(in) > 1 {
				t.Fatalf("a line of %d at width %d: %q", ansi.StringWidth(line), width, line)
			}
			if i+1 < len(lines) && ansi.StringWidth(line+" "+words(lines[i+1])[0]) <= limit {
				t.Fatalf("width %d: %q ends too early before %q", width, line, lines[i+1])
			}
		}
	}
}

// help, repeat and hint can be typed at any question and count for nothing; stop
// ends with what was answered.
func TestWordsThatCanBeTypedAnywhere(t *testing.T) {
	replies := []string{"help", "REPEAT", "hint", "", "0.9", "stop"}
	l := newLearner(t, 1, quiz.Imperial, nil)
	i := 0
	l.answer = func(Question) (string, error) { i++; return replies[i-1], nil }
	err := l.session.Practice([]string{"infeed-left"}, quiz.NumbersGiven, 5)
	if !errors.Is(err, ErrStopped) || len(l.session.Answers) != 1 {
		t.Fatalf("%v after %d answers", err, len(l.session.Answers))
	}
	if a := l.session.Answers[0]; !a.Hint || a.Mark.Correct() {
		t.Errorf("%+v", a)
	}
	if got := l.session.Goodbye(); got != "Stopped. 1 answered, 0 right." {
		t.Error(got)
	}
	if n := strings.Count(l.log.String(), "How much infeed is left?"); n != 3 { // asked, repeated, next problem
		t.Errorf("the question stands %d times", n)
	}
	if !strings.Contains(l.log.String(), "Hint: Each line of the log") || !strings.Contains(l.log.String(), "nothing was typed") {
		t.Error(l.log.String())
	}
}

// One right answer takes a step of help away, two wrong ones bring it back.
func TestFadingGoesForwardAndBack(t *testing.T) {
	blanksAfter := func(strategy func(l *learner) string) []string {
		l := newLearner(t, 3, quiz.Imperial, strategy)
		if err := l.session.examplesAndFading("rule-of-thumb", quiz.DeriveFirst); err != nil {
			t.Fatal(err)
		}
		var blanks []string
		for _, text := range l.shown {
			if strings.HasPrefix(text[0].Text, "Steps left for you: ") {
				blanks = append(blanks, strings.Fields(text[0].Text)[4])
			}
		}
		return blanks
	}
	if got := strings.Join(blanksAfter((*learner).key), " "); got != "1. 2." {
		t.Error("always right:", got)
	}
	if got := strings.Join(blanksAfter(func(*learner) string { return "0.9" }), " "); got != "1. 1. 1. 1. 1. 1." {
		t.Error("always wrong:", got)
	}
	n := 0
	if got := strings.Join(blanksAfter(func(l *learner) string {
		if n++; n == 1 || n > 3 {
			return l.key()
		}
		return "0.9"
	}), " "); got != "1. 2. 2. 1. 2." {
		t.Error("right, wrong, wrong, right, right:", got)
	}
}

// Who knows the lesson's tasks already may skip the worked examples.
func TestPreCheckSkipsExamples(t *testing.T) {
	examples := func(strategy func(l *learner) string) int {
		l := newLearner(t, 8, quiz.Imperial, strategy)
		if err := l.session.Lesson("dial-book"); err != nil {
			t.Fatal(err)
		}
		return strings.Count(l.log.String(), "Worked example")
	}
	if n := examples((*learner).key); n != 0 {
		t.Errorf("%d worked examples for someone who knows", n)
	}
	if n := examples(func(*learner) string { return "0.9" }); n < 8 {
		t.Errorf("%d worked examples for someone who does not, want at least two a part", n)
	}
}

// A problem is not asked again with the same numbers, and a decision comes in
// another situation than last time.
func TestNumbersAndSituationsChange(t *testing.T) {
	l := newLearner(t, 2, quiz.Imperial, (*learner).key)
	seen, last := map[string]bool{}, ""
	ask := l.session.posed
	l.session.posed = func(p *quiz.Problem) {
		ask(p)
		key := p.Task.Name + strings.Join(strings.Fields(l.shown[len(l.shown)-1].Words()), " ")
		if seen[key] {
			t.Errorf("asked twice: %s", key)
		}
		seen[key] = true
		if c := p.Values.Case(); c != "" && c == last {
			t.Errorf("situation %s twice running", c)
		}
		last = p.Values.Case()
	}
	if err := l.session.Practice([]string{"when-to-leave-compound"}, quiz.NumbersGiven, 12); err != nil {
		t.Fatal(err)
	}
	last = ""
	if err := l.session.Practice([]string{"compound-travel"}, quiz.NumbersGiven, 20); err != nil {
		t.Fatal(err)
	}
}

// Never the same task twice running where there is another.
func TestPracticeInterleaves(t *testing.T) {
	l := newLearner(t, 4, quiz.Imperial, (*learner).key)
	if err := l.session.Practice([]string{"infeed-left", "single-depth", "compound-travel"}, quiz.NumbersGiven, 60); err != nil {
		t.Fatal(err)
	}
	for i := 1; i < len(l.session.Answers); i++ {
		if l.session.Answers[i].Task == l.session.Answers[i-1].Task {
			t.Errorf("%s twice running", l.session.Answers[i].Task)
		}
	}
}

// One number with two causes is followed by a question that tells them apart.
func TestFollowUpTellsTwoCausesApart(t *testing.T) {
	l := newLearner(t, 6, quiz.Imperial, func(l *learner) string { return l.slip(2) }) // sin-or-ref
	if err := l.session.Practice([]string{"compound-travel"}, quiz.NumbersGiven, 1); err != nil {
		t.Fatal(err)
	}
	if a := l.session.Answers[0]; a.Mark.Slip != "sin-or-ref" || a.Cause != "pressed-sin" {
		t.Errorf("%+v", a)
	}
	if !strings.Contains(l.log.String(), "I took the angle from the bed.") || !strings.Contains(l.log.String(), "so it is the cosine") {
		t.Error(l.log.String())
	}
}

// clock is a clock that goes on by so much at every look.
func clock(step time.Duration) func() time.Time {
	at := time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC)
	return func() time.Time { at = at.Add(step); return at }
}

// A round ends with its time; the question that is up then doesn't count, and the two
// rounds of one learner are compared.
func TestDrillAgainstTheClock(t *testing.T) {
	l := newLearner(t, 11, quiz.Imperial, (*learner).key)
	l.session.Now = clock(4 * time.Second)
	if err := l.session.Drill([]string{"infeed-left", "single-depth"}, nil, 90*time.Second, quiz.NumbersGiven); err != nil {
		t.Fatal(err)
	}
	log := l.log.String()
	if !strings.Contains(log, "Time is over. That one does not count.") && !strings.Contains(log, "seconds left") {
		t.Error(log)
	}
	if !strings.Contains(log, "Second round against the first: +0 right.") {
		t.Error(log)
	}
	for _, text := range l.shown {
		for _, b := range text {
			if b.Style == Picture && strings.Contains(b.Text, "#####") {
				return
			}
		}
	}
	t.Error("no large figures")
}

func TestBig(t *testing.T) {
	if got := Big("1.0x"); got != "  #        #####\n ##        #   #\n  #        #   #\n  #        #   #\n ###   ##  #####" {
		t.Errorf("\n%s", got)
	}
}
