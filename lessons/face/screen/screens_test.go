package screen_test

import (
	"errors"
	"path/filepath"
	"testing"
	"time"

	"github.com/muesli/termenv"

	"scratchpass/content"
	"scratchpass/lessons/course"
	"scratchpass/lessons/face/screen"
	"scratchpass/lessons/internal/scripted"
	"scratchpass/lessons/page"
	"scratchpass/lessons/practice"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
)

// sizes are the windows that every screen is looked at in.
var sizes = []struct {
	name          string
	columns, rows int
	look          screen.Look
}{
	{"120x40", 120, 40, screen.Look{Profile: termenv.TrueColor, Ground: screen.Dark}},
	{"80x24", 80, 24, screen.Look{Profile: termenv.TrueColor, Ground: screen.Light}},
	{"40x24", 40, 24, screen.Look{Profile: termenv.ANSI, Ground: screen.Dark}},
}

// errSeen ends a run when all that was to be seen has been.
var errSeen = errors.New("seen")

// A turn is one prompt of a run: its screen is kept under a name, if it has one, and it is
// answered. The key of a problem is typed for "key", its first common error for "error".
type turn struct{ name, reply string }

// screens run a flow with a person's answers, and keep what is seen.
var screens = []struct {
	flow  sitting.Flow
	turns []turn
}{
	{course.Lesson{Lesson: "how-deep-to-go"}, []turn{
		{"lesson-begin", ""}, {"lesson-first-try", "error"}, {"lesson-mistake", ""}, {"", "error"}, {"", ""},
		{"lesson-part", ""}, {"lesson-part-figure", ""}, {"lesson-example", ""}, {"", ""}, {"lesson-faded", "key"},
	}},
	{practice.Practice{Tasks: []string{"compound-travel"}, Level: problem.NumbersGiven, Count: 3}, []turn{
		{"number", "hint"}, {"number-hint", "= 0.614 x 0.05"}, {"number-sum", "? crest"}, {"number-word", "look"}, {"number-look", "no number"},
		{"number-unread", "key"}, {"number-right", "0.5"}, {"number-far-off", ""}, {"", "error"}, {"number-error", ""}, {"practice-end", ""},
	}},
	{practice.Practice{Tasks: []string{"thread-dial-line"}, Level: problem.DeriveFirst, Count: 1}, []turn{{"several", "error"}, {"several-error", ""}}},
	{practice.Practice{Tasks: []string{"one-full-pass"}, Level: problem.NumbersGiven, Count: 1}, []turn{{"order", "error"}, {"order-error", ""}}},
	{practice.Practice{Tasks: []string{"withdraw-inside"}, Level: problem.NumbersGiven, Count: 1}, []turn{{"decision", "error"}, {"decision-error", ""}}},
	{practice.Practice{Tasks: []string{"inch-designation"}, Level: problem.NumbersGiven, Count: 1}, []turn{{"callout", "error"}, {"callout-error", ""}}},
	{practice.Practice{Tasks: []string{"cross-slide-return"}, Level: problem.NumbersGiven, Count: 1}, []turn{{"readings", "error"}, {"readings-error", ""}}},
}

// person answers the turns of one run at one size, and knows the problem that is asked.
type person struct {
	page.Face
	turns []turn
	seen  map[string]string
	asked *problem.Problem
}

func (p *person) Show(shown page.Page) error {
	for _, b := range shown {
		if q, ok := b.(page.Question); ok {
			p.asked, _ = tasks.FromCode(q.Code)
		}
	}
	return p.Face.Show(shown)
}

func (p *person) answer(_ page.Prompt, seen string) (string, error) {
	if len(p.turns) == 0 {
		return "", errSeen
	}
	now := p.turns[0]
	p.turns = p.turns[1:]
	if now.name != "" {
		p.seen[now.name] = seen
	}
	switch now.reply {
	case "key":
		return scripted.Typed(p.asked, p.asked.Expected.Key), nil
	case "error":
		return scripted.Typed(p.asked, p.asked.Expected.Errors[0].Response), nil
	}
	return now.reply, nil
}

// Every screen is as it was when it was looked at, letters and colours, at three sizes.
func TestScreensAreThoseThatWereLookedAt(t *testing.T) {
	lib := content.Shipped()
	words, err := lib.Screens()
	if err != nil {
		t.Fatal(err)
	}
	for _, size := range sizes {
		seen := map[string]string{}
		for _, run := range screens {
			who := &person{turns: run.turns, seen: seen}
			face := screen.NewStill(size.columns, size.rows, size.look, screen.Words{Name: words["screen-name"], More: words["screen-more"],
				Menu: words["screen-menu"], Back: words["screen-back"], GoOn: words["screen-go-on"], Answer: words["screen-answer"], Beside: []string{words["screen-sum"], words["screen-word"]}})
			face.Answer, who.Face = who.answer, face
			s, err := sitting.NewSession(who, lib, machine.Imperial, machine.DefaultLathe(machine.Imperial), func() sitting.Seeds { return sitting.Seeds{Seed: 4, Short: true} })
			if err != nil {
				t.Fatal(err)
			}
			s.Clock = func() time.Time { return time.Date(2026, 3, 2, 19, 0, 0, 0, time.UTC) }
			if _, err := s.Run(run.flow); err != nil && !errors.Is(err, errSeen) {
				t.Fatal(err)
			}
		}
		for name, got := range seen {
			scripted.Golden(t, filepath.Join("testdata", "screens", name+"-"+size.name+".ans"), got+"\n")
		}
	}
}
