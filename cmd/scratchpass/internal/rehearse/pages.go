package rehearse

import (
	"bytes"
	"context"
	"net/url"
	"slices"
	"strings"

	"scratchpass/calc"
	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/content"
	"scratchpass/lessons/face/web"
	"scratchpass/lessons/rehearsal"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/bench"
	"scratchpass/quiz/handout"
)

// Pages are the cards of the jobs that ship as pages of a browser, and each on paper.
func Pages(r *cli.Run, s *sitting.Session) []web.Lookup {
	return []web.Lookup{
		{Path: "/card", Label: s.Say("web-look-card"), Make: func(_ context.Context, asked url.Values) (web.Looked, error) { return cardLooked(r, s, asked) }},
		{Path: "/card/paper", Make: func(_ context.Context, asked url.Values) (web.Looked, error) { return cardOnPaper(r, s, asked) }},
	}
}

// usualAngle is the angle of the compound that a card is made for.
const usualAngle = 29.5

// planOf is the plan of a job that ships. A file is none: a browser names none of this computer.
func planOf(r *cli.Run, s *sitting.Session, name string) (bench.Plan, error) {
	if names := s.Library.JobNames(); !slices.Contains(names, name) {
		return bench.Plan{}, cli.Usagef("no job is called %q%s; the jobs are %s", name, content.DidYouMean(name, names), strings.Join(names, ", "))
	}
	_, job, err := findJob(r, s.Library, name, &jobFlags{})
	if err != nil {
		return bench.Plan{}, err
	}
	return bench.NewPlan(job, calc.Degrees(usualAngle))
}

// cardLooked is the card of a job, or the list of them.
func cardLooked(r *cli.Run, s *sitting.Session, asked url.Values) (web.Looked, error) {
	l := web.Looked{Title: s.Say("web-look-card")}
	name := asked.Get("job")
	if name == "" {
		for _, job := range s.Library.JobNames() {
			l.Links = append(l.Links, web.Link{To: "/card?" + url.Values{"job": {job}}.Encode(), Text: rehearsal.JobTitle(s.Library, job)})
		}
		return l, nil
	}
	p, err := planOf(r, s, name)
	if err != nil {
		return l, err
	}
	l.Body = rehearsal.Flow{Session: s}.PlanPage(p)
	if p.Passes() {
		for i, as := range []string{"pdf", "html"} {
			link := web.Link{To: "/card/paper?" + url.Values{"job": {name}, "as": {as}}.Encode(), Text: s.Say("web-card-" + as)}
			if i == 0 {
				link.Part = s.Say("web-card-paper")
			}
			l.Links = append(l.Links, link)
		}
	}
	return l, nil
}

// cardOnPaper is the card as a file to print.
func cardOnPaper(r *cli.Run, s *sitting.Session, asked url.Values) (web.Looked, error) {
	l := web.Looked{Title: s.Say("web-look-card")}
	name := asked.Get("job")
	p, err := planOf(r, s, name)
	if err != nil {
		return l, err
	}
	if !p.Passes() {
		return l, cli.Usagef("%s has no passes to print: its card says why", p.Job.Title)
	}
	card, err := rehearsal.Flow{Session: s}.PlanSheet(p)
	if err != nil {
		return l, err
	}
	file, write := web.File{Name: name + ".html", Type: "text/html; charset=utf-8"}, handout.HTML
	if asked.Get("as") == "pdf" {
		file, write = web.File{Name: name + ".pdf", Type: "application/pdf"}, handout.PDF
	}
	var b bytes.Buffer
	doc, err := write(&b, handout.Options{Paper: handout.A4, Title: card.Title, Compact: card.Compact, Words: handout.Words{Lang: "en", Page: s.Say("set-page")}})
	if err != nil {
		return l, err
	}
	if err := doc.Report(card); err != nil {
		return l, err
	}
	if err := doc.Close(); err != nil {
		return l, err
	}
	file.Data = b.Bytes()
	l.File = &file
	return l, nil
}
