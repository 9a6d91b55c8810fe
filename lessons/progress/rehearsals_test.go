package progress_test

import (
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"scratchpass/lessons/progress"
	"scratchpass/lessons/record"
	"scratchpass/quiz/bench"
)

// rehearsal is one of a job, so many days after the first.
func rehearsal(job string, day int, v bench.Verdict, live bool, least, most float64, mistakes ...record.MistakeMade) record.Rehearsal {
	at := time.Date(2026, 11, 1+day, 20, 0, 0, 0, time.UTC)
	return record.Rehearsal{At: at, Begun: at.Add(-time.Hour), Job: job, Thread: "1-1/4-12 UNF-2B", Verdict: v, Mistakes: mistakes, Live: live,
		Room: record.Room{Passes: 9, Shortest: record.Way{Inches: least / 10, Seconds: least}, Speeds: []record.SpeedRoom{{RPM: 70, Passes: 9, Shortest: record.Way{Inches: least / 10, Seconds: least}, Longest: record.Way{Inches: most / 10, Seconds: most}}}}}
}

func mistakes(name string, times, takenBack int) record.MistakeMade {
	return record.MistakeMade{Name: name, Times: times, TakenBack: takenBack}
}

// Rehearsals of one job come to how many mistakes there were in each, which came back, and the
// room that passes by the clock left; jobs of one name with another text are other jobs.
func TestRehearsalsOfARecord(t *testing.T) {
	r, err := record.Open(filepath.Join(t.TempDir(), "r.db"), "Ada")
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	own := rehearsal("gland-nut", 4, bench.Fits, false, 1, 1)
	own.JobSum = record.SumOfJob("another gap")
	for _, x := range []record.Rehearsal{
		rehearsal("gland-nut", 0, bench.Scrap, false, 0.1, 9, mistakes("heavy", 4, 0), mistakes("no-oil", 1, 0), mistakes("hit-chuck", 0, 3)),
		rehearsal("adjusting-screw", 1, bench.Binds, false, 1, 1, mistakes("no-oil", 1, 0)),
		rehearsal("gland-nut", 2, bench.Fits, true, 0.9, 1.8, mistakes("heavy", 2, 0), mistakes("chuck-key", 1, 0)),
		rehearsal("gland-nut", 3, bench.Fits, true, 1.1, 1.6, mistakes("heavy", 1, 0), mistakes("no-oil", 0, 1)),
		own,
	} {
		if err := r.FinishRehearsal(x); err != nil {
			t.Fatal(err)
		}
	}
	if err := r.BeginRehearsal(record.Begun{Job: "lock-ring", Thread: "M20x2.5-6H", At: time.Date(2026, 11, 9, 20, 0, 0, 0, time.UTC)}); err != nil {
		t.Fatal(err)
	}
	all, err := progress.RehearsalsOf(r)
	if err != nil {
		t.Fatal(err)
	}
	want := []progress.Rehearsed{
		{Job: "gland-nut", JobSum: own.JobSum, Thread: "1-1/4-12 UNF-2B", Times: 1, Mistakes: []int{0}, Again: []progress.MadeAgain{}, Faultless: 1, Verdict: bench.Fits, Date: "2026-11-05", Room: []progress.RoomAt{}},
		{Job: "gland-nut", Thread: "1-1/4-12 UNF-2B", Times: 3, Mistakes: []int{8, 3, 2}, Again: []progress.MadeAgain{{Mistake: "heavy", Times: 3}, {Mistake: "no-oil", Times: 2}}, Verdict: bench.Fits, Date: "2026-11-04",
			Room: []progress.RoomAt{{RPM: 70, Passes: 18, Most: record.Way{Inches: 0.18, Seconds: 1.8}, Least: record.Way{Inches: 0.09, Seconds: 0.9}}}},
		{Job: "adjusting-screw", Thread: "1-1/4-12 UNF-2B", Times: 1, Mistakes: []int{1}, Again: []progress.MadeAgain{}, Verdict: bench.Binds, Date: "2026-11-02", Room: []progress.RoomAt{}},
	}
	if runs := all.Done[1].Runs; len(runs) != 3 || runs[0].Verdict != bench.Scrap || runs[0].Back != nil || !reflect.DeepEqual(runs[1].Back, []string{"heavy"}) || runs[2].Mistakes != 2 || runs[1].Closest.Seconds != 0.9 {
		t.Errorf("%+v", runs)
	}
	sums := slices.Clone(all.Done)
	for i := range sums {
		sums[i].Runs = nil
	}
	if !reflect.DeepEqual(sums, want) {
		t.Errorf("%+v\nwant %+v", all.Done, want)
	}
	if len(all.Begun) != 1 || all.Begun[0].Job != "lock-ring" || len(all.Faultless()) != 1 {
		t.Errorf("%+v", all)
	}
	golden(t, "rehearsals-gland-nut", printed(t, all.OfJob("gland-nut").Page("gland-nut", speaker(t))))
	golden(t, "rehearsals-begun", printed(t, all.OfJob("lock-ring").Page("lock-ring", speaker(t))))
	golden(t, "rehearsals-none", printed(t, all.OfJob("pump-stud").Page("pump-stud", speaker(t))))
	ready := progress.Ready{Learner: "Ada", Date: now, Jobs: all.Faultless()}
	if got := printed(t, ready.Whole(speaker(t))); !strings.Contains(got, "Whole jobs rehearsed without a mistake: Gland nut") {
		t.Error(got)
	}
}
