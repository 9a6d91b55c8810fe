package qti

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
)

// The kinds of items of the profile that are written.
const (
	oldChoice   = "cc.multiple_choice.v0p1"
	oldTwo      = "cc.true_false.v0p1"
	oldSeveral  = "cc.multiple_response.v0p1"
	oldFillIn   = "cc.fib.v0p1"
	wholeScore  = 100
	mostListed  = 40 // numbers on either side of the key that are looked at
	nearAnError = 6  // the same for a common error
)

// oldRule is a condition of QTI 1.2 with what it is worth, in percent, and what is said.
type oldRule struct {
	when *node
	mark answer.Mark
	said string
}

// oldItem is an item in QTI 1.2.
func (p *Package) oldItem(it Item, weight string) (*node, error) {
	d := &draft{Item: it, pack: p}
	question := it.Words.Question(it.Problem)
	switch kind := it.Problem.Task.Kind; {
	case kind == answer.Choice && len(it.Problem.Expected.Options) >= 2:
		var all []whole
		for i, option := range it.Problem.Expected.Options {
			all = append(all, whole{it.Words.Options(it.Problem)[i], answer.OptionsResponse(option)})
		}
		return d.oldChoose(question, weight, all)
	case kind == answer.Several && !p.ChoiceOnly:
		return d.oldSeveral(question, weight)
	case kind.OneNumber() && !p.ChoiceOnly:
		if rules, ok := d.listed(); ok {
			return d.oldNumber(question, weight, rules), nil
		}
	}
	question, _ = it.Words.Ask(it.Problem) // whole answers call its lines by number
	all, err := d.wholes()
	if err != nil {
		return nil, err
	}
	return d.oldChoose(question, weight, all)
}

// fitsCartridge reports whether an item stands in a cartridge as its kind asks for, and not
// as a choice among whole answers.
func (d *draft) fitsCartridge() bool {
	kind := d.Problem.Task.Kind
	if kind.OneNumber() {
		_, ok := d.listed()
		return ok
	}
	return kind == answer.Choice || kind == answer.Several
}

// oldChoose is one choice among some answers.
func (d *draft) oldChoose(question, weight string, all []whole) (*node, error) {
	profile := oldChoice
	if len(all) == 2 {
		profile = oldTwo
	}
	var rules []oldRule
	labels := el("render_choice", "shuffle", "No")
	for i, w := range all {
		labels.add(label(i, w.shown))
		m := d.Problem.MarkResponse(w.response)
		rules = append(rules, oldRule{el("conditionvar").add(leaf("varequal", choiceID(i), "respident", response)), m, d.feedbackOf(m, true)})
	}
	ask := el("response_lid", "ident", response, "rcardinality", "Single").add(labels)
	return d.oldRoot(profile, weight, d.posed(question, d.pack.Words.Choice), ask, rules), nil
}

func label(i int, shown string) *node {
	return el("response_label", "ident", choiceID(i)).add(material(shown, ""))
}

// oldSeveral is a choice of all that fit; that none does is an option of its own.
func (d *draft) oldSeveral(question, weight string) (*node, error) {
	if err := d.offered(); err != nil {
		return nil, err
	}
	labels := el("render_choice", "shuffle", "No")
	shown := d.Words.Options(d.Problem)
	for i := range shown {
		labels.add(label(i, shown[i]))
	}
	labels.add(el("response_label", "ident", noneID).add(material(d.pack.Words.None, "")))
	ids := append(placeIDs(len(shown)), noneID)
	var rules []oldRule
	add := func(r answer.Response) {
		chosen, all := d.choiceIDs(r), el("and")
		for _, id := range ids {
			test := leaf("varequal", id, "respident", response)
			if !slices.Contains(chosen, id) {
				test = el("not").add(test)
			}
			all.add(test)
		}
		m := d.Problem.MarkResponse(r)
		rules = append(rules, oldRule{el("conditionvar").add(all), m, d.feedbackOf(m, true)})
	}
	add(d.Problem.Expected.Key)
	for _, known := range d.errors() {
		if d.Problem.MarkResponse(known.Response).Error == known.Name {
			add(known.Response)
		}
	}
	ask := el("response_lid", "ident", response, "rcardinality", "Multiple").add(labels)
	return d.oldRoot(oldSeveral, weight, d.posed(question, d.pack.Words.Several), ask, rules), nil
}

// oldNumber is one box, with a rule for each number that counts or has a name.
func (d *draft) oldNumber(question, weight string, rules []oldRule) *node {
	sentence := d.pack.Words.Number
	if !d.Problem.Task.Kind.Takeable() {
		sentence = d.pack.Words.Limits
	}
	if unit := d.Problem.Expected.Unit.Name; unit != "" {
		sentence += " (" + unit + ")"
	}
	box := el("render_fib", "fibtype", "Decimal", "prompt", "Box", "maxchars", "12").add(el("response_label", "ident", "answer"))
	ask := el("response_str", "ident", response, "rcardinality", "Single").add(box)
	return d.oldRoot(oldFillIn, weight, d.posed(question, sentence), ask, rules)
}

// listed are the numbers that are right or have a name, each as people write it; ok is false
// where more are right than can be listed.
func (d *draft) listed() (rules []oldRule, ok bool) {
	e := &d.Problem.Expected
	places := e.Unit.Places
	step := calc.Round(1/pow10(places), places)
	seen := map[string]bool{}
	look := func(held float64, far int) (edge bool) {
		middle := calc.Round(held*e.Unit.Factor, places)
		for i := -far; i <= far; i++ {
			text := calc.Fixed(middle+float64(i)*step, places)
			m := d.Problem.Mark(text)
			counts := m.Points > 0 || m.Error != ""
			if (i == -far || i == far) && m.Verdict == answer.Right {
				edge = true
			}
			for _, form := range writtenAs(text) {
				if counts && !seen[form] && d.Problem.Mark(form).Verdict == m.Verdict {
					seen[form] = true
					rules = append(rules, oldRule{el("conditionvar").add(leaf("varequal", form, "respident", response)), m, d.feedbackOf(m, i == 0)})
				}
			}
		}
		return edge
	}
	if look(e.Key.X, mostListed) {
		return nil, false
	}
	for _, known := range d.errors() {
		look(known.Response.X, nearAnError)
	}
	return rules, len(rules) > 0
}

func pow10(n int) float64 {
	x := 1.0
	for range n {
		x *= 10
	}
	return x
}

// writtenAs are the ways to write a number down with a point: 0.0500, .0500, 0.05 and .05.
func writtenAs(fixed string) []string {
	forms := []string{fixed}
	if strings.Contains(fixed, ".") {
		forms = append(forms, strings.TrimRight(strings.TrimRight(fixed, "0"), "."))
	}
	for _, form := range slices.Clone(forms) {
		if short, ok := strings.CutPrefix(form, "0."); ok {
			forms = append(forms, "."+short)
		}
	}
	return slices.DeleteFunc(forms, func(form string) bool { return form == "" })
}

// oldRoot puts an item together: what it is, the question, the rules, what is said.
func (d *draft) oldRoot(profile, weight string, question, ask *node, rules []oldRule) *node {
	title := clean(d.Words.Task.Title)
	if title == "" {
		title = d.ID
	}
	processing := el("resprocessing").add(el("outcomes").add(el("decvar", "varname", "SCORE", "vartype", "Decimal", "minvalue", "0", "maxvalue", strconv.Itoa(wholeScore))))
	wrong := answer.Mark{Verdict: answer.Wrong, Response: d.Problem.Expected.Key}
	rules = append(rules, oldRule{el("conditionvar").add(el("other")), wrong, d.feedbackOf(wrong, false)})
	var feedback []*node
	var said []string
	for _, r := range rules {
		points := r.mark.Points * wholeScore
		if r.mark.Verdict == answer.Convention {
			points *= 1 - d.pack.ConventionCosts
		}
		condition := el("respcondition", "continue", "No").add(r.when, leaf("setvar", decimal(points), "action", "Set", "varname", "SCORE"))
		processing.add(condition)
		if d.pack.Telling == Never {
			continue
		}
		i := slices.Index(said, r.said)
		if i < 0 {
			i = len(said)
			said = append(said, r.said)
			feedback = append(feedback, el("itemfeedback", "ident", fmt.Sprint("feedback-", i+1)).add(el("flow_mat").add(material(r.said, ""))))
		}
		condition.add(el("displayfeedback", "feedbacktype", "Response", "linkrefid", fmt.Sprint("feedback-", i+1)))
	}
	return el("item", "ident", d.ID, "title", title).add(
		el("itemmetadata").add(about("cc_profile", profile, "cc_weighting", weight, "qmd_scoringpermitted", "Yes", "qmd_computerscored", "Yes")),
		el("presentation", "label", d.Problem.Code.String()).add(question, ask), processing).add(feedback...)
}
