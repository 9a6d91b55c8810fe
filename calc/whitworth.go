package calc

import "math"

// WhitworthAngle is the angle between the flanks of a Whitworth thread, and so of British
// pipe thread.
const WhitworthAngle Angle = 55

// WhitworthHeight is the height of its sharp triangle for a pitch of 1:
//
//	H = P / (2 tan 27.5) = 0.960491 P
var WhitworthHeight = 1 / (2 * math.Tan(float64(WhitworthAngle)/2*math.Pi/180))

// whitworthDepth returns the single depth of a Whitworth thread, a sixth of the sharp
// height being rounded off at crest and root:
//
//	h = 2/3 H = 0.640327 P
//
// Source: BS 84, as thread tables quote it.
func whitworthDepth(pitch Length) (Length, error) {
	if err := checkPitch(pitch); err != nil {
		return 0, err
	}
	return pitch.Times(WhitworthHeight * 2 / 3), nil
}

// WhitworthDepth is the single depth of a Whitworth or British pipe thread. P is the
// pitch.
var WhitworthDepth = Formula[func(pitch Length) (Length, error)]{"0.640327 x P", whitworthDepth}
