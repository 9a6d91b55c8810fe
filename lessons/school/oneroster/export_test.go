package oneroster

import (
	"context"
	"net/http"
	"time"

	"scratchpass/quiz/set"
)

// Waits has a service note how long it would wait, and not wait.
func (s *Service) Waits(noted *[]time.Duration) {
	s.wait = func(ctx context.Context, d time.Duration) error {
		*noted = append(*noted, d)
		return ctx.Err()
	}
}

// Page reads a page of people, as the only one.
func Page(text []byte) ([]set.Apprentice, error) {
	page, err := parsePage(text)
	if err != nil {
		return nil, err
	}
	l := list{seen: map[string]bool{}, ids: map[string]bool{}, total: -1}
	_, err = l.add(page, -1)
	return l.people, err
}

// Says reads an answer that says no.
func Says(text []byte) *Refusal { return refusal(http.StatusBadRequest, text) }

// ReadClass reads a class.
func ReadClass(id string, text []byte) (Class, error) { return parseClass(id, text) }

// Files reads files in bulk that are texts.
func Files(texts map[string]string, class string, day time.Time) ([]set.Apprentice, error) {
	return readBulk(func(name string) ([]byte, error) { return []byte(texts[name]), nil }, "lists.zip", class, day)
}
