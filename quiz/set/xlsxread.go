package set

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	gopath "path"
	"strconv"
	"strings"
	"time"
)

// A workbook is read here and not by a library: one adds 6 MB and a slow start to every
// command, and another ends a damaged sheet without a word.

// mostUnpacked is how much a workbook may hold unpacked, in bytes.
const mostUnpacked = 256 << 20

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

// styleKind is what the style of a number makes of it.
type styleKind int

const (
	plainStyle styleKind = iota
	dateStyle
	timeStyle
	percentStyle
)

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
	unpacked := uint64(0)
	for _, f := range z.File {
		w.parts[strings.TrimPrefix(f.Name, "/")] = f
		if unpacked += f.UncompressedSize64; f.UncompressedSize64 > mostUnpacked || unpacked > mostUnpacked {
			return nil, fmt.Errorf("%s holds more than %d MiB: is it a table?", file, mostUnpacked>>20)
		}
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
	if err := xml.NewDecoder(r).Decode(into); err != nil {
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

// styleOf is what a format makes of a number. The ids below 164 are those that every
// spreadsheet has; a code is read without what stands in quotes or brackets.
func styleOf(id int, code string) styleKind {
	switch {
	case id == 9 || id == 10:
		return percentStyle
	case id >= 14 && id <= 17 || id == 22 || id >= 27 && id <= 31 || id >= 50 && id <= 58:
		return dateStyle
	case id >= 18 && id <= 21 || id >= 32 && id <= 36 || id >= 45 && id <= 47:
		return timeStyle
	case code == "" || strings.EqualFold(code, "general"):
		return plainStyle
	}
	var bare strings.Builder
	for i, inside := 0, byte(0); i < len(code); i++ {
		switch c := code[i]; {
		case inside != 0:
			if c == inside {
				inside = 0
			}
		case c == '"':
			inside = '"'
		case c == '[':
			inside = ']'
		case c == '\\' || c == '_' || c == '*':
			i++
		default:
			bare.WriteByte(c)
		}
	}
	plain := strings.ToLower(bare.String())
	switch {
	case strings.ContainsAny(plain, "dy"):
		return dateStyle
	case strings.ContainsAny(plain, "hs"):
		return timeStyle
	case strings.Contains(plain, "m"):
		return dateStyle
	case strings.Contains(plain, "%"):
		return percentStyle
	}
	return plainStyle
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
	d := xml.NewDecoder(r)
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

// columnIndex is the number of a column, from 0: B7 is 1; -1 where it is none.
func columnIndex(ref string) int {
	n := 0
	for _, r := range strings.ToUpper(ref) {
		if r < 'A' || r > 'Z' || n > mostColumns {
			break
		}
		n = n*26 + int(r-'A') + 1
	}
	return n - 1
}

// text is a cell as it is shown, on one line.
func (w *workbook) text(c sheetCell) (string, error) {
	text := c.Value
	if text == "" && c.Type != "inlineStr" && c.Sum != "" { // a sum that nobody worked out is no blank
		return "=" + c.Sum, nil
	}
	switch c.Type {
	case "s":
		i, err := strconv.Atoi(strings.TrimSpace(c.Value))
		if err != nil || i < 0 || i >= len(w.shared) {
			return "", fmt.Errorf("cell %.20q has a text that is not there", c.Ref)
		}
		text = w.shared[i]
	case "inlineStr":
		text = c.Inline.String()
	case "b", "str", "e", "d":
	default:
		text = w.number(strings.TrimSpace(c.Value), c.Style)
	}
	if len(text) > longestRow {
		return "", fmt.Errorf("cell %.20q has more than %d bytes", c.Ref, longestRow)
	}
	return strings.Join(strings.Fields(text), " "), nil
}

// number is a number as it was typed: 0.0556, not 5.5599999999999997E-2; 5 % for 0.05; a date
// for the days since the first.
func (w *workbook) number(text string, style int) string {
	x, err := strconv.ParseFloat(text, 64)
	if err != nil || math.Abs(x) > 1e15 {
		return text
	}
	kind := plainStyle
	if style >= 0 && style < len(w.styles) {
		kind = w.styles[style]
	}
	switch {
	case kind == percentStyle:
		return typedNumber(x*100) + " %"
	case (kind == dateStyle || kind == timeStyle) && x >= 0 && x < 1:
		return time.Time{}.Add(time.Duration(math.Round(x*86400)) * time.Second).Format("15:04:05")
	case (kind == dateStyle || kind == timeStyle) && x >= 1 && x < 100_000:
		if w.from1904 {
			x += 1462
		}
		return dayOf(int(x)).Format(time.DateOnly)
	}
	return typedNumber(x)
}

// typedNumber prints a number with the digits that someone typed: a spreadsheet keeps 15.
func typedNumber(x float64) string {
	x, _ = strconv.ParseFloat(strconv.FormatFloat(x, 'g', 15, 64), 64)
	return strconv.FormatFloat(x, 'f', -1, 64)
}

// dayOf is the day that a spreadsheet counts so.
func dayOf(days int) time.Time { return time.Date(1899, 12, 30+days, 0, 0, 0, 0, time.UTC) }
