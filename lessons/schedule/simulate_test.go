package schedule_test

import (
	"flag"
	"math/rand/v2"
	"strings"
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
	dayBudget = 12 // minutes of practice a day
)

var mostDays = flag.Int("days", 40, "days that simulated learners practise")

var learnersOfAKind = flag.Int("learners", 40, "simulated learners of each kind")

// tally is what came of one kind of learner.
type tally struct {
	answers, named, rightName, falseName int
	holders, found                       int
	judged, mastered                     int
	criticalJudged, criticalMastered     int
	stuckWanted, stuckFlagged            int
	leaks                                []string
	typedItems, typedMastered            int
	took                                 []int // answers until the judged task was shown
	tookDays                             []int // and days
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

// next is the next problem of a task: one that brings the run further, and in another
// situation than the last, where one of a few has both.
func next(random *rand.Rand, it schedule.Item, s record.Summary, t *problem.Task, level problem.Level, last string) *problem.Problem {
	for tries := 0; ; tries++ {
		p := draw(random, t, level)
		if tries == 12 || it.Wants(s, p) && (last == "" || p.Values.Situation() != last || tries > 6) {
			return p
		}
	}
}

// simulate lets learners of a kind practise. The judged task is one that can hurt someone,
// or one that can't.
func simulate(k kind, seed uint64, learners int, critical bool) tally {
	random := rand.New(rand.NewPCG(seed, 99))
	var c tally
	for range learners {
		order := random.Perm(len(catalogue))
		var items []schedule.Item
		for _, i := range order {
			if len(items) == 0 && critical != catalogue[i].SafetyCritical {
				continue
			}
			if items = append(items, catalogue[i]); len(items) == tasksEach {
				break
			}
		}
		t, _ := (tasks.Set{}).Find(items[0].Task)
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
	could := false // the error it holds could be made
	for m.day = 0; m.day < *mostDays && !of[judged.Task].Mastered; m.day++ {
		now := time.Date(2026, 1, 1, 18, 0, 0, 0, time.UTC).AddDate(0, 0, m.day)
		var recent []string
		for minutes := 0.0; ; {
			choice, ok := schedule.Next(items, of, recent, now)
			if minutes += choice.Item.Minutes; !ok || minutes > dayBudget {
				break
			}
			now = now.Add(time.Minute)
			recent = append(recent, choice.Item.Task)
			t, _ := (tasks.Set{}).Find(choice.Item.Task)
			p := next(m.random, choice.Item, of[t.Name], t, problem.Level(1+count%3), situation[t.Name])
			situation[t.Name] = p.Values.Situation()
			count++
			reply, meant := p.Expected.Key, ""
			if t == m.task {
				m.asked++
			}
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
			if r, meant := errorOf(m, p); meant != "" && !p.Expected.Right(r) {
				could = true
			}
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
		if !could {
			return // with these numbers its error could not be made: it has shown the task
		}
		if shown > 0 {
			c.holders++
		}
		if found {
			c.found++
		}
	}
	c.judged++
	if s.Mastered {
		c.mastered++
		c.took, c.tookDays = append(c.took, s.Answers), append(c.tookDays, m.day)
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
