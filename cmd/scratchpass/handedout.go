package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"os"
	"slices"
	"strings"

	"scratchpass/lessons"
	"scratchpass/lessons/record"
	"scratchpass/quiz/files"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/set"
)

// sureMark is the line of a file of codes that has each question ask how sure someone is.
const sureMark = "# each question asks how sure you are"

// handedOut are the problem codes that are to be asked: arguments that are codes, or the
// lines of a file.
func handedOut(args []string, file string) (h lessons.Handed, err error) {
	for _, arg := range args {
		if strings.Contains(arg, "@") {
			h.Codes = append(h.Codes, arg)
		}
	}
	switch {
	case len(h.Codes) > 0 && len(h.Codes) < len(args):
		return h, usage("give problem codes or tasks, not both: %q", args)
	case file == "":
		return h, nil
	case len(args) > 0:
		return h, usage("--codes %q has the questions; leave out %q", file, args)
	}
	text, err := os.ReadFile(file)
	if err != nil {
		return h, err
	}
	for i, line := range strings.Split(strings.TrimPrefix(string(text), "\ufeff"), "\n") {
		line = strings.TrimSpace(line)
		if line == "" || strings.HasPrefix(line, "#") {
			h.Sure = h.Sure || line == sureMark
			continue
		}
		if _, err := problem.ParseCode(line); err != nil {
			return h, usage("%s, line %d: %w", file, i+1, err)
		}
		h.Codes = append(h.Codes, line)
	}
	if len(h.Codes) == 0 || len(h.Codes) > mostProblems {
		return h, usage("%s has %d problem codes: give 1 to %d, one a line", file, len(h.Codes), mostProblems)
	}
	return h, nil
}

// goOnIn takes up what a file of answers has of an earlier sitting. A file of other
// questions is someone else's.
func goOnIn(h *lessons.Handed, file string) error {
	h.Given = answeredIn(file)
	for _, code := range slices.Sorted(maps.Keys(h.Given)) {
		if !slices.Contains(h.Codes, code) {
			return usage("%s has answers to other questions (%s): give another --out", file, code)
		}
	}
	return nil
}

// askHandedOut asks them.
func (a *app) askHandedOut(s *lessons.Session, h lessons.Handed, out string) error {
	if len(h.Given) > 0 && !slices.ContainsFunc(h.Codes, func(code string) bool { _, done := h.Given[code]; return !done }) {
		fmt.Fprintln(a.out, s.Say("handed-all", "where", out))
		return nil
	}
	if err := s.HandedOut(h); err != nil {
		return err
	}
	if out != "" {
		fmt.Fprintln(a.out, s.Say("handed-kept", "where", out))
	}
	return nil
}

// answeredIn are the answers in a file, the first to each problem, by its code.
func answeredIn(file string) map[string]string {
	given := map[string]string{}
	text, err := os.ReadFile(file)
	if err != nil {
		return given // nothing is there yet
	}
	for line := range bytes.Lines(text) {
		var kept set.Kept
		if json.Unmarshal(line, &kept) != nil || kept.Code == "" {
			continue
		}
		if _, twice := given[kept.Code]; !twice {
			given[kept.Code] = kept.Given
		}
	}
	return given
}

// alsoWrite lets a session write every answer to a file too, at once.
func (a *app) alsoWrite(s *lessons.Session, path string) error {
	f, err := files.Append(path, files.TornAnswer)
	if err != nil {
		return err
	}
	a.closers = append(a.closers, f.Close)
	s.Book = answerFile{s.Book, f}
	return nil
}

// answerFile writes answers to a file besides the book they go to.
type answerFile struct {
	lessons.Book // nil where no record is kept
	f            *os.File
}

func (b answerFile) Keep(a record.Answer) error {
	line, err := json.Marshal(set.Kept{Code: a.Code, Given: a.Given, Certainty: a.Certainty, Hint: a.Hint, Seconds: a.Seconds})
	if err != nil {
		return err
	}
	if _, err := b.f.Write(append(line, '\n')); err != nil {
		return err
	}
	if err := b.f.Sync(); err != nil || b.Book == nil {
		return err
	}
	return b.Book.Keep(a)
}

func (b answerFile) Place(lesson string) (part int, ok bool, err error) {
	if b.Book == nil {
		return 0, false, nil
	}
	return b.Book.Place(lesson)
}

func (b answerFile) SetPlace(lesson string, part int) error {
	if b.Book == nil {
		return nil
	}
	return b.Book.SetPlace(lesson, part)
}
