package qti

import (
	"strings"
	"testing"

	"scratchpass/quiz/answer"
)

// What a learning system hands back is marked as the item marked it: for every task, the key,
// every error, every edge and random answers.
func TestRepliesAreMarkedAsTheItemMarksThem(t *testing.T) {
	slot := everyTask(t, 1)
	_, files := packed(t, packageOf(V30, false, slot))
	tried := 0
	eachAnswer(t, slot, files, func(it Item, item *tree, c answered) {
		tried++
		text, err := Reply(it, AsItIs, c.given)
		if err != nil {
			t.Fatalf("%s %v: %v", it.Problem.Code, c.given, err)
		}
		m, want := it.Problem.Mark(text), evaluate(item, c.given)
		if got := (result{m.Points * it.Points, idOf(m)}); !same(got, want) && !same(want, got) {
			t.Errorf("%s %v as %q: %+v, the item says %+v", it.Problem.Code, c.given, text, got, want)
		}
	})
	if tried < 1000 {
		t.Errorf("only %d were tried", tried)
	}
}

// As a single choice too.
func TestRepliesToWholeAnswers(t *testing.T) {
	slot := everyTask(t, 1)
	_, files := packed(t, packageOf(V30, true, slot))
	for _, it := range slot.Items {
		item := parse(t, files[itemFile(it.ID)])
		for _, o := range item.all("simpleChoice") {
			given := responses{response: {o.attrs["identifier"]}}
			text, err := Reply(it, AsWhole, given)
			if m, want := it.Problem.Mark(text), evaluate(item, given); err != nil || m.Points*it.Points != want.score {
				t.Errorf("%s %q: %v, the item says %+v, %v", it.Problem.Code, text, m.Verdict, want, err)
			}
		}
	}
}

// Nothing is nothing, and what can't be a response is an error that quotes it.
func TestRepliesThatAreNone(t *testing.T) {
	choice := Item{ID: "c", Problem: remade(t, "ready-to-start@1-0001"), Words: wordsOf(t, "ready-to-start"), Points: 1}
	row := Item{ID: "r", Problem: remade(t, "cross-slide-return@1-0001"), Words: wordsOf(t, "cross-slide-return"), Points: 1}
	for _, it := range []Item{choice, row} {
		if text, err := Reply(it, AsItIs, nil); text != "" || err != nil {
			t.Errorf("%q, %v", text, err)
		}
	}
	for _, id := range []string{"choice-0", "choice-99", "2", "none", "choice--1"} {
		if _, err := Reply(choice, AsItIs, responses{response: {id}}); err == nil || !strings.Contains(err.Error(), "give choice-1 to choice-") || !strings.Contains(err.Error(), id) {
			t.Errorf("%s: %v", id, err)
		}
	}
	half, err := Reply(row, AsItIs, responses{"RESPONSE1": {"0.1"}})
	if m := row.Problem.Mark(half); err != nil || m.Verdict != answer.Unread {
		t.Errorf("half a row is %q: %v, %v", half, m.Verdict, err)
	}
}
