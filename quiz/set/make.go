package set

import (
	"fmt"
	"maps"
	"slices"
	"strconv"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/wording"
)

// Maker makes the problems of a set.
type Maker struct {
	Blueprint *Blueprint

	secret Secret
	id     []byte // what the numbers hang on besides the secret and the apprentice
	places []place
	words  map[string]*wording.Words
	sides  map[string]side // by the id; who is not there draws from all answers
}

// place is one question of the set, the same for all apprentices but for its numbers.
type place struct {
	slot   int
	nth    int      // of the slot's questions
	tasks  []string // one, or those of a mixed slot
	shapes map[string]shape
	halves map[string]halves
	takes  map[string]int // input -> place whose answer it takes
}

// Item is one question of one apprentice.
type Item struct {
	Number  int // as printed, from 1
	Place   int // in the blueprint's order, from 0
	Slot    string
	Points  float64
	Problem *problem.Problem
	Words   *wording.Words
	From    map[string]int // input -> place whose answer it takes
}

// NewMaker prepares a set: its words, and what its problems are to be like.
func NewMaker(b *Blueprint, secret Secret, lib *content.Library) (*Maker, error) {
	m := &Maker{Blueprint: b, secret: secret, id: b.identity(), words: map[string]*wording.Words{}}
	for i, s := range b.Slots {
		for n := range s.Count {
			p := place{slot: i, nth: n, tasks: b.choices(s), shapes: map[string]shape{}, halves: map[string]halves{}, takes: map[string]int{}}
			if !s.Mix {
				p.tasks = []string{m.taskFor(i, n)}
			}
			for input, from := range s.Takes {
				p.takes[input] = slices.IndexFunc(m.places, func(o place) bool { return b.Slots[o.slot].Name == from })
			}
			m.places = append(m.places, p)
		}
	}
	for i := range m.places {
		for _, name := range m.places[i].tasks {
			if m.words[name] == nil {
				w, err := wording.Load(lib, name)
				if err != nil {
					return nil, err
				}
				m.words[name] = w
			}
			s, h, err := m.usual(i, name)
			if err != nil && !b.Rules.Unlike {
				return nil, err
			}
			m.places[i].shapes[name], m.places[i].halves[name] = s, h
		}
	}
	return m, nil
}

// taskFor is the task of the n-th question of a slot: each of the slot's tasks in turn,
// in an order that hangs on the set.
func (m *Maker) taskFor(slot, n int) string {
	choices := slices.Clone(m.Blueprint.choices(m.Blueprint.Slots[slot]))
	if m.Blueprint.Slots[slot].Stage == "" {
		return choices[n%len(choices)]
	}
	shuffle(m, choices, "task", strconv.Itoa(slot))
	return choices[n%len(choices)]
}

// draw makes the problem of one try. keys are the answers so far, by place; nil where
// the shape is looked for and any answer will do.
func (m *Maker) draw(p int, task, who string, try int, keys map[int]float64, numbers []int) (*problem.Problem, error) {
	t, err := m.Blueprint.of.Find(task)
	if err != nil {
		return nil, err
	}
	s := m.Blueprint.Slots[m.places[p].slot]
	seed := m.seed(who, p, try)
	problem, err := problem.New(t, problem.NewCode(t.Name, problem.Level(s.Level), m.Blueprint.unitsOf(s), seed, m.Blueprint.latheOf(s)))
	if err != nil || len(m.places[p].takes) == 0 {
		return problem, err
	}
	if keys == nil { // what it would be after the usual answers
		keys = map[int]float64{}
		for _, from := range m.places[p].takes {
			before, err := m.draw(from, m.places[from].tasks[0], who, try, nil, numbers)
			if err != nil {
				return nil, err
			}
			keys[from] = printed(before)
		}
	}
	return m.follow(p, problem, keys, numbers)
}

// follow takes over the answers that a question takes.
func (m *Maker) follow(p int, own *problem.Problem, keys map[int]float64, numbers []int) (*problem.Problem, error) {
	for _, input := range slices.Sorted(maps.Keys(m.places[p].takes)) {
		from := m.places[p].takes[input]
		told := content.FillPairs(m.words[own.Task.Name].Phrases["your-answer-to"], "n", numbers[from])
		next, err := own.WithInput(input, keys[from], told)
		if err != nil {
			return nil, err
		}
		own = next
	}
	if own.Ambiguous() {
		return nil, fmt.Errorf("%s would be ambiguous after that answer", own.Task.Name)
	}
	return own, nil
}

// printed is the key as it is printed: what someone carries on to the next question.
func printed(p *problem.Problem) float64 {
	u := p.Expected.Unit
	return calc.Round(p.Expected.Key.X*u.Factor, u.Places) / u.Factor
}

// mostTries is how often other numbers are drawn for one apprentice. After it a problem
// that is not quite alike, or gives a figure that another asks for, is taken.
const mostTries = 200

// Items makes the questions of one apprentice, in the order of their sheet.
func (m *Maker) Items(who string) ([]Item, error) {
	items := make([]Item, len(m.places))
	keys := map[int]float64{}
	before := sheetFigures{keys: map[string]bool{}, given: map[string]bool{}}
	asked := map[string]bool{} // tasks that are on the sheet
	for _, p := range m.places {
		if len(p.tasks) == 1 {
			asked[p.tasks[0]] = true
		}
	}
	numbers := m.inOrder()
	if m.Blueprint.Rules.Shuffle {
		numbers = m.shuffled(who)
	}
	for i, p := range m.places {
		task := p.tasks[0]
		if len(p.tasks) > 1 {
			task = m.mixed(p, who, asked)
		}
		asked[task] = true
		own, its, err := m.alike(i, task, who, keys, numbers, before)
		if err != nil {
			return nil, fmt.Errorf("question %d: %w", numbers[i], err)
		}
		if own.Task.Kind.Takeable() {
			keys[i] = printed(own)
		}
		before.add(its)
		s := m.Blueprint.Slots[p.slot]
		items[numbers[i]-1] = Item{Number: numbers[i], Place: i, Slot: s.Name, Points: s.Points, Problem: own, Words: m.words[task], From: p.takes}
	}
	return items, nil
}

// mixed is the task of a question whose slot is mixed: one that is not on the sheet yet,
// where there is one left.
func (m *Maker) mixed(p place, who string, asked map[string]bool) string {
	all := slices.Clone(p.tasks)
	shuffle(m, all, "mix", who, strconv.Itoa(p.slot))
	for _, task := range all {
		if !asked[task] {
			return task
		}
	}
	return all[p.nth%len(all)]
}

// alike draws until a problem has the shape of its place, is of the half of its seat, and
// tells nothing of the questions before it, nor they of it.
func (m *Maker) alike(p int, task, who string, keys map[int]float64, numbers []int, before sheetFigures) (drawn *problem.Problem, its figures, err error) {
	var spare *problem.Problem
	best := -1 // how well the spare one fits
	var last error
	side, halves := m.sides[who], m.places[p].halves[task]
	for try := range mostTries {
		drawn, err := m.draw(p, task, who, try, keys, numbers)
		if err != nil {
			last = err
			continue
		}
		alike := m.Blueprint.Rules.Unlike || shapeOf(drawn) == m.places[p].shapes[task]
		beside := halves.holds(side, drawn)
		if alike && beside {
			if its := figuresOf(m.words[task], drawn); !before.tell(its) {
				return drawn, its, nil
			}
		}
		fits := 0
		if side != anySide && beside { // rather unlike than a neighbour's number
			fits = 2
			if alike {
				fits = 3
			}
		}
		if fits > best {
			spare, best = drawn, fits
		}
	}
	if spare != nil {
		return spare, figuresOf(m.words[task], spare), nil
	}
	return nil, figures{}, fmt.Errorf("%s: no problem can be made here: %w", task, last)
}

// inOrder numbers the places as the blueprint has them.
func (m *Maker) inOrder() []int {
	numbers := make([]int, len(m.places))
	for i := range numbers {
		numbers[i] = i + 1
	}
	return numbers
}

// shuffled numbers the places in an apprentice's own order. Questions that start from
// each other's answers stay together, in their order.
func (m *Maker) shuffled(who string) []int {
	var chains [][]int
	in := make([]int, len(m.places)) // the chain of each place
	for i, p := range m.places {
		in[i] = len(chains)
		chains = append(chains, []int{i})
		for _, from := range p.takes { // the chains of all that it starts from become one with it
			other := in[from]
			if other == in[i] {
				continue
			}
			for _, place := range chains[other] {
				in[place] = in[i]
			}
			chains[in[i]] = append(chains[in[i]], chains[other]...)
			chains[other] = nil
		}
		slices.Sort(chains[in[i]])
	}
	shuffle(m, chains, "order", who)
	numbers := make([]int, len(m.places))
	n := 0
	for _, chain := range chains {
		for _, place := range chain {
			n++
			numbers[place] = n
		}
	}
	return numbers
}
