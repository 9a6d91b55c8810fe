package schedule_test

import (
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"sync"
	"testing"
	"time"

	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
)

// Simulated learners test the software, not learning: whether a common error that someone
// holds is found, whether one is named that no one holds, and whether someone who
// can't do a thing is said to have shown it. Each works through a part of the
// catalogue for weeks of simulated days, led by the real schedule. The table that stands
// in lessons/record/README.md prints with
//
//	go test ./lessons/schedule -run SimulatedLearners -learners 1200 -v
const (
	tasksEach = 7  // tasks a learner has, the first being the one that is judged
	mostDays  = 40 // simulated days
	dayBudget = 12 // minutes of practice a day
)

var learnersOfAKind = flag.Int("learners", 400, "simulated learners of each kind")

// tally is what came of one kind of learner.
type tally struct {
	answers, named, rightName, falseName int
	holders, found                       int
	judged, mastered                     int
	criticalJudged, criticalMastered     int
	stuckWanted, stuckFlagged            int
	leaks                                []string
	typedItems, typedMastered            int
}

// catalogue is every task as the schedule sees it.
var catalogue = func() []schedule.Item {
	var items []schedule.Item
	for _, t := range tasks.All() {
		items = append(items, schedule.ItemOf(t, machine.Imperial))
	}
	return items
}()

func draw(random *rand.Rand, t *problem.Task, level problem.Level) *problem.Problem {
	system := machine.Imperial
	if !t.Allows(system) {
		system = machine.Metric
	}
	p, err := problem.New(t, problem.NewCode(t.Name, level, system, random.Uint32(), machine.DefaultLathe(system)))
	if err != nil {
		panic(err)
	}
	return p
}

// next is the next problem of a task, in another situation than the last where there
// is one.
func next(random *rand.Rand, t *problem.Task, level problem.Level, last string) *problem.Problem {
	for tries := 0; ; tries++ {
		if p := draw(random, t, level); last == "" || p.Values.Situation() != last || tries == 12 {
			return p
		}
	}
}

// simulate lets learners of a kind practise. With critical the judged task is one that
// can hurt someone.
func simulate(k kind, seed uint64, learners int, critical bool) tally {
	random := rand.New(rand.NewPCG(seed, 99))
	var c tally
	for range learners {
		order := random.Perm(len(catalogue))
		var items []schedule.Item
		for _, i := range order {
			if len(items) == 0 && critical && !catalogue[i].SafetyCritical {
				continue
			}
			if items = append(items, catalogue[i]); len(items) == tasksEach {
				break
			}
		}
		t, _ := tasks.Find(items[0].Task)
		m := &mind{random: random, task: t}
		var wrong []string
		for _, s := range t.Errors {
			if !s.Convention {
				wrong = append(wrong, s.Name)
			}
		}
		m.holding = wrong[random.IntN(len(wrong))]
		c.one(k, m, items)
	}
	return c
}

// one lets one learner practise day after day until the judged task has been shown or
// the days are over.
func (c *tally) one(k kind, m *mind, items []schedule.Item) {
	fold := schedule.Fold(items)
	of := map[string]record.Summary{}
	judged := items[0]
	situation := map[string]string{}
	shown, found, count, right, stuckAt := 0, false, 0, false, 0
	for m.day = 0; m.day < mostDays && !of[judged.Task].Mastered && stuckAt == 0; m.day++ {
		now := time.Date(2026, 1, 1, 18, 0, 0, 0, time.UTC).AddDate(0, 0, m.day)
		var recent []string
		for minutes := 0.0; ; {
			choice, ok := schedule.Next(items, of, recent, now)
			if minutes += choice.Item.Minutes; !ok || minutes > dayBudget {
				break
			}
			now = now.Add(time.Minute)
			recent = append(recent, choice.Item.Task)
			t, _ := tasks.Find(choice.Item.Task)
			p := next(m.random, t, problem.Level(1+count%3), situation[t.Name])
			situation[t.Name] = p.Values.Situation()
			count++
			reply, meant := p.Expected.Key, ""
			if t == m.task || !k.holds { // its error is in one task; the others it knows
				reply, meant = k.answer(m, p)
			}
			mark := p.MarkResponse(reply)
			certainty := answer.NotAsked
			if strings.HasPrefix(k.name, "over-confident") {
				certainty = answer.Bet
			}
			of[t.Name] = fold(of[t.Name], record.Answer{At: now, Task: t.Name, Code: p.Code.String(), Verdict: mark.Verdict, Slip: mark.Error,
				Certainty: certainty, Situation: p.Values.Situation(), Key: p.Expected.Text()}, count)
			if t != m.task {
				continue
			}
			c.answers++
			right = right || mark.Correct()
			if meant != "" {
				if shown++; shown <= 2 && mark.Error == meant {
					found = true
				}
			}
			if mark.Verdict == answer.KnownError || mark.Verdict == answer.Convention {
				c.named++
				if mark.Error == meant {
					c.rightName++
				}
				// A chosen option is what it is; a number can fall on an error by chance.
				if meant == "" && len(p.Expected.Options) == 0 && mark.Verdict == answer.KnownError {
					c.falseName++
				}
			}
			if s := of[t.Name]; s.Stuck() && stuckAt == 0 {
				stuckAt = s.Answers
			}
		}
	}
	s := of[judged.Task]
	if k.holds {
		if shown == 0 {
			return // with these numbers its error could not be made: it has shown the task
		}
		c.holders++
		if found {
			c.found++
		}
	}
	c.judged++
	if s.Mastered {
		c.mastered++
		if k.holds {
			c.leaks = append(c.leaks, m.task.Name+" "+m.holding)
		}
		if !judged.SafetyCritical && !judged.Rule.Choice {
			c.typedItems, c.typedMastered = c.typedItems+s.Answers, c.typedMastered+1
		}
	}
	if judged.SafetyCritical && !k.knows {
		c.criticalJudged++
		if s.Mastered {
			c.criticalMastered++
		}
	}
	if !right && s.Answers >= 10 {
		c.stuckWanted++
		if stuckAt == 10 {
			c.stuckFlagged++
		}
	}
}

func percent(part, whole int) float64 {
	if whole == 0 {
		return math.NaN()
	}
	return 100 * float64(part) / float64(whole)
}

func TestSimulatedLearners(t *testing.T) {
	learners := *learnersOfAKind
	if testing.Short() {
		learners /= 10
	}
	cell := func(format string, x float64) string {
		if math.IsNaN(x) {
			return "-"
		}
		return fmt.Sprintf(format, x)
	}
	allFalse, allAnswers := 0, 0
	table := []string{"| learner | named rightly | found within 2 | false names | shown | shown, safety-critical | answers (typed) |", "|---|---|---|---|---|---|---|"}
	for i, k := range kinds {
		c := simulate(k, uint64(i+1), learners, false)
		g := simulate(k, uint64(i+101), learners/2, true)
		precision, recall := percent(c.rightName, c.rightName+c.falseName), percent(c.found, c.holders)
		if k.holds {
			precision = percent(c.rightName, c.named)
		} else if c.rightName == 0 { // it meant no error by its name
			precision = math.NaN()
		}
		falseNames, mastered, critical := percent(c.falseName, c.answers), percent(c.mastered, c.judged), percent(g.mastered, g.judged)
		items := math.NaN()
		if c.typedMastered >= 10 { // fewer are no mean
			items = float64(c.typedItems) / float64(c.typedMastered)
		}
		table = append(table, fmt.Sprintf("| %s | %s | %s | %s | %s | %s | %s |", k.name, cell("%.2f %%", precision), cell("%.2f %%", recall),
			cell("%.2f %%", falseNames), cell("%.2f %%", mastered), cell("%.2f %%", critical), cell("%.2f", items)))
		allFalse, allAnswers = allFalse+c.falseName, allAnswers+c.answers
		if k.holds && (precision < 98 || recall < 95) {
			t.Errorf("%s: precision %.2f %%, recall %.2f %%", k.name, precision, recall)
		}
		unstable := k.name == "unstable slip" // half of the time it does know
		// One learner of a short run of 40 is no share; the long run holds to the shares.
		if !k.knows && !unstable && (mastered > 2 && c.mastered > 1 || critical > 0.5) {
			t.Errorf("%s: said to have shown it %.2f %%, safety-critical %.2f %% %v", k.name, mastered, critical, append(c.leaks, g.leaks...))
		}
		if testing.Verbose() && k.holds && !unstable {
			t.Logf("%s: shown although an error was held: %v", k.name, c.leaks)
		}
		if k.holds && !unstable && g.criticalMastered > 0 {
			t.Errorf("%s: %d leaks where it can hurt someone: %v", k.name, g.criticalMastered, g.leaks)
		}
		if k.name == "knows all" && (mastered < 98 || critical < 98 || items > 3.5) {
			t.Errorf("%s: shown %.2f %%, safety-critical %.2f %%, after %.2f answers", k.name, mastered, critical, items)
		}
		if (c.stuckFlagged+g.stuckFlagged)*100 < (c.stuckWanted+g.stuckWanted)*95 {
			t.Errorf("%s: stuck flagged at the tenth answer %d of %d", k.name, c.stuckFlagged+g.stuckFlagged, c.stuckWanted+g.stuckWanted)
		}
	}
	overall := percent(allFalse, allAnswers)
	if overall > 1 {
		t.Errorf("%.3f %% false names over all", overall)
	}
	t.Logf("\n%s\nfalse names over all: %.3f %%", strings.Join(table, "\n"), overall)
}

// Learners who hold one common error in a task that can hurt someone never come to be told
// that they have shown it.
func TestSafetyCriticalLeaks(t *testing.T) {
	n := *criticalLearners
	if testing.Short() {
		n /= 10
	}
	var persistent kind
	for _, k := range kinds {
		if k.name == "one persistent slip" {
			persistent = k
		}
	}
	var wg sync.WaitGroup
	results := make([]tally, 2)
	for i := range results {
		wg.Add(1)
		go func() { defer wg.Done(); results[i] = simulate(persistent, uint64(1000+i), n/2, true) }()
	}
	wg.Wait()
	for _, c := range results {
		if c.criticalMastered > 0 {
			t.Errorf("%d leaks in %d: %v", c.criticalMastered, c.criticalJudged, c.leaks)
		}
		t.Logf("%d learners with a stable error, %d leaks", c.criticalJudged, c.criticalMastered)
	}
}

var criticalLearners = flag.Int("critical-learners", 2000, "simulated learners with a stable error in a task that can hurt someone")
