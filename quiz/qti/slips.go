package qti

import (
	"fmt"
	"slices"

	"scratchpass/quiz/answer"
)

// errorRules adds a rule for each common error whose answer gets it named. fits is the
// condition that an answer is that of an error. part, where it is not nil, is the
// condition that it is a part of the key, for errors that cover those.
func (d *draft) errorRules(fits func(r answer.Response) *node, part func() *node) error {
	p := d.Problem
	var err error
	for _, s := range d.errors() {
		if m := p.MarkResponse(s.Response); m.Error == s.Name && s.Partial == nil { // one that covers parts is one of them
			d.rule(fits(s.Response), m, true)
		}
		if s.Partial == nil {
			continue
		}
		example, ok := d.coversParts(&s)
		switch {
		case !ok || part == nil:
			err = fmt.Errorf("the common error %s of %s covers answers that QTI can't tell: leave %s out", s.Name, p.Task.Name, p.Task.Name)
		case example != nil:
			d.rule(part(), *example, false)
		}
	}
	return err
}

// coversParts tries whether an error covers just the parts of the key, which is what
// QTI can ask for. It returns the mark of such a part; nil when the key has none.
func (d *draft) coversParts(s *answer.Known) (example *answer.Mark, ok bool) {
	key := d.Problem.Expected.Key
	ok = !s.Partial(key, key) && !s.Partial(key, answer.Response{})
	for i, k := range key.Keys {
		without := append(append([]string{}, key.Keys[:i]...), key.Keys[i+1:]...)
		if len(without) == 0 {
			break
		}
		ok = ok && s.Partial(key, answer.OptionsResponse(k)) && s.Partial(key, answer.OptionsResponse(without...))
		for _, part := range [][]string{{k}, without} {
			if m := d.Problem.MarkResponse(answer.OptionsResponse(part...)); idOf(m) == "part-"+s.Name {
				example = &m
			}
		}
	}
	for _, option := range d.Problem.Expected.Options {
		with := append([]string{option}, key.Keys...)
		if !slices.Contains(key.Keys, option) && (s.Partial(key, answer.OptionsResponse(option)) || s.Partial(key, answer.OptionsResponse(with...))) {
			ok = false
		}
	}
	return example, ok
}
