package schedule_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"scratchpass/lessons/mastery"
	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
	"scratchpass/quiz/problem"
)

// now is the time at which the tests below ask what comes next; today and yesterday are
// the days as the record numbers them.
var now = time.Date(2026, 1, 20, 18, 0, 0, 0, time.UTC)

const (
	today     = 20473
	yesterday = today - 1
)

func TestReasonOfOneTask(t *testing.T) {
	const none = schedule.Reason("")
	others := "o p q r s" // enough of them since it was asked
	for _, row := range []struct {
		of       record.Summary
		critical bool
		recent   string
		want     schedule.Reason
		why      string
	}{
		{record.Summary{}, false, others, schedule.NewTask, "never asked"},
		{record.Summary{}, true, others, schedule.NewTask, "never asked, and can hurt someone: no difference yet"},

		{answered(1, 0), false, "t", schedule.IntroBlock, "asked once, wrong: again at once"},
		{answered(1, 1), false, "t", schedule.IntroBlock, "asked once, right: may have been luck"},
		{answered(2, 1), false, "t t", schedule.IntroBlock, "asked twice, right now: a third time"},
		{answered(2, 2), false, "t t", none, "two right in a row know it already: others first"},
		{answered(3, 0), false, "t t t", none, "the block is over: others first"},
		{answered(1, 1), false, "t " + others, schedule.InProgress, "others came between: the block is not taken up again"},
		{answered(1, 1), false, "o t p", none, "nor does it come again so soon"},

		{answered(4, 2), false, others, schedule.InProgress, "begun, not shown"},
		{answered(4, 2), true, others, schedule.InProgress, "no whole run yet: another day would not help"},
		{answered(9, 0), false, others, schedule.InProgress, "nine wrong: not yet stuck"},
		{stuck(time.Hour), false, others, none, "stuck: the instructor should come in between"},
		{stuck(20*time.Hour - 1), false, others, none, "stuck a moment less than twenty hours ago"},
		{stuck(20 * time.Hour), false, others, schedule.InProgress, "a night has passed since"},

		{shown(0), false, others, schedule.IsDue, "due now"},
		{shown(0), true, others, schedule.SafetyCriticalDue, "due now, and can hurt someone"},
		{shown(-240 * time.Hour), false, others, schedule.IsDue, "overdue"},
		{shown(1), false, others, none, "due in a moment is not due"},
		{shown(1), true, others, none, "even where it can hurt someone"},

		{shownOn(yesterday), true, others, schedule.AnotherDay, "shown yesterday: the second day can be today"},
		{shownOn(today), true, others, none, "shown today: that is enough for today"},
		{shownOn(yesterday), false, others, none, "no longer safety-critical: nothing is missing"},
		{alike(4, yesterday), false, others, none, "one mistake made four times wants two dates between"},
		{alike(4, yesterday-1), false, others, schedule.AnotherDay, "which lie between"},
		{alike(2, yesterday), false, others, schedule.AnotherDay, "made twice it wants one"},
		{takenBack(), false, others, schedule.InProgress, "shown, and taken back by a mistake"},
		{notHeld(72*time.Hour - time.Second), false, others, none, "shown not three days ago"},
		{notHeld(72 * time.Hour), false, others, schedule.IsDue, "shown three days ago, and not held yet"},
		{dueNow(notHeld(time.Hour)), false, others, schedule.IsDue, "shown just now, and its card says that it is due"},
		{wrongSince(72*time.Hour - time.Second), false, others, none, "held, and wrong not three days ago"},
		{wrongSince(72 * time.Hour), false, others, schedule.IsDue, "three days ago"},
		{notHeld(72 * time.Hour), true, others, schedule.SafetyCriticalDue, "all the more where it can hurt someone"},
	} {
		items := []schedule.Item{{Task: "t", SafetyCritical: row.critical, Rule: mastery.Rule{SafetyCritical: row.critical}}}
		got, ok := schedule.Next(items, map[string]record.Summary{"t": row.of}, strings.Fields(row.recent), now)
		if got.Reason != row.want || ok != (row.want != none) {
			t.Errorf("%q %v: %s", got.Reason, ok, row.why)
		}
	}
}

// What counts as today is the day where the learner is.
func TestAnotherDayIsOneOfTheLearner(t *testing.T) {
	items := []schedule.Item{{Task: "t", SafetyCritical: true, Rule: mastery.Rule{SafetyCritical: true}}}
	early := time.Date(2026, 1, 20, 0, 30, 0, 0, time.FixedZone("", 10*3600)) // still yesterday in Greenwich
	s := shownOn(yesterday)
	s.Shown = mastery.MomentOf(early.Add(-9 * time.Hour))
	of := map[string]record.Summary{"t": s}
	if c, _ := schedule.Next(items, of, nil, early); c.Reason != schedule.AnotherDay {
		t.Errorf("%q half an hour after midnight", c.Reason)
	}
	if c, _ := schedule.Next(items, of, nil, early.Add(-time.Hour)); c.Reason == schedule.AnotherDay {
		t.Errorf("%q half an hour before midnight", c.Reason)
	}
	s.Shown = mastery.MomentOf(early.Add(-time.Hour))
	of["t"] = s
	if c, _ := schedule.Next(items, of, nil, early); c.Reason == schedule.AnotherDay {
		t.Errorf("%q an hour after it was shown, though midnight lies between", c.Reason)
	}
}

// The reasons are weighed in their order, whatever the order of the course is.
func TestMostPressingFirst(t *testing.T) {
	of := map[string]record.Summary{
		"intro": answered(1, 0), "gate-due": shown(0), "another-day": shownOn(yesterday), "due": shown(0), "in-progress": answered(5, 1), "new": {},
	}
	order := []string{"intro", "gate-due", "another-day", "due", "in-progress", "new"}
	for i, want := range order {
		for _, reversed := range []bool{false, true} {
			var items []schedule.Item
			for _, name := range order[i:] {
				critical := name == "gate-due" || name == "another-day"
				items = append(items, schedule.Item{Task: name, SafetyCritical: critical, Rule: mastery.Rule{SafetyCritical: critical}})
			}
			if reversed {
				slices.Reverse(items)
			}
			if c, ok := schedule.Next(items, of, []string{"intro"}, now); c.Item.Task != want || c.Reason != schedule.Reason(want) || !ok {
				t.Errorf("of %v: %s because %s", order[i:], c.Item.Task, c.Reason)
			}
		}
	}
}

// items reads "a:reading b:shape" as tasks in their stages.
func items(text string) []schedule.Item {
	var all []schedule.Item
	for _, word := range strings.Fields(text) {
		name, stage, _ := strings.Cut(word, ":")
		all = append(all, schedule.Item{Task: name, Stage: problem.Stage(stage)})
	}
	return all
}

func TestWhichOfOneUrgency(t *testing.T) {
	begun := answered(5, 1)
	for _, row := range []struct {
		items  string
		of     map[string]record.Summary // those not named are begun
		recent string
		want   string
		why    string
	}{
		{"a b c", nil, "", "a", "the order of the course"},
		{"a b c", map[string]record.Summary{"a": {}, "b": {}, "c": {}}, "", "a", "new tasks in the order of the course"},
		{"a b c", nil, "a", "b", "not one twice running"},
		{"a b c", nil, "a b", "c", "nor one of the last two"},
		{"a", nil, "a b c d", "", "three others since: a pause first"},
		{"a", nil, "a b c d e", "", "four others since: still too soon"},
		{"a", nil, "a b c d e f", "a", "five others since"},
		{"a", nil, "a b a b c d e", "", "the last time counts, not the first"},
		{"a b c", nil, "b a o p q r s", "c", "those not asked in this session come before those that were"},
		{"a b", nil, "b a o p q r s", "b", "of those that were, the one asked longest ago"},
		{"a b", nil, "a b a o p q r s", "b", "where the last time counts, not the first"},

		{"l:reading a:reading b:shape", nil, "l", "b", "another stage than the last"},
		{"l:reading a:reading b:reading", nil, "l", "a", "there is no other stage"},
		{"l:reading a:reading b:shape", map[string]record.Summary{"a": shown(0)}, "l", "a", "another stage, but less pressing"},
		{"l:reading a:reading b:shape", map[string]record.Summary{"a": {}, "b": {}}, "l", "a", "the course keeps its order"},
		{"l:reading a:reading b:shape", map[string]record.Summary{"l": answered(1, 0), "a": shown(0), "b": shown(0)}, "l", "l", "an intro block is not broken up"},
		{"a:reading b:shape", nil, "gone", "a", "the last task is none of these: no stage to avoid"},
	} {
		of := map[string]record.Summary{}
		for _, it := range items(row.items) {
			of[it.Task] = begun
		}
		for task, s := range row.of {
			of[task] = s
		}
		c, ok := schedule.Next(items(row.items), of, strings.Fields(row.recent), now)
		if c.Item.Task != row.want || ok != (row.want != "") {
			t.Errorf("of %s after %q: %q (%s) %v, want %q: %s", row.items, row.recent, c.Item.Task, c.Reason, ok, row.want, row.why)
		}
	}
}

// A session goes round all tasks. None comes again too soon, and a stage that was just
// asked waits, even if one of its tasks was asked longer ago than that of another stage.
func TestSessionOfTasksInProgress(t *testing.T) {
	all := items("a:reading b:reading c:shape d:shape e:setup f:setup g:setup")
	of := map[string]record.Summary{}
	for _, it := range all {
		of[it.Task] = answered(5, 1)
	}
	var recent []string
	for range 14 {
		c, ok := schedule.Next(all, of, recent, now)
		if !ok {
			t.Fatalf("nothing comes after %v", recent)
		}
		recent = append(recent, c.Item.Task)
	}
	if got := strings.Join(recent, " "); got != "a c b d e f a g c b d e a f" {
		t.Error(got)
	}
	// Five tasks are not enough for five others between: the session ends.
	recent = nil
	for {
		c, ok := schedule.Next(all[:5], of, recent, now)
		if !ok {
			break
		}
		if recent = append(recent, c.Item.Task); len(recent) > 5 {
			break
		}
	}
	if got := strings.Join(recent, " "); got != "a c b d e" {
		t.Error(got)
	}
}

func TestNothingIsDue(t *testing.T) {
	seen := func(days int) record.Summary {
		s := shown(time.Hour)
		s.Last = now.AddDate(0, 0, -days)
		return s
	}
	for _, row := range []struct {
		items string
		of    map[string]record.Summary
		want  string
		why   string
	}{
		{"", nil, "", "there are no tasks"},
		{"a b c", map[string]record.Summary{"a": seen(3), "b": seen(9), "c": seen(5)}, "b", "the one seen longest ago"},
		{"a b c", map[string]record.Summary{"a": seen(9), "b": seen(9), "c": seen(5)}, "a", "of two, the first of the course"},
		{"a b c", map[string]record.Summary{"a": seen(3), "b": seen(4), "c": seen(5)}, "c", "also if it is the last"},
		{"a b", map[string]record.Summary{"a": stuck(time.Hour), "b": seen(0)}, "b", "one that rests because someone is stuck is not taken for it"},
		{"a", map[string]record.Summary{"a": stuck(time.Hour)}, "", "all rest: a pause, and the instructor, first"},
	} {
		c, ok := schedule.Next(items(row.items), row.of, nil, now)
		if c.Item.Task != row.want || ok != (row.want != "") || ok && c.Reason != schedule.AllDone {
			t.Errorf("%q (%s) %v: %s", c.Item.Task, c.Reason, ok, row.why)
		}
		if len(row.of) > 0 {
			if c, ok := schedule.Next(items(row.items), row.of, []string{"o"}, now); ok {
				t.Errorf("%q (%s) though something was practised: that is enough for today", c.Item.Task, c.Reason)
			}
		}
	}
}

func TestDue(t *testing.T) {
	never := shown(0)
	never.Mastered = false
	of := map[string]record.Summary{
		"later": shown(time.Second), "now": shown(0), "earlier": shown(-time.Second), "not-shown": never,
	}
	for task, want := range map[string]bool{"later": false, "now": true, "earlier": true, "not-shown": false, "not-begun": false} {
		if got := schedule.Due(of[task], now); got != want {
			t.Errorf("%s: due %v", task, got)
		}
	}
	all := items("not-begun now later not-shown earlier")
	if got := fmt.Sprint(schedule.DueBy(all, of, now)); got != "[now earlier]" {
		t.Error(got)
	}
	if got := fmt.Sprint(schedule.DueBy(all, of, now.Add(time.Second))); got != "[now later earlier]" {
		t.Error(got)
	}
	if got := schedule.DueBy(all, nil, now); len(got) != 0 {
		t.Errorf("%v of an empty record", got)
	}
}
