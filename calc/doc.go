// Package calc holds every number of the project as pure functions: no input or
// output, no clock, no chance, nothing but the standard library.
//
// Lengths are held in inches and angles in degrees. Names say radial or diametral,
// pitch or lead. No function returns NaN or an infinity: what can't be worked out
// is an *InputError that quotes what was given and says what would work.
//
//	topic                      file                          source
//	lengths, angles, rounding  length, angle, round          the inch is 25.4 mm exactly
//	pitch, lead, TPI           pitch                         ASME B1.7 (definitions)
//	60-degree form             form                          ASME B1.1, ISO 68-1; US Navy p. 6-49
//	depth for a tool           depth                         geometry; the published factors are cases
//	compound and cross slide   compound                      geometry; table of compound feeds
//	dials                      dial                          the meaning of the marks
//	spring passes              springpass                    geometric series
//	thread dial                threaddial                    geometry; F. D. Jones, 1914
//	designations and series    designation, series           ASME B1.1; ISO 261, 262, 965-1
//	reading of numbers         parsenumber, parsequantity    -
//
// It does not judge a set-up, a machine or a person, and its answers for the shop
// floor end where a qualified instructor's begin.
package calc
