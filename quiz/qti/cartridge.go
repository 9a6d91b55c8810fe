package qti

import (
	"fmt"
	"html"
	"math"
	"strconv"
	"strings"

	"scratchpass/calc"
)

// The name spaces of a cartridge.
const (
	cartridgeSpace = "http://www.imsglobal.org/xsd/imsccv1p1/imscp_v1p1"
	cartridgeAt    = "http://www.imsglobal.org/profile/cc/ccv1p1/ccv1p1_imscp_v1p2_v1p0.xsd"
	manifestLOM    = "http://ltsc.ieee.org/xsd/imsccv1p1/LOM/manifest"
	manifestLOMAt  = "http://www.imsglobal.org/profile/cc/ccv1p1/LOM/ccv1p1_lommanifest_v1p0.xsd"
	oldSpace       = "http://www.imsglobal.org/xsd/ims_qtiasiv1p2"
	oldAt          = "http://www.imsglobal.org/profile/cc/ccv1p1/ccv1p1_qtiasiv1p2p1_v1p0.xsd"
)

// cartridge makes every file of an IMS Common Cartridge 1.1, whose assessments are in QTI
// 1.2.1, for importers that take nothing newer; the manifest first. Each slot is an assessment.
//
// That profile compares answers as texts and knows no ranges. So a number is right where it
// is written as one of the numbers within the tolerance, with the places asked for, with or
// without zeros at its ends; where those are too many, and for rows of numbers, orders and
// designations, the item is one choice among whole answers. The right number in another unit
// is wrong there. Points are whole weights from 1 to 99, doubled where there are halves.
func (p *Package) cartridge() ([]file, error) {
	weigh, err := p.weights()
	if err != nil {
		return nil, err
	}
	resources := el("resources")
	lom := el("lomimscc:lom").add(el("lomimscc:general").add(el("lomimscc:title").add(leaf("lomimscc:string", p.Title, "language", "en"))))
	items := el("item", "identifier", "items")
	files := []file{{name: manifestFile, root: el("manifest", "xmlns", cartridgeSpace, "xmlns:lomimscc", manifestLOM, "xmlns:xsi", xsi,
		"xsi:schemaLocation", cartridgeSpace+" "+cartridgeAt+" "+manifestLOM+" "+manifestLOMAt, "identifier", "manifest-"+p.ID).add(
		el("metadata").add(leaf("schema", "IMS Common Cartridge"), leaf("schemaversion", "1.1.0"), lom),
		el("organizations").add(el("organization", "identifier", "organization", "structure", "rooted-hierarchy").add(items)), resources)}}
	for _, slot := range p.Slots {
		name := "assessments/" + slot.ID + ".xml"
		resource := el("resource", "identifier", "assessment-"+slot.ID, "type", "imsqti_xmlv1p2/imscc_xmlv1p1/assessment").add(el("file", "href", name))
		items.add(el("item", "identifier", "item-"+slot.ID, "identifierref", "assessment-"+slot.ID).add(leaf("title", p.Title+": "+slot.title())))
		resources.add(resource)
		section := el("section", "ident", "section-"+slot.ID)
		var pictures []*node
		for _, it := range slot.Items {
			item, err := p.oldItem(it, weigh(it.Points))
			if err != nil {
				return nil, fmt.Errorf("item %s: %w", it.ID, err)
			}
			section.add(item)
			if it.Picture != nil {
				id := "picture-" + it.ID
				resource.add(el("dependency", "identifierref", id))
				pictures = append(pictures, el("resource", "identifier", id, "type", "webcontent", "href", pictureFile(it.ID)).add(el("file", "href", pictureFile(it.ID))))
				files = append(files, file{name: pictureFile(it.ID), raw: it.Picture.SVG()})
			}
		}
		resources.add(pictures...)
		files = append(files, file{name: name, root: el("questestinterop", "xmlns", oldSpace, "xmlns:xsi", xsi, "xsi:schemaLocation", oldSpace+" "+oldAt).add(
			el("assessment", "ident", slot.ID, "title", p.Title+": "+slot.title()).add(p.aboutAssessment(), section))})
	}
	return files, nil
}

// weights is what the points of an item are as a weight: a whole number from 1 to 99.
func (p *Package) weights() (func(points float64) string, error) {
	times, most := 1.0, 0.0
	for _, slot := range p.Slots {
		for _, it := range slot.Items {
			most = max(most, it.Points)
			if it.Points != math.Trunc(it.Points) {
				times = 2
			}
		}
	}
	if most*times > 99 {
		return nil, &calc.InputError{What: "points of a cartridge", Got: decimal(most), Want: "whole points to 99, or halves to 49"}
	}
	return func(points float64) string { return decimal(points * times) }, nil
}

// about is a list of metadata: label, entry, label, entry.
func about(pairs ...string) *node {
	n := el("qtimetadata")
	for i := 0; i < len(pairs); i += 2 {
		n.add(el("qtimetadatafield").add(leaf("fieldlabel", pairs[i]), leaf("fieldentry", pairs[i+1])))
	}
	return n
}

func (p *Package) aboutAssessment() *node {
	told := "Yes"
	if p.Telling == Never {
		told = "No"
	}
	pairs := []string{"cc_profile", "cc.exam.v0p1", "qmd_assessmenttype", "Examination", "qmd_scoretype", "Percentage",
		"qmd_feedbackpermitted", told, "qmd_hintspermitted", "No", "qmd_solutionspermitted", "No"}
	if p.Seconds > 0 {
		pairs = append(pairs, "qmd_timelimit", strconv.Itoa((p.Seconds+59)/60))
	}
	return about(append(pairs, "cc_allow_late_submission", "No", "cc_maxattempts", "1")...)
}

// material is a text with its lines as paragraphs, and a picture below it.
func material(text string, picture string) *node {
	var b strings.Builder
	for line := range strings.SplitSeq(text, "\n") {
		if line = clean(line); line != "" {
			b.WriteString("<p>" + html.EscapeString(line) + "</p>")
		}
	}
	return el("material").add(leaf("mattext", b.String()+picture, "texttype", "text/html"))
}

// posed is the question of an item as material.
func (d *draft) posed(question string, sentence string) *node {
	if d.Picture == nil {
		return material(question+"\n"+sentence, "")
	}
	// What follows the token is a path from the folder of the file that has it in it.
	img := `<p><img src="$IMS-CC-FILEBASE$../` + pictureFile(d.ID) + `" alt="` + html.EscapeString(clean(d.Picture.Title)) + `"/></p>`
	return material(question+"\n"+d.Picture.Twin+"\n"+sentence, img)
}
