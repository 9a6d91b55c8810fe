package qti

import (
	"fmt"
	"slices"

	"scratchpass/quiz"
)

// slipRules adds a rule for each slip whose answer gets it named. fits is the
// condition that an answer is that of a slip. part, where it is not nil, is the
// condition that it is a part of the key, for slips that cover those.
func (d *draft) slipRules(fits func(r quiz.Reply) *node, part func() *node) error {
	p := d.Problem
	var err error
	d.slips(func(s *quiz.Slip, r quiz.Reply) {
		if m := p.MarkReply(r); m.Slip == s.Name && s.Covers == nil { // one that covers parts is one of them
			d.rule(fits(r), m, true)
		}
		if s.Covers == nil {
			return
		}
		example, ok := d.coversParts(s)
		switch {
		case !ok || part == nil:
			err = fmt.Errorf("the slip %s of %s covers answers that QTI can't tell: leave %s out", s.Name, p.Task.Name, p.Task.Name)
		case example != nil:
			d.rule(part(), *example, false)
		}
	})
	return err
}

// coversParts tries whether a slip covers just the parts of the key, which is what
// QTI can ask for. It returns the mark of such a part; nil when the key has none.
func (d *draft) coversParts(s *quiz.Slip) (example *quiz.Mark, ok bool) {
	key := d.Problem.Answer.Key
	ok = !s.Covers(key, key) && !s.Covers(key, quiz.Reply{})
	for i, k := range key.Keys {
		without := append(append([]string{}, key.Keys[:i]...), key.Keys[i+1:]...)
		if len(without) == 0 {
			break
		}
		ok = ok && s.Covers(key, quiz.Keys(k)) && s.Covers(key, quiz.Keys(without...))
		for _, part := range [][]string{{k}, without} {
			if m := d.Problem.MarkReply(quiz.Keys(part...)); idOf(m) == "part-"+s.Name {
				example = &m
			}
		}
	}
	for _, option := range d.Problem.Answer.Options {
		with := append([]string{option}, key.Keys...)
		if !slices.Contains(key.Keys, option) && (s.Covers(key, quiz.Keys(option)) || s.Covers(key, quiz.Keys(with...))) {
			ok = false
		}
	}
	return example, ok
}
