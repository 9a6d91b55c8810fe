package sitting_test

import (
	"errors"
	"strings"
	"testing"
	"time"

	"scratchpass/content"
	"scratchpass/lessons/page"
	"scratchpass/lessons/record"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
)

// session is a session at a face.
func session(t *testing.T, face page.Face) *sitting.Session {
	t.Helper()
	s, err := sitting.NewSession(face, content.Shipped(), machine.Imperial, machine.DefaultLathe(machine.Imperial), func() sitting.Seeds { return sitting.Seeds{Seed: 1} })
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// keeper keeps the newest answer.
type keeper struct {
	sitting.Book
	newest record.Answer
}

func (k *keeper) Keep(a record.Answer) error { k.newest = a; return nil }

// What a sitting keeps of an answer to any task is what marking it anew comes to.
func TestRemarkIsWhatWasKept(t *testing.T) {
	seeds := 4
	if testing.Short() {
		seeds = 2
	}
	s := session(t, nil)
	for _, task := range tasks.All() {
		for seed := range uint32(seeds) {
			system := machine.Imperial
			if seed%2 == 1 && task.Allows(machine.Metric) || !task.Allows(system) {
				system = machine.Metric
			}
			p, err := problem.New(task, problem.NewCode(task.Name, problem.Level(1+seed%3), system, 1000+seed, machine.DefaultLathe(system)))
			if err != nil {
				t.Fatal(err)
			}
			typed := []string{p.Expected.Show(p.Expected.Key), "pass"}
			for _, known := range p.Expected.Errors {
				typed = append(typed, p.Expected.Show(known.Response))
			}
			for _, text := range typed {
				k := &keeper{}
				s.Face, s.Book = &listener{replies: []string{text}}, k
				if _, err := s.Run(asking{p.Code.String()}); err != nil && !errors.Is(err, page.ErrStopped) {
					t.Fatalf("%s: %v", p.Code, err)
				}
				if k.newest.Code == "" {
					continue // it can't be typed as it is shown
				}
				again, err := sitting.Remark(tasks.Set{})(k.newest)
				if err != nil || again != k.newest {
					t.Errorf("%s, %q:\n%+v\n%+v, %v", p.Code, text, again, k.newest, err)
				}
			}
		}
	}
}

// asking asks one problem.
type asking struct{ Code string }

func (asking) Name() string                     { return "asking" }
func (asking) Farewell(*sitting.Sitting) string { return "" }
func (f asking) Run(st *sitting.Sitting) error {
	p, err := (tasks.Set{}).FromCode(f.Code)
	if err != nil {
		return err
	}
	w, err := st.Words(p.Task.Name)
	if err != nil {
		return err
	}
	_, err = st.Pose(p, w, page.Where{}, sitting.Rules{})
	return err
}

func TestRemarkRefuses(t *testing.T) {
	p, err := (tasks.Set{}).FromCode("pitch-from-tpi@1-7f3a")
	if err != nil {
		t.Fatal(err)
	}
	good := record.Answer{At: time.Unix(1_700_000_000, 0), Task: "pitch-from-tpi", Code: "pitch-from-tpi@1-7f3a", Given: "9", Verdict: answer.Right, Points: 1}
	if a, err := sitting.Remark(tasks.Set{})(good); err != nil || a.Verdict != answer.Wrong || a.Points != 0 || a.Key != p.Expected.Text() {
		t.Errorf("%+v, %v", a, err)
	}
	for _, row := range []struct {
		change func(a *record.Answer)
		want   string
	}{
		{func(a *record.Answer) { a.Code = "pitch-from-tpi" }, "pitch-from-tpi"},
		{func(a *record.Answer) { a.Code, a.Task = "no-such-task@1-7f3a", "no-such-task" }, record.ErrOtherProblem.Error()},
		{func(a *record.Answer) { a.Task = "single-depth" }, `task "single-depth": the code pitch-from-tpi@1-7f3a is one of pitch-from-tpi`},
		{func(a *record.Answer) { a.Given = "as deep as it goes" }, "can't be read"},
		{func(a *record.Answer) { a.Key = "9 in" }, "its code makes another problem now: what was right is "},
	} {
		a := good
		row.change(&a)
		_, err := sitting.Remark(tasks.Set{})(a)
		if err == nil || !strings.Contains(err.Error(), row.want) {
			t.Errorf("%+v: %v", a, err)
		}
		if errors.Is(err, record.ErrOtherProblem) != (a.Key != "" || a.Task == "no-such-task") {
			t.Errorf("%+v: %v", a, err)
		}
	}
}
