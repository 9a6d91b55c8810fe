package set

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"strconv"

	"scratchpass/content"
)

// MarksWorkbook writes marks as a workbook (.xlsx): a sheet with a row an apprentice, and one
// with a row an answer. Texts are texts there, so none is taken for a formula.
type MarksWorkbook struct {
	z     *zip.Writer
	items io.Writer // the sheet that is open
	row   int
	marks bytes.Buffer // the short sheet, until the long one is written
	sheet int
}

// The parts of a workbook beside its sheets.
var workbookParts = []struct{ name, text string }{
	{"[Content_Types].xml", `<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/><Override PartName="/xl/styles.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml"/><Override PartName="/xl/worksheets/sheet1.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/><Override PartName="/xl/worksheets/sheet2.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/></Types>`},
	{"_rels/.rels", `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/officeDocument" Target="xl/workbook.xml"/></Relationships>`},
	{"xl/workbook.xml", `<workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><sheets><sheet name="marks" sheetId="1" r:id="rId1"/><sheet name="items" sheetId="2" r:id="rId2"/></sheets></workbook>`},
	{"xl/_rels/workbook.xml.rels", `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet" Target="worksheets/sheet1.xml"/><Relationship Id="rId2" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet" Target="worksheets/sheet2.xml"/><Relationship Id="rId3" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/styles" Target="styles.xml"/></Relationships>`},
	{"xl/styles.xml", `<styleSheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><fonts count="1"><font><sz val="11"/><name val="Calibri"/></font></fonts><fills count="2"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill></fills><borders count="1"><border/></borders><cellStyleXfs count="1"><xf/></cellStyleXfs><cellXfs count="1"><xf xfId="0"/></cellXfs></styleSheet>`},
}

const (
	sheetBegin = xml.Header + `<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetViews><sheetView workbookViewId="0"><pane ySplit="1" topLeftCell="A2" activePane="bottomLeft" state="frozen"/></sheetView></sheetViews><sheetData>`
	sheetEnd   = `</sheetData></worksheet>`
)

// cellNumber is a cell that holds a number; nil holds nothing.
type cellNumber *float64

// NewMarksWorkbook begins the workbook.
func NewMarksWorkbook(w io.Writer) (*MarksWorkbook, error) {
	m := &MarksWorkbook{z: zip.NewWriter(w)}
	for _, part := range workbookParts {
		f, err := m.z.Create(part.name)
		if err == nil {
			_, err = io.WriteString(f, xml.Header+part.text)
		}
		if err != nil {
			return nil, err
		}
	}
	var err error
	if m.items, err = m.z.Create("xl/worksheets/sheet2.xml"); err != nil {
		return nil, err
	}
	m.marks.WriteString(sheetBegin)
	if _, err = io.WriteString(m.items, sheetBegin); err != nil {
		return nil, err
	}
	m.sheet, m.row = 1, 1
	err = writeRow(&m.marks, 1, "id", "name", "form", "code", "handed_in", "points", "of", "open")
	if err == nil {
		err = writeRow(m.items, 1, "id", "name", "form", "code", "item", "task", "given", "probably", "key", "verdict", "slip", "points", "of", "sure", "reason")
	}
	return m, err
}

// Add writes one apprentice. Points that are open, or of a sheet that did not come, are no
// zero: their cells are empty.
func (m *MarksWorkbook) Add(r Result) error {
	m.sheet++
	handed, earned := "no", cellNumber(nil)
	if r.Handed {
		handed, earned = "yes", &r.Points
	}
	open := float64(r.Open)
	if err := writeRow(&m.marks, m.sheet, r.ID, r.Name, r.Form, r.Code, handed, earned, cellNumber(&r.Of), cellNumber(&open)); err != nil {
		return err
	}
	for _, it := range r.Items {
		if !r.Handed {
			break
		}
		m.row++
		earned := cellNumber(nil)
		if !undecided(it.Verdict) {
			earned = &it.Points
		}
		number := float64(it.Number)
		if err := writeRow(m.items, m.row, r.ID, r.Name, r.Form, r.Code, cellNumber(&number), it.Task, it.answers(), it.Probably, it.Key, string(it.Verdict), it.Slip,
			earned, cellNumber(&it.Of), string(it.Certainty), it.reason()); err != nil {
			return err
		}
	}
	return nil
}

// Close ends the workbook.
func (m *MarksWorkbook) Close() error {
	if _, err := io.WriteString(m.items, sheetEnd); err != nil {
		return err
	}
	m.marks.WriteString(sheetEnd)
	f, err := m.z.Create("xl/worksheets/sheet1.xml")
	if err != nil {
		return err
	}
	if _, err := m.marks.WriteTo(f); err != nil {
		return err
	}
	return m.z.Close()
}

// writeRow writes one row of texts and numbers.
func writeRow(w io.Writer, row int, cells ...any) error {
	var out bytes.Buffer
	fmt.Fprintf(&out, `<row r="%d">`, row)
	for i, cell := range cells {
		ref := string(rune('A'+i)) + strconv.Itoa(row)
		switch c := cell.(type) {
		case cellNumber:
			if c != nil {
				fmt.Fprintf(&out, `<c r="%s"><v>%s</v></c>`, ref, points(*c))
			}
		case string:
			if c == "" {
				continue
			}
			fmt.Fprintf(&out, `<c r="%s" t="inlineStr"><is><t xml:space="preserve">`, ref)
			if err := xml.EscapeText(&out, []byte(content.Printable(c))); err != nil {
				return err
			}
			out.WriteString(`</t></is></c>`)
		}
	}
	out.WriteString(`</row>`)
	_, err := out.WriteTo(w)
	return err
}
