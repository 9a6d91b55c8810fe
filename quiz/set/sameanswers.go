package set

// SameAnswers looks whether a question has one answer for a whole class: that one can be
// copied from a neighbour.
type SameAnswers struct {
	answers map[int]map[string]bool // by place; no more than a few of each are kept
	sheets  int
}

// NewSameAnswers has seen no sheet yet.
func NewSameAnswers() *SameAnswers { return &SameAnswers{answers: map[int]map[string]bool{}} }

// Add takes the questions of one sheet.
func (s *SameAnswers) Add(items []Item) {
	s.sheets++
	for _, it := range items {
		if s.answers[it.Place] == nil {
			s.answers[it.Place] = map[string]bool{}
		}
		if len(s.answers[it.Place]) < 3 {
			s.answers[it.Place][meaning(it.Problem)] = true
		}
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
