package set

import (
	"cmp"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode/utf8"

	"scratchpass/calc"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/handout"
	"scratchpass/quiz/wording"
)

// MarksCSV writes marks, a row an apprentice, safe to open in a spreadsheet.
type MarksCSV struct {
	w     *csv.Writer
	begun bool
}

// NewMarksCSV begins the file.
func NewMarksCSV(w io.Writer) *MarksCSV { return &MarksCSV{w: csv.NewWriter(w)} }

// Add writes one row.
func (m *MarksCSV) Add(r Result) error {
	if !m.begun {
		m.begun = true
		head := []string{"id", "name", "form", "code", "handed_in", "points", "of", "open"}
		for _, it := range r.Items {
			n := fmt.Sprint(it.Number)
			head = append(head, n+" task", n+" given", n+" verdict", n+" slip", n+" points", n+" sure", n+" reason")
		}
		if err := m.w.Write(head); err != nil {
			return err
		}
	}
	handed, earned := "yes", points(r.Points)
	if !r.Handed { // no sheet is no zero
		handed, earned = "no", ""
	}
	row := []string{Safe(r.ID), Safe(r.Name), r.Form, r.Code, handed, earned, points(r.Of), fmt.Sprint(r.Open)}
	for _, it := range r.Items {
		row = append(row, it.Task, Safe(it.answers()), string(it.Verdict), it.Slip, it.earned(), string(it.Certainty), Safe(it.reason()))
	}
	return m.w.Write(row)
}

// earned are the points as text: none while the answer waits for the instructor.
func (it ItemResult) earned() string {
	if undecided(it.Verdict) {
		return ""
	}
	return points(it.Points)
}

// reason is the instructor's, where the points are.
func (it ItemResult) reason() string {
	if it.Ruling == nil {
		return ""
	}
	return it.Ruling.Reason
}

// answers is what was given; of answers that differ with where each stands.
func (it ItemResult) answers() string {
	if len(it.Twice) == 0 {
		return it.Given
	}
	var all []string
	for _, s := range it.Twice {
		all = append(all, s.String())
	}
	return strings.Join(all, " | ")
}

// String is an answer with where it stands.
func (s Source) String() string { return s.Given + " (" + s.Where + ")" }

// Close ends the file.
func (m *MarksCSV) Close() error {
	m.w.Flush()
	return m.w.Error()
}

func points(x float64) string { return calc.Shortest(x, 2) }

// Safe returns a cell so that no spreadsheet takes it for a formula: what begins like one gets
// an apostrophe in front. A plain number may have its sign. A spreadsheet that parts cells at
// semicolons or tabs parts this one too, whatever quotation marks it has, so each piece is
// looked at.
func Safe(cell string) string {
	if !strings.ContainsAny(cell, formulaStarts) {
		return cell
	}
	var b strings.Builder
	for from := 0; from < len(cell); {
		to := len(cell)
		if next := strings.IndexAny(cell[from:], ";\t\r\n"); next >= 0 {
			to = from + next + 1
		}
		if startsFormula(strings.TrimRight(cell[from:to], ";\t\r\n")) || from == 0 && strings.ContainsRune("\t\r\n", rune(cell[0])) {
			b.WriteByte('\'')
		}
		b.WriteString(cell[from:to])
		from = to
	}
	return b.String()
}

// formulaStarts are what a formula may begin with, in the width of East Asian letters too.
const formulaStarts = "=+-@|%\t\r\n＝＋－＠"

func startsFormula(piece string) bool {
	first, _ := utf8.DecodeRuneInString(piece)
	if piece == "" || !strings.ContainsRune(formulaStarts, first) {
		return false
	}
	_, err := calc.ParseNumber(piece)
	return err != nil || first != '-' && first != '+'
}

// MarksJSON writes marks as one JSON object, an apprentice at a time.
type MarksJSON struct {
	w     io.Writer
	first bool
}

// NewMarksJSON begins the object.
func NewMarksJSON(w io.Writer, b *Blueprint) (*MarksJSON, error) {
	title, err := json.Marshal(b.Title)
	if err != nil {
		return nil, err
	}
	_, err = fmt.Fprintf(w, "{\n  \"set\": %q,\n  \"title\": %s,\n  \"sheets\": [", b.Set, title)
	return &MarksJSON{w, true}, err
}

// Add writes one apprentice.
func (m *MarksJSON) Add(r Result) error {
	text, err := json.MarshalIndent(r, "    ", "  ")
	if err != nil {
		return err
	}
	comma := ","
	if m.first {
		comma, m.first = "", false
	}
	_, err = fmt.Fprintf(m.w, "%s\n    %s", comma, text)
	return err
}

// Close ends the object.
func (m *MarksJSON) Close() error {
	_, err := io.WriteString(m.w, "\n  ]\n}\n")
	return err
}

// Feedback is what one apprentice is told of their sheet.
func (p *Printer) Feedback(r Result) handout.Report {
	report := handout.Report{Title: p.maker.Blueprint.Title, Owner: r.label(), Note: p.rehearsal,
		Facts: []string{p.Say("set-feedback-of", "name", r.label()), p.Say("set-feedback-points", "points", points(r.Points), "of", points(r.Of))}}
	if r.Open > 0 {
		report.Facts = append(report.Facts, p.Say("set-feedback-open", "n", r.Open))
	}
	for i, res := range r.Items {
		it := r.items[i]
		part := handout.Part{Heading: p.Say("set-feedback-item", "n", res.Number, "title", it.Words.Task.Title, "points", cmp.Or(res.earned(), p.Say("set-feedback-waits")), "of", points(res.Of))}
		own := it.Problem
		switch res.Verdict {
		case Decided:
			part.Lines = p.decidedLines(it, res)
		case NotAsked: // there is nothing to say: it is left out below
		case Blank:
			part.Lines = feedbackLines(it.Words.Feedback(own, answer.Mark{Verdict: answer.Wrong, Passed: true}))
		case Carried:
			part.Lines = append([]string{p.Say("set-feedback-carried", "given", res.Given, "key", it.Words.KeyText(own))}, it.Words.StepLines(own)...)
		case answer.Unread:
			part.Lines = []string{p.Say("set-feedback-unread", "given", strings.TrimSuffix(res.Given, "."))}
		case Twice:
			part.Lines = []string{p.Say("set-feedback-twice", "given", res.Given)}
		case ByHand:
			part.Lines = []string{p.Say("set-feedback-by-hand", "given", res.Given)}
		default:
			f := it.Words.Feedback(own, res.mark)
			switch {
			case res.Verdict == answer.Convention && res.Points < res.Of:
				f.Verdict = p.Say("set-feedback-convention", "given", res.Given, "key", it.Words.KeyText(own))
			case res.Verdict != res.mark.Verdict: // it follows, in another unit, from what was written before
				f = wording.Feedback{Verdict: p.Say("set-feedback-follows", "given", res.Given, "key", it.Words.KeyText(own))}
			}
			part.Lines = feedbackLines(f)
		}
		report.Parts = append(report.Parts, part)
	}
	return p.onlyMissed(report, r)
}

// decidedLines tell what the instructor gave, why, and the right answer where it was not all.
func (p *Printer) decidedLines(it Item, res ItemResult) []string {
	lines := []string{p.Say("set-feedback-decided", "given", res.Given, "points", points(res.Points), "of", points(res.Of))}
	if reason := res.reason(); reason != "" {
		lines = append(lines, p.Say("set-feedback-reason", "reason", reason))
	}
	if right, _ := res.decidedShare(); !right {
		lines = append(lines, feedbackLines(it.Words.Feedback(it.Problem, answer.Mark{Verdict: answer.Wrong, Passed: true}))...)
	}
	return lines
}

// feedbackLines are the lines of a feedback, in the order they are told.
func feedbackLines(f wording.Feedback) []string {
	var lines []string
	for _, text := range slices.Concat([]string{f.Line(), f.Reason}, f.Working, []string{f.Lathe}, f.Safety) {
		if text != "" {
			lines = append(lines, text)
		}
	}
	return lines
}
