package set

import "hash/fnv"

// SameAnswers counts the different answers to each question of a class: one that all have can
// be copied from a neighbour.
type SameAnswers struct {
	answers map[int]map[uint64]bool // by place, as hashes: a class of thousands has many
	sheets  int
}

// NewSameAnswers has seen no sheet yet.
func NewSameAnswers() *SameAnswers { return &SameAnswers{answers: map[int]map[uint64]bool{}} }

// Add takes the questions of one sheet.
func (s *SameAnswers) Add(items []Item) {
	s.sheets++
	for _, it := range items {
		if s.answers[it.Place] == nil {
			s.answers[it.Place] = map[uint64]bool{}
		}
		h := fnv.New64a()
		h.Write([]byte(meaning(it.Problem))) // a hash takes everything
		s.answers[it.Place][h.Sum64()] = true
	}
}

// Shared lists the questions with one answer on all of two sheets or more, numbered as the
// blueprint has them.
func (s *SameAnswers) Shared() []int {
	var shared []int
	for place := range len(s.answers) {
		if s.sheets > 1 && len(s.answers[place]) == 1 {
			shared = append(shared, place+1)
		}
	}
	return shared
}

// Fewest is the question with the fewest different answers, numbered as the blueprint has
// them, and how many those are on how many sheets. Of several the first counts; 0 without
// sheets.
func (s *SameAnswers) Fewest() (question, answers, sheets int) {
	for place := range len(s.answers) {
		if n := len(s.answers[place]); question == 0 || n < answers {
			question, answers = place+1, n
		}
	}
	return question, answers, s.sheets
}
