package calc

// Slide is a slide that a screw moves, with play in its nut.
//
// The dial belongs to the screw and the tool to the slide; the two agree within the
// play: Screw <= Table <= Screw + Play.
type Slide struct {
	Screw Length // how far the screw has been wound in, from where it began
	Table Length // how far the slide itself has come in
	Play  Length // backlash, 0 to 0.1 in
}

// Wound returns the slide after its screw has been wound in by a length (out where it
// is below 0). Winding in pushes the slide; winding out takes up the play first:
//
//	in    table = max(table, screw)
//	out   table = min(table, screw + play)
//
// by is -5 to 5 in. Source: definition of backlash.
func (s Slide) Wound(by Length) (Slide, error) {
	if err := firstError(between("way of a slide", by, -5, 5), between("backlash", s.Play, 0, 0.1), between("place of a slide", s.Screw, -20, 20)); err != nil {
		return s, err
	}
	s.Screw += by
	s.Table = min(max(s.Table, s.Screw), s.Screw+s.Play)
	return s, nil
}

// Loose returns how far the slide could still be pushed out against its screw: what
// of the play is not taken up. It is 0 after winding in.
func (s Slide) Loose() Length { return s.Table.Plus(-s.Screw) }
