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

// at is a time of day on a day, counted from the first of January 2026.
func at(day, hour, minute int) time.Time {
	return time.Date(2026, 1, 1+day, hour, minute, 0, 0, time.UTC)
}

// right, wrong and hinted are answers to a task of which the fold knows nothing more.
func right(when time.Time) record.Answer {
	return record.Answer{At: when, Task: "t", Verdict: answer.Right}
}
func wrong(when time.Time) record.Answer {
	return record.Answer{At: when, Task: "t", Verdict: answer.Wrong}
}
func hinted(when time.Time) record.Answer {
	a := right(when)
	a.Hint = true
	return a
}

// folded is what answers come to, oldest first, with so many other items between.
func folded(between int, answers ...record.Answer) record.Summary {
	fold := schedule.Fold(nil)
	var s record.Summary
	for i, a := range answers {
		s = fold(s, a, 1+i*(1+between))
	}
	return s
}

func TestFoldCountsErrors(t *testing.T) {
	for _, row := range []struct {
		verdict   answer.Verdict
		slip      string
		certainty answer.Certainty
		slips     map[string]int
		sureWrong bool
		why       string
	}{
		{answer.KnownError, "double", answer.NotAsked, map[string]int{"double": 1}, false, "a common error has a name"},
		{answer.KnownError, "double", answer.Bet, map[string]int{"double": 1}, true, "the part would have been bet on it"},
		{answer.KnownError, "double", answer.Fairly, map[string]int{"double": 1}, false, "fairly sure is not a bet"},
		{answer.KnownError, "double", answer.Guess, map[string]int{"double": 1}, false, "nor is a guess"},
		{answer.Wrong, "", answer.Bet, nil, true, "wrong without a name"},
		{answer.ScrapWrong, "", answer.Bet, nil, true, "wrong on the side that ruins the part"},
		{answer.SafeWrong, "half", answer.Bet, nil, true, "a part of what is right has a name and is no error to count"},
		{answer.WrongUnit, "", answer.Bet, nil, true, "the part would not have fitted"},
		{answer.Right, "", answer.Bet, nil, false, "a bet that is won"},
		{answer.Convention, "sixth", answer.Bet, nil, false, "another convention is right, and no error"},
	} {
		a := record.Answer{At: at(0, 9, 0), Task: "t", Verdict: row.verdict, Slip: row.slip, Certainty: row.certainty}
		s := folded(0, a)
		if !maps.Equal(s.Slips, row.slips) || s.SureWrong.Equal(a.At) != row.sureWrong || s.SureWrong.IsZero() == row.sureWrong {
			t.Errorf("%s %q %q: errors %v, sure but wrong at %v: %s", row.verdict, row.slip, row.certainty, s.Slips, s.SureWrong, row.why)
		}
	}
}

func TestFoldAddsUp(t *testing.T) {
	double, half := wrong(at(0, 9, 0)), wrong(at(0, 9, 1))
	double.Verdict, double.Slip, double.Seconds = answer.KnownError, "double", 30
	half.Verdict, half.Slip, half.Seconds, half.Certainty = answer.KnownError, "half", 12.5, answer.Bet
	fold := schedule.Fold(nil)
	before := fold(record.Summary{}, double, 1)
	s := fold(fold(before, double, 2), half, 3)
	if want := map[string]int{"double": 2, "half": 1}; !maps.Equal(s.Slips, want) {
		t.Errorf("errors %v", s.Slips)
	}
	if s.Answers != 3 || s.Right != 0 || s.Seconds != 72.5 || !s.Last.Equal(half.At) || !s.SureWrong.Equal(half.At) {
		t.Errorf("%+v", s)
	}
	if s = fold(s, right(at(0, 9, 2)), 4); !s.SureWrong.Equal(half.At) || !s.Last.Equal(at(0, 9, 2)) {
		t.Errorf("a right answer later does not take back that a bet was lost: %+v", s)
	}
	if before.Slips["double"] != 1 || len(before.Slips) != 1 {
		t.Errorf("the summary before was written to: %v", before.Slips)
	}
}

func TestFoldKeepsWhenARunWasLastShown(t *testing.T) {
	one, two, three := right(at(0, 9, 0)), right(at(0, 9, 10)), right(at(0, 9, 20))
	for _, row := range []struct {
		answers []record.Answer
		want    time.Time
		why     string
	}{
		{[]record.Answer{one, two}, time.Time{}, "two are no run"},
		{[]record.Answer{one, two, three}, three.At, "shown by the third"},
		{[]record.Answer{one, two, three, right(at(0, 9, 30)), wrong(at(0, 9, 40))}, three.At, "what comes after is no whole run"},
		{[]record.Answer{one, two, three, right(at(3, 9, 0)), right(at(3, 9, 1)), right(at(4, 9, 0))}, at(4, 9, 0), "shown again"},
	} {
		if got := folded(5, row.answers...).LastShown; !got.Equal(row.want) {
			t.Errorf("last shown %v, want %v: %s", got, row.want, row.why)
		}
	}
}

// What spaces reviews is what someone still knows on another day: the first answer to a
// task on each day, and no other.
func TestFoldSpacesByTheFirstAnswerOfADay(t *testing.T) {
	east := time.FixedZone("", 10*3600)
	for _, row := range []struct {
		answers []record.Answer
		reviews uint64
		lapses  uint64
		last    int // which of the answers was reviewed last
		why     string
	}{
		{[]record.Answer{right(at(0, 9, 0))}, 1, 0, 0, "the first of all"},
		{[]record.Answer{right(at(0, 9, 0)), right(at(0, 9, 1))}, 1, 0, 0, "the second on a day shows nothing about remembering"},
		{[]record.Answer{right(at(0, 9, 0)), wrong(at(0, 23, 59))}, 1, 0, 0, "nor does a wrong one later on that day"},
		{[]record.Answer{right(at(0, 23, 59)), right(at(1, 0, 0))}, 2, 0, 1, "another day begins at midnight"},
		{[]record.Answer{right(at(0, 9, 0)), right(at(0, 9, 1)), right(at(1, 9, 0))}, 2, 0, 2, "the first of the next day"},
		{[]record.Answer{right(at(0, 9, 0)), wrong(at(4, 9, 0)), right(at(4, 9, 1))}, 2, 1, 1, "forgotten, and found again on the same day"},
		{[]record.Answer{right(at(0, 23, 0).In(east)), right(at(1, 1, 0).In(east))}, 1, 0, 0, "one day where the learner is, two in Greenwich"},
		{[]record.Answer{right(at(0, 13, 59).In(east)), right(at(0, 14, 0).In(east))}, 2, 0, 1, "midnight where the learner is"},
	} {
		card := folded(0, row.answers...).Card
		if card.Reps != row.reviews || card.Lapses != row.lapses || !card.LastReview.Equal(row.answers[row.last].At) {
			t.Errorf("%d reviews, %d forgotten, the last at %v: %s", card.Reps, card.Lapses, card.LastReview, row.why)
		}
	}
}

// The days until a review are those of FSRS with its default weights, 90 % to be
// remembered, nothing left to chance. Another version of the library that gives others
// moves the reviews of every learner, so it shows here.
func TestFoldDaysUntilReview(t *testing.T) {
	due := func(answers ...record.Answer) int {
		s := folded(0, answers...)
		gap := s.Card.Due.Sub(answers[len(answers)-1].At)
		if gap%(24*time.Hour) != 0 {
			t.Errorf("due after %v, which is not whole days", gap)
		}
		return int(gap / (24 * time.Hour))
	}
	forgotten, helped, known := due(wrong(at(0, 9, 0))), due(hinted(at(0, 9, 0))), due(right(at(0, 9, 0)))
	if got := []int{forgotten, helped, known}; !slices.Equal(got, []int{1, 2, 3}) {
		t.Errorf("a new task wrong, right with a hint, right: due after %v days", got)
	}
	// Right whenever it is due: further and further apart, at most four months. The library
	// puts what was known well a day behind what was known barely, which makes 120 days 121.
	var answers []record.Answer
	var gaps []int
	for day := range 8 {
		when := at(0, 9, 0)
		if day > 0 {
			when = answers[day-1].At.AddDate(0, 0, gaps[day-1])
		}
		answers = append(answers, right(when))
		gaps = append(gaps, due(answers...))
	}
	if want := []int{3, 11, 35, 101, 121, 121, 121, 121}; !slices.Equal(gaps, want) {
		t.Errorf("due after %v days", gaps)
	}
}

// A run at hand holds what mastery asks of it: when, in which situation, what was right,
// and which common errors would have shown.
func TestFoldHandsMasteryWhatItAsksFor(t *testing.T) {
	task, err := tasks.Find("single-depth")
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
	inch, err := tasks.Find("pitch-from-tpi")
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
		task, err := tasks.Find(names[random.IntN(len(names))])
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
