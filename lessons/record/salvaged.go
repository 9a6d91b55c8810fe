package record

import (
	"maps"
	"slices"
)

// salvaged is what could be read of a file.
type salvaged struct {
	answers map[string]map[int64]row // by learner and number
	counted map[string][]int64       // what each source says that the number of the learner's last answer is
	others  map[string][][]any       // rows of the other tables
	room    int64                    // how many answers the file has room for: more is no count, but damage
}

// merge adds from an older copy what this one has not, and returns how many answers of each
// learner those are.
func (s *salvaged) merge(older salvaged) map[string]int {
	added := map[string]int{}
	for learner, answers := range older.answers {
		if s.answers[learner] == nil {
			s.answers[learner] = map[int64]row{}
		}
		for n, w := range answers {
			if _, there := s.answers[learner][n]; !there {
				s.answers[learner][n] = w
				added[learner]++
			}
		}
	}
	for table, rows := range older.others {
		if len(s.others[table]) == 0 {
			s.others[table] = rows
		}
	}
	return added
}

// gaps are the numbers of a learner's answers that should be there and are not, without
// those that are known to be lost.
func (s salvaged) gaps(learner string) (numbers []int64) {
	known := map[int64]bool{}
	for _, lost := range s.others["lost"] {
		if n, ok := lost[1].(int64); ok && n > 0 && lost[0] == learner {
			known[n] = true
		}
	}
	last := s.last(learner)
	for n := int64(1); n <= last; n++ {
		if _, there := s.answers[learner][n]; !there && !known[n] {
			numbers = append(numbers, n)
		}
	}
	return numbers
}

// last is the number of a learner's last answer as far as it is known: the least that a
// source says, of those that can be, since a source may be spoilt too.
func (s salvaged) last(learner string) int64 {
	there := int64(0)
	for n := range s.answers[learner] {
		there = max(there, n)
	}
	for _, n := range slices.Sorted(slices.Values(s.counted[learner])) {
		if n >= there && n <= there+s.room {
			return n
		}
	}
	return there
}

// learners are those of whom there is anything.
func (s salvaged) learners() []string {
	all := map[string]bool{}
	for name := range s.answers {
		all[name] = true
	}
	for name := range s.counted {
		all[name] = true
	}
	return slices.Sorted(maps.Keys(all))
}
