package progress_test

import (
	"slices"
	"strings"
	"testing"

	"scratchpass/content"
	"scratchpass/lessons/course"
	"scratchpass/lessons/progress"
	"scratchpass/lessons/schedule"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
)

// full is a record in which everything that a page can tell is there, with the longest
// titles and sentences.
func full(t testing.TB) progress.Progress {
	t.Helper()
	w := speaker(t)
	p := progress.Progress{Learner: "Ada", Answers: 491, Minutes: 106}
	for _, s := range problem.Stages {
		p.Stages = append(p.Stages, progress.StageProgress{Stage: s, Shown: 3, Begun: 7, Of: len(tasks.Set{}.OfStage(s))})
	}
	names := tasks.Names()
	slices.SortFunc(names, func(a, b string) int { return len(w.Title(b)) - len(w.Title(a)) })
	for i, name := range names {
		p.Begun = append(p.Begun, progress.BegunTask{Task: name, Run: i % 3 / 2})
		for slip := range wordsOf(t, name).Slips {
			p.Slips = append(p.Slips, progress.SlipCount{Task: name, Slip: slip, Times: 12})
		}
	}
	slices.SortStableFunc(p.Slips, func(a, b progress.SlipCount) int { return len(w.Slip(b.Task, b.Slip)) - len(w.Slip(a.Task, a.Slip)) })
	p.Slips = p.Slips[len(p.Slips)/10:] // nine in ten sentences are shorter than these
	p.Stuck, p.SureWrong, p.Due = names[:12], names[:12], names[:12]
	p.Rehearsals.Begun = []progress.BegunJob{{Job: "adjuster-sleeve", Thread: "3/4-10 UNC-2B", Date: "2026-11-02"}}
	p.Done = []progress.Rehearsed{
		{Job: "/home/a/very/long/folder/of-jobs.yaml", JobSum: "0123456789abcdef", Thread: "1-1/4-12 UNF-2B", Times: 7, Mistakes: []int{22, 21, 20, 19, 18, 17, 16}, Verdict: "scrap", Date: "2026-11-02"},
		{Job: "gland-nut", Thread: "1-1/4-12 UNF-2B", Times: 2, Mistakes: []int{8, 0}, Faultless: 1, Verdict: "fits", Date: "2026-11-01"},
	}
	p.Days = []progress.DayProgress{{Date: "2026-11-01", Answers: 10, Right: 4}, {Date: "2026-11-02", Answers: 10, Right: 8}}
	return p
}

func wordsOf(t testing.TB, task string) content.TaskWords {
	t.Helper()
	words, err := content.Shipped().Task(task)
	if err != nil {
		t.Fatal(err)
	}
	return words
}

// The page fits one screen however much there is to tell; the whole page has every list,
// and says of no task that nothing in a row was right.
func TestProgressPage(t *testing.T) {
	w := speaker(t)
	lesson, err := content.Shipped().Lesson("leaving-the-compound")
	if err != nil {
		t.Fatal(err)
	}
	plan := course.Plan{Due: tasks.Names(), Minutes: 90, GoOn: &course.LessonAt{Lesson: lesson, State: course.Begun, Part: 2}}
	p := full(t)
	for name, change := range map[string]func(*progress.Progress){
		"everything": func(*progress.Progress) {},
		"not sure":   func(p *progress.Progress) { p.SureWrong = nil },
		"not stuck":  func(p *progress.Progress) { p.SureWrong, p.Stuck = nil, nil },
	} {
		one := p
		change(&one)
		fits(t, name, printed(t, one.Page(w, plan, now)))
	}
	short, whole := printed(t, p.Page(w, plan, now)), printed(t, p.Whole(w, plan, now))
	for _, want := range []string{"Shown means right so often in a row", "Safety: 3 of ", "What keeps going wrong:", "Begun, not shown: ", "and 11 more."} {
		if !strings.Contains(short, want) {
			t.Errorf("no %q in\n%s", want, short)
		}
	}
	if strings.Contains(whole, "0 right in a row") || strings.Contains(whole, "and 11 more") || !strings.Contains(whole, "no run of right answers yet: ") || len(whole) < 5*len(short) {
		t.Error(whole)
	}
}

// What is missing comes first and fits one screen, with how many evenings it takes; the
// whole page has it all and a line to sign.
func TestReadinessPage(t *testing.T) {
	w := speaker(t)
	names := tasks.Names()
	slices.SortFunc(names, func(a, b string) int { return len(w.Title(b)) - len(w.Title(a)) })
	r := progress.Ready{Learner: "Ada", Answers: 491, Date: now,
		Readiness: schedule.Readiness{SureWrong: names[:9], SafetyCriticalOpen: names[:9], CoreOpen: names, NotHeld: names[:9], SafetyCriticalShown: names[:9], CoreShown: names[:9]},
		Jobs:      []progress.Rehearsed{{Job: "adjuster-sleeve", Faultless: 1}, {Job: "gland-nut", Faultless: 2}},
		Pace:      progress.Pace{Known: true, Shown: 12, Days: 4, Missing: 27, Evenings: 10}}
	short, whole := printed(t, r.Page(w)), printed(t, r.Whole(w))
	fits(t, "readiness", short)
	if at := strings.Index(short, "At your pace about 10 more evenings: in the last 60 days you showed 12 tasks on\n4 days, 3.0 a day."); at < 0 || at > strings.Index(short, "Shown and held: 9 that can hurt someone") {
		t.Error(short)
	}
	for _, name := range names {
		if !strings.Contains(strings.Join(strings.Fields(whole), " "), w.Title(name)) {
			t.Errorf("%s is not on the whole page", name)
		}
	}
	if strings.Contains(short, "Instructor: __") || !strings.Contains(whole, "Instructor: __") {
		t.Error("the whole page is the one to sign")
	}
	r.Pace = progress.Pace{}
	if short := printed(t, r.Page(w)); !strings.Contains(short, "can't tell yet. That takes 30 answers on 3 days, and 3\ntasks shown.") {
		t.Error(short)
	}
	r.Ask = true
	if short := printed(t, r.Page(w)); strings.Contains(short, "evenings") || !strings.Contains(short, "READY TO ASK") {
		t.Error(short)
	}
}
