package set

import (
	"archive/zip"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
)

// How much a workbook may hold unpacked, in bytes: beyond usualUnpacked no more than
// mostPacking times its own size, as tables of texts and numbers are packed ten to twenty
// times. A part of it may have mostElements, in one another mostDeep.
const (
	mostUnpacked  = 128 << 20
	usualUnpacked = 16 << 20
	mostPacking   = 100
	mostElements  = 4_000_000
	mostDeep      = 50
)

var errPart = errors.New("it has more in it than a table has")

// fits says what is wrong with a file that holds too much, before it is unpacked.
func fits(file string, packed int, parts []*zip.File) error {
	most := uint64(min(mostUnpacked, max(usualUnpacked, packed*mostPacking)))
	unpacked := uint64(0)
	for _, f := range parts {
		if f.UncompressedSize64 > most || unpacked+f.UncompressedSize64 > most {
			return fmt.Errorf("%s holds more than %d MiB: is it a table?", file, most>>20)
		}
		unpacked += f.UncompressedSize64
	}
	return nil
}

// partDecoder reads a part of a workbook as long as it is no larger than a table's.
func partDecoder(r io.Reader) *xml.Decoder {
	return xml.NewTokenDecoder(&limited{d: xml.NewDecoder(r)})
}

// limited are tokens that end with an error where there are too many.
type limited struct {
	d           *xml.Decoder
	depth, seen int
}

// Token is the next one; the decoder around it knows which belong together.
func (l *limited) Token() (xml.Token, error) {
	t, err := l.d.RawToken()
	switch t.(type) {
	case xml.StartElement:
		l.depth++
		if l.seen++; l.depth > mostDeep || l.seen > mostElements {
			return nil, errPart
		}
	case xml.EndElement:
		l.depth--
	}
	return t, err
}
