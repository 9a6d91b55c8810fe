package answer_test

import (
	"testing"

	"scratchpass/quiz/answer"
)

// Records and answer files hold these words: one that is added, or spelt otherwise, is not
// taken for one of them.
func TestCertaintyIsOneOfTheListOrNone(t *testing.T) {
	for text, want := range map[string]bool{"": true, "guess": true, "fairly": true, "bet": true, "Bet": false, "sure": false, " ": false} {
		if got := answer.Certainty(text).Known(); got != want {
			t.Errorf("%q: %v", text, got)
		}
	}
	for _, c := range answer.Certainties {
		if c == answer.NotAsked {
			t.Error("nobody can choose not to have been asked")
		}
	}
}
