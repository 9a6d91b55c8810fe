package qti

import "io"

// file is one file of the package: a document, or a picture as it stands.
type file struct {
	name string
	root *node
	raw  string
}

func (f file) write(w io.Writer, v Version) error {
	if f.root == nil {
		_, err := io.WriteString(w, f.raw)
		return err
	}
	return f.root.write(w, v)
}

// partID is the identifier of the one part of a test, formsID that of the section from
// which one slot is drawn.
const (
	partID  = "part-1"
	formsID = "forms-1"
)

const (
	manifestFile = "imsmanifest.xml"
	testFile     = "test.xml"
)

func pictureFile(id string) string { return "pictures/" + id + ".svg" }

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

// manifestOf lists the tests, which depend on their items, and the items with their
// pictures.
func (p *Package) manifestOf() *node {
	s := schemes[p.Version]
	resources := el("resources")
	for _, t := range p.tests() {
		test := el("resource", "identifier", "test-"+t.id, "type", s.testType, "href", t.file).add(el("file", "href", t.file))
		for _, slot := range t.slots {
			for _, it := range slot.Items {
				test.add(el("dependency", "identifierref", "item-"+it.ID))
			}
		}
		resources.add(test)
	}
	for _, slot := range p.Slots {
		for _, it := range slot.Items {
			name := itemFile(it.ID)
			resource := el("resource", "identifier", "item-"+it.ID, "type", s.itemType, "href", name).add(el("file", "href", name))
			if it.Picture != nil {
				resource.add(el("file", "href", pictureFile(it.ID)))
			}
			resources.add(resource)
		}
	}
	return el("manifest", "xmlns", s.manifest, "xmlns:xsi", xsi, "xsi:schemaLocation", s.manifest+" "+s.manifestAt, "identifier", "manifest-"+p.ID).add(
		el("metadata").add(leaf("schema", s.schema), leaf("schemaversion", s.version)),
		el("organizations"), resources)
}
