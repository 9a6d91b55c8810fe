package record

import (
	"cmp"
	"maps"
	"slices"
)

// salvaged is what could be read of a file.
type salvaged struct {
	answers   map[string]map[int64]row // by learner and number
	counted   map[string][]int64       // what each source says that the number of the learner's last answer is
	others    map[string][][]any       // rows of the other tables
	rehearsed map[string][]int64       // as counted, of rehearsals
	room      int64                    // how many answers the file has room for: more is no count, but damage
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
		switch {
		case table == "rehearsals":
			s.addRehearsals(rows)
		case len(s.others[table]) == 0:
			s.others[table] = rows
		}
	}
	return added
}

// addRehearsals adds those that are not there.
func (s *salvaged) addRehearsals(rows [][]any) {
	there := map[[2]any]bool{}
	for _, row := range s.others["rehearsals"] {
		there[[2]any{row[0], row[1]}] = true
	}
	for _, row := range rows {
		if !there[[2]any{row[0], row[1]}] {
			s.others["rehearsals"] = append(s.others["rehearsals"], row)
		}
	}
}

// rehearsals are a learner's that could be read, in the order of their numbers.
func (s salvaged) rehearsals(learner string) (all []Rehearsal) {
	rows := slices.Clone(s.others["rehearsals"])
	slices.SortFunc(rows, func(a, b []any) int { return cmp.Compare(numberOf(a), numberOf(b)) })
	for _, row := range rows {
		if x, err := rehearsalOf(row); err == nil && x.Learner == learner {
			all = append(all, x)
		}
	}
	return all
}

// numberOf is the number of a rehearsal's row; 0 where it is none.
func numberOf(row []any) int64 { n, _ := row[1].(int64); return n }

// gaps are the numbers of a learner's answers that should be there and are not, without
// those that are known to be lost.
func (s salvaged) gaps(learner string) []int64 {
	there := map[int64]bool{}
	for n := range s.answers[learner] {
		there[n] = true
	}
	return s.missing(there, learner, s.counted[learner], "lost")
}

// rehearsalGaps is the same for rehearsals.
func (s salvaged) rehearsalGaps(learner string) []int64 {
	there := map[int64]bool{}
	for _, row := range s.others["rehearsals"] {
		if row[0] == learner {
			there[numberOf(row)] = true
		}
	}
	return s.missing(there, learner, s.rehearsed[learner], "lost_rehearsals")
}

// missing are the numbers up to the last that are not there, and not known to be lost.
func (s salvaged) missing(there map[int64]bool, learner string, counted []int64, lostIn string) (numbers []int64) {
	known := map[int64]bool{}
	for _, lost := range s.others[lostIn] {
		if n, ok := lost[1].(int64); ok && n > 0 && lost[0] == learner {
			known[n] = true
		}
	}
	last := s.last(there, counted)
	for n := int64(1); n <= last; n++ {
		if !there[n] && !known[n] {
			numbers = append(numbers, n)
		}
	}
	return numbers
}

// last is the number of the last answer or rehearsal of a learner as far as it is known: the
// least that a source says, of those that can be, since a source may be spoilt too.
func (s salvaged) last(there map[int64]bool, counted []int64) int64 {
	last := int64(0)
	for n := range there {
		last = max(last, n)
	}
	for _, n := range slices.Sorted(slices.Values(counted)) {
		if n >= last && n <= last+s.room {
			return n
		}
	}
	return last
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
	for name := range s.rehearsed {
		all[name] = true
	}
	for _, row := range s.others["rehearsals"] {
		if name, ok := row[0].(string); ok {
			all[name] = true
		}
	}
	return slices.Sorted(maps.Keys(all))
}
