package served

import (
	"fmt"
	"html/template"
	"strings"

	"rsc.io/qr"
)

// quiet is the empty border of a QR code, in its squares. Source: ISO/IEC 18004, 4 on each side.
const quiet = 4

// qrSVG draws a QR code.
func qrSVG(text string) (template.HTML, error) {
	code, err := qr.Encode(text, qr.M)
	if err != nil {
		return "", err
	}
	var b strings.Builder
	side := code.Size + 2*quiet
	fmt.Fprintf(&b, `<svg class="qr" viewBox="0 0 %d %d" role="img" aria-label="%s" shape-rendering="crispEdges"><rect class="qr-ground" width="%d" height="%d"/><path class="qr-ink" d="`, side, side, template.HTMLEscapeString(text), side, side)
	for y := range code.Size {
		for x := range code.Size {
			if code.Black(x, y) {
				fmt.Fprintf(&b, "M%d %dh1v1h-1z", x+quiet, y+quiet)
			}
		}
	}
	b.WriteString(`"/></svg>`)
	return template.HTML(b.String()), nil // numbers, and a text that was escaped
}

// QRText draws a QR code for a terminal, two rows of squares in a line. It is dark on light
// whatever the terminal's ground: lights are drawn, and what is not drawn is dark.
func QRText(text string) (string, error) {
	code, err := qr.Encode(text, qr.L)
	if err != nil {
		return "", err
	}
	var b strings.Builder
	for y := -quiet; y < code.Size+quiet; y += 2 {
		for x := -quiet; x < code.Size+quiet; x++ {
			b.WriteString(half(!code.Black(x, y), !code.Black(x, y+1)))
		}
		b.WriteByte('\n')
	}
	return b.String(), nil
}

// half is a character with its upper and its lower half drawn or not.
func half(upper, lower bool) string {
	switch {
	case upper && lower:
		return "█"
	case upper:
		return "▀"
	case lower:
		return "▄"
	}
	return " "
}
