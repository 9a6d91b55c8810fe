package sitting_test

import (
	"bytes"
	"testing"
	"time"

	"scratchpass/lessons/page"
)

// Whatever lines are stored, the sitting is taken up or the error says what is wrong with
// them: someone may have been at the record by hand.
func FuzzStoredSitting(f *testing.F) {
	for _, flow := range flows {
		m := newMemory()
		at := time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC)
		typed := 0
		_, s := start(f, m, &at, func(page.Prompt) (string, error) {
			if typed++; typed > 4 {
				return "", page.ErrStopped
			}
			return "1", nil
		})
		_, _ = s.Run(flow)
		f.Add(bytes.Join(m.lines, []byte("\n")))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		m := newMemory()
		m.lines = bytes.Split(text, []byte("\n"))
		at := time.Date(2026, 11, 25, 9, 0, 0, 0, time.UTC)
		asked := 0
		_, s := start(t, m, &at, func(page.Prompt) (string, error) {
			if asked++; asked > 3 {
				return "", page.ErrStopped
			}
			return "pass", nil
		})
		if err := s.GoOn(flows...); err != nil && err.Error() == "" {
			t.Error("an error without words")
		}
	})
}
