package set

import (
	"cmp"
	"maps"
	"slices"
	"strings"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/quiz/answer"
)

// Summary gathers results one by one.
type Summary struct {
	maker  *Maker
	lib    *content.Library
	report Report
	tasks  map[string]*TaskReport
	slips  map[string]map[string]int
	earned []float64   // by place, over the answers that are marked
	marked []int       // by place, how many those are
	open   []int       // by place, answers left to the instructor
	points [][]float64 // by place, of the sheets on which nothing is open
	total  []float64   // of the same
}

// NewSummary begins a report.
func NewSummary(m *Maker, lib *content.Library) *Summary {
	return &Summary{maker: m, lib: lib, tasks: map[string]*TaskReport{}, slips: map[string]map[string]int{}, points: make([][]float64, len(m.places)),
		earned: make([]float64, len(m.places)), marked: make([]int, len(m.places)), open: make([]int, len(m.places)),
		report: Report{Set: m.Blueprint.Set, Title: m.Blueprint.Title, Of: m.Blueprint.Points(), Statistics: leastForStatistics,
			Sure: []SureWrong{}, Open: []OddAnswer{}, Strange: []OddAnswer{}, Missing: []string{}}}
}

// label is how an apprentice is called: with the code of the sheet, which finds the paper
// where two have one name, or one that can't be printed.
func (r Result) label() string { return cmp.Or(r.Name, r.ID) + " (" + r.Code + ")" }

// mostOdd is how many answers to look at by hand are listed.
const mostOdd = 200

// Add takes one apprentice's result.
func (s *Summary) Add(r Result) {
	if !r.Handed && r.Form != "" && r.Name == "" {
		return // a form that nobody had
	}
	s.report.Class++
	if !r.Handed {
		s.report.Missing = append(s.report.Missing, r.label())
		return
	}
	s.report.Handed++
	if r.Open == 0 { // a total with open points in it tells nothing yet
		s.total = append(s.total, r.Points)
	}
	for i, it := range r.Items {
		if it.Verdict == NotAsked {
			continue
		}
		if r.Open == 0 {
			s.points[it.place] = append(s.points[it.place], it.Points)
		}
		if undecided(it.Verdict) {
			s.open[it.place]++
			s.report.Waiting++
		} else {
			s.earned[it.place] += it.Points
			s.marked[it.place]++
		}
		s.item(r, it, asked{it.Number, r.items[i].given(it), r.items[i].Words.KeyText(r.items[i].Problem)})
	}
}

// given is what was answered: of options their words.
func (it Item) given(res ItemResult) string {
	if it.Problem.Task.Kind.Worded() && res.mark.Verdict != answer.Unread && res.mark.Verdict != "" {
		return it.Words.Shown(it.Problem, res.mark.Response)
	}
	return res.Given
}

func (s *Summary) item(r Result, it ItemResult, a asked) {
	t := s.tasks[it.Task]
	if t == nil {
		t = &TaskReport{Task: it.Task, Title: s.maker.words[it.Task].Task.Title, Gate: it.Gate}
		s.tasks[it.Task], s.slips[it.Task] = t, map[string]int{}
	}
	odd := OddAnswer{r.label(), it.Task, t.Title, it.Code, it.Probably, a}
	if it.Verdict == Blank {
		t.Blank++
		return
	}
	if undecided(it.Verdict) {
		t.Open++
		if len(s.report.Open) < mostOdd {
			s.report.Open = append(s.report.Open, odd)
		}
		return
	}
	t.N++
	s.count(t, it, odd)
	wrong := !correct(it.Verdict) && (it.Verdict != Decided || it.Points < it.Of)
	partly := it.Verdict != answer.KnownError && it.Verdict != Decided && it.Slip != ""
	if it.Certainty == answer.Bet && wrong && !partly { // a wrong unit too: it ruins the part
		s.report.Sure = append(s.report.Sure, SureWrong{it.Task, t.Title, it.Gate, r.label(), a, it.Slip})
	}
}

// count counts one answer that is marked.
func (s *Summary) count(t *TaskReport, it ItemResult, odd OddAnswer) {
	switch it.Verdict {
	case Decided:
		t.Decided++
		s.report.Decided++
		switch right, partly := it.decidedShare(); {
		case right:
			t.Right++
		case partly:
			t.Partly++
		default:
			t.Wrong++
		}
	case answer.Right:
		t.Right++
	case answer.Convention:
		t.Convention++
	case Carried:
		t.Carried++
	case answer.WrongUnit:
		t.Unit++
	case answer.KnownError:
		t.Slip++
		s.slips[it.Task][it.Slip]++
	default:
		if it.Slip != "" { // a part of what is right, and nothing wrong
			t.Partly++
			s.slips[it.Task][it.Slip]++
			return
		}
		t.Wrong++
		if len(s.report.Strange) < mostOdd {
			s.report.Strange = append(s.report.Strange, odd)
		}
	}
}

// correct reports whether a verdict earns all points.
func correct(v answer.Verdict) bool {
	return v == answer.Right || v == answer.Convention || v == Carried
}

// Report ends the gathering.
func (s *Summary) Report() Report {
	r := s.report
	for place, n := range s.marked {
		if n > 0 {
			r.Mean += s.earned[place] / float64(n)
			r.MeanOf += s.maker.Blueprint.Slots[s.maker.places[place].slot].Points
		}
	}
	r.Mean = calc.Round(r.Mean, 2)
	asked := slices.DeleteFunc(slices.Clone(s.points), func(p []float64) bool { return len(p) < len(s.total) })
	if a, ok := alpha(asked, s.total); ok {
		a = calc.Round(a, 2)
		r.Alpha = &a
	}
	// What can hurt someone first, then by task.
	slices.SortStableFunc(r.Sure, func(a, b SureWrong) int {
		switch {
		case a.Gate && !b.Gate:
			return -1
		case b.Gate && !a.Gate:
			return 1
		}
		return strings.Compare(a.Task, b.Task)
	})
	where := Taught(s.lib)
	for _, name := range slices.Sorted(maps.Keys(s.tasks)) {
		t := *s.tasks[name]
		right := t.Right + t.Convention + t.Carried
		if t.N > 0 {
			t.Share = calc.Round(float64(right)/float64(t.N), 3)
		}
		low, high := Wilson(right, t.N)
		t.Low, t.High = calc.Round(low, 3), calc.Round(high, 3)
		t.Slips = s.errorCounts(name)
		t.Lesson, t.Part = where[name].Lesson, where[name].Part
		r.Tasks = append(r.Tasks, t)
	}
	// What went worst stands first.
	slices.SortStableFunc(r.Tasks, func(a, b TaskReport) int { return cmp.Compare(a.Share, b.Share) })
	for i, p := range s.maker.places {
		item := ItemReport{Number: i + 1, Tasks: p.tasks, N: s.marked[i], Open: s.open[i]}
		for _, task := range p.tasks {
			item.Titles = append(item.Titles, s.maker.words[task].Task.Title)
		}
		worth := s.maker.Blueprint.Slots[p.slot].Points
		if item.N > 0 {
			item.Share = calc.Round(s.earned[i]/worth/float64(item.N), 3)
		}
		if d, ok := discrimination(s.points[i], s.total); ok {
			d = calc.Round(d, 2)
			item.Discrimination = &d
		}
		r.Items = append(r.Items, item)
	}
	if r.Tasks == nil {
		r.Tasks = []TaskReport{}
	}
	return r
}

// errorCounts lists the common errors of a task, the commonest first.
func (s *Summary) errorCounts(task string) []SlipCount {
	counts := []SlipCount{}
	for _, name := range slices.Sorted(maps.Keys(s.slips[task])) {
		says := s.maker.words[task].Task.Slips[name]
		if says == "" || strings.Contains(says, "${") {
			says = errorName(name)
		}
		counts = append(counts, SlipCount{name, says, s.slips[task][name]})
	}
	slices.SortStableFunc(counts, func(a, b SlipCount) int { return b.Times - a.Times })
	return counts
}

// TaughtIn is a lesson, by its name, and one of its parts, by its title.
type TaughtIn struct{ Lesson, Part string }

// Taught tells for each task the first lesson and part that teach it, for a short look
// back at it. Tasks of practice alone are not in it.
func Taught(lib *content.Library) map[string]TaughtIn {
	where := map[string]TaughtIn{}
	for _, name := range lib.LessonNames() {
		l, err := lib.Lesson(name)
		if err != nil {
			continue
		}
		for _, p := range l.Parts {
			if _, before := where[p.Task]; !before {
				where[p.Task] = TaughtIn{name, p.Title}
			}
		}
	}
	return where
}
