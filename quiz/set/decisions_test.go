package set

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"scratchpass/content"
	"scratchpass/quiz/answer"
)

// An instructor's points take the place of a verdict; what was open is open no more, and a
// decision that nothing waited for counts too and is told.
func TestDecisions(t *testing.T) {
	m := maker(t, "set: d\ntitle: x\nunits: in\nslots: [{tasks: [single-depth], points: 2}, {tasks: [stop-before-gauging]}]\n")
	class := roster(3)
	code := m.Code(class[0].ID)
	key := items(t, m, class[0].ID)[0].Problem.Expected.Text()
	k, err := NewMarker(t.Context(), m, class, parsed(t, "a.csv", "code,1,2\n"+code+",scribble,\n"+m.Code(class[1].ID)+","+key+",scribble\n"))
	if err != nil {
		t.Fatal(err)
	}
	decisions, err := ParseDecisions("d.csv", []byte("code;item;points;reason\n"+code+";1;1,5;method right\n"+code+";2;0.5;said it\n"+m.Code(class[1].ID)+";2;;still to look at\n"+m.Code(class[2].ID)+";1;2;\n"))
	if err != nil || len(decisions) != 3 {
		t.Fatal(decisions, err)
	}
	if err := k.Decide(decisions); err != nil {
		t.Fatal(err)
	}
	var all []Result
	s := NewSummary(m, content.Shipped())
	if err := k.Each(func(r Result) error { all = append(all, r); s.Add(r); return nil }); err != nil {
		t.Fatal(err)
	}
	if r := all[0]; r.Points != 2 || r.Open != 0 || r.Items[0].Verdict != Decided || r.Items[0].Ruling.Reason != "method right" || r.Items[0].Ruling.Was != answer.Unread ||
		r.Items[0].Ruling.Where != "d.csv, row 2" || r.Items[1].Points != 0.5 {
		t.Errorf("%+v", r)
	}
	if r := all[1]; r.Open != 1 || r.Items[1].Verdict != answer.Unread {
		t.Errorf("%+v", r)
	}
	if all[2].Handed || all[2].Points != 0 {
		t.Errorf("nothing came, and yet: %+v", all[2])
	}
	if k.Applied != 2 || k.Needless != 2 || !k.NeedlessOnes[0].Applied || k.NeedlessOnes[0].Verdict != Blank || k.NeedlessOnes[1].Applied {
		t.Errorf("%d applied, needless %+v", k.Applied, k.NeedlessOnes)
	}
	// The second question of the second sheet waits: it is in no average.
	rep := s.Report()
	if rep.Waiting != 1 || rep.Decided != 2 || rep.Handed != 2 || rep.Items[1].N != 1 || rep.Items[1].Open != 1 || rep.Items[1].Share != 0.5 {
		t.Errorf("%+v", rep)
	}
	if want := (1.5+all[1].Items[0].Points)/2 + 0.5; rep.Mean != want || rep.MeanOf != 3 {
		t.Errorf("mean %v of %v, want %v of 3", rep.Mean, rep.MeanOf, want)
	}
}

// What waits is open in every form of the marks: null, an empty cell, never zero.
func TestOpenIsNoZero(t *testing.T) {
	m := maker(t, "set: d\ntitle: x\nunits: in\nslots: [{tasks: [single-depth]}]\n")
	class := roster(1)
	r := mark(t, m, class, parsed(t, "a.csv", "code,1\n"+m.Code(class[0].ID)+",scribble\n"))[0]
	text, err := json.Marshal(r)
	if err != nil || !strings.Contains(string(text), `"points":null`) {
		t.Errorf("%s, %v", text, err)
	}
	var table, waiting strings.Builder
	rows := NewMarksCSV(&table)
	list, err := NewWaitingCSV(&waiting)
	for _, step := range []func() error{func() error { return err }, func() error { return rows.Add(r) }, rows.Close, func() error { return list.Add(r) }, list.Close} {
		if err := step(); err != nil {
			t.Fatal(err)
		}
	}
	if !strings.Contains(table.String(), "single-depth,scribble,unread,,,,") {
		t.Error(table.String())
	}
	// The list of what waits is a file of decisions, with nothing decided yet.
	if d, err := ParseDecisions("w.csv", []byte(waiting.String())); err != nil || len(d) != 0 || !strings.Contains(waiting.String(), r.Code+",1,,,") {
		t.Errorf("%q: %v %v", waiting.String(), d, err)
	}
	s := NewSummary(m, content.Shipped())
	s.Add(r)
	if rep := s.Report(); rep.Mean != 0 || rep.MeanOf != 0 || rep.Waiting != 1 || rep.Tasks[0].N != 0 {
		t.Errorf("nothing is marked yet: %+v", rep)
	}
}

// Decisions that can't be meant are errors that say the row and what would work.
func TestWrongDecisions(t *testing.T) {
	for text, want := range map[string]string{
		"code,item,points,remark\nA,1,1,x\n": `the column "remark" is not known, and what stands in it would be lost: the columns are code, item, points, reason`,
		"code,item\nA,1\n":                   "give code, item, points and reason",
		"code,item,points\nA,1,half\n":       `d.csv, row 2: points "half": give 0 to what the question is worth`,
		"code,item,points\nA,1,-1\n":         `points "-1"`,
		"code,item,points\nA,x,1\n":          `item "x": give the number of a question`,
		"code,item,points,\nA,1,1,why\n":     `row 2: "why" stands in a column without a name`,
	} {
		if _, err := ParseDecisions("d.csv", []byte(text)); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, want %q", text, err, want)
		}
	}
	m := maker(t, "set: d\ntitle: x\nunits: in\nslots: [{tasks: [single-depth], points: 2}]\n")
	class := roster(2)
	code := m.Code(class[0].ID)
	for text, want := range map[string]string{
		"ABC-DEFG,1,1\n":                    `d.csv, row 2: no sheet of this set has the code "ABC-DEFG"`,
		class[0].ID + ",1,1\n":              "which is an id: give the code that stands on the sheet, such as " + code,
		code + ",2,1\n":                     "question 2: the set has 1",
		code + ",1,2.5\n":                   "points 2.5: question 1 is worth 2",
		code + ",1,1\n" + code + ",1,2\n":   "row 3: question 1 of " + code + " is decided in d.csv, row 2 already",
		strings.ToLower(code) + ",1,0.25\n": "",
	} {
		k, err := NewMarker(t.Context(), m, class, []Given{{Code: code, Item: 1, Text: "x"}})
		if err != nil {
			t.Fatal(err)
		}
		d, err := ParseDecisions("d.csv", []byte("code,item,points\n"+text))
		if err == nil {
			err = k.Decide(d)
		}
		if want == "" && err != nil || want != "" && (err == nil || !strings.Contains(err.Error(), want)) {
			t.Errorf("%q: %v, want %q", text, err, want)
		}
	}
}

// Of several who have one form a name tells whose answer is decided.
func TestDecisionsOfForms(t *testing.T) {
	m := maker(t, "set: d\ntitle: x\nunits: in\nslots: [{tasks: [single-depth]}]\n")
	class, err := Forms(1)
	if err != nil {
		t.Fatal(err)
	}
	code := m.Code(class[0].ID)
	for name, want := range map[string]string{"Ben": "Ada 0, Ben 1", "": "with one of \"Ada, Ben\"", "Cy": "\"Cy\" has no form A"} {
		k, err := NewMarker(t.Context(), m, class, parsed(t, "a.csv", fmt.Sprintf("code,name,1\n%s,Ada,x\n%s,Ben,x\n", code, code)))
		if err != nil {
			t.Fatal(err)
		}
		got := ""
		if err := k.Decide([]Decision{{Code: code, Item: 1, Points: 1, Who: name}}); err != nil {
			got = err.Error()
		} else if err := k.Each(func(r Result) error { got += fmt.Sprintf("%s %v, ", r.Name, r.Points); return nil }); err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(got, want) {
			t.Errorf("%q: %s, want %s", name, got, want)
		}
	}
}

// Columns that nobody asked for are refused in both forms of answers: a column of points was
// dropped without a word before.
func TestUnknownColumnsAreRefused(t *testing.T) {
	for text, want := range map[string]string{
		"code,item,answer,points\nK7F-2QXM,1,2,3\n":  `the column "points" is not known, and what stands in it would be lost: the columns are code, item, answer, sure, name, id`,
		"code,item,answer,points\nK7F-2QXM,1,2,\n":   "points of your own stand in a file of decisions",
		"code,item,answer,comment\nK7F-2QXM,1,2,3\n": `the column "comment" is not known`,
		"code,1,2,points\nK7F-2QXM,1,2,3\n":          `the column "points" is not known`,
		"code,1,2,\nK7F-2QXM,1,2,3\n":                `row 2: "3" stands in a column without a name`,
	} {
		if _, err := ParseAnswers("x.csv", []byte(text)); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, want %q", text, err, want)
		}
	}
	for _, text := range []string{"id,name,form,code,1,remarks\n1,Ada,,K7F-2QXM,2,late\n", "code,item,answer,remarks,\nK7F-2QXM,1,2,late,\n"} {
		if _, err := ParseAnswers("x.csv", []byte(text)); err != nil {
			t.Errorf("%q: %v", text, err)
		}
	}
}

// Whatever a file of decisions has in it, each has points and a question, or the error says
// what is wrong.
func FuzzDecisions(f *testing.F) {
	f.Add([]byte("code,item,points,reason\nK7F-2QXM,1,0.5,why\n"))
	f.Add([]byte("code;item;points\nk7f2qxm;60;0,5\n"))
	f.Fuzz(func(t *testing.T, text []byte) {
		all, err := ParseDecisions("d", text)
		if err != nil && err.Error() == "" {
			t.Error("an error without words")
		}
		for _, d := range all {
			if d.Item < 1 || d.Item > mostItems || !(d.Points >= 0 && d.Points <= mostPoints) || strings.ContainsAny(d.Reason, "\x1b\n") {
				t.Errorf("%q: %+v", text, d)
			}
		}
	})
}
