package lessons

import (
	"bytes"
	"io"
	"strings"
	"time"

	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"

	"scratchpass/lessons/schedule"
)

// ReadinessPage words the readiness sheet. The most it ever says is "ready to ask
// your instructor".
func ReadinessPage(learner string, answers int, date time.Time, r schedule.Readiness, say func(string, ...any) string, title func(task string) string) Text {
	verdict := say("ready-no")
	if r.Ask {
		verdict = say("ready-yes")
	}
	text := Text{{Heading, say("ready-title", "learner", learner)}, {Heading, verdict}, {Plain, say("ready-date", "date", date.Format(time.DateOnly), "n", answers)}}
	list := func(phrase string, tasks []string) {
		if len(tasks) == 0 {
			return
		}
		titles := make([]string, len(tasks))
		for i, task := range tasks {
			titles[i] = title(task)
		}
		text = append(text, Block{Plain, "\n" + say(phrase, "n", len(tasks))}, Block{Plain, strings.Join(titles, "; ") + "."})
	}
	list("ready-sure", r.SureWrong)
	list("ready-gate-open", r.SafetyCriticalOpen)
	list("ready-core-open", r.CoreOpen)
	list("ready-gate-shown", r.SafetyCriticalShown)
	list("ready-core-shown", r.CoreShown)
	test := say("ready-test-none")
	if r.Tested {
		test = say("ready-test", "got", r.Test.Got, "of", r.Test.Of, "date", r.Test.At.Format(time.DateOnly))
	}
	return append(text, Block{Plain, "\n" + test}, Block{Caution, "\n" + say("ready-not-tested")}, Block{Caution, say("rehearsal")}, Block{Plain, "\n" + say("ready-sign")})
}

// Paper sizes, in millimetres.
const (
	paperMargin = 18.0
	lineHeight  = 4.6
)

// WritePDF writes a text as a PDF on A4 or Letter, black, its fonts embedded. The
// same text on the same date gives the same bytes.
func WritePDF(w io.Writer, t Text, paper string, date time.Time) error {
	pdf := fpdf.New("P", "mm", paper, "")
	pdf.SetCreationDate(date)
	pdf.SetModificationDate(date)
	pdf.SetCatalogSort(true)
	pdf.SetMargins(paperMargin, paperMargin, paperMargin)
	pdf.SetAutoPageBreak(true, paperMargin)
	pdf.AddUTF8FontFromBytes("go", "", goregular.TTF)
	pdf.AddUTF8FontFromBytes("go", "B", gobold.TTF)
	pdf.AddPage()
	for _, b := range t {
		if b.Style == Picture {
			continue
		}
		style, size := "", 9.0
		switch b.Style {
		case Heading:
			style, size = "B", 14
		case Caution:
			style = "B"
		}
		pdf.SetFont("go", style, size)
		for _, line := range strings.Split(strings.TrimRight(b.Text, "\n"), "\n") {
			if line == "" {
				pdf.Ln(lineHeight / 2)
				continue
			}
			pdf.MultiCell(0, lineHeight*size/9, line, "", "L", false)
		}
	}
	var out bytes.Buffer
	if err := pdf.Output(&out); err != nil {
		return err
	}
	_, err := w.Write(out.Bytes())
	return err
}
