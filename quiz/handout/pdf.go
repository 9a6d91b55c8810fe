package handout

import (
	"bytes"
	"io"
	"strings"

	"codeberg.org/go-pdf/fpdf"

	"scratchpass/calc"
)

// PDF writes black pages with embedded fonts, to print and to copy. The document is
// held in memory until Close. The same input gives the same bytes.
func PDF(w io.Writer, o Options) (Writer, error) {
	o, err := o.checked(printable)
	if err != nil {
		return nil, err
	}
	doc := fpdf.New("P", "pt", string(o.Paper), "")
	doc.SetCreationDate(o.Date)
	doc.SetModificationDate(o.Date)
	doc.SetCatalogSort(true)
	doc.SetTitle(o.Title, true)
	doc.SetLang(o.Words.Lang)
	doc.SetMargins(0, 0, 0)
	doc.SetAutoPageBreak(false, 0)
	doc.SetLineCapStyle("square") // corners close
	embed(doc)
	width, height := doc.GetPageSize()
	p := &pdf{doc: doc, out: w, words: o.Words, letters: widths{}, boldLetters: widths{}, paper: sheetOf(width, height), upright: fpdf.SizeType{Wd: width, Ht: height}, duplex: o.Duplex, compact: o.Layout == Compact, set: usualSetting}
	if err := p.leavesRoom(p.words.Rehearsal); err != nil {
		return nil, err
	}
	return &front{to: p, clean: printable}, doc.Error()
}

// margin is left free on all four sides: printers need some, and so does a hole punch.
const margin = 51 * point

// area is a sheet of paper.
type area struct{ width, height int }

func sheetOf(width, height float64) area { return area{hundredthsOf(width), hundredthsOf(height)} }

func (a area) right() int { return a.width - margin }

// inner is how wide the printed part is.
func (a area) inner() int { return a.width - 2*margin }

// pdf is the format.
type pdf struct {
	doc   *fpdf.Fpdf
	out   io.Writer
	words Words
	paper area

	upright fpdf.SizeType // the paper as the library has it

	duplex  bool
	compact bool
	wide    bool    // across the paper's long side
	set     setting // of the report that is being written

	letters, boldLetters widths

	shift int  // what is printed stands so far to the right of where it was laid out
	upper bool // the last page has a half sheet at its top and room for one more below it
}

// section is what begins on a page of its own and has its own count of pages.
type section struct {
	mark   string // in the reader's list of parts
	blocks []block
	note   string // at the foot, wrapped
	owner  string // at the foot, left of the page's number
}

func (p *pdf) write(s section) error {
	foot := p.footHeight(s.note)
	var pages [][]set
	for _, rows := range paginate(s.blocks, p.paper.height-2*margin-foot) {
		pages = append(pages, []set{{rows: rows}})
	}
	return p.print(s, pages)
}

// set are rows that stand below one another on a page.
type set struct {
	rows     []placed
	top      int // below the upper margin
	sideways int // from where they were laid out
}

// print puts the pages of a section on leaves of their own.
func (p *pdf) print(s section, pages [][]set) error {
	p.leaf()
	foot := p.footHeight(s.note)
	for i, sets := range pages {
		p.page()
		if i == 0 {
			p.use(regular)
			p.doc.Bookmark(s.mark, 0, 0)
		}
		p.body(sets, margin)
		p.foot(s, p.paper.height-margin-foot, i+1, len(pages))
	}
	return p.doc.Error()
}

// page begins one, upright or across.
func (p *pdf) page() {
	way := "P"
	if p.wide {
		way = "L"
	}
	p.doc.AddPageFormat(way, p.upright)
}

// body prints a page's rows.
func (p *pdf) body(sets []set, top int) {
	for _, set := range sets {
		p.shift = set.sideways
		for _, r := range set.rows {
			r.paint(top + set.top + r.top)
		}
	}
	p.shift = 0
}

// leaf ends what stands on the page before, so that what follows begins on another one;
// printed on both sides, on another leaf.
func (p *pdf) leaf() {
	p.upper = false
	if p.duplex && p.doc.PageNo()%2 == 1 {
		p.doc.AddPageFormat("P", p.upright)
	}
}

// footGap keeps the foot clear of the last item.
const footGap = 12 * point

func (p *pdf) footHeight(note string) int {
	return footGap + small.leading()*(1+len(p.footLines(note)))
}

// leavesRoom tells a caution that would fill the pages it stands on.
func (p *pdf) leavesRoom(note string) error {
	if p.footHeight(note) <= p.paper.height/4 {
		return nil
	}
	return &calc.InputError{What: "caution at the foot", Got: calc.Quoted(note), Want: "a few lines, as each page has it"}
}

func (p *pdf) footLines(note string) []string {
	if note == "" {
		return nil
	}
	return p.wrap(note, p.paper.inner(), small)
}

func (p *pdf) foot(s section, top, page, of int) {
	top += footGap
	p.line(margin, top-3*point, p.paper.right(), top-3*point)
	for _, text := range p.footLines(s.note) {
		p.text(margin, top, text, small)
		top += small.leading()
	}
	count, _ := pageWords(p.words.Page, page, of)
	p.textRight(p.paper.right(), top, count, small)
	room := p.paper.inner() - p.measure(small)(count) - 12*point
	p.text(margin, top, p.shortened(s.owner, room, small), small)
}

func (p *pdf) close() error {
	p.leaf()
	var out bytes.Buffer
	if err := p.doc.Output(&out); err != nil {
		return err
	}
	_, err := p.out.Write(out.Bytes())
	return err
}

// joined puts the parts that are not empty side by side.
func joined(gap string, parts ...string) string {
	var kept []string
	for _, part := range parts {
		if part != "" {
			kept = append(kept, part)
		}
	}
	return strings.Join(kept, gap)
}

// labelled is "label: value", or empty where there is no value.
func labelled(label, value string) string {
	if value == "" {
		return ""
	}
	return withColon(label) + " " + value
}

// withColon ends a label, unless it ends in a sign of its own.
func withColon(label string) string {
	if label == "" || strings.HasSuffix(label, ":") || strings.HasSuffix(label, "?") {
		return label
	}
	return label + ":"
}
