package set

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"maps"
	"slices"
	"strings"
	"testing"

	"scratchpass/content"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/qti"
	"scratchpass/quiz/tasks"
)

// handed is one response as a learning system keeps it.
type handed struct {
	who, item string
	values    map[string][]string
}

// keysIn reads the right answers out of a package of QTI 2.1, as a learning system has them.
func keysIn(t *testing.T, pack qti.Package) map[string]map[string][]string {
	t.Helper()
	var b bytes.Buffer
	if err := qti.Write(&b, pack); err != nil {
		t.Fatal(err)
	}
	z, err := zip.NewReader(bytes.NewReader(b.Bytes()), int64(b.Len()))
	if err != nil {
		t.Fatal(err)
	}
	keys := map[string]map[string][]string{}
	for _, f := range z.File {
		if !strings.HasPrefix(f.Name, "items/") {
			continue
		}
		r, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		text, err := io.ReadAll(r)
		if err != nil {
			t.Fatal(err)
		}
		var item struct {
			ID    string `xml:"identifier,attr"`
			Label string `xml:"label,attr"`
			Asks  []struct {
				ID  string   `xml:"identifier,attr"`
				Key []string `xml:"correctResponse>value"`
			} `xml:"responseDeclaration"`
		}
		if err := xml.Unmarshal(text, &item); err != nil || !strings.Contains(item.Label, "@") {
			t.Fatalf("%s: %v, label %q", f.Name, err, item.Label)
		}
		keys[item.ID] = map[string][]string{}
		for _, ask := range item.Asks {
			keys[item.ID][ask.ID] = ask.Key
		}
	}
	return keys
}

// answeredAll is a class whose answers are all right.
func answeredAll(t *testing.T, m *Maker, class []Apprentice, choiceOnly bool) []handed {
	t.Helper()
	p, err := NewPrinter(m, content.Shipped())
	if err != nil {
		t.Fatal(err)
	}
	var all [][]Item
	for _, who := range class {
		all = append(all, items(t, m, who.ID))
	}
	pack, err := p.Package(class, all, qti.V21, choiceOnly)
	if err != nil {
		t.Fatal(err)
	}
	keys := keysIn(t, pack)
	var back []handed
	for i, slot := range pack.Slots {
		for _, it := range slot.Items {
			back = append(back, handed{class[i].ID, it.ID, keys[it.ID]})
		}
	}
	return back
}

// asXML writes results as a learning system does.
func asXML(back []handed) string {
	var out strings.Builder
	out.WriteString("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<export>\n")
	for i, h := range back {
		if i == 0 || back[i-1].who != h.who {
			fmt.Fprintf(&out, "<assessmentResult xmlns=\"http://www.imsglobal.org/xsd/imsqti_result_v2p2\"><context sourcedId=\"%s\"/>\n", h.who)
		}
		fmt.Fprintf(&out, "<itemResult identifier=\"%s\" datestamp=\"2026-12-01T10:00:00Z\" sessionStatus=\"final\">", h.item)
		for _, id := range slices.Sorted(maps.Keys(h.values)) {
			fmt.Fprintf(&out, "<responseVariable identifier=\"%s\" cardinality=\"single\" baseType=\"string\"><candidateResponse>", id)
			for _, v := range h.values[id] {
				fmt.Fprintf(&out, "<value>%s</value>", v)
			}
			out.WriteString("</candidateResponse></responseVariable>")
		}
		out.WriteString("<outcomeVariable identifier=\"SCORE\" cardinality=\"single\" baseType=\"float\"><value>1</value></outcomeVariable></itemResult>\n")
		if i == len(back)-1 || back[i+1].who != h.who {
			out.WriteString("</assessmentResult>\n")
		}
	}
	return out.String() + "</export>\n"
}

// asCSV writes them as a table, a row a response.
func asCSV(back []handed) string {
	out := "sourcedId,itemIdentifier,responseIdentifier,candidateResponse\r\n"
	for _, h := range back {
		for _, id := range slices.Sorted(maps.Keys(h.values)) {
			out += fmt.Sprintf("%s,%s,%s,%s\r\n", h.who, h.item, id, strings.Join(h.values[id], "|"))
		}
	}
	return out
}

// asWide writes them as a table, a row a learner.
func asWide(back []handed) string {
	head, rows := "Name", map[string]string{}
	var order []string
	for _, h := range back {
		if _, ok := rows[h.who]; !ok {
			order, rows[h.who] = append(order, h.who), h.who+strings.Repeat(";", strings.Count(head, ";"))
		}
		for _, id := range slices.Sorted(maps.Keys(h.values)) {
			head += ";" + h.item + "." + id
			for _, who := range order {
				cell := ""
				if who == h.who {
					cell = strings.Join(h.values[id], "|")
				}
				rows[who] += ";" + cell
			}
		}
	}
	text := head + "\n"
	for _, who := range order {
		text += rows[who] + "\n"
	}
	return text
}

func marked(t *testing.T, m *Maker, class []Apprentice, given []Given) []Result {
	t.Helper()
	k, err := NewMarker(t.Context(), m, class, given)
	if err != nil {
		t.Fatal(err)
	}
	var all []Result
	if err := k.Each(func(r Result) error { all = append(all, r); return nil }); err != nil {
		t.Fatal(err)
	}
	if len(k.Names) > 0 || k.Differ > 0 {
		t.Errorf("told %q, differ %d", k.Names, k.Differ)
	}
	return all
}

// From blueprint to package, from a learning system's export to marks: what is right there is
// right here, whatever the form, with linked, shuffled and mixed questions, for a roster and
// for forms.
func TestResponsesComeBack(t *testing.T) {
	forms, err := Forms(2)
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"first-thread.yaml", "exit-ticket.yaml"} {
		m := example(t, name)
		for who, class := range map[string][]Apprentice{"a roster": roster(3), "forms": forms} {
			for _, choiceOnly := range []bool{false, true} {
				back := answeredAll(t, m, class, choiceOnly)
				for form, text := range map[string]string{"XML": asXML(back), "rows": asCSV(back), "a row a learner": asWide(back)} {
					if !IsResponses([]byte(text)) {
						t.Fatalf("%s is not known for responses", form)
					}
					given, err := m.Responses(class, "back", []byte(text))
					if err != nil {
						t.Fatalf("%s, %s, %s: %v", name, who, form, err)
					}
					for _, r := range marked(t, m, class, given) {
						if r.Points != r.Of || !r.Handed || r.Open > 0 {
							t.Errorf("%s, %s as %s, choices %v: %s has %v of %v, %d open", name, who, form, choiceOnly, r.ID, r.Points, r.Of, r.Open)
						}
					}
				}
			}
		}
	}
}

// A wrong answer is named, what was left out is blank, a second attempt and one that was not
// handed in do not count, and what is no item of a set is passed over.
func TestResponsesOfOneLearner(t *testing.T) {
	m, class := example(t, "first-thread.yaml"), roster(2)
	back := answeredAll(t, m, class, false)
	all := items(t, m, class[0].ID)
	known := all[2].Problem.Expected.Errors[0]
	back[2].values = map[string][]string{"RESPONSE": {all[2].Problem.Expected.Unit.Fixed(known.Response.X)}}
	back[1].values = nil
	text := asXML(back)
	text = strings.Replace(text, "<export>", `<export><assessmentResult><context sourcedId="mf-0000"/>
<itemResult identifier="survey" datestamp="2026-12-01T10:00:00Z" sessionStatus="final"/>
<itemResult identifier="`+back[0].item+`" datestamp="2026-12-01T09:00:00Z" sessionStatus="pendingSubmission"><responseVariable identifier="RESPONSE"><candidateResponse><value>9</value></candidateResponse></responseVariable></itemResult>
<itemResult identifier="`+back[0].item+`" datestamp="2026-12-02T10:00:00Z" sessionStatus="final"><responseVariable identifier="RESPONSE"><candidateResponse><value>8</value></candidateResponse></responseVariable></itemResult>
</assessmentResult>`, 1)
	text = strings.ReplaceAll(text, `"`+back[0].item+`"`, `"c`+back[0].item[1:]+`"`) // of a cartridge, where a number is a box too
	given, err := m.Responses(class, "back.xml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	r := marked(t, m, class, given)[0]
	if r.Items[0].Verdict != answer.Right || r.Items[1].Verdict != Blank || r.Items[2].Verdict != answer.KnownError || r.Items[2].Slip != known.Name {
		t.Errorf("%v, %v, %v %s", r.Items[0].Verdict, r.Items[1].Verdict, r.Items[2].Verdict, r.Items[2].Slip)
	}
}

// What can't be read is said with the file and what would work.
func TestResponsesThatAreNone(t *testing.T) {
	m, class := example(t, "exit-ticket.yaml"), roster(1)
	code := m.Code(class[0].ID)
	for text, want := range map[string]string{
		"<html/>":           "has no assessmentResult in it: export the results as QTI results reporting",
		"<assessmentResult": "is no whole XML",
		"<assessmentResult><context/><itemResult identifier='other'/></assessmentResult>": "no response in it is to an item of a set",
		"<assessmentResult><itemResult identifier='q1-AAA-AAAA'/></assessmentResult>":     `no sheet of this set has the code "AAA-AAAA"`,
		"sourcedId,itemIdentifier,candidateResponse\nada,q9-" + code + ",1\n":             "question 9: the set has 5",
		"sourcedId,itemIdentifier,candidateResponse\nada,q1-" + code + ",1,2,3\n":         "row 2: 5 cells where there are 3 columns",
		"sourcedId,itemIdentifier,candidateResponse\nada\n":                               "row 2: no item",
		"itemIdentifier\n\"": "extraneous or missing",
	} {
		_, err := m.Responses(class, "back.xml", []byte(text))
		if err == nil || !strings.Contains(err.Error(), want) || !strings.Contains(err.Error(), "back.xml") {
			t.Errorf("%q: %v, want %q", text, err, want)
		}
	}
	for _, text := range []string{"code,item,answer\nK7F-2QXM,1,2", `{"code":"x"}`, "", "code,1,2,3"} {
		if IsResponses([]byte(text)) {
			t.Errorf("%q is taken for responses", text)
		}
	}
}

func FuzzResponses(f *testing.F) {
	b, err := ParseBlueprint("b.yaml", content.Examples()["exit-ticket.yaml"], tasks.Set{}, noLathe)
	if err != nil {
		f.Fatal(err)
	}
	m, err := NewMaker(b, testSecret, content.Shipped())
	if err != nil {
		f.Fatal(err)
	}
	class := roster(1)
	id := "q1-" + m.Code(class[0].ID)
	f.Add([]byte("<assessmentResult><context sourcedId='a'/><itemResult identifier='" + id + "' sessionStatus='final'><responseVariable identifier='RESPONSE'><candidateResponse><value>1</value></candidateResponse></responseVariable></itemResult></assessmentResult>"))
	f.Add([]byte("sourcedId,itemIdentifier,candidateResponse\na," + id + ",1|2\n"))
	f.Add([]byte("name;" + id + ".RESPONSE1\na;1\n"))
	f.Fuzz(func(t *testing.T, text []byte) {
		given, err := m.Responses(class, "f", text)
		if err == nil && len(given) == 0 {
			t.Error("nothing read and nothing said")
		}
		for _, g := range given {
			if !g.typed() || content.Printable(g.Text+g.Who) != g.Text+g.Who {
				t.Errorf("%+v", g)
			}
		}
	})
}

// The time of a blueprint is a limit where it says a length of time.
func TestTimeLimit(t *testing.T) {
	for text, want := range map[string]int{"40 minutes": 2400, "1 hour": 3600, " 90 Min. ": 5400, "30 s": 30, "": 0, "one lesson": 0, "0 minutes": 0, "5": 0, "40 minutes or so": 0, "1234 minutes": 0} {
		if got, ok := (&Blueprint{Time: text}).Seconds(); got != want || ok != (want > 0) {
			t.Errorf("%q: %d, %v, want %d", text, got, ok, want)
		}
	}
}
