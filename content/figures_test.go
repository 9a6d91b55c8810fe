package content_test

import (
	"strings"
	"testing"
	"testing/fstest"

	"scratchpass/content"
	"scratchpass/quiz/figures"
)

// What a lesson asks for and can't get is found, on its line and all at once.
func TestFiguresThatCannotBeFilled(t *testing.T) {
	lib := content.Reading("mine", fstest.MapFS{"lessons/500-mine.yaml": {Data: []byte(`title: Mine
why: Because of ${pitch 8}.
parts:
  - title: One
    explain:
      - text: |
          The first line has none.
          With 8 it is ${pitch 8}, with ten ${ptich 10}.
          And ${pitch ten}, ${pitch 8.
      - text: "On one line: ${factor nothing}"
      - text: >
          Folded into one,
          ${pitch}.
`)}})
	var found []string
	for _, f := range lib.Check(content.Known{Figure: figures.Figure}) {
		if strings.Contains(f.Text, "${") {
			found = append(found, f.String())
		}
	}
	for i, want := range []string{
		`mine/lessons/500-mine.yaml:2: ${...} is filled in only in the texts of the parts`,
		`mine/lessons/500-mine.yaml:8: ${ptich 10}: no figure is called "ptich"`,
		`mine/lessons/500-mine.yaml:9: ${pitch ten}: can't read "ten": give threads per inch such as 8, a pitch such as 0.125in or 1.5mm, or a thread such as 1-8; "${pitch 8." is not closed`,
		`mine/lessons/500-mine.yaml:10: ${factor nothing}: no factor is called "nothing"`,
		`mine/lessons/500-mine.yaml:11: ${pitch}: write it as ${pitch THREAD}, such as ${pitch 8}`,
	} {
		if i >= len(found) || !strings.HasPrefix(found[i], want) {
			t.Fatalf("found\n%s\nwant %s", strings.Join(found, "\n"), want)
		}
	}
	if len(found) != 5 {
		t.Errorf("found\n%s", strings.Join(found, "\n"))
	}
}
