package calc

// Formula is a formula of the trade: the text that a learner reads and the function that
// works it out. One can't change without the other being looked at: a test evaluates
// the text with the symbols in their places and compares.
//
// Text is in symbols, x for times, angles in degrees: "h / cos(a)". Its constants are
// right to their last decimal. A constant such as 12, 25.4 or 127 settles the units,
// which then stand beside the formula; any other holds in every unit of length.
//
// Of is the function, with the range and the errors that its own comment gives. It takes
// what the trade starts from. Where the text goes on from an earlier line of a working,
// the comment of the formula says which symbol that is.
type Formula[F any] struct {
	Text string
	Of   F
}
