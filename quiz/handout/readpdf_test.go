package handout

import (
	"bytes"
	"compress/zlib"
	"crypto/sha256"
	"encoding/hex"
	"io"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"unicode/utf16"
)

// printedText is a text on a page as a reader of PDFs finds it; y grows upwards.
type printedText struct {
	x, y float64
	text string
}

var (
	streamStart = regexp.MustCompile(`/Length \d+[^>]*>>\s*stream\r?\n`)
	textForm    = regexp.MustCompile(`(?s)BT ([0-9.-]+) ([0-9.-]+) Td \(((?:[^\\)]|\\.)*)\) Tj ET`)
	lineForm    = regexp.MustCompile(`([0-9.-]+) ([0-9.-]+) m ([0-9.-]+) ([0-9.-]+) l S`)
)

// inflated returns each stream of a document, unpacked, and the document without them.
func inflated(t testing.TB, pdf []byte) (streams []string, rest string) {
	t.Helper()
	var b strings.Builder
	for {
		at := streamStart.FindIndex(pdf)
		if at == nil {
			b.Write(pdf)
			return streams, b.String()
		}
		b.Write(pdf[:at[0]])
		end := bytes.Index(pdf[at[1]:], []byte("\nendstream"))
		raw := pdf[at[1] : at[1]+end]
		if bytes.Contains(pdf[at[0]:at[1]], []byte("FlateDecode")) || bytes.HasPrefix(raw, []byte{0x78}) {
			z, err := zlib.NewReader(bytes.NewReader(raw))
			if err != nil {
				t.Fatal(err)
			}
			if raw, err = io.ReadAll(z); err != nil {
				t.Fatal(err)
			}
		}
		streams = append(streams, string(raw))
		pdf = pdf[at[1]+end:]
	}
}

// pagesOf reads the texts of each page, and how low its drawn lines end.
func pagesOf(t testing.TB, pdf []byte) (texts [][]printedText, lines [][]float64) {
	t.Helper()
	streams, _ := inflated(t, pdf)
	for _, s := range streams {
		found := textForm.FindAllStringSubmatch(s, -1)
		if len(found) == 0 {
			continue
		}
		var page []printedText
		var ends []float64
		for _, m := range found {
			x, _ := strconv.ParseFloat(m[1], 64)
			y, _ := strconv.ParseFloat(m[2], 64)
			page = append(page, printedText{x, y, decoded(m[3])})
		}
		for _, m := range lineForm.FindAllStringSubmatch(s, -1) {
			for _, i := range []int{2, 4} {
				y, _ := strconv.ParseFloat(m[i], 64)
				ends = append(ends, y)
			}
		}
		texts, lines = append(texts, page), append(lines, ends)
	}
	return texts, lines
}

var escapes = strings.NewReplacer(`\\`, `\`, `\(`, `(`, `\)`, `)`, `\r`, "\r")

func decoded(s string) string {
	raw := []byte(escapes.Replace(s))
	units := make([]uint16, len(raw)/2)
	for i := range units {
		units[i] = uint16(raw[2*i])<<8 | uint16(raw[2*i+1])
	}
	return string(utf16.Decode(units))
}

// pageText joins the texts of a page.
func pageText(page []printedText) string {
	var all []string
	for _, p := range page {
		all = append(all, p.text)
	}
	return strings.Join(all, "\n")
}

// unpackedSum is the hash of a document's unpacked streams: it stays when a later Go
// packs them otherwise.
func unpackedSum(t testing.TB, pdf []byte) string {
	streams, _ := inflated(t, pdf)
	sum := sha256.Sum256([]byte(strings.Join(streams, "\n")))
	return hex.EncodeToString(sum[:])
}

var pageObject = regexp.MustCompile(`/Type /Page\b`)

// pageCount counts pages, empty ones too.
func pageCount(pdf []byte) int { return len(pageObject.FindAll(pdf, -1)) }
