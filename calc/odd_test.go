package calc_test

import (
	"math"
	"reflect"
	"testing"

	"scratchpass/calc"
)

// everything lists every exported function that takes numbers, so that odd inputs
// reach them all. TestEverythingIsListed keeps it whole.
var everything = map[string]any{
	"Inches": nil, "Millimetres": nil, "Degrees": nil, "DegreesMinutes": nil, "FeetPerMinute": nil, "MetresPerMinute": nil, // hold what they are given
	"ParseNumber": nil, "ParseFraction": nil, "ParseLength": nil, "LengthOf": nil, "ParseAngle": nil, "ParseDesignation": nil, "ParseSide": nil, "ParseAcme": nil, "IsAcme": nil, "ParsePipe": nil, "IsPipe": nil, "Quoted": nil, // fuzzed as texts
	"Round": calc.Round, "Fixed": calc.Fixed, "Shortest": calc.Shortest, "Within": calc.Within, "NearRoundingEdge": calc.NearRoundingEdge,
	"AngleOfSlope": calc.AngleOfSlope, "LengthText": calc.LengthText, "FractionText": calc.FractionText,
	"TPI": calc.TPI, "Lead": calc.Lead, "RadialDepthOfForm": calc.RadialDepthOfForm, "BasicPitchDiameter": calc.BasicPitchDiameter,
	"BasicInternalMinor": calc.BasicInternalMinor, "UNRMinor": calc.UNRMinor, "ExternalMinor": calc.ExternalMinor, "FlatOfNose": calc.FlatOfNose,
	"TipPastPitchLine": calc.TipPastPitchLine, "WidestFlat": calc.WidestFlat, "RadialDepth": calc.RadialDepth, "RadialDepthFromNominal": calc.RadialDepthFromNominal,
	"RadialDepthFromBasicBore": calc.RadialDepthFromBasicBore, "DepthFactors": calc.DepthFactors, "RuleOfThumbTravel": calc.RuleOfThumbTravel,
	"CompoundTravel": calc.CompoundTravel, "RadialOfCompound": calc.RadialOfCompound,
	"CompoundScaleReading": calc.CompoundScaleReading, "DialReading": calc.DialReading,
	"LeftOnAfterSprings": calc.LeftOnAfterSprings, "LeftAfter": calc.LeftAfter,
	"NumberSize": calc.NumberSize, "MetricCoarsePitch": calc.MetricCoarsePitch,
	"LimitsOf": calc.LimitsOf, "UnifiedLimits": calc.UnifiedLimits, "MetricLimits": calc.MetricLimits,
	"WiresFor": calc.WiresFor, "OverWires": calc.OverWires, "PitchDiameterFromWires": calc.PitchDiameterFromWires,
	"WireLeadCorrection": calc.WireLeadCorrection, "LeadAngle": calc.LeadAngle, "SideClearance": calc.SideClearance,
	"GearRatio": calc.GearRatio, "LeadOfTrain": calc.LeadOfTrain, "FindTrains": calc.FindTrains,
	"SpindleSpeedFor": calc.SpindleSpeedFor, "FastestFor": calc.FastestFor,
	"SecondMomentRound": calc.SecondMomentRound, "BarGive": calc.BarGive, "CuttingForce": calc.CuttingForce, "LagRatio": calc.LagRatio,
	"ChipWidth": calc.ChipWidth, "EqualSteps": calc.EqualSteps, "EqualArea": calc.EqualArea,
	"PassesForFirstCut": calc.PassesForFirstCut, "FeedToFit": calc.FeedToFit,
	"AcmeDepth": calc.AcmeDepth, "AcmeCrestFlat": calc.AcmeCrestFlat, "AcmeToolFlat": calc.AcmeToolFlat, "PipeThread": calc.PipeThread,
	"AnyMoment": calc.AnyMoment, "RunToNut": calc.RunToNut, "BarStiffness": calc.BarStiffness, "WorkStiffness": calc.WorkStiffness, "ParseMaterial": calc.ParseMaterial, "BetweenCentresStiffness": calc.BetweenCentresStiffness, "InSeries": calc.InSeries, "WidestQuietChip": calc.WidestQuietChip,
	"DepthForFlank": calc.DepthForFlank, "ChipWidthForFlank": calc.ChipWidthForFlank, "EqualSection": calc.EqualSection, "BestWireForFlank": calc.BestWireForFlank,
	"OverWiresForFlank": calc.OverWiresForFlank, "AcmeLimits": calc.AcmeLimits, "PipeLimits": calc.PipeLimits,
	"CountedWidth": calc.CountedWidth, "DepthAfterPass": calc.DepthAfterPass,
	"PitchDiameterGrowth": calc.PitchDiameterGrowth, "NormalEngagement": calc.NormalEngagement, "NewGroove": calc.NewGroove, "UnifiedSizes": nil,
}

var oddNumbers = []float64{0, math.Copysign(0, -1), 1, -1, 0.1, 0.05, 0.75, 29.5, 60, 90, 1e-9, 1e9, -1e9, 1e300, math.SmallestNonzeroFloat64,
	math.MaxFloat64, math.Inf(1), math.Inf(-1), math.NaN()}

// No exported function returns NaN or an infinity or panics, whatever it is given.
func TestOddInputs(t *testing.T) {
	for name, f := range everything {
		if f != nil {
			t.Run(name, func(t *testing.T) { oddly(t, f, 4000) })
		}
	}
	for _, receiver := range []any{calc.Length(0.1), calc.Angle(30), calc.ThreadsPerInch(10), calc.ThreadDial{LeadScrew: 8, Teeth: 32, Marks: 8},
		calc.ThreadDial{}, calc.ThreadDial{LeadScrew: calc.ThreadsPerInch(math.NaN()), Teeth: -1, Marks: math.MaxInt}, calc.Form(9), calc.Slide{Play: 0.01}, calc.Span{}, calc.Train{PPM: 3}, calc.Brass, calc.Material(-3)} {
		v := reflect.ValueOf(receiver)
		for i := range v.NumMethod() {
			t.Run(v.Type().Name()+"."+v.Type().Method(i).Name, func(t *testing.T) { oddly(t, v.Method(i).Interface(), 500) })
		}
	}
}

// oddly calls a function with many combinations of odd arguments.
func oddly(t *testing.T, f any, tries int) {
	t.Helper()
	fn := reflect.ValueOf(f)
	if fn.Type().IsVariadic() {
		return
	}
	seed := uint64(1)
	next := func(n int) int {
		seed = seed*6364136223846793005 + 1442695040888963407
		return int(seed >> 33 % uint64(n))
	}
	for range tries {
		args := make([]reflect.Value, fn.Type().NumIn())
		for i := range args {
			args[i] = odd(fn.Type().In(i), next)
		}
		for _, out := range fn.Call(args) {
			if bad := notFinite(out); bad != "" {
				t.Fatalf("%v gives %s in %v", args, bad, out)
			}
		}
	}
}

func odd(kind reflect.Type, next func(int) int) reflect.Value {
	v := reflect.New(kind).Elem()
	switch kind.Kind() {
	case reflect.Float64:
		v.SetFloat(oddNumbers[next(len(oddNumbers))])
	case reflect.Int:
		v.SetInt([]int64{0, 1, -1, 2, 8, 24, 63, 127, 1000, math.MaxInt64, math.MinInt64}[next(11)])
	case reflect.Uint8:
		v.SetUint(uint64(next(256)))
	case reflect.Bool:
		v.SetBool(next(2) == 0)
	case reflect.String:
		v.SetString([]string{"", "2A", "2B", "6g", "6H", "4g6g", "9Z", "1/2", "10", "UNC", "g", "6"}[next(12)])
	case reflect.Slice:
		n := next(4)
		v.Set(reflect.MakeSlice(kind, n, n))
		for i := range n {
			v.Index(i).Set(odd(kind.Elem(), next))
		}
	case reflect.Struct:
		for i := range kind.NumField() {
			v.Field(i).Set(odd(kind.Field(i).Type, next))
		}
	}
	return v
}

// notFinite names the place of a NaN or an infinity in a result.
func notFinite(v reflect.Value) string {
	switch v.Kind() {
	case reflect.Float64:
		if x := v.Float(); math.IsNaN(x) || math.IsInf(x, 0) {
			return "a number that is none"
		}
	case reflect.Slice:
		for i := range v.Len() {
			if bad := notFinite(v.Index(i)); bad != "" {
				return bad
			}
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if bad := notFinite(v.Field(i)); bad != "" {
				return v.Type().Field(i).Name
			}
		}
	}
	return ""
}

// FuzzNumbers feeds the same functions what the fuzzer finds.
func FuzzNumbers(f *testing.F) {
	f.Add(0.1, 0.05, 0.75, 29.5, 8)
	f.Fuzz(func(t *testing.T, a, b, c, d float64, n int) {
		for name, fn := range everything {
			if fn == nil {
				continue
			}
			v := reflect.ValueOf(fn)
			numbers, i := []float64{a, b, c, d}, 0
			args := make([]reflect.Value, v.Type().NumIn())
			for k := range args {
				args[k] = reflect.New(v.Type().In(k)).Elem()
				switch args[k].Kind() {
				case reflect.Float64:
					args[k].SetFloat(numbers[i%4])
					i++
				case reflect.Int:
					args[k].SetInt(int64(n))
				}
			}
			for _, out := range v.Call(args) {
				if bad := notFinite(out); bad != "" {
					t.Errorf("%s%v gives %s", name, args, bad)
				}
			}
		}
	})
}
