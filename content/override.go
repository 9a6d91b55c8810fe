package content

import (
	"maps"
	"slices"

	"gopkg.in/yaml.v3"
)

// words reads the words of a task from every folder that has them: what stands in front
// replaces what is behind, field by field, and of what goes by names name by name. The
// questions of a task are one field: a level without one asks like the one below.
func (l *Library) words(task string) (w TaskWords, files []file, err error) {
	name := "tasks/" + task + ".yaml"
	for _, f := range slices.Backward(l.folders) {
		one := &Library{[]folder{f}}
		more, readErr := read[TaskWords](one, name)
		if ErrNotThere(readErr) {
			err = readErr
			continue
		}
		if readErr != nil {
			return w, nil, readErr
		}
		found, readErr := one.find(name)
		if readErr != nil {
			return w, nil, readErr
		}
		files = append(files, found)
		w.replace(more)
	}
	if len(files) > 0 {
		err = nil
	}
	return w, files, err
}

// replace puts what other words say in place of these.
func (w *TaskWords) replace(by TaskWords) {
	for _, text := range []struct {
		mine *string
		by   string
	}{{&w.Title, by.Title}, {&w.Skill, by.Skill}, {&w.Hint, by.Hint}, {&w.AtTheLathe, by.AtTheLathe}, {&w.Drawing, by.Drawing}} {
		if text.by != "" {
			*text.mine = text.by
		}
	}
	if len(by.Ask) > 0 {
		w.Ask = by.Ask
	}
	if len(by.Readings) > 0 {
		w.Readings = by.Readings
	}
	if len(by.Safety) > 0 {
		w.Safety = by.Safety
	}
	w.Cases, w.Options, w.Because = joined(w.Cases, by.Cases), joined(w.Options, by.Options), joined(w.Because, by.Because)
	w.Slips, w.Symbols, w.FollowUps = joined(w.Slips, by.Slips), joined(w.Symbols, by.Symbols), joined(w.FollowUps, by.FollowUps)
}

// joined are the entries of both, those of the second in front.
func joined[V any](first, second map[string]V) map[string]V {
	if len(second) == 0 {
		return first
	}
	all := maps.Clone(first)
	if all == nil {
		all = map[string]V{}
	}
	maps.Copy(all, second)
	return all
}

// WordsText is the words of a task that are in force, as a file; or that of an instructor's
// own question. where is the place of such a file in a folder of one's own.
func (l *Library) WordsText(task string) (text []byte, where string, err error) {
	where = "tasks/" + task + ".yaml"
	w, files, err := l.words(task)
	switch {
	case ErrNotThere(err):
		where = "questions/" + task + ".yaml"
		own, err := l.find(where)
		return own.text, where, err
	case err != nil:
		return nil, "", err
	case len(files) == 1:
		return files[0].text, where, nil
	}
	text, err = yaml.Marshal(w)
	return text, where, err
}
