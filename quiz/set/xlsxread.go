package set

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	gopath "path"
	"strconv"
	"strings"
)

// A workbook is read here and not by a library: one adds 6 MB and a slow start to every
// command, and another ends a damaged sheet without a word.

// mostColumns is the widest row of a workbook: a question and how sure, twice over.
const mostColumns = 400

// isWorkbook reports whether a file is packed, as .xlsx is.
func isWorkbook(text []byte) bool { return bytes.HasPrefix(text, []byte("PK\x03\x04")) }

// workbook is a .xlsx that is open.
type workbook struct {
	parts    map[string]*zip.File
	shared   []string
	styles   []styleKind
	from1904 bool
}

// workbookRows reads the rows of the first sheet of a workbook, each cell as it is shown: what
// a spreadsheet has made a date of comes as a date. Empty rows are left out.
func workbookRows(file string, text []byte, most int, note func(Note)) ([]line, error) {
	fail := func(err error) ([]line, error) {
		return nil, fmt.Errorf("%s can't be read as a workbook (.xlsx), save it as CSV UTF-8: %w", file, err)
	}
	z, err := zip.NewReader(bytes.NewReader(text), int64(len(text)))
	if err != nil {
		return fail(err)
	}
	w := workbook{parts: map[string]*zip.File{}}
	if err := fits(file, len(text), z.File); err != nil {
		return nil, err
	}
	for _, f := range z.File {
		w.parts[strings.TrimPrefix(f.Name, "/")] = f
	}
	sheet, more, err := w.firstSheet()
	if err != nil {
		return fail(err)
	}
	if err := w.readShared(); err != nil {
		return fail(err)
	}
	if err := w.readStyles(); err != nil {
		return fail(err)
	}
	rows, err := w.rows(sheet, most)
	if errors.Is(err, errTooMany) {
		return nil, fmt.Errorf("%s has more than %d rows: give that many at most", file, most)
	}
	if err != nil {
		return fail(err)
	}
	if more > 0 {
		note(Note{Says: "set-note-sheets", File: file, Text: strconv.Itoa(more)})
	}
	return rows, nil
}

var errTooMany = errors.New("too many rows")

// decode reads a whole part of a workbook; where it is not there, nothing.
func (w *workbook) decode(name string, into any) error {
	f, ok := w.parts[name]
	if !ok {
		return nil
	}
	r, err := f.Open()
	if err != nil {
		return err
	}
	defer r.Close()
	if err := partDecoder(r).Decode(into); err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	return nil
}

// firstSheet finds the first sheet that is not hidden, and how many there are besides.
func (w *workbook) firstSheet() (name string, more int, err error) {
	var book struct {
		Pr struct {
			From1904 string `xml:"date1904,attr"`
		} `xml:"workbookPr"`
		Sheets []struct {
			State string `xml:"state,attr"`
			ID    string `xml:"http://schemas.openxmlformats.org/officeDocument/2006/relationships id,attr"`
			Other string `xml:"http://purl.oclc.org/ooxml/officeDocument/relationships id,attr"`
		} `xml:"sheets>sheet"`
	}
	var rels struct {
		All []struct {
			ID     string `xml:"Id,attr"`
			Target string `xml:"Target,attr"`
		} `xml:"Relationship"`
	}
	if err := w.decode("xl/workbook.xml", &book); err != nil {
		return "", 0, err
	}
	if err := w.decode("xl/_rels/workbook.xml.rels", &rels); err != nil {
		return "", 0, err
	}
	w.from1904 = book.Pr.From1904 == "1" || book.Pr.From1904 == "true"
	for _, s := range book.Sheets {
		if s.State == "hidden" || s.State == "veryHidden" {
			continue
		}
		if name != "" {
			more++
			continue
		}
		for _, r := range rels.All {
			if r.ID == s.ID+s.Other {
				name = gopath.Join("xl", r.Target)
				if strings.HasPrefix(r.Target, "/") {
					name = strings.TrimPrefix(r.Target, "/")
				}
			}
		}
	}
	if _, ok := w.parts[name]; !ok {
		return "", 0, errors.New("it has no sheet")
	}
	return name, more, nil
}

// richText is a text in one piece or several.
type richText struct {
	Text string   `xml:"t"`
	Runs []string `xml:"r>t"`
}

func (t richText) String() string { return t.Text + strings.Join(t.Runs, "") }

func (w *workbook) readShared() error {
	var all struct {
		Items []richText `xml:"si"`
	}
	err := w.decode("xl/sharedStrings.xml", &all)
	for _, t := range all.Items {
		w.shared = append(w.shared, t.String())
	}
	return err
}

// readStyles finds out which styles show a number as a date, a time or percent.
func (w *workbook) readStyles() error {
	var all struct {
		Formats []struct {
			ID   int    `xml:"numFmtId,attr"`
			Code string `xml:"formatCode,attr"`
		} `xml:"numFmts>numFmt"`
		Cells []struct {
			ID int `xml:"numFmtId,attr"`
		} `xml:"cellXfs>xf"`
	}
	err := w.decode("xl/styles.xml", &all)
	codes := map[int]string{}
	for _, f := range all.Formats {
		codes[f.ID] = f.Code
	}
	for _, c := range all.Cells {
		w.styles = append(w.styles, styleOf(c.ID, codes[c.ID]))
	}
	return err
}

// sheetCell is a cell as a sheet has it.
type sheetCell struct {
	Ref    string   `xml:"r,attr"`
	Type   string   `xml:"t,attr"`
	Style  int      `xml:"s,attr"`
	Value  string   `xml:"v"`
	Sum    string   `xml:"f"`
	Inline richText `xml:"is"`
}

// rows reads a sheet to its end; a damaged one is an error.
func (w *workbook) rows(name string, most int) ([]line, error) {
	r, err := w.parts[name].Open()
	if err != nil {
		return nil, err
	}
	defer r.Close()
	d := partDecoder(r)
	var all []line
	number := 0
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return all, nil
		}
		if err != nil {
			return nil, err
		}
		start, ok := token.(xml.StartElement)
		if !ok || start.Name.Local != "row" {
			continue
		}
		var row struct {
			Number int         `xml:"r,attr"`
			Cells  []sheetCell `xml:"c"`
		}
		if err := d.DecodeElement(&row, &start); err != nil {
			return nil, err
		}
		if number++; row.Number > number {
			number = row.Number
		}
		cells, err := w.cells(row.Cells)
		if err != nil {
			return nil, fmt.Errorf("row %d: %w", number, err)
		}
		if strings.TrimSpace(strings.Join(cells, "")) == "" {
			continue
		}
		if len(all) > most {
			return nil, errTooMany
		}
		all = append(all, line{number, cells})
	}
}

func (w *workbook) cells(row []sheetCell) ([]string, error) {
	var cells []string
	for _, c := range row {
		at := len(cells)
		if c.Ref != "" {
			at = columnIndex(c.Ref)
		}
		text, err := w.text(c)
		switch {
		case err != nil:
			return nil, err
		case text == "":
			continue
		case at < 0 || at >= mostColumns:
			return nil, fmt.Errorf("%.20q is no cell of the first %d columns", c.Ref, mostColumns)
		}
		for len(cells) <= at {
			cells = append(cells, "")
		}
		cells[at] = text
	}
	return cells, nil
}
