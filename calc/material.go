package calc

// Material is a metal as far as its speed goes.
type Material int

// The metals that most first threads are cut in.
const (
	MildSteel Material = iota
	StainlessSteel
	CastIron
	Brass
	Aluminium
)

// MaterialNames are the names of the metals in files, in their order.
var MaterialNames = []string{MildSteel: "mild-steel", StainlessSteel: "stainless", CastIron: "cast-iron", Brass: "brass", Aluminium: "aluminium"}

// turningSpeeds are the slowest and the fastest turning speed for tools of high-speed steel
// that published tables give for a material, in feet a minute. Every end is one table's;
// testdata/published/speeds.csv has the tables.
var turningSpeeds = [...][2]SurfaceSpeed{
	MildSteel:      {80, 120},
	StainlessSteel: {40, 80},
	CastIron:       {50, 80},
	Brass:          {150, 300},
	Aluminium:      {150, 300},
}

// TurningSpeeds returns the range of published turning speeds for high-speed steel; zero
// for a material that is none of these.
func (m Material) TurningSpeeds() (low, high SurfaceSpeed) {
	if m < 0 || int(m) >= len(turningSpeeds) {
		return 0, 0
	}
	return turningSpeeds[m][0], turningSpeeds[m][1]
}
