package desk

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"scratchpass/lessons/face/inspect"
	"scratchpass/quiz/handout"
	"scratchpass/quiz/set"
)

// Who writes decimals with a comma types them into a sheet with fields as well: each reading,
// several in one answer, and a choice come back as they were meant.
func TestDecimalCommasInABrowser(t *testing.T) {
	p, ctx := paperOf(t, "set: b\ntitle: With commas\nunits: mm\ndecimal_comma: true\nsure: true\nslots:\n- {tasks: [cross-slide-return]}\n- {tasks: [single-depth]}\n- {tasks: [ready-to-start]}\n- {tasks: [metric-designation]}\n- {tasks: [in-or-out]}\n"), inspect.Browser(t)
	who := p.class[0]
	sheet, err := p.printer.Sheet(who, p.items)
	if err != nil {
		t.Fatal(err)
	}
	at := p.write(t, "fields", p.printer.FieldOptions(who), func(w handout.Writer) error { return w.Sheet(sheet) })
	for how, typed := range map[string]func(string) string{
		"commas":     func(s string) string { return strings.ReplaceAll(s, ".", ",") },
		"points":     func(s string) string { return s },
		"half":       func(s string) string { return s },
		"with units": func(s string) string { return strings.ReplaceAll(s, ".", ",") + " mm" },
	} {
		if err := chromedp.Do(ctx, chromedp.Navigate(at)); err != nil {
			t.Fatal(err)
		}
		var answers [][]string
		for _, it := range p.items {
			key := strings.ReplaceAll(it.Words.KeyNumber(it.Problem), " mm", "")
			fields := strings.Split(key, " then ") // one for each reading
			if it.Problem.Task.Kind.Numeric() {
				for i := range fields {
					fields[i] = typed(fields[i])
				}
			} else if how == "commas" {
				fields[0] = strings.ReplaceAll(key, ".", ",")
			}
			if how == "half" { // only the second of two readings
				fields = append([]string{""}, fields[1:]...)
			}
			answers = append(answers, fields)
		}
		given, err := json.Marshal(answers)
		if err != nil {
			t.Fatal(err)
		}
		saved, err := chromedp.Run(ctx, chromedp.Evaluate[string](fillIn+"("+string(given)+")", chromedp.EvalAwaitPromise))
		if err != nil {
			t.Fatal(err)
		}
		_, file, _ := strings.Cut(saved, "\n")
		r := p.marked(t, file)
		if how == "half" {
			if first := r.Items[0].Given; !strings.HasPrefix(first, "-, 0.") || r.Open != 1 || r.Points != 0 || r.Items[1].Verdict != set.Blank {
				t.Errorf("%s: %q, %v open, %v points for\n%s", how, first, r.Open, r.Points, file)
			}
			continue
		}
		if r.Points != r.Of || r.Open > 0 || !strings.Contains(file, ",") {
			t.Errorf("%s: %v of %v points for\n%s", how, r.Points, r.Of, file)
		}
	}
}
