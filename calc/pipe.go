package calc

import "math"

// PipeTaper is the taper of a pipe thread on the diameter: 1 in 16.
// Source: ASME B1.20.1.
const PipeTaper = 1.0 / 16

// PipeSize is a size of taper pipe thread.
type PipeSize struct {
	Size    string
	Outside Length // outside diameter of the pipe
	TPI     ThreadsPerInch
	L1      Length // length of engagement by hand
}

// PipeSizes are the sizes of NPT from 1/8 to 2. Source: ASME B1.20.1, as two pipe-thread
// tables give it; the outside diameters are from memory, but for that of 1/2.
var PipeSizes = []PipeSize{
	{"1/8", 0.405, 27, 0.1615}, {"1/4", 0.540, 18, 0.2278}, {"3/8", 0.675, 18, 0.240}, {"1/2", 0.840, 14, 0.320},
	{"3/4", 1.050, 14, 0.339}, {"1", 1.315, 11.5, 0.400}, {"1-1/4", 1.660, 11.5, 0.420}, {"1-1/2", 1.900, 11.5, 0.420}, {"2", 2.375, 11.5, 0.436},
}

// Pipe holds the basic dimensions of a taper pipe thread.
type Pipe struct {
	E0    Length // pitch diameter at the small end
	E1    Length // pitch diameter at the end of engagement by hand
	L2    Length // length of effective thread
	Angle Angle  // half the angle of the taper
}

// PipeThread returns the basic dimensions of a taper pipe thread:
//
//	E0 = D - (0.050 D + 1.1) P
//	E1 = E0 + 0.0625 L1
//	L2 = (0.80 D + 6.8) P
//
// D is the outside diameter of the pipe, 0.3 to 12 in. Source: ASME B1.20.1-1983
// as quoted in a pipe-thread table.
func PipeThread(outside Length, n ThreadsPerInch, l1 Length) (Pipe, error) {
	pitch, err := n.Pitch()
	if err := firstError(err, between("pipe outside diameter", outside, 0.3, 12), between("length of engagement", l1, 0, 4)); err != nil {
		return Pipe{}, err
	}
	d := outside.Inches()
	e0 := outside - pitch.Times(0.050*d+1.1)
	if e0 <= 0 {
		return Pipe{}, badNumber("threads per inch", n.Number(), "a finer thread for this pipe")
	}
	return Pipe{
		E0: e0, E1: e0 + l1.Times(PipeTaper), L2: pitch.Times(0.80*d + 6.8),
		Angle: Angle(math.Atan(PipeTaper/2) * 180 / math.Pi),
	}, nil
}

// setOver returns how far a tailstock is set over to turn a pipe taper between
// centres:
//
//	set-over = length / 32
//
// length is the whole distance between the centres, 0 to 100 in.
func setOver(betweenCentres Length) (Length, error) {
	if err := between("distance between centres", betweenCentres, 0, 100); err != nil {
		return 0, err
	}
	return betweenCentres.Times(PipeTaper / 2), nil
}

// pipeHeight returns the height of a pipe thread, measured straight in, as the standard
// allows it at most:
//
//	h = 0.8 P
//
// The sharp form is 0.866 P high. Crest and root are cut off by 0.033 P each, or more.
// n is 2 to 80 threads per inch. Source: ASME B1.20.1-2013, 2.4.
func pipeHeight(n ThreadsPerInch) (Length, error) {
	pitch, err := n.Pitch()
	return pitch.Times(0.8), err
}

// pipeAlong returns how far a taper gauge moves along in so many turns:
//
//	along = t P
//
// turns are -20 to 20.
func pipeAlong(turns float64, n ThreadsPerInch) (Length, error) {
	pitch, err := n.Pitch()
	if err := firstError(err, inRange("turns", turns, -20, 20)); err != nil {
		return 0, err
	}
	return pitch.Times(turns), nil
}

// pipeDepthForAlong returns how far straight in a tool goes for a gauge to stand further
// on: each side of a pipe thread slopes 1 in 32.
//
//	depth = along / 32
//
// along is -4 to 4 in.
func pipeDepthForAlong(along Length) (Length, error) {
	if err := between("way of a gauge", along, -4, 4); err != nil {
		return 0, err
	}
	return along.Times(PipeTaper / 2), nil
}

// The formulas of a taper pipe thread. D is the outside diameter of the pipe and P the
// pitch, both in inches, L the distance between centres.
var (
	// PipeSmallEnd is E0 of PipeThread.
	PipeSmallEnd = Formula[func(outside Length, n ThreadsPerInch) (Length, error)]{"D - (0.050 x D + 1.1) x P",
		func(outside Length, n ThreadsPerInch) (Length, error) {
			p, err := PipeThread(outside, n, 0)
			return p.E0, err
		}}

	// PipeHeight is the most that a pipe thread is high, straight in.
	PipeHeight = Formula[func(n ThreadsPerInch) (Length, error)]{"0.8 x P", pipeHeight}

	// PipeAlong is how far a taper gauge moves along in t turns, and PipeDepthForAlong how
	// far straight in the tool goes for that; w is the distance along.
	PipeAlong         = Formula[func(turns float64, n ThreadsPerInch) (Length, error)]{"t x P", pipeAlong}
	PipeDepthForAlong = Formula[func(along Length) (Length, error)]{"w / 32", pipeDepthForAlong}

	// PipeSetOver is how far a tailstock is set over to turn a pipe taper between centres;
	// L is 0 to 100 in.
	PipeSetOver = Formula[func(betweenCentres Length) (Length, error)]{"L / 32", setOver}
)
