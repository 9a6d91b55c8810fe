package drawing_test

import (
	"encoding/xml"
	"errors"
	"io"
	"strings"
	"testing"

	"scratchpass/content"
	"scratchpass/quiz/drawing"
)

// elements reads a drawing strictly and counts its elements.
func elements(t *testing.T, svg string) map[string]int {
	t.Helper()
	count := map[string]int{}
	d := xml.NewDecoder(strings.NewReader(svg))
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return count
		}
		if err != nil {
			t.Fatalf("not well formed: %v\n%s", err, svg)
		}
		if start, ok := token.(xml.StartElement); ok {
			count[start.Name.Local]++
		}
	}
}

func TestEveryDrawingAsSVG(t *testing.T) {
	words, err := content.Shipped().Drawings()
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range drawing.Names() {
		d, err := drawing.Named(name, words)
		if err != nil {
			t.Fatal(err)
		}
		svg := d.SVG()
		count := elements(t, svg)
		if count["polyline"] != len(d.Lines) || count["text"] != len(d.Labels) || count["title"] != 1 || count["desc"] != 1 {
			t.Errorf("%s: %d lines and %d labels became %v", name, len(d.Lines), len(d.Labels), count)
		}
		if again, _ := drawing.Named(name, words); again.SVG() != svg {
			t.Errorf("%s: drawn twice it differs", name)
		}
	}
}

func TestSVG(t *testing.T) {
	d := drawing.Drawing{
		Title: "A <b> & \"c\"\x1b", Twin: "it's\u202e told", Width: 100, Height: 50, Most: 50,
		Lines:  []drawing.Line{{Points: []drawing.Point{{X: 0, Y: 0}, {X: 100.0 / 3, Y: 50}}}, {Points: []drawing.Point{{X: 1, Y: 50.001}, {X: 2, Y: 2}}, Dashed: true}, {}},
		Labels: []drawing.Label{{At: drawing.Point{X: 10, Y: 40}, Text: "<h>"}},
	}
	const want = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 50" role="img" aria-label="it&#39;s told">` +
		`<title>A &lt;b&gt; &amp; &#34;c&#34; </title><desc>it&#39;s told</desc>
<g fill="none" stroke="black" stroke-width="0.32">
<polyline points="0,50 33.33,0"/>
<polyline points="1,0 2,48" stroke-dasharray="1.61 1.08"/>
</g>
<g font-family="sans-serif" font-size="3.23" text-anchor="middle">
<rect x="7" y="8.06" width="6" height="3.87" fill="white"/><text x="10" y="11.16">&lt;h&gt;</text>
</g>
</svg>`
	if got := d.SVG(); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	elements(t, d.SVG())
}
