package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"slices"
	"strings"

	"scratchpass/lessons"
	"scratchpass/lessons/record"
	"scratchpass/quiz"
	"scratchpass/quiz/set"
)

// handedOut are the problem codes that are to be asked: arguments that are codes, or the
// lines of a file.
func handedOut(args []string, file string) ([]string, error) {
	var codes []string
	for _, arg := range args {
		if strings.Contains(arg, "@") {
			codes = append(codes, arg)
		}
	}
	switch {
	case len(codes) > 0 && len(codes) < len(args):
		return nil, usage("give problem codes or tasks, not both: %q", args)
	case file == "":
		return codes, nil
	case len(args) > 0:
		return nil, usage("--codes %q has the questions; leave out %q", file, args)
	}
	text, err := os.ReadFile(file)
	if err != nil {
		return nil, err
	}
	for i, line := range strings.Split(strings.TrimPrefix(string(text), "\ufeff"), "\n") {
		line = strings.TrimSpace(line)
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		if _, err := quiz.ParseCode(line); err != nil {
			return nil, usage("%s, line %d: %w", file, i+1, err)
		}
		codes = append(codes, line)
	}
	if len(codes) == 0 || len(codes) > mostProblems {
		return nil, usage("%s has %d problem codes: give 1 to %d, one a line", file, len(codes), mostProblems)
	}
	return codes, nil
}

// askHandedOut asks them.
func (a *app) askHandedOut(s *lessons.Session, codes []string, out string) error {
	if out != "" { // a sitting that was broken off goes on where it was left
		done := answeredIn(out)
		codes = slices.DeleteFunc(codes, func(code string) bool { return done[code] })
		if len(codes) == 0 {
			fmt.Fprintln(a.out, s.Say("handed-all", "where", out))
			return nil
		}
	}
	if err := s.HandedOut(codes); err != nil {
		return err
	}
	if out != "" {
		fmt.Fprintln(a.out, s.Say("handed-kept", "where", out))
	}
	return nil
}

// answeredIn are the codes of the problems that a file of answers has one to.
func answeredIn(file string) map[string]bool {
	done := map[string]bool{}
	text, err := os.ReadFile(file)
	if err != nil {
		return done // nothing is there yet
	}
	for line := range bytes.Lines(text) {
		var kept set.Kept
		if json.Unmarshal(line, &kept) == nil {
			done[kept.Code] = true
		}
	}
	return done
}

// alsoWrite lets a session write every answer to a file too, at once.
func (a *app) alsoWrite(s *lessons.Session, path string) error {
	f, err := appendLines(path, tornAnswer)
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
