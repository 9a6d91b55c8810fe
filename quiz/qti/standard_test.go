package qti

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
)

// element is what the standard says of one element: which attributes it must and
// may have, with the values allowed, and what stands in it, in order.
type element struct {
	must, may string // names between spaces; name=a|b lists the values
	inside    string // children in order: name once, name? at most once, name* any, name+ some; a|b is either
	mixed     bool   // text between the children
	least     int    // of children, where inside is one choice
}

const expression = "and|or|gte|lte|lt|match|isNull|member|not"

// standard holds the elements that we write, under their names of version 2.1. It
// follows the information model of QTI 2.1 and 3.0, cut down to what we use.
var standard = map[string]element{
	"assessmentItem": {
		must:   "identifier title label adaptive=false timeDependent=false lang schemaLocation",
		inside: "responseDeclaration+ outcomeDeclaration+ itemBody responseProcessing modalFeedback*",
	},
	"responseDeclaration": {must: "identifier cardinality=single|multiple|ordered baseType=float|identifier", inside: "correctResponse"},
	"outcomeDeclaration":  {must: "identifier cardinality=single baseType=float|identifier", may: "normalMaximum normalMinimum", inside: "defaultValue?"},
	"correctResponse":     {inside: "value+"},
	"defaultValue":        {inside: "value+"},
	"value":               {mixed: true},

	"itemBody":                {inside: "p* choiceInteraction? orderInteraction? p*"},
	"p":                       {inside: "textEntryInteraction|inlineChoiceInteraction|img*", mixed: true},
	"img":                     {must: "src alt", may: "width height"},
	"textEntryInteraction":    {must: "responseIdentifier", may: "expectedLength"},
	"inlineChoiceInteraction": {must: "responseIdentifier shuffle=false", inside: "inlineChoice+"},
	"inlineChoice":            {must: "identifier", mixed: true},
	"choiceInteraction":       {must: "responseIdentifier shuffle=false maxChoices=0|1", inside: "prompt? simpleChoice+"},
	"orderInteraction":        {must: "responseIdentifier shuffle=false", may: "orientation=vertical|horizontal", inside: "prompt? simpleChoice+"},
	"prompt":                  {mixed: true},
	"simpleChoice":            {must: "identifier", mixed: true},

	"responseProcessing": {inside: "responseCondition"},
	"responseCondition":  {inside: "responseIf responseElseIf* responseElse?"},
	"responseIf":         {inside: expression + " setOutcomeValue+"},
	"responseElseIf":     {inside: expression + " setOutcomeValue+"},
	"responseElse":       {inside: "setOutcomeValue+"},
	"setOutcomeValue":    {must: "identifier", inside: "baseValue|sum"},
	"and":                {inside: expression + "+", least: 2},
	"or":                 {inside: expression + "+", least: 2},
	"gte":                {inside: "variable baseValue"},
	"lte":                {inside: "variable baseValue"},
	"lt":                 {inside: "variable baseValue"},
	"not":                {inside: expression},
	"match":              {inside: "variable correct|baseValue|multiple|ordered"},
	"member":             {inside: "baseValue variable"},
	"isNull":             {inside: "variable"},
	"multiple":           {inside: "baseValue+"},
	"ordered":            {inside: "baseValue+"},
	"variable":           {must: "identifier"},
	"correct":            {must: "identifier"},
	"baseValue":          {must: "baseType=float|identifier", mixed: true},

	"modalFeedback": {must: "outcomeIdentifier showHide=show identifier", inside: "p* contentBody?"},
	"contentBody":   {inside: "p+"},

	"assessmentTest":     {must: "identifier title schemaLocation", inside: "outcomeDeclaration+ timeLimits? testPart+ outcomeProcessing?"},
	"timeLimits":         {must: "maxTime"},
	"testPart":           {must: "identifier navigationMode=linear|nonlinear submissionMode=individual|simultaneous", inside: "itemSessionControl? assessmentSection+"},
	"itemSessionControl": {may: "maxAttempts showFeedback=true|false allowReview=true|false"},
	"assessmentSection":  {must: "identifier title visible=true", inside: "selection? assessmentSection|assessmentItemRef+"},
	"selection":          {must: "select"},
	"assessmentItemRef":  {must: "identifier href"},
	"outcomeProcessing":  {inside: "setOutcomeValue+"},
	"sum":                {inside: "testVariables"},
	"testVariables":      {must: "variableIdentifier"},

	"manifest":      {must: "identifier schemaLocation", inside: "metadata organizations resources"},
	"metadata":      {inside: "schema schemaversion"},
	"schema":        {mixed: true},
	"schemaversion": {mixed: true},
	"organizations": {},
	"resources":     {inside: "resource+"},
	"resource":      {must: "identifier type href", inside: "file+ dependency*"},
	"file":          {must: "href"},
	"dependency":    {must: "identifierref"},
}

// orderForms are the orders of the tables as regular expressions.
var orderForms = map[string]*regexp.Regexp{}

// orderForm is what may stand inside an element as a regular expression over names with a
// space behind each.
func orderForm(inside string) *regexp.Regexp {
	if orderForms[inside] == nil {
		var form strings.Builder
		for _, part := range strings.Fields(inside) {
			names := strings.TrimRight(part, "?*+")
			fmt.Fprintf(&form, "(?:(?:%s) )%s", names, part[len(names):])
		}
		orderForms[inside] = regexp.MustCompile("^" + form.String() + "$")
	}
	return orderForms[inside]
}

// checkElement compares an element and all below it with the table.
func checkElement(n *tree) error { return checkBy(standard, n) }

// checkBy is checkElement for another table.
func checkBy(table map[string]element, n *tree) error {
	rule, known := table[n.name]
	if !known {
		return fmt.Errorf("%s is no element we know", n.name)
	}
	allowed := map[string]string{}
	for i, list := range []string{rule.must, rule.may} {
		for _, word := range strings.Fields(list) {
			name, values, _ := strings.Cut(word, "=")
			allowed[name] = values
			got, has := n.attrs[name]
			if i == 0 && (!has || got == "") {
				return fmt.Errorf("%s lacks %s", n.name, name)
			}
			if has && values != "" && !slices.Contains(strings.Split(values, "|"), got) {
				return fmt.Errorf("%s has %s=%q", n.name, name, got)
			}
		}
	}
	for name := range n.attrs {
		if _, ok := allowed[name]; !ok && name != "xmlns" && name != "xsi" {
			return fmt.Errorf("%s has an attribute %s", n.name, name)
		}
	}
	if err := checkOrder(n, rule); err != nil {
		return err
	}
	if strings.TrimSpace(n.text) != "" && len(n.kids) == 0 && !rule.mixed {
		return fmt.Errorf("%s holds the text %q", n.name, n.text)
	}
	for _, k := range n.kids {
		if err := checkBy(table, k); err != nil {
			return err
		}
	}
	return nil
}

// checkOrder matches the children's names, each with a space behind it, with what may
// stand inside.
func checkOrder(n *tree, rule element) error {
	var names strings.Builder
	for _, k := range n.kids {
		names.WriteString(k.name + " ")
	}
	if !orderForm(rule.inside).MatchString(names.String()) {
		return fmt.Errorf("%s holds %q, want %q", n.name, names.String(), rule.inside)
	}
	if len(n.kids) < rule.least {
		return fmt.Errorf("%s holds %d, want %d", n.name, len(n.kids), rule.least)
	}
	return nil
}
