package machine_test

import (
	"os"
	"path/filepath"
	"testing"

	"scratchpass/quiz/machine"
)

// A lathe goes through its file and its key and comes back.
func TestLatheRoundTrip(t *testing.T) {
	odd := machine.InchLathe
	odd.LeadScrew, odd.Compound.Turn, odd.Compound.Division = 4.5, 0.0625, 0.0005
	for _, l := range []machine.Lathe{machine.InchLathe, machine.MetricLathe, odd} {
		path := filepath.Join(t.TempDir(), "deep", "lathe.yaml")
		if err := machine.WriteLathe(path, l); err != nil {
			t.Fatal(err)
		}
		back, err := machine.ReadLathe(path)
		if err != nil || back.Code() != l.Code() || back.Name != l.Name || len(back.Gears) != len(l.Gears) {
			t.Errorf("wrote %+v, read %+v, %v", l, back, err)
		}
		left, _ := os.ReadDir(filepath.Dir(path))
		if len(left) != 1 {
			t.Errorf("%d files are left in the folder", len(left))
		}
	}
}

func FuzzLatheFile(f *testing.F) {
	text, err := os.ReadFile("testdata/lathe.yaml")
	if err != nil {
		f.Fatal(err)
	}
	f.Add(text)
	f.Fuzz(func(t *testing.T, text []byte) {
		l, err := machine.ParseLathe("lathe.yaml", text)
		if err == nil && l.Check() != nil {
			t.Errorf("%q gives a lathe that is wrong: %v", text, l.Check())
		}
	})
}

// Whatever stands for a lathe in a code, it is a lathe that has that code, or none.
func FuzzLatheCode(f *testing.F) {
	f.Add(machine.InchLathe.Code())
	f.Add(machine.MetricLathe.Code())
	f.Add("L99p999mm.99.99_C9999p999.999p999d_T9999p999.0b_k")
	f.Fuzz(func(t *testing.T, key string) {
		l, err := machine.LatheOfCode(key)
		if err != nil {
			return
		}
		if err := l.Check(); err != nil {
			t.Errorf("%q is a lathe that is wrong: %v", key, err)
		}
		if again, err := machine.LatheOfCode(l.Code()); err != nil || again.Code() != l.Code() {
			t.Errorf("%q has the code %q, which is %q: %v", key, l.Code(), again.Code(), err)
		}
	})
}
