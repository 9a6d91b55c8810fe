package set

// Report is what a class got right and wrong.
type Report struct {
	Set        string       `json:"set"`
	Title      string       `json:"title"`
	Class      int          `json:"class"`
	Handed     int          `json:"handed_in"`
	Waiting    int          `json:"waiting"`     // answers left to the instructor, in no average and no share
	Decided    int          `json:"decided"`     // answers with an instructor's points
	Mean       float64      `json:"mean_points"` // of the answers that are marked, on sheets handed in
	MeanOf     float64      `json:"mean_of"`     // at most; less than Of where all answers to a question wait
	Of         float64      `json:"of"`
	Alpha      *float64     `json:"alpha"` // null below 30 sheets
	Sure       []SureWrong  `json:"sure_but_wrong"`
	Tasks      []TaskReport `json:"tasks"`
	Items      []ItemReport `json:"items"`
	Open       []OddAnswer  `json:"open"`         // left to the instructor
	Strange    []OddAnswer  `json:"unrecognised"` // wrong, and by no common error
	Statistics int          `json:"least_for_statistics"`
	Missing    []string     `json:"not_handed_in"`
}

// TaskReport is one task over all sheets.
type TaskReport struct {
	Task       string      `json:"task"`
	Title      string      `json:"title"`
	Gate       bool        `json:"gate"`
	N          int         `json:"n"` // answers that were read
	Right      int         `json:"right"`
	Convention int         `json:"convention"`
	Carried    int         `json:"carried"`
	Unit       int         `json:"unit"`
	Partly     int         `json:"partly"` // a part of what is right and nothing wrong: half the points
	Slip       int         `json:"slip"`
	Wrong      int         `json:"wrong"`
	Decided    int         `json:"decided"` // by the instructor: counted among the above
	Open       int         `json:"open"`    // left to the instructor
	Blank      int         `json:"blank"`
	Share      float64     `json:"share_right"`
	Low        float64     `json:"low"` // 95 % interval of the share
	High       float64     `json:"high"`
	Slips      []SlipCount `json:"slips"`
	Lesson     string      `json:"lesson"` // where it is taught; empty for practice alone
	Part       string      `json:"part"`
}

// SlipCount is one common error and how many made it.
type SlipCount struct {
	Slip  string `json:"slip"`
	Says  string `json:"says"`
	Times int    `json:"times"`
}

// ItemReport is one place of the sheet.
type ItemReport struct {
	Number         int      `json:"number"` // as the blueprint has them
	Tasks          []string `json:"tasks"`
	Titles         []string `json:"titles"`
	N              int      `json:"n"`    // answers that are marked
	Open           int      `json:"open"` // left to the instructor
	Share          float64  `json:"share_of_points"`
	Discrimination *float64 `json:"discrimination"` // null below 30 sheets
}

// SureWrong is a wrong answer that someone would have bet the part on.
type SureWrong struct {
	Task  string `json:"task"`
	Title string `json:"title"`
	Gate  bool   `json:"gate"`
	Name  string `json:"name"`
	asked
	Slip string `json:"slip"`
}

// asked is a question as someone had it and what they answered: of options the words, for
// each sheet has them in an order of its own.
type asked struct {
	Number int    `json:"number"` // as printed
	Given  string `json:"given"`
	Key    string `json:"key"`
}

// OddAnswer is an answer to look at by hand.
type OddAnswer struct {
	Name     string `json:"name"`
	Task     string `json:"task"`
	Title    string `json:"title"`
	Code     string `json:"code"`
	Probably string `json:"probably,omitempty"` // what was typed, where a spreadsheet has made a date of it
	asked
}
