package desk

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"slices"
	"strings"
	"time"

	"scratchpass/lessons/class"
	"scratchpass/lessons/class/journal"
	"scratchpass/quiz/set"
)

// classAnswers are the answers to this set of the class with a code, or of the last one in a file.
// Visitors are in no roster: theirs are left out, and so is what came late and was not let. never are
// the places of questions that nobody was asked, for the lesson ended before.
func (d *desk) classAnswers(at journal.At, code string, note func(set.Note)) (all []set.Given, never map[int]bool, err error) {
	ctx := context.Background()
	j, err := at.OpenToRead(ctx)
	if err != nil {
		return nil, nil, err
	}
	defer func() { err = errors.Join(err, j.Close()) }()
	head, err := at.Head(ctx, j, code)
	if err != nil {
		return nil, nil, err
	}
	live, err := class.Open(ctx, j, head, head.With(d.key, class.MakerOf(d.key, d.lib, d.of, d.lathe)), time.Now)
	if err != nil {
		return nil, nil, err
	}
	var asked []string
	visitors := map[string]bool{}
	live.See(func(room *class.Room) {
		for n, a := range room.Sets {
			asked = append(asked, a.Blueprint.Set)
			if a.Blueprint.Set != d.maker.Blueprint.Set {
				continue
			}
			all, never = class.Given(room, n, false), a.NeverPut()
			for _, g := range class.Given(room, n, true) {
				visitors[g.Who] = true
			}
		}
	})
	if !slices.Contains(asked, d.maker.Blueprint.Set) {
		return nil, nil, fmt.Errorf("%s: the class was asked %s, not %s: give the blueprint of that set", at, strings.Join(asked, ", "), d.maker.Blueprint.Set)
	}
	for i := range all {
		all[i].File = at.String()
	}
	if len(visitors) > 0 {
		note(set.Note{Says: "set-note-visitors", File: at.String(), Text: strings.Join(slices.Sorted(maps.Keys(visitors)), ", ")})
	}
	return all, never, nil
}

// begins is how much of a file tells whether a learning system wrote it.
const begins = 64 << 10

// answersIn reads a file of answers: what a learning system handed back, or what people
// wrote and typed; of a class, those of the one with a code. never are the places of questions that
// nobody there was asked.
func (d *desk) answersIn(file, code string, note func(set.Note)) (all []set.Given, never map[int]bool, err error) {
	if at := journal.At(file); at.Is() {
		return d.classAnswers(at, code, note)
	}
	if !handedBack(file) {
		all, err = set.ReadAnswers(file, note)
	} else {
		all, err = d.maker.ReadResponses(d.class, file)
	}
	return all, nil, err
}

// handedBack looks at the beginning of an ordinary file. What can't be read at all is said by
// who reads the whole of it.
func handedBack(file string) bool {
	if info, err := os.Stat(file); err != nil || info.Mode()&fs.ModeType != 0 {
		return false
	}
	f, err := os.Open(file)
	if err != nil {
		return false
	}
	defer f.Close()
	start := make([]byte, begins)
	n, _ := f.Read(start)
	return set.IsResponses(bytes.TrimRight(start[:n], "\x00"))
}
