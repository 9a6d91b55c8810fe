package handout

import (
	"bytes"
	"slices"
	"strings"
	"sync"
	"unicode"

	"codeberg.org/go-pdf/fpdf"
	"github.com/go-fonts/dejavu/dejavusans"
	"github.com/go-fonts/dejavu/dejavusansbold"
	"golang.org/x/image/font/sfnt"
)

// fontFamily is the name of the font inside a document. It has the signs of
// drawings, such as the one for a diameter, that many fonts lack.
const fontFamily = "dejavu"

// embed gives a document the two weights. Each document gets its own copy: while a
// font is cut down to the letters used, the library writes into the bytes it was given.
func embed(doc *fpdf.Fpdf) {
	doc.AddUTF8FontFromBytes(fontFamily, "", bytes.Clone(dejavusans.TTF))
	doc.AddUTF8FontFromBytes(fontFamily, "B", bytes.Clone(dejavusansbold.TTF))
}

// weights are the parsed fonts, to ask for their letters.
var weights = sync.OnceValue(func() []*sfnt.Font {
	var fonts []*sfnt.Font
	for _, data := range [][]byte{dejavusans.TTF, dejavusansbold.TTF} {
		f, err := sfnt.Parse(data)
		if err != nil {
			panic("handout: an embedded font is broken: " + err.Error()) // part of the program; a test parses them
		}
		fonts = append(fonts, f)
	}
	return fonts
})

// rightToLeft are scripts whose letters the font has, but whose order and joined
// forms a page laid out from left to right gets wrong.
var rightToLeft = []*unicode.RangeTable{unicode.Arabic, unicode.Hebrew, unicode.Nko, unicode.Syriac, unicode.Thaana}

// Missing lists the letters of a text that a PDF can't print, each once, sorted. A
// page has a question mark in their place; HTML and plain text have them all.
func Missing(text string) []rune {
	var missing []rune
	for _, r := range plain(text) {
		if !printed(r) {
			missing = append(missing, r)
		}
	}
	slices.Sort(missing)
	return slices.Compact(missing)
}

// printed reports whether a PDF can print a letter.
func printed(r rune) bool {
	const last = 0xFFFF // of the letters that the document's fonts can number
	if r < unicode.MaxASCII {
		return r >= ' ' || r == '\n'
	}
	if r > last || unicode.In(r, rightToLeft...) {
		return false
	}
	var buffer sfnt.Buffer
	for _, f := range weights() {
		if glyph, err := f.GlyphIndex(&buffer, r); err != nil || glyph == 0 {
			return false
		}
	}
	return true
}

// printable cleans a text for a PDF.
func printable(text string) string {
	return strings.Map(func(r rune) rune {
		if !printed(r) {
			return '?'
		}
		return r
	}, plain(text))
}
