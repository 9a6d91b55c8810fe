package calc_test

import (
	"strconv"
	"testing"

	"scratchpass/calc"
)

// cell is a number of a published row.
func cell(t *testing.T, row map[string]string, column string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(row[column], 64)
	if err != nil {
		t.Fatalf("%s of %v: %v", column, row, err)
	}
	return x
}

// Every screw of the table: its largest pitch diameter is the basic one less the allowance
// of class 2G as its own table prints it, its largest minor diameter what two depths leave of the nominal one.
func TestAcmeScrewsAgainstPublishedRows(t *testing.T) {
	compared := 0
	for _, row := range publishedRows(t, "acme-screws.csv") {
		d, p := calc.Inches(cell(t, row, "nominal")), calc.Inches(1/cell(t, row, "tpi"))
		basic := must[calc.Length](t)(calc.AcmePitchLine.Of(d, p))
		allowance := must[calc.Length](t)(calc.AcmeAllowance2G.Of(d))
		depth := must[calc.Length](t)(calc.AcmeDepth(p))
		for column, got := range map[string]calc.Length{"pitch_max": basic - calc.Inches(calc.Round(allowance.Inches(), 4)), "minor_max": d - depth.Times(2)} {
			if compare(t, row["thread"]+" "+column, row[column], got.Inches()) {
				compared++
			}
		}
	}
	if compared < 18 {
		t.Errorf("only %d values were compared", compared)
	}
}

func TestAcmeAllowancesAgainstPublishedRows(t *testing.T) {
	compared := 0
	for _, row := range publishedRows(t, "acme-allowances.csv") {
		d := calc.Inches(cell(t, row, "nominal"))
		for column, f := range map[string]calc.Formula[func(calc.Length) (calc.Length, error)]{
			"class2": calc.AcmeAllowance2G, "class3": calc.AcmeAllowance3G, "class4": calc.AcmeAllowance4G,
		} {
			if compare(t, row["size"]+" "+column, row[column], must[calc.Length](t)(f.Of(d)).Inches()) {
				compared++
			}
		}
	}
	if compared < 42 {
		t.Errorf("only %d values were compared", compared)
	}
}

// Every pipe size against the table, and none of calc's sizes without a row of it.
func TestPipeSizesAgainstPublishedRows(t *testing.T) {
	rows := map[string]map[string]string{}
	for _, row := range publishedRows(t, "pipe.csv") {
		rows[row["size"]] = row
	}
	compared := 0
	for _, s := range calc.PipeSizes {
		row := rows[s.Size]
		if row == nil {
			t.Errorf("%s is in no row", s.Size)
			continue
		}
		pipe, err := calc.PipeThread(s.Outside, s.TPI, s.L1)
		if err != nil {
			t.Fatal(err)
		}
		for column, got := range map[string]calc.Length{
			"pitch": must[calc.Length](t)(s.TPI.Pitch()), "height": must[calc.Length](t)(calc.PipeHeight.Of(s.TPI)),
			"e1": pipe.E1, "l1": s.L1, "l2": pipe.L2,
		} {
			if compare(t, s.Size+" "+column, row[column], got.Inches()) {
				compared++
			}
		}
	}
	if compared < 44 || len(rows) != len(calc.PipeSizes) {
		t.Errorf("only %d values of %d rows were compared", compared, len(rows))
	}
}

// The other starts of a thread: with two starts on an 8 TPI screw, 32 teeth and 8 marks, a
// pitch of 1/10 has them on every second mark, 1/13 on two, and 1/8 on none.
func TestOtherStarts(t *testing.T) {
	dial := calc.ThreadDial{LeadScrew: 8, Teeth: 32, Marks: 8}
	for _, c := range []struct {
		tpi    float64
		starts int
		want   []int
	}{{10, 2, []int{1, 3, 5, 7}}, {13, 2, []int{2, 6}}, {8, 2, nil}, {8, 3, nil}, {12, 1, nil}} {
		got, err := dial.OtherStarts(calc.Inches(1/c.tpi), c.starts)
		if err != nil || len(got) != len(c.want) {
			t.Errorf("%v TPI, %d starts: %v %v, want %v", c.tpi, c.starts, got, err, c.want)
			continue
		}
		for i := range got {
			if got[i] != c.want[i] {
				t.Errorf("%v TPI, %d starts: %v, want %v", c.tpi, c.starts, got, c.want)
			}
		}
	}
}
