package schedule_test

import (
	"encoding/json"
	"maps"
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"
	"time"

	"scratchpass/lessons/mastery"
	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
)

// A run at hand holds what mastery asks of it: when, in which situation, what was right,
// and which common errors would have shown.
func TestFoldHandsMasteryWhatItAsksFor(t *testing.T) {
	task, err := (tasks.Set{}).Find("single-depth")
	if err != nil {
		t.Fatal(err)
	}
	code := problem.NewCode(task.Name, problem.NumbersGiven, machine.Imperial, 0x7f3a, machine.DefaultLathe(machine.Imperial))
	p, err := problem.New(task, code)
	if err != nil {
		t.Fatal(err)
	}
	item := schedule.ItemOf(task, machine.Imperial)
	var would []string
	for _, known := range p.Expected.Errors {
		if slices.Contains(item.RuleFor(machine.Imperial).Errors, known.Name) {
			would = append(would, known.Name)
		}
	}
	slices.Sort(would)
	if len(would) == 0 || len(would) == len(p.Expected.Errors) {
		t.Fatalf("%s shows nothing: it wants errors and conventions", code)
	}
	fold := schedule.Fold([]schedule.Item{item})
	for _, row := range []struct {
		code string
		want []string
		why  string
	}{
		{code.String(), would, "the problem is made again from its code"},
		{"", nil, "a record without a code"},
		{"what-is-this", nil, "no code"},
		{"double-depth@1-7f3a", nil, "the code of another task"},
		{"single-depth@1-7f3a+nonsense", nil, "a lathe that can't be read"},
	} {
		a := record.Answer{At: at(2, 9, 0), Task: task.Name, Code: row.code, Verdict: answer.Convention, Situation: "outside", Key: "0.0613 in"}
		s := fold(record.Summary{}, a, 17)
		if s.Run.Length != 1 {
			t.Fatalf("%q: %d right in a row: another convention counts as right", row.code, s.Run.Length)
		}
		if got := slices.Sorted(maps.Keys(s.Run.Chances)); !slices.Equal(got, row.want) {
			t.Errorf("%q: %v would have shown, want %v: %s", row.code, got, row.want, row.why)
		}
		want := mastery.Run{Length: 1, Chances: s.Run.Chances, Key: "0.0613 in", Item: 17, Last: mastery.Moment{Unix: a.At.Unix(), Day: 20456}}
		if !reflect.DeepEqual(s.Run, want) {
			t.Errorf("%+v, want %+v", s.Run, want)
		}
	}
	byHand := schedule.Fold([]schedule.Item{{Task: task.Name}}) // no task to make the problem with
	if s := byHand(record.Summary{}, record.Answer{At: at(2, 9, 0), Task: task.Name, Code: code.String(), Verdict: answer.Right}, 1); s.Run.Length != 1 || s.Run.Chances != nil {
		t.Errorf("an item that stands for no task: %+v", s.Run)
	}
	inch, err := (tasks.Set{}).Find("pitch-from-tpi")
	if err != nil {
		t.Fatal(err)
	}
	imperial := schedule.Fold([]schedule.Item{schedule.ItemOf(inch, machine.Imperial)}) // set in inches only
	if s := imperial(record.Summary{}, record.Answer{At: at(2, 9, 0), Task: inch.Name, Code: inch.Name + "@1m-7f3a", Verdict: answer.Right}, 1); s.Run.Length != 1 || s.Run.Chances != nil {
		t.Errorf("a code that makes no problem: %+v", s.Run)
	}
	hinted := record.Answer{At: at(2, 9, 0), Task: task.Name, Code: code.String(), Verdict: answer.Right, Hint: true}
	if s := fold(record.Summary{}, hinted, 1); s.Run.Length != 0 || s.Right != 1 {
		t.Errorf("with a hint: %+v", s.State)
	}
	// The rule of the task is asked too: a safety-critical task wants two days.
	critical := schedule.Item{Task: "t", SafetyCritical: true}
	critical.Rule.SafetyCritical = true
	strict := schedule.Fold([]schedule.Item{critical})
	var s record.Summary
	for i, when := range []time.Time{at(0, 9, 0), at(0, 9, 1), at(1, 9, 0)} {
		s = strict(s, right(when), 1+i)
	}
	if s.Mastered || s.Days != 1 {
		t.Errorf("mastered %v on days %v", s.Mastered, s.Days)
	}
}

// What was wrong has a name where it fits a common error, a part of what is right, or the
// right number in another unit; and mastery is told what the part was bet on.
func TestFoldNamesMistakes(t *testing.T) {
	for _, row := range []struct {
		verdict answer.Verdict
		slip    string
		want    map[string]int
		why     string
	}{
		{answer.Right, "", nil, "nothing was wrong"},
		{answer.Convention, "sixth", nil, "another convention is right"},
		{answer.KnownError, "double", map[string]int{"double": 1}, "a common error"},
		{answer.SafeWrong, "half", map[string]int{"half": 1}, "a part of what is right"},
		{answer.Wrong, "", map[string]int{"": 1}, "no one knows what"},
		{answer.ScrapWrong, "", map[string]int{"": 1}, "only the side is known"},
		{answer.WrongUnit, "", map[string]int{schedule.WrongUnit: 1}, "the unit"},
	} {
		a := record.Answer{At: at(0, 9, 0), Task: "t", Verdict: row.verdict, Slip: row.slip}
		if s := folded(0, a); !maps.Equal(s.Mistakes, row.want) {
			t.Errorf("%s %q: %v: %s", row.verdict, row.slip, s.Mistakes, row.why)
		}
	}
	shown := []record.Answer{right(at(0, 9, 0)), right(at(0, 9, 1)), right(at(0, 9, 2))}
	for _, row := range []struct {
		certainty answer.Certainty
		days      int
	}{{answer.NotAsked, 1}, {answer.Guess, 1}, {answer.Fairly, 1}, {answer.Bet, 0}} {
		a := wrong(at(1, 9, 0))
		a.Certainty = row.certainty
		if s := folded(5, append(shown, a)...); s.Days != row.days {
			t.Errorf("wrong and %q: shown on %d days", row.certainty, s.Days)
		}
	}
}

// What answers come to hangs on nothing but them: neither on the system of units of the
// sessions in which they were given, nor on whether they were counted one by one or anew.
func TestFoldHangsOnTheAnswersAlone(t *testing.T) {
	systems := []machine.System{machine.Imperial, machine.Metric}
	random := rand.New(rand.NewPCG(8, 15))
	catalogues := map[machine.System]record.Fold{}
	for _, s := range systems {
		catalogues[s] = schedule.Fold(schedule.Catalogue(s))
	}
	var answers []record.Answer
	names := []string{"single-depth", "minor-diameter", "radius-dial-plunge", "dial-divisions", "metric-half-nut", "pitch-from-tpi"}
	differ := false
	for n := range 400 {
		task, err := (tasks.Set{}).Find(names[random.IntN(len(names))])
		if err != nil {
			t.Fatal(err)
		}
		system := systems[random.IntN(2)]
		if !task.Allows(system) {
			system = task.Systems[0]
		}
		if task.Allows(machine.Imperial) && task.Allows(machine.Metric) {
			it := schedule.ItemOf(task, system)
			differ = differ || !reflect.DeepEqual(it.RuleFor(machine.Imperial), it.RuleFor(machine.Metric))
		}
		p, err := problem.New(task, problem.NewCode(task.Name, problem.NumbersGiven, system, random.Uint32(), machine.DefaultLathe(system)))
		if err != nil {
			t.Fatal(err)
		}
		a := record.Answer{At: at(n/9, 9, n%60), Task: task.Name, Code: p.Code.String(), Verdict: answer.Right, Key: p.Expected.Text(), Situation: p.Values.Situation()}
		if random.IntN(9) == 0 {
			a.Verdict, a.Slip = answer.KnownError, p.Expected.Errors[0].Name
		}
		answers = append(answers, a)
	}
	if !differ {
		t.Fatal("no task asks for other things in another system: the test tests nothing")
	}
	come := func(session func(n int) machine.System) map[string]record.Summary {
		of := map[string]record.Summary{}
		for n, a := range answers {
			s := catalogues[session(n)](of[a.Task], a, n+1)
			text, err := json.Marshal(s) // as a record keeps it in between
			if err != nil {
				t.Fatal(err)
			}
			s = record.Summary{}
			if err := json.Unmarshal(text, &s); err != nil {
				t.Fatal(err)
			}
			of[a.Task] = s
		}
		return of
	}
	want := come(func(int) machine.System { return machine.Imperial })
	for why, session := range map[string]func(int) machine.System{
		"all in metric sessions":         func(int) machine.System { return machine.Metric },
		"in sessions now so, now so":     func(n int) machine.System { return systems[n/5%2] },
		"in one system first, then none": func(n int) machine.System { return systems[min(n/200, 1)] },
	} {
		if got := come(session); !reflect.DeepEqual(got, want) {
			t.Errorf("%s: another summary", why)
		}
	}
}

// What a run must cover comes from the system of units of the problem, for every task that
// is set in both.
func TestFoldTakesTheSystemOfTheProblem(t *testing.T) {
	differ := 0
	for _, task := range tasks.All() {
		if !task.Allows(machine.Imperial) || !task.Allows(machine.Metric) {
			continue
		}
		imperial, metric := schedule.ItemOf(task, machine.Imperial), schedule.ItemOf(task, machine.Metric)
		if !slices.Equal(imperial.RuleFor(machine.Imperial).Errors, imperial.RuleFor(machine.Metric).Errors) {
			differ++
		}
		for _, system := range []machine.System{machine.Imperial, machine.Metric} {
			var one, other record.Summary
			for seed := range uint32(12) {
				p, err := problem.New(task, problem.NewCode(task.Name, problem.NumbersGiven, system, seed, machine.DefaultLathe(system)))
				if err != nil {
					t.Fatal(err)
				}
				if imperial.Wants(one, p) != metric.Wants(one, p) {
					t.Errorf("%s is wanted in sessions of one system only", p.Code)
				}
				a := record.Answer{At: at(0, 9, int(seed)), Task: task.Name, Code: p.Code.String(), Verdict: answer.Right, Situation: p.Values.Situation()}
				one, other = schedule.Fold([]schedule.Item{imperial})(one, a, int(seed)), schedule.Fold([]schedule.Item{metric})(other, a, int(seed))
			}
			if !reflect.DeepEqual(one, other) {
				t.Errorf("%s in %s: %+v, in sessions of the other system %+v", task.Name, system, one.State, other.State)
			}
		}
	}
	if differ == 0 {
		t.Error("no task asks for other errors in another system: the test tests nothing")
	}
}
