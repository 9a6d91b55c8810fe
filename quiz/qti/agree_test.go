package qti

import (
	"flag"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"scratchpass/quiz/answer"
)

var seeds = flag.Uint("seeds", 1, "problems of each task, level and system that are compared with quiz")

// eachAnswer gives every item of a package the key, every error, every edge and random
// answers; what lies just beside the end of a range is passed over.
func eachAnswer(t *testing.T, slot Slot, files map[string][]byte, try func(it Item, item *tree, c answered)) {
	t.Helper()
	chance := rand.New(rand.NewPCG(1, 2))
	for _, it := range slot.Items {
		item := parse(t, files[itemFile(it.ID)])
		ends := endsOf(item)
		for _, c := range casesOf(it, chance) {
			if !besideAnEnd(ends, c.given) {
				try(it, item, c)
			}
		}
	}
}

// The score and the verdict of every item are those of quiz, for the key, every error,
// every edge and random answers; the feedback shown is the one quiz words.
func TestProcessingAgreesWithQuiz(t *testing.T) {
	slot := everyTask(t, uint32(*seeds))
	for _, v := range []Version{V21, V30} {
		_, files := packed(t, packageOf(v, false, slot))
		compared := 0
		eachAnswer(t, slot, files, func(it Item, item *tree, c answered) {
			compared++
			got := evaluate(item, c.given)
			if want := (result{c.mark.Points * it.Points, idOf(c.mark)}); !same(got, want) {
				t.Errorf("%s %v: %+v, quiz says %+v", it.Problem.Code, c.given, got, want)
			}
			if c.mark.Verdict == answer.Right || c.mark.Verdict == answer.KnownError && c.exact {
				said := shown(item, got.feedback)
				worded := it.Words.Feedback(it.Problem, c.mark)
				worded.Off = "" // a player doesn't work out by how much an answer is off
				if want := wanted(worded.Text()); said != want {
					t.Errorf("%s %v: shows %q, quiz says %q", it.Problem.Code, c.given, said, want)
				}
			}
		})
		t.Logf("%d answers to %d items", compared, len(slot.Items))
		if compared < 20*len(slot.Items) {
			t.Error("too few answers were compared")
		}
	}
}

// What a convention costs is taken off in the package, and nothing else is.
func TestConventionsCost(t *testing.T) {
	slot := everyTask(t, 2)
	pack := packageOf(V30, false, slot)
	pack.ConventionCosts = 0.5
	_, files := packed(t, pack)
	halved := 0
	eachAnswer(t, slot, files, func(it Item, item *tree, c answered) {
		want := c.mark.Points * it.Points
		if c.mark.Verdict == answer.Convention {
			want /= 2
			halved++
		}
		if got := evaluate(item, c.given); got.score != want {
			t.Errorf("%s %v: %v points, want %v", it.Problem.Code, c.given, got.score, want)
		}
	})
	if halved == 0 {
		t.Error("no convention was tried")
	}
}

// same holds far-off and wrong for one verdict: quiz tells them apart in words only.
func same(got, want result) bool {
	return got == want || want.feedback == "wrong" && got.feedback == "far-off" && got.score == want.score
}

// wanted is a text as paragraphs show it.
func wanted(s string) string {
	var lines []string
	for line := range strings.SplitSeq(s, "\n") {
		if line = clean(line); line != "" {
			lines = append(lines, line)
		}
	}
	return strings.Join(lines, "\n")
}

// shown is the text of a modal feedback.
func shown(item *tree, id string) string {
	var lines []string
	for _, f := range item.all("modalFeedback") {
		if f.attrs["identifier"] == id {
			for _, p := range f.all("p") {
				lines = append(lines, p.text)
			}
		}
	}
	return strings.Join(lines, "\n")
}

// No answer at all is unread, worth nothing and told so.
func TestNoAnswerIsUnread(t *testing.T) {
	slot := everyTask(t, 1)
	_, files := packed(t, packageOf(V30, false, slot))
	for _, it := range slot.Items {
		item := parse(t, files[itemFile(it.ID)])
		if got := evaluate(item, responses{}); got != (result{0, "unread"}) || shown(item, "unread") != sentences.Unread {
			t.Errorf("%s: %+v", it.ID, got)
		}
	}
}

// As a single choice, each option is marked as quiz marks that answer, and there is
// one right one.
func TestChoiceOnlyAgreesWithQuiz(t *testing.T) {
	slot := everyTask(t, min(uint32(*seeds), 10))
	_, files := packed(t, packageOf(V21, true, slot))
	for _, it := range slot.Items {
		item := parse(t, files[itemFile(it.ID)])
		options, right := item.all("simpleChoice"), 0
		seen := map[string]bool{}
		for _, o := range options {
			got := evaluate(item, responses{response: {o.attrs["identifier"]}})
			if got.score == it.Points {
				right++
			}
			r, err := it.Problem.Expected.Read(o.text)
			if it.Problem.Expected.Kind == answer.Choice {
				i := slices.IndexFunc(it.Words.Options(it.Problem), func(s string) bool { return clean(s) == o.text })
				r, err = answer.OptionsResponse(it.Problem.Expected.Options[i]), nil
			}
			if err != nil || seen[o.text] {
				t.Fatalf("%s: option %q twice, or %v", it.ID, o.text, err)
			}
			seen[o.text] = true
			m := it.Problem.MarkResponse(r)
			if want := m.Points * it.Points; got.score != want || got.feedback != idOf(m) && !strings.HasPrefix(got.feedback, idOf(m)+"-") {
				t.Errorf("%s %s: %+v, quiz says %s", it.ID, o.text, got, idOf(m))
			}
		}
		if len(options) < fewest || right != 1 || len(item.all("choiceInteraction")) != 1 || len(item.all("responseDeclaration")) != 1 {
			t.Errorf("%s: %d options, %d right", it.ID, len(options), right)
		}
	}
}
