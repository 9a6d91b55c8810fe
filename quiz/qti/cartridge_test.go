package qti

import (
	"bytes"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"scratchpass/quiz/answer"
)

// cartridgeStandard is what the published schemas of Common Cartridge 1.1 say of the elements
// that are written: ccv1p1_qtiasiv1p2p1_v1p0.xsd of 2010-10-31 and ccv1p1_imscp_v1p2_v1p0.xsd,
// read and written down here by hand. No validator has read a package. Of
// ccv1p1_lommanifest_v1p0.xsd nothing is held here but the three elements that are written: they
// are as public cartridges have them. The rules for what hangs together are in checkOldItem.
var cartridgeStandard = map[string]element{
	"questestinterop":  {must: "schemaLocation", inside: "assessment"},
	"assessment":       {must: "ident title", inside: "qtimetadata rubric? presentation_material? section"},
	"section":          {must: "ident", inside: "item+"},
	"qtimetadata":      {inside: "qtimetadatafield+"},
	"qtimetadatafield": {inside: "fieldlabel fieldentry"},
	"fieldlabel":       {mixed: true},
	"fieldentry":       {mixed: true},
	"item":             {must: "ident", may: "title", inside: "itemmetadata? presentation? resprocessing* itemfeedback*"},
	"itemmetadata":     {inside: "qtimetadata+"},
	"presentation":     {may: "label", inside: "material|response_lid|response_str+"},
	"material":         {inside: "mattext+"},
	"mattext":          {may: "texttype", mixed: true},
	"response_lid":     {must: "ident", may: "rcardinality=Single|Multiple|Ordered", inside: "material? render_choice|render_fib material?"},
	"response_str":     {must: "ident", may: "rcardinality=Single|Multiple|Ordered", inside: "material? render_choice|render_fib material?"},
	"render_choice":    {may: "shuffle=Yes|No", inside: "response_label*"},
	"render_fib":       {may: "fibtype=Decimal|Integer|Scientific|String prompt=Asterisk|Box|Dashline|Underline maxchars", inside: "response_label*"},
	"response_label":   {must: "ident", inside: "material*"},
	"resprocessing":    {inside: "outcomes respcondition+"},
	"outcomes":         {inside: "decvar"},
	"decvar":           {must: "varname=SCORE", may: "vartype=Decimal|Integer minvalue maxvalue"},
	"respcondition":    {may: "continue=Yes|No", inside: "conditionvar setvar* displayfeedback*"},
	"conditionvar":     {inside: "and|other|varequal+"},
	"and":              {inside: "not|varequal+"},
	"not":              {inside: "varequal+"},
	"other":            {},
	"varequal":         {must: "respident", mixed: true},
	"setvar":           {may: "varname action=Set", mixed: true},
	"displayfeedback":  {must: "feedbacktype=Response linkrefid"},
	"itemfeedback":     {must: "ident", inside: "flow_mat+"},
	"flow_mat":         {inside: "material+"},
}

var cartridgeManifest = map[string]element{
	"manifest":      {must: "identifier schemaLocation lomimscc", inside: "metadata organizations resources"},
	"metadata":      {inside: "schema schemaversion lom"},
	"schema":        {mixed: true},
	"schemaversion": {mixed: true},
	"lom":           {inside: "general"},
	"general":       {inside: "title"},
	"organizations": {inside: "organization?"},
	"organization":  {must: "identifier structure=rooted-hierarchy", inside: "item"},
	"item":          {must: "identifier", may: "identifierref", inside: "title? item*"},
	"title":         {inside: "string?", mixed: true},
	"string":        {may: "language", mixed: true},
	"resources":     {inside: "resource+"},
	"resource":      {must: "identifier type=webcontent|imsqti_xmlv1p2/imscc_xmlv1p1/assessment", may: "href", inside: "file* dependency*"},
	"file":          {must: "href"},
	"dependency":    {must: "identifierref"},
}

// fieldsOf are the metadata right below an element.
func fieldsOf(n *tree) map[string][]string {
	all := map[string][]string{}
	for _, f := range n.kid("qtimetadata").kids {
		label := f.kid("fieldlabel").text
		all[label] = append(all[label], f.kid("fieldentry").text)
	}
	return all
}

// checkOldItem checks rules 2 to 6, 9, 12 and 13 of the profile: which metadata an item has,
// which response goes with its kind, and that all that is referred to is there.
func checkOldItem(item *tree) error {
	fields := fieldsOf(item.kid("itemmetadata"))
	for label, entries := range fields {
		if !strings.Contains(" cc_profile cc_question_category cc_weighting qmd_scoringpermitted qmd_computerscored ", " "+label+" ") || len(entries) != 1 {
			return fmt.Errorf("metadata %s stands %d times", label, len(entries))
		}
	}
	if n, err := strconv.Atoi(fields["cc_weighting"][0]); err != nil || n < 1 || n > 99 {
		return fmt.Errorf("weight %q", fields["cc_weighting"])
	}
	present := item.kid("presentation")
	kind, rows := present.kid("response_lid"), len(present.all("response_label"))
	switch profile := fields["cc_profile"][0]; {
	case profile == oldFillIn && (kind != nil || present.kid("response_str").kid("render_fib") == nil):
		return fmt.Errorf("%s without a box", profile)
	case profile == oldChoice && (kind.attrs["rcardinality"] != "Single" || rows < 3), profile == oldTwo && (kind.attrs["rcardinality"] != "Single" || rows != 2),
		profile == oldSeveral && (kind.attrs["rcardinality"] != "Multiple" || rows < 2):
		return fmt.Errorf("%s, %s, with %d rows", profile, kind.attrs["rcardinality"], rows)
	case profile != oldFillIn && profile != oldChoice && profile != oldTwo && profile != oldSeveral:
		return fmt.Errorf("no profile is called %s", profile)
	}
	labels, feedback, shown := map[string]bool{}, map[string]bool{}, map[string]bool{}
	for _, l := range present.all("response_label") {
		if labels[l.attrs["ident"]] {
			return fmt.Errorf("two labels %s", l.attrs["ident"])
		}
		labels[l.attrs["ident"]] = true
	}
	for _, f := range item.all("itemfeedback") {
		if feedback[f.attrs["ident"]] || f.attrs["ident"] == "hint" || f.attrs["ident"] == "solution" {
			return fmt.Errorf("feedback %s twice, or a reserved name", f.attrs["ident"])
		}
		feedback[f.attrs["ident"]] = true
	}
	for _, v := range item.all("varequal") {
		if v.attrs["respident"] != response || kind != nil && !labels[v.text] {
			return fmt.Errorf("compares %s with %q", v.attrs["respident"], v.text)
		}
	}
	for _, s := range item.all("displayfeedback") {
		if shown[s.attrs["linkrefid"]] = true; !feedback[s.attrs["linkrefid"]] {
			return fmt.Errorf("no feedback %s", s.attrs["linkrefid"])
		}
	}
	if len(shown) != len(feedback) {
		return fmt.Errorf("%d feedbacks, %d shown", len(feedback), len(shown))
	}
	return nil
}

// oldScore is what QTI 1.2 makes of a response: the first condition that fits.
func oldScore(item *tree, given ...string) float64 {
	has := func(v *tree) bool {
		for _, g := range given {
			if g == v.text {
				return true
			}
		}
		return false
	}
	for _, c := range item.kid("resprocessing").all("respcondition") {
		fits := true
		tests := c.kid("conditionvar").kids
		if tests[0].name == "and" {
			tests = tests[0].kids
		}
		for _, test := range tests {
			switch test.name {
			case "varequal":
				fits = fits && has(test)
			case "not":
				fits = fits && !has(test.kids[0])
			}
		}
		if fits {
			score, err := strconv.ParseFloat(c.kid("setvar").text, 64)
			if err != nil {
				panic(err)
			}
			return score
		}
	}
	return -1
}

// cartridged writes a cartridge and returns its files.
func cartridged(t testing.TB, p Package) (names []string, files map[string][]byte) {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, p); err != nil {
		t.Fatal(err)
	}
	names, files, err := unpack(b.Bytes())
	if err != nil {
		t.Fatal(err)
	}
	return names, files
}

// Every task comes out as the published profile has it, its key counts in full, what is listed
// is worth what quiz says, and anything else is worth nothing.
func TestCartridgeKeepsTheProfile(t *testing.T) {
	slot, items, met := everyTask(t, 1), map[string]Item{}, map[string]bool{}
	slot.Items = slices.DeleteFunc(slot.Items, func(it Item) bool { // to list numbers takes long: each task once, in both systems
		name := it.Problem.Task.Name + it.Problem.Code.System.String()
		again := met[name]
		met[name], items[it.ID] = true, it
		return again
	})
	for choiceOnly, how := range map[bool]Asked{false: InCartridge, true: AsWhole} {
		pack := packageOf(V12, choiceOnly)
		for n := 0; n < len(slot.Items); n += 5 { // a sheet has few questions, and a file some size
			pack.Slots = append(pack.Slots, Slot{ID: fmt.Sprint("part", n), Items: slot.Items[n:min(n+5, len(slot.Items))]})
		}
		pack.Seconds, pack.Telling = 2430, AtTheEnd
		names, files := cartridged(t, pack)
		kinds := map[string]int{}
		for _, name := range names {
			n := parse(t, files[name])
			switch {
			case strings.HasSuffix(name, ".svg"):
			case name == manifestFile:
				if err := checkBy(cartridgeManifest, n); err != nil {
					t.Error(err)
				}
				for _, r := range n.all("resource") {
					if exam := r.attrs["type"] != "webcontent"; exam && (len(r.all("file")) != 1 || r.attrs["href"] != "") {
						t.Errorf("%s has %d files and href %q", r.attrs["identifier"], len(r.all("file")), r.attrs["href"])
					}
				}
			default:
				if err := checkBy(cartridgeStandard, n); err != nil {
					t.Errorf("%s: %v", name, err)
				}
				about := fieldsOf(n.kid("assessment"))
				if about["cc_profile"][0] != "cc.exam.v0p1" || about["qmd_timelimit"][0] != "41" || about["cc_maxattempts"][0] != "1" || len(about) != 9 {
					t.Errorf("%v", about)
				}
				for _, item := range n.all("item") {
					kinds[fieldsOf(item.kid("itemmetadata"))["cc_profile"][0]]++
					if err := checkOldItem(item); err != nil {
						t.Errorf("%s: %v", item.attrs["ident"], err)
					}
					checkOldScores(t, items[item.attrs["ident"]], item)
					checkOldReplies(t, items[item.attrs["ident"]], how, item)
				}
			}
		}
		t.Log(kinds)
		if !choiceOnly && (kinds[oldFillIn] == 0 || kinds[oldSeveral] == 0) || choiceOnly && kinds[oldFillIn]+kinds[oldSeveral] > 0 || kinds[oldChoice] == 0 {
			t.Errorf("choice only %v: %v", choiceOnly, kinds)
		}
	}
}

// checkOldScores compares what an item gives with what quiz says.
func checkOldScores(t *testing.T, it Item, item *tree) {
	t.Helper()
	p := it.Problem
	right := 0
	profile := fieldsOf(item.kid("itemmetadata"))["cc_profile"][0]
	switch profile {
	case oldFillIn:
		for _, v := range item.all("varequal") {
			if got, want := oldScore(item, v.text), p.Mark(v.text).Points*wholeScore; got != want {
				t.Errorf("%s %q: %v, quiz says %v", it.ID, v.text, got, want)
			}
		}
		key := p.Expected.Unit.Fixed(p.Expected.Key.X)
		if oldScore(item, key) != wholeScore || oldScore(item, "99999") != 0 || oldScore(item) != 0 {
			t.Errorf("%s: the key %s gives %v", it.ID, key, oldScore(item, key))
		}
		return
	case oldSeveral:
		d := draft{Item: it}
		if oldScore(item, d.choiceIDs(p.Expected.Key)...) != wholeScore || oldScore(item) != 0 {
			t.Errorf("%s: the key gives %v", it.ID, oldScore(item, d.choiceIDs(p.Expected.Key)...))
		}
		return
	}
	for i, l := range item.all("response_label") {
		got := oldScore(item, l.attrs["ident"])
		if p.Task.Kind == answer.Choice {
			if want := p.MarkResponse(answer.OptionsResponse(p.Expected.Options[i])).Points * wholeScore; got != want {
				t.Errorf("%s option %d: %v, quiz says %v", it.ID, i+1, got, want)
			}
		}
		if got == wholeScore {
			right++
		}
	}
	if right != 1 {
		t.Errorf("%s: %d right answers", it.ID, right)
	}
}

// checkOldReplies compares what comes back from an item with what the item made of it.
func checkOldReplies(t *testing.T, it Item, how Asked, item *tree) {
	t.Helper()
	try := func(values ...string) {
		text, err := Reply(it, how, responses{response: values})
		if got, want := it.Problem.Mark(text).Points*wholeScore, oldScore(item, values...); err != nil || got != want {
			t.Errorf("%s %q as %q: %v, the item says %v, %v", it.ID, values, text, got, want, err)
		}
	}
	switch fieldsOf(item.kid("itemmetadata"))["cc_profile"][0] {
	case oldSeveral:
		d := draft{Item: it}
		try(d.choiceIDs(it.Problem.Expected.Key)...)
	case oldFillIn:
		try(it.Problem.Expected.Unit.Fixed(it.Problem.Expected.Key.X))
	default:
		for _, l := range item.all("response_label") {
			try(l.attrs["ident"])
		}
	}
}

// Without feedback nothing of it is in the package, in no version.
func TestNothingIsTold(t *testing.T) {
	pack := packageOf(V30, false, Slot{ID: "slot", Items: []Item{oneItem(t)}})
	pack.Telling, pack.Version = Never, V12
	_, files := cartridged(t, pack)
	if item := parse(t, files["assessments/slot.xml"]); len(item.all("itemfeedback"))+len(item.all("displayfeedback")) > 0 || oldScore(item.all("item")[0]) != 0 {
		t.Error("the cartridge tells")
	}
	pack.Version = V30
	_, files = packed(t, pack)
	if item := parse(t, files[itemFile("one-item")]); item.kid("modalFeedback") != nil {
		t.Error("the item tells")
	}
	if control := parse(t, files[testFile]).all("itemSessionControl")[0]; control.attrs["showFeedback"] != "false" || control.attrs["allowReview"] != "false" {
		t.Error("the test tells")
	}
}

// A form of each learner is drawn whole, or each has a test of their own; the highest score is
// what one learner can get.
func TestDeals(t *testing.T) {
	slots := []Slot{{ID: "a", Items: []Item{{ID: "a1", Points: 2}, {ID: "a2", Points: 1}}}, {ID: "b", Items: []Item{{ID: "b1", Points: 1}}}}
	for s := range slots {
		for i := range slots[s].Items {
			it := oneItem(t)
			slots[s].Items[i].Problem, slots[s].Items[i].Words = it.Problem, it.Words
		}
	}
	for deal, want := range map[Deal]string{EverySlot: "test.xml 4", OneSlot: "test.xml 3", TestOfSlots: "test-a.xml 3 test-b.xml 1"} {
		pack := packageOf(V21, false, slots...)
		pack.Deal, pack.Seconds = deal, 90
		names, files := packed(t, pack)
		var got []string
		for _, name := range names {
			n := parse(t, files[name])
			if err := checkElement(n); err != nil {
				t.Errorf("%s: %v", name, err)
			}
			if n.name != "assessmentTest" {
				continue
			}
			got = append(got, name, n.all("outcomeDeclaration")[0].attrs["normalMaximum"])
			if limits := n.kid("timeLimits"); limits == nil || limits.attrs["maxTime"] != "90" {
				t.Errorf("%s has no time limit", name)
			}
			if sections := n.kid("testPart").all("assessmentSection"); deal == OneSlot && (len(sections) != 3 || sections[0].kid("selection").attrs["select"] != "1") {
				t.Errorf("%d sections", len(sections))
			}
		}
		if strings.Join(got, " ") != want {
			t.Errorf("%d: %q, want %s", deal, got, want)
		}
	}
	pack := packageOf(V12, false, slots[0])
	pack.Slots[0].Items[0].Points = 49.5
	if err := Write(&bytes.Buffer{}, pack); err != nil {
		t.Error(err)
	}
	pack.Slots[0].Items[0].Points = 99.5
	if err := Write(&bytes.Buffer{}, pack); err == nil || !strings.Contains(err.Error(), "points of a cartridge 99.5: give whole points to 99") {
		t.Error(err)
	}
}
