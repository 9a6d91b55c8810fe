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
		if count["polyline"] != len(d.Shapes) || count["text"] != len(d.Labels) || count["title"] != 1 || count["desc"] != 1 {
			t.Errorf("%s: %d lines and %d labels became %v", name, len(d.Shapes), len(d.Labels), count)
		}
		if again, _ := drawing.Named(name, words); again.SVG() != svg {
			t.Errorf("%s: drawn twice it differs", name)
		}
	}
}

func TestSVG(t *testing.T) {
	line := func(points ...drawing.Point) drawing.Shape {
		return drawing.Shape{Points: points, Pen: drawing.Outline}
	}
	hidden := line(drawing.Point{X: 1, Y: 50.001}, drawing.Point{X: 2, Y: 2})
	hidden.Pen, hidden.Fill, hidden.Part = drawing.Hidden, drawing.Tint, drawing.Tool
	d := drawing.Drawing{
		Title: "A <b> & \"c\"\x1b", Twin: "it's\u202e so", Width: 100, Height: 50, Most: 50,
		Shapes: []drawing.Shape{line(drawing.Point{X: 0, Y: 0}, drawing.Point{X: 100.0 / 3, Y: 50}), hidden, {}},
		Labels: []drawing.Label{{At: drawing.Point{X: 10, Y: 40}, Text: "<h>"}, {At: drawing.Point{X: 10, Y: 40}, Text: "h", Align: drawing.Right, Part: drawing.Measure}},
	}
	const want = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 50" role="img" aria-label="it&#39;s so">` +
		`<title>A &lt;b&gt; &amp; &#34;c&#34; </title><desc>it&#39;s so</desc>
<g fill="none" stroke="black" stroke-width="0.27" stroke-linejoin="round">
<polyline class="work" stroke-width="0.54" points="0,50 33.33,0"/>
<polyline class="tool" fill="#e4e4e4" stroke-dasharray="1.61 1.08" points="1,0 2,48"/>
</g>
<g font-family="sans-serif" font-size="3.23">
<rect class="paper" x="7.29" y="8.06" width="5.42" height="3.87" fill="white"/><text class="work" x="10" y="11.16" text-anchor="middle">&lt;h&gt;</text>
<rect class="paper" x="8.19" y="8.06" width="1.81" height="3.87" fill="white"/><text class="measure" x="10" y="11.16" text-anchor="end">h</text>
</g>
</svg>`
	if got := d.SVG(); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	elements(t, d.SVG())
}
