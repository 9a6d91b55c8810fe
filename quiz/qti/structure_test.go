package qti

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"strings"
	"testing"
	"unicode"
)

// checkItem checks what ties the parts of an item together.
func checkItem(item *tree) error {
	types, used := map[string]string{}, map[string]int{}
	for _, d := range append(item.all("responseDeclaration"), item.all("outcomeDeclaration")...) {
		id := d.attrs["identifier"]
		if types[id] != "" || !nameForm().MatchString(id) {
			return fmt.Errorf("%q is declared twice or no name", id)
		}
		types[id] = d.name + " " + d.attrs["cardinality"] + " " + d.attrs["baseType"]
	}
	want := map[string]string{
		"textEntryInteraction": "single float", "inlineChoiceInteraction": "single identifier", "orderInteraction": "ordered identifier",
		"choiceInteraction 1": "single identifier", "choiceInteraction 0": "multiple identifier",
	}
	for _, name := range []string{"textEntryInteraction", "inlineChoiceInteraction", "choiceInteraction", "orderInteraction"} {
		for _, n := range item.kid("itemBody").all(name) {
			id, kind := n.attrs["responseIdentifier"], strings.TrimSpace(n.name+" "+n.attrs["maxChoices"])
			used[id]++
			if types[id] != "responseDeclaration "+want[kind] {
				return fmt.Errorf("%s is for %s, declared %q", kind, id, types[id])
			}
			choices := map[string]bool{}
			for _, c := range append(n.all("simpleChoice"), n.all("inlineChoice")...) {
				if choices[c.attrs["identifier"]] || !nameForm().MatchString(c.attrs["identifier"]) || c.text == "" {
					return fmt.Errorf("choice %q twice, no name or empty", c.attrs["identifier"])
				}
				choices[c.attrs["identifier"]] = true
			}
			if err := checkValues(item, id, choices); err != nil {
				return err
			}
		}
	}
	for _, d := range item.all("responseDeclaration") {
		if used[d.attrs["identifier"]] != 1 {
			return fmt.Errorf("%s is used %d times", d.attrs["identifier"], used[d.attrs["identifier"]])
		}
	}
	shown, set := map[string]bool{}, map[string]bool{}
	for _, f := range item.all("modalFeedback") {
		id := f.attrs["identifier"]
		if shown[id] || !nameForm().MatchString(id) || types[f.attrs["outcomeIdentifier"]] != "outcomeDeclaration single identifier" {
			return fmt.Errorf("feedback %q twice, no name, or for no outcome", id)
		}
		if strings.TrimSpace(f.text) == "" {
			return fmt.Errorf("feedback %q says nothing", id)
		}
		shown[id] = true
	}
	for _, s := range item.all("setOutcomeValue") {
		id, v := s.attrs["identifier"], s.kids[0]
		if types[id] != "outcomeDeclaration single "+v.attrs["baseType"] {
			return fmt.Errorf("%s is set to a %s, declared %q", id, v.attrs["baseType"], types[id])
		}
		if id == "FEEDBACK" {
			set[v.text] = true
		}
	}
	for _, v := range append(item.all("variable"), item.all("correct")...) {
		if !strings.HasPrefix(types[v.attrs["identifier"]], "responseDeclaration") {
			return fmt.Errorf("%s is no response", v.attrs["identifier"])
		}
	}
	if len(set) != len(shown) {
		return fmt.Errorf("%d feedbacks for %d verdicts", len(shown), len(set))
	}
	for id := range set {
		if !shown[id] {
			return fmt.Errorf("no feedback for %q", id)
		}
	}
	return nil
}

// checkValues checks that the key and all that the processing compares a response
// with are choices of its interaction.
func checkValues(item *tree, id string, choices map[string]bool) error {
	var values []string
	for _, d := range item.all("responseDeclaration") {
		if d.attrs["identifier"] == id {
			for _, v := range d.all("value") {
				values = append(values, v.text)
			}
		}
	}
	for _, m := range item.all("match") {
		if m.kid("variable").attrs["identifier"] == id {
			for _, v := range m.all("baseValue") {
				values = append(values, v.text)
			}
		}
	}
	for _, v := range values {
		if len(choices) > 0 && !choices[v] {
			return fmt.Errorf("%q is no choice of %s", v, id)
		}
	}
	return nil
}

// Every file of every task keeps the standard's rules, in both versions and both
// kinds of package.
func TestEveryFileKeepsTheStandard(t *testing.T) {
	slot := everyTask(t, 1)
	slot.Select = 3
	for _, v := range []Version{V21, V30} {
		for _, choiceOnly := range []bool{false, true} {
			names, files := packed(t, packageOf(v, choiceOnly, slot, Slot{ID: "one", Items: []Item{oneItem(t)}}))
			for _, name := range names {
				n := parse(t, files[name])
				if strings.HasSuffix(name, ".svg") {
					if n.name != "svg" || n.space != "http://www.w3.org/2000/svg" {
						t.Errorf("%s is %s of %q", name, n.name, n.space)
					}
					continue
				}
				if err := checkElement(n); err != nil {
					t.Errorf("%s: %v", name, err)
				}
				if err := checkNaming(files[name], v); err != nil {
					t.Errorf("%s: %v", name, err)
				}
				if n.name == "assessmentItem" {
					if err := checkItem(n); err != nil {
						t.Errorf("%s: %v", name, err)
					}
					if hasBody := n.kid("modalFeedback").kid("contentBody") != nil; hasBody != (v == V30) {
						t.Errorf("%s: content body in the feedback: %v", name, hasBody)
					}
				}
			}
			checkPackage(t, v, names, files)
		}
	}
}

func oneItem(t testing.TB) Item {
	p := remade(t, "compound-travel@2-7f3a")
	return Item{ID: "one-item", Problem: p, Words: wordsOf(t, "compound-travel"), Points: 1}
}

// checkNaming checks the spelling of names: camelCase in 2.1, qti-kebab-case in 3.0;
// name spaces; no control characters.
func checkNaming(data []byte, v Version) error {
	decoder := xml.NewDecoder(bytes.NewReader(data))
	for first := true; ; {
		token, err := decoder.Token()
		if err == io.EOF {
			break
		}
		if err != nil {
			return err
		}
		start, ok := token.(xml.StartElement)
		if !ok {
			continue
		}
		name, s := start.Name.Local, schemes[v]
		space := s.items
		if common[name] && name != "p" && name != "img" {
			space = s.manifest
		}
		if start.Name.Space != space || first && !bytes.HasPrefix(data, []byte(xml.Header[:len(xml.Header)-1])) {
			return fmt.Errorf("%s is in %q", name, start.Name.Space)
		}
		first = false
		if !common[name] && strings.HasPrefix(name, "qti-") != (v == V30) {
			return fmt.Errorf("%s is no name of the version", name)
		}
		for _, a := range start.Attr {
			name += a.Name.Local
			if a.Name.Space == xsi || a.Name.Local == "identifierref" {
				name = strings.TrimSuffix(name, a.Name.Local)
			}
		}
		if v == V30 && strings.ContainsFunc(name, unicode.IsUpper) || v == V21 && strings.Contains(name, "-") {
			return fmt.Errorf("%s is spelt for the other version", name)
		}
	}
	for _, r := range string(data) {
		if r != '\n' && (unicode.IsControl(r) || unicode.Is(unicode.Cf, r)) || r == unicode.ReplacementChar {
			return fmt.Errorf("it holds %U", r)
		}
	}
	return nil
}

// checkPackage checks the manifest and the test against the files.
func checkPackage(t *testing.T, v Version, names []string, files map[string][]byte) {
	t.Helper()
	manifest := parse(t, files[manifestFile])
	listed, ids := map[string]string{manifestFile: ""}, map[string]bool{}
	for _, r := range manifest.all("resource") {
		id, href := r.attrs["identifier"], r.attrs["href"]
		if ids[id] || !nameForm().MatchString(id) || files[href] == nil || r.kid("file").attrs["href"] != href {
			t.Errorf("resource %q, %q", id, href)
		}
		ids[id] = true
		listed[href] = r.attrs["type"]
		want := map[Version][2]string{V21: {"imsqti_item_xmlv2p1", "imsqti_test_xmlv2p1"}, V30: {"imsqti_item_xmlv3p0", "imsqti_test_xmlv3p0"}}[v]
		if r.attrs["type"] != want[map[bool]int{true: 1}[href == testFile]] {
			t.Errorf("%s is a %s", href, r.attrs["type"])
		}
	}
	depends := map[string]bool{}
	for _, d := range manifest.all("dependency") {
		if !ids[d.attrs["identifierref"]] {
			t.Errorf("depends on %q", d.attrs["identifierref"])
		}
		depends[d.attrs["identifierref"]] = true
	}
	items := 0
	for _, name := range names {
		if strings.HasPrefix(name, "items/") {
			items++
		}
	}
	for _, f := range manifest.all("file") {
		listed[f.attrs["href"]] = ""
	}
	if len(depends) != items || names[0] != manifestFile {
		t.Errorf("%d dependencies, %d files, first %s", len(depends), len(names), names[0])
	}
	for _, name := range names {
		if _, ok := listed[name]; !ok {
			t.Errorf("%s is not in the manifest", name)
		}
	}
	test := parse(t, files[testFile])
	seen := map[string]bool{}
	for _, name := range []string{"testPart", "assessmentSection", "assessmentItemRef"} {
		for _, n := range test.all(name) {
			if id := n.attrs["identifier"]; seen[id] || !nameForm().MatchString(id) {
				t.Errorf("%q twice or no name", id)
			}
			seen[n.attrs["identifier"]] = true
			if name == "assessmentItemRef" && parse(t, files[n.attrs["href"]]).attrs["identifier"] != n.attrs["identifier"] {
				t.Errorf("%s is not in %s", n.attrs["identifier"], n.attrs["href"])
			}
		}
	}
	if len(test.all("assessmentItemRef")) != items {
		t.Error("the test does not have every item")
	}
}

// The rules notice what they are there for.
func TestRulesNoticeMistakes(t *testing.T) {
	_, files := packed(t, packageOf(V21, false, Slot{ID: "one", Items: []Item{oneItem(t)}}))
	sound := string(files[itemFile("one-item")])
	for _, c := range [][2]string{
		{`cardinality="single"`, `cardinality="multiple"`}, {`responseIdentifier="RESPONSE"`, `responseIdentifier="OTHER"`},
		{`<responseElse>`, `<responseElse><isNull/>`}, {` adaptive="false"`, ``}, {`identifier="slip-double"`, `identifier="slip-triple"`},
		{`showHide="show"`, `showHide="yes"`}, {`<itemBody>`, `<itemBody><div/>`}, {`identifier="FEEDBACK"`, `identifier="2nd"`},
	} {
		broken := strings.Replace(sound, c[0], c[1], 1)
		n := parse(t, []byte(broken))
		if broken == sound || checkElement(n) == nil && checkItem(n) == nil {
			t.Errorf("nothing noticed after %s became %s", c[0], c[1])
		}
	}
}
