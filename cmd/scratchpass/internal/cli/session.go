package cli

import (
	"context"
	"fmt"
	"os"
	"strings"
	"sync"

	"scratchpass/content"
	"scratchpass/lessons/face/plain"
	"scratchpass/lessons/face/screen"
	"scratchpass/lessons/page"
	"scratchpass/lessons/postgres"
	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
	"scratchpass/lessons/sitting"
)

// Open begins a session and opens the learner's record for it; the record is nil when
// none is kept. The session ends with the context, and when someone stops the program.
func (r *Run) Open(ctx context.Context) (*sitting.Session, *record.Record, error) {
	return toAnswer(r.OpenToRead(ctx, false))
}

// toAnswer is a session in which answers are to be kept: with a record that may only be read
// that is an error.
func toAnswer(s *sitting.Session, rec *record.Record, err error) (*sitting.Session, *record.Record, error) {
	if err == nil && rec != nil && rec.ReadOnly {
		err = fmt.Errorf("%w, or --record none", record.ErrReadOnly)
	}
	return s, rec, err
}

// OpenAt is Open with a face of another kind than the terminal's.
func (r *Run) OpenAt(ctx context.Context, face page.Face) (*sitting.Session, *record.Record, error) {
	lib, err := r.Library()
	if err != nil {
		return nil, nil, err
	}
	s, err := r.session(lib, face)
	if err != nil {
		return nil, nil, err
	}
	return toAnswer(r.withRecord(s, false))
}

// OpenToRead is Open for a look at a record, which may be one that may only be read. With
// whole the whole file is looked through, whenever that was done last.
func (r *Run) OpenToRead(ctx context.Context, whole bool) (*sitting.Session, *record.Record, error) {
	s, err := r.OpenUnrecorded(ctx)
	if err != nil {
		return nil, nil, err
	}
	return r.withRecord(s, whole)
}

// withRecord opens the learner's record for a session.
func (r *Run) withRecord(s *sitting.Session, whole bool) (*sitting.Session, *record.Record, error) {
	rec, err := r.openRecord(whole)
	if rec == nil || err != nil {
		return s, nil, err
	}
	if r.asOf != "" {
		r.Tell(s, s.Say("say-as-of", "day", r.asOf))
	}
	if err := r.tellOfDamage(s, rec); err != nil {
		return s, nil, err
	}
	if err := keepIn(s, rec); err != nil {
		return s, nil, err
	}
	return s, rec, nil
}

// keepIn keeps what happens in a session in a record.
func keepIn(s *sitting.Session, rec *record.Record) error {
	book, err := schedule.NewBook(rec, s.System)
	if err == nil {
		s.KeepIn(book, rec.Sittings())
	}
	return err
}

// OpenWith is Open with a face and a record of its own, such as those of one learner of many.
func (r *Run) OpenWith(face page.Face, rec *record.Record) (*sitting.Session, error) {
	lib, err := r.Library()
	if err != nil {
		return nil, err
	}
	s, err := r.session(lib, face)
	if err != nil {
		return nil, err
	}
	s.Attended = true
	return s, keepIn(s, rec)
}

// OpenUnrecorded begins a session that is in no one's record.
func (r *Run) OpenUnrecorded(ctx context.Context) (*sitting.Session, error) {
	lib, err := r.Library()
	if err != nil {
		return nil, err
	}
	screens, err := lib.Screens()
	if err != nil {
		return nil, err
	}
	return r.session(lib, r.terminal(r.UntilStopped(ctx), screens))
}

// session begins a session at a face.
func (r *Run) session(lib *content.Library, face page.Face) (*sitting.Session, error) {
	lathe, system, err := r.Lathe()
	if err != nil {
		return nil, err
	}
	s, err := sitting.NewSession(face, lib, system, lathe, r.Seeds())
	if err != nil {
		return nil, err
	}
	s.Clock, s.Attended = r.Now, IsTerminal(r.In)
	return s, nil
}

// terminal returns the screen for a person at a terminal, and the plain one for
// everything else.
func (r *Run) terminal(ctx context.Context, words map[string]string) page.Face {
	if r.AtTerminal() && !r.Plain && !dumb() {
		s := &screen.Screen{Stop: ctx, In: r.In, Out: r.Out, Size: r.size, Look: sync.OnceValue(r.Look), Words: screen.Words{
			Name: words["screen-name"], More: words["screen-more"], Menu: words["screen-menu"], Back: words["screen-back"],
			GoOn: words["screen-go-on"], Answer: words["screen-answer"], Do: words["screen-do"], Beside: []string{words["screen-sum"], words["screen-word"]}}}
		r.AtEnd(s.Close)
		return s
	}
	return plain.New(ctx, r.In, r.Out, plain.Options{Width: r.Width(), Echo: !IsTerminal(r.In)})
}

// Tell says something beside what a command is there for: on a screen that is taken over
// on its first sheet, else where errors go.
func (r *Run) Tell(s *sitting.Session, text string) {
	if face, ok := s.Face.(*screen.Screen); ok {
		_ = face.Show(page.Page{page.Paragraph{Text: text}}) // without a pause it is only put on the sheet
		return
	}
	fmt.Fprintln(r.Err, text)
}

// Note says what came of a command: on a screen that is taken over on its sheet, which is printed
// in the end, else where output goes.
func (r *Run) Note(s *sitting.Session, text string) {
	if _, ok := s.Face.(*screen.Screen); ok {
		r.Tell(s, text)
		return
	}
	fmt.Fprintln(r.Out, content.Printable(text))
}

// LeaveScreen ends a screen that was taken over, so that what is printed from now on stays.
func LeaveScreen(s *sitting.Session) error {
	if face, ok := s.Face.(*screen.Screen); ok {
		return face.Close()
	}
	return nil
}

// dumb reports whether the terminal can do no more than print from top to bottom.
func dumb() bool { return os.Getenv("TERM") == "dumb" }

// NoRecord is the --record that keeps nothing.
const NoRecord = "none"

// mostLetters is the longest name of a learner.
const mostLetters = 60

// openRecord opens the learner's record; nil when none is kept. As of another day it is a
// copy that is gone in the end: what is tried on it counts for nothing.
func (r *Run) openRecord(whole bool) (*record.Record, error) {
	if r.RecordFile == NoRecord {
		return nil, nil
	}
	learner, path, err := r.LearnersRecord()
	if err != nil {
		return nil, err
	}
	open := record.Open
	switch {
	case r.asOf != "":
		open = record.OpenTrial
	case whole:
		open = record.OpenChecked
	}
	rec, err := open(path, learner)
	switch {
	case err != nil && postgres.Is(path): // it names the address, without its password
		return nil, fmt.Errorf("%w; give another --record, or --record none", err)
	case err != nil:
		return nil, fmt.Errorf("the record %q can't be opened: %w; give --record FILE, or --record none", path, err)
	}
	r.AtEnd(rec.Close)
	return rec, nil
}

// LearnersRecord is the name of the learner, and where their record is.
func (r *Run) LearnersRecord() (learner, path string, err error) {
	learner = strings.TrimSpace(content.Printable(r.Learner))
	if learner == "" || len([]rune(learner)) > mostLetters {
		return "", "", Usagef("--learner %.70q: give a name of up to %d letters", r.Learner, mostLetters)
	}
	if r.RecordFile != "" {
		return learner, r.RecordFile, nil
	}
	if path, err = DataFile("record.db"); err != nil {
		return "", "", fmt.Errorf("no folder for the record: %w; give --record FILE, or --record none", err)
	}
	return learner, path, nil
}

// HasRecord reports whether there is a record to look at: one is kept, and has been begun.
func (r *Run) HasRecord() bool {
	if r.RecordFile == NoRecord {
		return false
	}
	_, path, err := r.LearnersRecord()
	if err != nil {
		return false
	}
	_, err = os.Stat(path)
	return err == nil || postgres.Is(path)
}

// NoteExport notes a file that the learner's answers are about to be written to, where a record
// is kept and anything can be noted: who forgets is told of it. Of a record on a server nothing is
// noted: the file may be on any computer.
func (r *Run) NoteExport(to string) error {
	if r.RecordFile == NoRecord {
		return nil
	}
	learner, path, err := r.LearnersRecord()
	if err != nil {
		return err
	}
	if postgres.Is(path) {
		return nil
	}
	if err := record.NoteExport(path, learner, to); err != nil && !record.Unwritable(err) {
		return err
	}
	return nil
}
