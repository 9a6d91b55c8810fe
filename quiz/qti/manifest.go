package qti

import "strconv"

// file is one file of the package.
type file struct {
	name string
	root *node
}

// partID is the identifier of the one part of a test.
const partID = "part-1"

const (
	manifestFile = "imsmanifest.xml"
	testFile     = "test.xml"
)

func itemFile(id string) string { return "items/item-" + id + ".xml" }

const xsi = "http://www.w3.org/2001/XMLSchema-instance"

// scheme is what names a version inside a package.
type scheme struct {
	items, itemsAt       string // name space of items and tests, and where its schema is
	manifest, manifestAt string
	schema, version      string // what the manifest says it is
	itemType, testType   string // of a resource
}

var schemes = map[Version]scheme{
	V21: {
		items: "http://www.imsglobal.org/xsd/imsqti_v2p1", itemsAt: "http://www.imsglobal.org/xsd/qti/qtiv2p1/imsqti_v2p1.xsd",
		manifest: "http://www.imsglobal.org/xsd/imscp_v1p1", manifestAt: "http://www.imsglobal.org/xsd/qti/qtiv2p1/qtiv2p1_imscpv1p2_v1p0.xsd",
		schema: "QTIv2.1 Package", version: "1.0.0", itemType: "imsqti_item_xmlv2p1", testType: "imsqti_test_xmlv2p1",
	},
	V30: {
		items: "http://www.imsglobal.org/xsd/imsqtiasi_v3p0", itemsAt: "https://purl.imsglobal.org/spec/qti/v3p0/schema/xsd/imsqti_asiv3p0_v1p0.xsd",
		manifest: "http://www.imsglobal.org/xsd/qti/qtiv3p0/imscp_v1p1", manifestAt: "https://purl.imsglobal.org/spec/qti/v3p0/schema/xsd/imsqtiv3p0_imscpv1p2_v1p0.xsd",
		schema: "QTI Package", version: "3.0.0", itemType: "imsqti_item_xmlv3p0", testType: "imsqti_test_xmlv3p0",
	},
}

func (s scheme) root(name string, attrs ...string) *node {
	return el(name, append([]string{"xmlns", s.items, "xmlns:xsi", xsi, "xsi:schemaLocation", s.items + " " + s.itemsAt}, attrs...)...)
}

// manifestOf lists the test, which depends on all its items, and the items.
func (p *Package) manifestOf() *node {
	s := schemes[p.Version]
	test := el("resource", "identifier", "test-"+p.ID, "type", s.testType, "href", testFile).add(el("file", "href", testFile))
	resources := el("resources").add(test)
	for _, slot := range p.Slots {
		for _, it := range slot.Items {
			name := itemFile(it.ID)
			test.add(el("dependency", "identifierref", "item-"+it.ID))
			resources.add(el("resource", "identifier", "item-"+it.ID, "type", s.itemType, "href", name).add(el("file", "href", name)))
		}
	}
	return el("manifest", "xmlns", s.manifest, "xmlns:xsi", xsi, "xsi:schemaLocation", s.manifest+" "+s.manifestAt, "identifier", "manifest-"+p.ID).add(
		el("metadata").add(leaf("schema", s.schema), leaf("schemaversion", s.version)),
		el("organizations"), resources)
}

// testOf is the test: a section for each slot, and the points added up. Each item is
// answered once and told at once what was wrong.
func (p *Package) testOf() *node {
	part := el("testPart", "identifier", partID, "navigationMode", "nonlinear", "submissionMode", "individual").add(
		el("itemSessionControl", "maxAttempts", "1", "showFeedback", "true"))
	for _, slot := range p.Slots {
		title := slot.Title
		if clean(title) == "" {
			title = slot.ID
		}
		section := el("assessmentSection", "identifier", slot.ID, "title", title, "visible", "true")
		if slot.Select > 0 {
			section.add(el("selection", "select", strconv.Itoa(slot.Select)))
		}
		for _, it := range slot.Items {
			section.add(el("assessmentItemRef", "identifier", it.ID, "href", itemFile(it.ID)))
		}
		part.add(section)
	}
	return schemes[p.Version].root("assessmentTest", "identifier", p.ID, "title", p.Title).add(
		outcome("SCORE", "float", ""), part,
		el("outcomeProcessing").add(el("setOutcomeValue", "identifier", "SCORE").add(el("sum").add(el("testVariables", "variableIdentifier", "SCORE")))))
}
