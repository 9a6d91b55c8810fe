package lookup

import (
	"cmp"
	"context"
	"maps"
	"net/url"
	"slices"
	"strings"

	"scratchpass/calc"
	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/content"
	"scratchpass/lessons/face/web"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/drawing"
	"scratchpass/quiz/thread"
)

// Pages are thread, terms, safety and sources as pages of a browser, in the words that the
// commands print.
func Pages(s *sitting.Session) []web.Lookup {
	return []web.Lookup{
		{Path: "/thread", Label: s.Say("web-look-thread"), Make: func(_ context.Context, asked url.Values) (web.Looked, error) { return threadLooked(s, asked) }},
		{Path: "/terms", Label: s.Say("web-look-terms"), Make: func(_ context.Context, asked url.Values) (web.Looked, error) { return termsLooked(s, asked) }},
		{Path: "/safety", Label: s.Say("web-look-safety"), Make: func(context.Context, url.Values) (web.Looked, error) {
			_, shown, err := cautions(s.Library, false)
			return web.Looked{Title: s.Say("web-look-safety"), Body: shown}, err
		}},
		{Path: "/sources", Label: s.Say("web-look-sources"), Make: func(context.Context, url.Values) (web.Looked, error) {
			docs, err := sourceDocuments(s.Library)
			return web.Looked{Title: s.Say("web-look-sources"), Body: sourcesPage(docs)}, err
		}},
	}
}

// threadLooked is everything about the thread that was asked for.
func threadLooked(s *sitting.Session, asked url.Values) (web.Looked, error) {
	text := strings.TrimSpace(asked.Get("designation"))
	l := web.Looked{Title: s.Say("web-look-thread"), Send: s.Say("web-look-send"),
		Fields: []web.Field{{Name: "designation", Label: s.Say("web-thread-label"), Value: text, Hint: s.Say("web-thread-hint")}}}
	if text == "" {
		return l, nil
	}
	if calc.IsAcme(text) {
		d, err := calc.ParseAcme(text)
		if err != nil {
			return l, err
		}
		doc, err := thread.OfAcme(d)
		if err != nil {
			return l, err
		}
		labels, err := s.Library.Screens()
		l.Body = acmePage(doc, labels)
		return l, err
	}
	d, err := calc.ParseDesignation(text)
	if err != nil {
		return l, err
	}
	doc, err := thread.Of(d)
	if err != nil {
		return l, err
	}
	l.Body, err = threadPageOf(s.Library, d, doc)
	return l, err
}

// termsLooked is what a word means; without one, all words, and the parts of the lathe.
func termsLooked(s *sitting.Session, asked url.Values) (web.Looked, error) {
	word := strings.TrimSpace(asked.Get("word"))
	l := web.Looked{Title: cmp.Or(word, s.Say("web-look-terms")), Send: s.Say("web-look-send"), Fields: []web.Field{{Name: "word", Label: s.Say("web-term-label"), Value: word}}}
	all, err := s.Library.Terms()
	if err != nil {
		return l, err
	}
	words, err := s.Library.Drawings()
	if err != nil {
		return l, err
	}
	found := content.FindTerms(all, word)
	if len(found) == 0 {
		return l, cli.Usagef("no term has %q in it%s", word, content.DidYouMean(word, slices.Sorted(maps.Keys(all))))
	}
	docs := termDocuments(all, found)
	if word == "" {
		l.Links = links(s.Say("web-parts"), partsOf(found, words))
		l.Body = termsPage(docs)
		return l, nil
	}
	l.Body = append(termsPage(docs[:1]), partPage(docs[:1], words)...)
	l.Links = append(links(s.Say("web-see"), docs[0].See), links(s.Say("web-also-in"), found[1:])...)
	return l, nil
}

// partsOf are the terms that the lathe can be shown with.
func partsOf(names []string, words map[string]content.DrawingWords) []string {
	var parts []string
	for _, name := range names {
		if _, ok := drawing.LathePart(name, words); ok {
			parts = append(parts, name)
		}
	}
	return parts
}

// links lead to words, as a group under what it is called.
func links(part string, words []string) []web.Link {
	var all []web.Link
	for i, w := range words {
		l := web.Link{To: "/terms?" + url.Values{"word": {w}}.Encode(), Text: w}
		if i == 0 {
			l.Part = part
		}
		all = append(all, l)
	}
	return all
}
