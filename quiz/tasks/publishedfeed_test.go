package tasks_test

import (
	"testing"

	"scratchpass/calc"
	"scratchpass/quiz/machine"
)

// The tasks on Acme and pipe threads and on several starts against published values, at the
// decimals printed there.
func TestPublishedValuesOfAcmePipeAndStarts(t *testing.T) {
	for _, c := range []struct {
		task, inputs string
		places       int
		want         string
		source       string
	}{
		{"acme-depth", "tpi=5", 4, "0.1100", "F. D. Jones, Turning and Boring, 1914: half the pitch and 0.010"},
		{"acme-depth", "tpi=12", 4, "0.0467", "Dependable Acme: 3/8-12 minor diameter 0.2817, so (0.375 - 0.2817)/2"},
		{"acme-tip", "tpi=4", 4, "0.0875", "Machinery's Data Sheets: Screw Threads, 1910"},
		{"acme-tip", "tpi=5", 4, "0.0689", "Machinery's Data Sheets: Screw Threads, 1910"},
		{"acme-allowance", "tpi=5; nominal=1; class=2G", 4, "0.8920", "Dependable Acme: 1-5 pitch diameter"},
		{"acme-allowance", "tpi=10; nominal=.5; class=2G", 4, "0.4443", "Dependable Acme: 1/2-10 pitch diameter"},
		{"taper-pipe-depth", "tpi=14; done=0", 5, "0.05714", "Unified Alloys, table of NPT: 1/2-14"},
		{"taper-pipe-depth", "tpi=11.5; done=0", 5, "0.06957", "Unified Alloys, table of NPT: 1-11.5"},
		{"taper-set-over", "between-centres=12", 4, "0.3750", "ASME B1.20.1: 3/4 in taper to the foot, half of it"},
		{"pipe-gauge-turns", "tpi=14; turns=1", 5, "0.00223", "ASME B1.20.1: diameter grows by 0.0625/n in a turn, half of it"},
	} {
		p := worked(t, c.task, c.inputs, machine.Imperial)
		if got := calc.Fixed(p.Expected.Key.X, c.places); got != c.want {
			t.Errorf("%s %s: %s, want %s (%s)", c.task, c.inputs, got, c.want, c.source)
		}
	}
}

// With two starts at 10 threads per inch, 32 teeth and 8 marks on a lead screw of 8, every
// second mark meets the other start; at 8 threads per inch none does.
func TestOtherStartsByTheDial(t *testing.T) {
	for tpi, want := range map[string]string{"10": "2, 4, 6, 8", "8": "none"} {
		p := worked(t, "starts-by-chasing-dial", "tpi="+tpi+"; starts=2; lead-screw=8; gear=32; marks=8; first=1", machine.Imperial)
		if got := p.Expected.Text(); got != want {
			t.Errorf("%s TPI: %s, want %s", tpi, got, want)
		}
	}
}
