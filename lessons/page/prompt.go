package page

// Prompt is one thing to answer.
type Prompt struct {
	Text  string // one line: what to type
	Takes Takes
	Words []string // that may be typed instead of an answer

	Beside bool // = and a sum is worked out here, and ? and a word explained
}

// Takes is what an answer may be: one of the types below. The answer itself is always
// text, as someone would type it; a face may offer other ways to make it.
type Takes interface{ takes() }

// Menu takes the number of one of its lines. Back says that the last line leads back.
type Menu struct {
	Options []string
	Back    bool
}

// GoOn takes Enter and nothing else.
type GoOn struct{}

// Words takes any text. A question inside another has a way back to it: Back is what
// leads there. Moves says that what is typed is done, and not marked.
type Words struct {
	Back  string
	Moves bool
}

// Number takes a number, with its unit or in the unit that is asked for.
type Number struct {
	Unit   string
	Places int
}

// Readings takes several numbers in order, one for each label.
type Readings struct {
	Labels []string
	Unit   string
	Places int
}

// OneOf takes the number of one of the options that stand with the question.
type OneOf struct{ Options []string }

// SeveralOf takes the numbers of all that fit.
type SeveralOf struct{ Options []string }

// InOrder takes the numbers of all the steps in their order.
type InOrder struct{ Steps []string }

// Parts takes the parts of a designation.
type Parts struct{ Fields []string }

func (Menu) takes()      {}
func (GoOn) takes()      {}
func (Words) takes()     {}
func (Number) takes()    {}
func (Readings) takes()  {}
func (OneOf) takes()     {}
func (SeveralOf) takes() {}
func (InOrder) takes()   {}
func (Parts) takes()     {}

// Options are the lines of a menu; nil for any other prompt.
func (p Prompt) Options() []string {
	if m, ok := p.Takes.(Menu); ok {
		return m.Options
	}
	return nil
}
