package mastery_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"scratchpass/calc"
	"scratchpass/lessons/mastery"
	"scratchpass/quiz"
	"scratchpass/quiz/tasks"
)

// Simulated learners test the software, not learning: whether a slip that someone
// holds is found, whether one is named that no one holds, and whether someone who
// can't do a thing is said to have mastered it. The report prints with
//
//	go test ./lessons/mastery -run SimulatedLearners -v
const (
	learnersOfAKind = 2000
	tasksEach       = 3
	itemsEach       = 24
)

// mind is one simulated learner working at one task.
type mind struct {
	random *rand.Rand
	task   *quiz.Task
	slip   string // the wrong road it holds
	last   string // what was right the time before, as typed
	day    int
}

// kind is a kind of learner: what it answers to a problem. ok tells whether it
// meant a named slip, and which.
type kind struct {
	name   string
	knows  bool // to say that it has mastered a task is no mistake
	holds  bool // it holds a slip
	answer func(m *mind, p *quiz.Problem) (r quiz.Reply, meant string)
}

func key(_ *mind, p *quiz.Problem) (quiz.Reply, string) { return p.Answer.Key, "" }

// slipOf is what the learner's slip gives in a problem; the key where it can't be
// made.
func slipOf(m *mind, p *quiz.Problem) (quiz.Reply, string) {
	r, meant := p.Answer.Key, ""
	p.SlipReplies(func(s *quiz.Slip, reply quiz.Reply) {
		switch {
		case s.Name == m.slip:
			r, meant = reply, s.Name
		case s.Twin == s.Name && meant == "": // two causes of nearly one number: the other has no name of its own here
			if merged[m.task.Name] == m.slip {
				r, meant = reply, s.Name
			}
		}
	})
	return r, meant
}

// merged are slips that with most numbers can't be told from another, which then
// names both causes.
var merged = map[string]string{"time-to-shoulder": "tpi", "fastest-for-the-gap": "div-n"}

// careless is the key with a slip of the pen: two digits swapped, one wrong, or the
// next option.
func careless(m *mind, p *quiz.Problem) quiz.Reply {
	switch {
	case len(p.Answer.Key.Xs) > 0:
		r := quiz.Reply{Xs: slices.Clone(p.Answer.Key.Xs)}
		i := m.random.IntN(len(r.Xs))
		r.Xs[i] = smudge(m, r.Xs[i], p.Answer.Unit)
		return r
	case len(p.Answer.Options) > 0:
		return guess(m, p)
	case len(p.Answer.Key.Fields) > 0:
		return guess(m, p)
	}
	for range 50 { // a smudge in the last figure may still be right
		if r := quiz.X(smudge(m, p.Answer.Key.X, p.Answer.Unit)); !p.Answer.Right(r) {
			return r
		}
	}
	return quiz.X(p.Answer.Key.X * 3)
}

func smudge(m *mind, x float64, u quiz.Unit) float64 {
	digits := []byte(u.Fixed(x))
	for range 20 {
		i := m.random.IntN(len(digits))
		if digits[i] < '0' || digits[i] > '9' {
			continue
		}
		if j := i + 1; m.random.IntN(2) == 0 && j < len(digits) && digits[j] >= '0' && digits[j] != digits[i] {
			digits[i], digits[j] = digits[j], digits[i]
			break
		}
		digits[i] = '0' + byte((int(digits[i]-'0')+1+m.random.IntN(8))%10)
		break
	}
	y, err := calc.ParseNumber(string(digits))
	if err != nil {
		return x
	}
	return y / u.Factor
}

// guess is an answer without an idea.
func guess(m *mind, p *quiz.Problem) quiz.Reply {
	a := &p.Answer
	switch a.Kind.Name() {
	case "choice":
		return quiz.Keys(a.Options[m.random.IntN(len(a.Options))])
	case "order":
		keys := slices.Clone(a.Options)
		m.random.Shuffle(len(keys), func(i, j int) { keys[i], keys[j] = keys[j], keys[i] })
		return quiz.Keys(keys...)
	case "several":
		var keys []string
		for _, o := range a.Options {
			if m.random.IntN(2) == 0 {
				keys = append(keys, o)
			}
		}
		return quiz.Keys(keys...)
	case "readings":
		r := quiz.Reply{Xs: make([]float64, len(a.Key.Xs))}
		for i := range r.Xs {
			r.Xs[i] = a.Key.Xs[i] * (0.2 + 3*m.random.Float64())
		}
		return r
	case "reading":
		r := quiz.Reply{Fields: slices.Clone(a.Key.Fields)}
		r.Fields[m.random.IntN(len(r.Fields))][1] = "something else"
		return r
	}
	return quiz.X(a.Key.X * math.Pow(10, 2*m.random.Float64()-1))
}

var kinds = []kind{
	{name: "knows all", knows: true, answer: key},
	{name: "knows nothing", answer: func(m *mind, p *quiz.Problem) (quiz.Reply, string) { return guess(m, p), "" }},
	{name: "one persistent slip", holds: true, answer: slipOf},
	{name: "unstable slip", holds: true, answer: func(m *mind, p *quiz.Problem) (quiz.Reply, string) {
		if m.random.IntN(2) == 0 {
			return key(m, p)
		}
		return slipOf(m, p)
	}},
	{name: "careless 8 %", knows: true, answer: func(m *mind, p *quiz.Problem) (quiz.Reply, string) {
		if m.random.Float64() < 0.08 {
			return careless(m, p), ""
		}
		return key(m, p)
	}},
	{name: "guesser", answer: func(m *mind, p *quiz.Problem) (quiz.Reply, string) { return guess(m, p), "" }},
	{name: "stuck", answer: func(m *mind, p *quiz.Problem) (quiz.Reply, string) { return careless(m, p), "" }},
	{name: "fast", knows: true, answer: func(m *mind, p *quiz.Problem) (quiz.Reply, string) {
		if m.random.Float64() < 0.2 {
			return careless(m, p), ""
		}
		return key(m, p)
	}},
	{name: "copies the last answer", answer: func(m *mind, p *quiz.Problem) (quiz.Reply, string) {
		text := m.last
		m.last = strings.ReplaceAll(p.Answer.Kind.Show(&p.Answer, p.Answer.Key), " then", "")
		if r, err := p.Answer.Read(text); err == nil {
			return r, ""
		}
		return guess(m, p), ""
	}},
	{name: "forgets (half-life 4 days)", knows: true, answer: func(m *mind, p *quiz.Problem) (quiz.Reply, string) {
		if m.random.Float64() < math.Pow(0.5, float64(m.day)/4) {
			return key(m, p)
		}
		return careless(m, p), ""
	}},
	{name: "over-confident, one slip", holds: true, answer: slipOf},
	{name: "switches convention", knows: true, answer: func(m *mind, p *quiz.Problem) (quiz.Reply, string) {
		r, meant := p.Answer.Key, ""
		p.SlipReplies(func(s *quiz.Slip, reply quiz.Reply) {
			if s.Convention && m.random.IntN(2) == 0 {
				r, meant = reply, s.Name
			}
		})
		return r, meant
	}},
	{name: "mixes units", answer: func(m *mind, p *quiz.Problem) (quiz.Reply, string) {
		if p.Answer.Kind.Name() == "quantity" && p.Answer.Unit.Name == "in" {
			return quiz.X(p.Answer.Key.X * 1000), ""
		}
		return careless(m, p), ""
	}},
}

// tally is what came of one kind of learner.
type tally struct {
	answers, named, rightName, falseName int
	holders, found                       int
	judged, mastered                     int
	gateJudged, gateMastered             int
	stuckWanted, stuckFlagged            int
	leaks                                []string
}

func rule(t *quiz.Task, p *quiz.Problem) mastery.Rule {
	// The keys of a decision are told by its situations, which Forms covers.
	r := mastery.Rule{Choice: p.Answer.Kind.Name() == "choice", Gate: t.Gate, OneKey: p.Answer.Kind.Name() == "order" || p.Answer.Kind.Name() == "choice"}
	for _, in := range t.Inputs {
		if in.Is == quiz.AWord {
			r.Forms = in.Words
			break
		}
	}
	return r
}

func simulate(k kind, seed uint64, learners int) tally {
	random := rand.New(rand.NewPCG(seed, 99))
	all := tasks.All()
	var c tally
	for range learners {
		for range tasksEach {
			t := all[random.IntN(len(all))]
			m := &mind{random: random, task: t}
			var wrong []string
			for _, s := range t.Slips {
				if !s.Convention {
					wrong = append(wrong, s.Name)
				}
			}
			m.slip = wrong[random.IntN(len(wrong))]
			c.one(k, m)
		}
	}
	return c
}

// one lets one learner work at one task for some weeks.
func (c *tally) one(k kind, m *mind) {
	var state mastery.State
	answers, right := 0, false
	system := quiz.Imperial
	if !m.task.Allows(system) {
		system = quiz.Metric
	}
	shown, found, situation := 0, false, ""
	for item := range itemsEach {
		m.day = item / 6
		p := next(m, quiz.Level(1+item%3), system, situation)
		situation = p.Values.Case()
		r := rule(m.task, p)
		reply, meant := k.answer(m, p)
		mark := p.MarkReply(reply)
		c.answers++
		named := mark.Verdict == quiz.NamedSlip || mark.Verdict == quiz.Convention
		typed := len(p.Answer.Options) == 0
		if meant != "" {
			if shown++; shown <= 2 && mark.Slip == meant {
				found = true
			}
		}
		if named {
			c.named++
			if mark.Slip == meant {
				c.rightName++
			}
			// A chosen option is what it is; a number can fall on a slip by chance.
			if meant == "" && typed && mark.Verdict == quiz.NamedSlip {
				c.falseName++
			}
		}
		answers++
		right = right || mark.Correct()
		state = state.Add(r, mastery.Answer{Item: item * 6, Day: m.day, Right: mark.Correct(), Form: p.Values.Case(), Key: p.Answer.Text()})
		if state.Mastered || state.Stuck() {
			break // on to another task, or to the instructor
		}
	}
	if k.holds && shown > 0 {
		c.holders++
		if found {
			c.found++
		}
	}
	if k.holds && shown == 0 {
		return // with these numbers its slip could not be made: it has shown the task
	}
	c.judged++
	mastered := state.Mastered
	if mastered {
		c.mastered++
	}
	if m.task.Gate && !k.knows {
		c.gateJudged++
		if mastered {
			c.gateMastered++
			if k.holds {
				c.leaks = append(c.leaks, m.task.Name+" "+m.slip)
			}
		}
	}
	if !right {
		c.stuckWanted++
		if answers == 10 && state.Stuck() {
			c.stuckFlagged++
		}
	}
}

// next is the next problem, in another situation than the last where there is one.
func next(m *mind, level quiz.Level, system quiz.System, last string) *quiz.Problem {
	for tries := 0; ; tries++ {
		p, err := quiz.Make(m.task, quiz.NewCode(m.task.Name, level, system, m.random.Uint32(), quiz.DefaultLathe(system)))
		if err != nil {
			panic(err)
		}
		if last == "" || p.Values.Case() != last || tries == 12 {
			return p
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
	learners := learnersOfAKind
	if testing.Short() {
		learners /= 20
	}
	allFalse, allAnswers := 0, 0
	table := []string{"learner | answers | slips named | named rightly | found within 2 | false names | mastered | gate leaks"}
	cell := func(format string, x float64) string {
		if math.IsNaN(x) {
			return "-"
		}
		return fmt.Sprintf(format, x)
	}
	for i, k := range kinds {
		c := simulate(k, uint64(i+1), learners)
		precision, recall := percent(c.rightName, c.rightName+c.falseName), percent(c.found, c.holders)
		if k.holds {
			precision = percent(c.rightName, c.named)
		}
		falseNames, mastered := percent(c.falseName, c.answers), percent(c.mastered, c.judged)
		table = append(table, fmt.Sprintf("%s | %d | %d | %s | %s | %s | %s | %d of %d", k.name, c.answers, c.named,
			cell("%.2f %%", precision), cell("%.2f %%", recall), cell("%.3f %%", falseNames), cell("%.2f %%", mastered), c.gateMastered, c.gateJudged))
		if k.holds && (precision < 98 || recall < 95) {
			t.Errorf("%s: precision %.2f %%, recall %.2f %%", k.name, precision, recall)
		}
		allFalse, allAnswers = allFalse+c.falseName, allAnswers+c.answers
		if c.gateMastered > 0 && k.name != "unstable slip" { // half right, it shows the task on some days
			t.Errorf("%s: %d gate leaks in %d: %v", k.name, c.gateMastered, c.gateJudged, c.leaks)
		}
		if !k.knows && k.name != "unstable slip" && mastered > 2 {
			t.Errorf("%s: mastered %.2f %%", k.name, mastered)
		}
		if k.name == "knows all" && mastered < 95 {
			t.Errorf("%s: mastered only %.2f %%", k.name, mastered)
		}
		if c.stuckFlagged*100 < c.stuckWanted*95 {
			t.Errorf("%s: stuck flagged %d of %d", k.name, c.stuckFlagged, c.stuckWanted)
		}
	}
	if overall := percent(allFalse, allAnswers); overall > 1 {
		t.Errorf("%.3f %% false names over all", overall)
	} else {
		table = append(table, fmt.Sprintf("false names over all: %.3f %%", overall))
	}
	t.Log("\n" + strings.Join(table, "\n"))
}
