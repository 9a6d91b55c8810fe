package desk

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"scratchpass/content"
	"scratchpass/lessons/face/inspect"
	"scratchpass/quiz/handout"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/set"
	"scratchpass/quiz/tasks"
)

// paper is a set of all kinds of questions, and one apprentice's answers to it.
type paper struct {
	maker   *set.Maker
	printer *set.Printer
	class   []set.Apprentice
	items   []set.Item
}

func newPaper(t *testing.T) paper {
	t.Helper()
	return paperOf(t, "set: b\ntitle: Of all kinds\nunits: in\nsure: true\nslots:\n- {tasks: [single-depth]}\n- {tasks: [thread-dial-line]}\n- {tasks: [when-to-leave-compound]}\n- {tasks: [one-full-pass]}\n- {tasks: [ready-to-start]}\n- {tasks: [cross-slide-return]}\n")
}

// paperOf is the paper of a blueprint.
func paperOf(t *testing.T, blueprint string) paper {
	t.Helper()
	b, err := set.ParseBlueprint("b", []byte(blueprint), tasks.Set{}, func(string) (machine.Lathe, error) { return machine.InchLathe, nil })
	if err != nil {
		t.Fatal(err)
	}
	p := paper{class: []set.Apprentice{{ID: "1", Name: "Ada \"the\" Brink, jr."}}}
	if p.maker, err = set.NewMaker(b, set.Secret("a secret that stands in a test"), content.Shipped()); err != nil {
		t.Fatal(err)
	}
	if p.printer, err = set.NewPrinter(p.maker, content.Shipped()); err != nil {
		t.Fatal(err)
	}
	if p.items, err = p.maker.Items("1"); err != nil {
		t.Fatal(err)
	}
	return p
}

// marked is the result of a file of answers.
func (p paper) marked(t *testing.T, answers string) set.Result {
	t.Helper()
	file := filepath.Join(t.TempDir(), "answers.csv")
	if err := os.WriteFile(file, []byte(answers), 0o600); err != nil {
		t.Fatal(err)
	}
	given, err := set.ReadAnswers(file, func(set.Note) {})
	if err != nil {
		t.Fatal(err)
	}
	k, err := set.NewMarker(t.Context(), p.maker, p.class, given)
	if err != nil || len(k.Names) > 0 {
		t.Fatal(k, err)
	}
	var all set.Result
	if err := k.Each(func(r set.Result) error { all = r; return nil }); err != nil {
		t.Fatal(err)
	}
	return all
}

// write writes a document and returns its address.
func (p paper) write(t *testing.T, name string, o handout.Options, parts func(handout.Writer) error) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name+".html")
	f, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	w, err := handout.HTML(f, o)
	if err == nil {
		err = parts(w)
	}
	if err == nil {
		err = w.Close()
	}
	if err == nil {
		err = f.Close()
	}
	if err != nil {
		t.Fatal(err)
	}
	return "file://" + filepath.ToSlash(path)
}

// What is read on a screen has no finding of axe-core: sheet, sheet with fields, key,
// grid, tally, feedback and the report of the class.
func TestPaperInABrowser(t *testing.T) {
	p, ctx := newPaper(t), inspect.Browser(t)
	who := p.class[0]
	sheet, err := p.printer.Sheet(who, p.items)
	if err != nil {
		t.Fatal(err)
	}
	wrong := p.marked(t, "code,item,answer\n"+sheet.Code+",1,3\n"+sheet.Code+",3,1\n"+sheet.Code+",4,1 2 3\n")
	summary := set.NewSummary(p.maker, content.Shipped())
	summary.Add(wrong)
	o := p.printer.Options("Of all kinds")
	for name, at := range map[string]string{
		"sheet":    p.write(t, "sheet", o, func(w handout.Writer) error { return w.Sheet(sheet) }),
		"fields":   p.write(t, "fields", p.printer.FieldOptions(who), func(w handout.Writer) error { return w.Sheet(sheet) }),
		"nameless": p.write(t, "nameless", p.printer.FieldOptions(who), func(w handout.Writer) error { s := sheet; s.Name, s.Form = "", "A"; return w.Sheet(s) }),
		"key": p.write(t, "key", o, func(w handout.Writer) error {
			if err := w.Key(p.printer.Key(who, p.items)); err != nil {
				return err
			}
			if err := w.Report(p.printer.Errors()); err != nil {
				return err
			}
			return w.Tally("Of all kinds", p.printer.TallyItems())
		}),
		"grid": p.write(t, "grid", o, func(w handout.Writer) error {
			return w.Report(p.printer.Grid([][]string{p.printer.GridRow(who, p.items)}))
		}),
		"feedback": p.write(t, "feedback", o, func(w handout.Writer) error { return w.Report(p.printer.Feedback(wrong)) }),
		"report":   p.write(t, "report", o, func(w handout.Writer) error { return w.Report(p.printer.Page(summary.Report())) }),
	} {
		for _, width := range []int64{360, 1200} {
			if err := chromedp.Do(ctx, chromedp.EmulateViewport(width, 740), chromedp.Navigate(at)); err != nil {
				t.Fatal(name, err)
			}
			inspect.Axe(t, ctx, fmt.Sprintf("%s, %d wide", name, width))
		}
	}
}

// fillIn types and ticks answers, each a list of what goes into its fields, saves them, and
// returns the file that the browser would keep.
const fillIn = `(answers => {
  const kept = new Promise(done => { URL.createObjectURL = blob => { blob.text().then(done); return "#"; }; });
  document.querySelectorAll("[data-item]").forEach((item, i) => {
    const fields = [...item.querySelectorAll("[data-answer]")];
    if (fields[0].type === "text") fields.forEach((f, k) => { f.value = answers[i][k]; });
    else fields.forEach(f => { f.checked = answers[i][0].split(", ").includes(f.value); });
    item.querySelector("[value=fairly]").checked = true;
  });
  document.querySelector("button").click();
  return kept.then(text => document.querySelector("output").textContent + "\n" + text);
})`

// A sheet that is filled in on a screen comes back as a file that is marked: all right.
func TestAFilledSheetInABrowser(t *testing.T) {
	p, ctx := newPaper(t), inspect.Browser(t)
	who := p.class[0]
	sheet, err := p.printer.Sheet(who, p.items)
	if err != nil {
		t.Fatal(err)
	}
	var answers [][]string
	for _, cell := range p.printer.GridRow(who, p.items)[2:] {
		answers = append(answers, strings.Split(strings.TrimSuffix(cell, " in"), " then "))
	}
	given, err := json.Marshal(answers)
	if err != nil {
		t.Fatal(err)
	}
	at := p.write(t, "fields", p.printer.FieldOptions(who), func(w handout.Writer) error { return w.Sheet(sheet) })
	if err := chromedp.Do(ctx, chromedp.Navigate(at)); err != nil {
		t.Fatal(err)
	}
	saved, err := chromedp.Run(ctx, chromedp.Evaluate[string](fillIn+"("+string(given)+")", chromedp.EvalAwaitPromise))
	if err != nil {
		t.Fatal(err)
	}
	told, file, _ := strings.Cut(saved, "\n")
	if !strings.Contains(told, "answers-"+sheet.Code+".csv") {
		t.Errorf("the page says %q", told)
	}
	r := p.marked(t, file)
	if r.Points != r.Of || r.Items[0].Certainty != "fairly" {
		t.Errorf("%v of %v points for\n%s\n%+v", r.Points, r.Of, file, r.Items)
	}
}
