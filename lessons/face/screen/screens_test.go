package screen_test

import (
	"errors"
	"path/filepath"
	"strconv"
	"testing"
	"time"

	"github.com/muesli/termenv"

	"scratchpass/content"
	"scratchpass/lessons/course"
	"scratchpass/lessons/face/screen"
	"scratchpass/lessons/home"
	"scratchpass/lessons/internal/scripted"
	"scratchpass/lessons/page"
	"scratchpass/lessons/practice"
	"scratchpass/lessons/record"
	"scratchpass/lessons/rehearsal"
	"scratchpass/lessons/schedule"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/bench"
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
	run   func(t *testing.T, s *sitting.Session) error
	turns []turn
}{
	{atHome, []turn{
		{"home-first-visit", "3"}, {"home", "3"}, {"lessons", "esc"}, {"", "4"}, {"practise-what", "esc"}, {"", "7"}, {"cautions", "8"},
	}},
	{flow(practice.MixedTest{Level: problem.NumbersGiven}), []turn{{"test", "key"}, {"test-sure", "2"}, {"test-noted", "key"}}},
	{gland, []turn{
		{"bench-job", ""}, {"bench", "start"}, {"bench-mistake", "undo"}, {"bench-undone", "look"}, {"bench-look", ""}, {"", "card"}, {"bench-card", ""}, {"", "help"}, {"bench-help", ""},
	}},
	{flow(course.Lesson{Lesson: "how-deep-to-go"}), []turn{
		{"lesson-begin", ""}, {"lesson-first-try", "error"}, {"lesson-mistake", ""}, {"", "error"}, {"", ""},
		{"lesson-part", ""}, {"lesson-part-figure", ""}, {"lesson-example", ""}, {"", ""}, {"lesson-faded", "key"},
	}},
	{flow(practice.Practice{Tasks: []string{"compound-travel"}, Level: problem.NumbersGiven, Count: 3}), []turn{
		{"number", "hint"}, {"number-hint", "= 0.614 x 0.05"}, {"number-sum", "? crest"}, {"number-word", "look"}, {"number-look", "no number"},
		{"number-unread", "key"}, {"number-right", "0.5"}, {"number-far-off", ""}, {"", "error"}, {"number-error", ""},
	}},
	{flow(practice.Practice{Tasks: []string{"thread-dial-line"}, Level: problem.DeriveFirst, Count: 1}), []turn{{"several", "error"}, {"several-error", ""}}},
	{flow(practice.Practice{Tasks: []string{"one-full-pass"}, Level: problem.NumbersGiven, Count: 1}), []turn{{"order", "error"}, {"order-error", ""}}},
	{flow(practice.Practice{Tasks: []string{"withdraw-inside"}, Level: problem.NumbersGiven, Count: 1}), []turn{{"decision", "error"}, {"decision-error", ""}}},
	{flow(practice.Practice{Tasks: []string{"inch-designation"}, Level: problem.NumbersGiven, Count: 1}), []turn{{"callout", "error"}, {"callout-error", ""}}},
	{flow(practice.Practice{Tasks: []string{"cross-slide-return"}, Level: problem.NumbersGiven, Count: 1}), []turn{{"readings", "error"}, {"readings-error", ""}}},
}

// flow runs a flow as a sitting that no one keeps.
func flow(f sitting.Flow) func(*testing.T, *sitting.Session) error {
	return func(_ *testing.T, s *sitting.Session) error { _, err := s.Run(f); return err }
}

// atHome is the home screen of someone who comes for the first time.
func atHome(t *testing.T, s *sitting.Session) error {
	rec, err := record.Open(filepath.Join(t.TempDir(), "record.db"), "me")
	if err != nil {
		t.Fatal(err)
	}
	defer rec.Close()
	book, err := schedule.NewBook(rec, s.System)
	if err != nil {
		t.Fatal(err)
	}
	s.KeepIn(book, rec.Sittings())
	return home.Run(s, home.Doors{Rehearse: func() error { return errSeen }, SaveLathe: func(machine.Lathe) (string, error) { return "", errSeen }})
}

// gland is the bench with the gland nut.
func gland(t *testing.T, s *sitting.Session) error {
	w, err := s.Library.Job("gland-nut")
	if err != nil {
		t.Fatal(err)
	}
	job, err := bench.ParseJob(w, s.Lathe)
	if err != nil {
		t.Fatal(err)
	}
	return rehearsal.Flow{Session: s}.Run(&rehearsal.Rehearsal{Name: "gland-nut", Bench: bench.New(job)})
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
			p.asked, _ = (tasks.Set{}).FromCode(q.Code)
		}
	}
	return p.Face.Show(shown)
}

func (p *person) answer(q page.Prompt, seen string) (string, error) {
	if len(p.turns) == 0 {
		return "", errSeen
	}
	now := p.turns[0]
	p.turns = p.turns[1:]
	if now.name != "" {
		p.seen[now.name] = seen
	}
	if now.reply == "esc" && len(q.Options()) > 0 {
		return strconv.Itoa(len(q.Options())), nil
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
				Menu: words["screen-menu"], Back: words["screen-back"], GoOn: words["screen-go-on"], Answer: words["screen-answer"], Do: words["screen-do"], Beside: []string{words["screen-sum"], words["screen-word"]}})
			face.Answer, who.Face = who.answer, face
			s, err := sitting.NewSession(who, lib, machine.Imperial, machine.DefaultLathe(machine.Imperial), func() sitting.Seeds { return sitting.Seeds{Seed: 4, Short: true} })
			if err != nil {
				t.Fatal(err)
			}
			s.Clock = func() time.Time { return time.Date(2026, 3, 2, 19, 0, 0, 0, time.UTC) }
			s.Attended = true
			if err := run.run(t, s); err != nil && !errors.Is(err, errSeen) {
				t.Fatal(err)
			}
		}
		for _, run := range screens {
			for _, turn := range run.turns {
				if turn.name != "" && seen[turn.name] == "" {
					t.Errorf("%s: %s was not reached", size.name, turn.name)
				}
			}
		}
		for name, got := range seen {
			scripted.Golden(t, filepath.Join("testdata", "screens", name+"-"+size.name+".ans"), got+"\n")
		}
	}
}
