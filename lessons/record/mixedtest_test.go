package record_test

import (
	"testing"
	"time"

	"scratchpass/lessons/record"
)

func TestLastTest(t *testing.T) {
	r := fresh(t, 0)
	want := func(want record.Test, there bool, why string) {
		t.Helper()
		got, ok, err := r.LastTest()
		if ok != there || err != nil || got.Got != want.Got || got.Of != want.Of || !got.At.Equal(want.At) {
			t.Errorf("%+v, %v, %v: %s", got, ok, err, why)
		}
	}
	monday := time.UnixMilli(1_700_000_000_001)
	first, newest, early := record.Test{At: monday, Got: 9, Of: 12}, record.Test{At: monday.Add(time.Hour), Got: 11, Of: 12}, record.Test{At: monday.Add(-time.Hour), Got: 12, Of: 12}
	same := record.Test{At: newest.At, Got: 10, Of: 12}
	want(record.Test{}, false, "none was taken")
	for _, row := range []struct {
		add, want record.Test
		why       string
	}{
		{first, first, "the only one"},
		{newest, newest, "a later one"},
		{early, newest, "one from before that is kept later is not the newest"},
		{same, same, "of two of one moment the one that was kept last"},
	} {
		if err := r.AddTest(row.add); err != nil {
			t.Fatal(err)
		}
		want(row.want, true, row.why)
	}
	r.Learner = "Ben"
	want(record.Test{}, false, "another learner")
}
