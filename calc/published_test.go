package calc_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"scratchpass/calc"
)

// publishedRows reads a table of published values; each row is a map by column.
func publishedRows(t *testing.T, name string) []map[string]string {
	t.Helper()
	f, err := os.Open("testdata/published/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	records, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []map[string]string
	for _, rec := range records[1:] {
		row := map[string]string{}
		for i, column := range records[0] {
			row[column] = rec[i]
		}
		if row["source"] == "" {
			t.Errorf("%s: a row without a source: %v", name, rec)
		}
		rows = append(rows, row)
	}
	return rows
}

// compare compares a value with a printed one at the decimals printed. Empty cells
// were not seen in the source. It reports whether there was something to compare.
func compare(t *testing.T, what, printed string, got float64) bool {
	t.Helper()
	if printed == "" {
		return false
	}
	_, decimals, _ := strings.Cut(printed, ".")
	want, err := strconv.ParseFloat(printed, 64)
	if err != nil {
		t.Fatalf("%s: %v", what, err)
	}
	if math.Abs(calc.Round(got, len(decimals))-want) > 1e-9 {
		t.Errorf("%s: %s, published %s", what, calc.Fixed(got, len(decimals)), printed)
	}
	return true
}

// Every published limit of the unified table, at the decimals printed.
func TestUnifiedLimitsAgainstPublishedRows(t *testing.T) {
	compared := 0
	for _, row := range publishedRows(t, "unified-limits.csv") {
		d, err := calc.ParseDesignation(row["thread"] + "-" + row["class"])
		if err != nil {
			t.Error(err)
			continue
		}
		l, err := calc.LimitsOf(d)
		if err != nil {
			t.Error(err)
			continue
		}
		for column, got := range map[string]calc.Length{
			"allowance": l.Allowance, "major_max": l.Major.Max, "major_min": l.Major.Min, "pitch_max": l.Pitch.Max, "pitch_min": l.Pitch.Min,
			"minor_max": l.Minor.Max, "minor_min": l.Minor.Min,
		} {
			if compare(t, d.String()+" "+column, row[column], got.Inches()) {
				compared++
			}
		}
	}
	if compared < 1150 {
		t.Errorf("only %d values were compared", compared)
	}
	t.Logf("%d values", compared)
}

// An exception has a source and a published row that the formula alone misses.
func TestEveryExceptionIsPublishedAndNeeded(t *testing.T) {
	needed := map[string]bool{}
	calc.WithoutExceptions(func() {
		for _, row := range publishedRows(t, "unified-limits.csv") {
			d, err := calc.ParseDesignation(row["thread"] + "-" + row["class"])
			if err != nil {
				t.Fatal(err)
			}
			l, err := calc.LimitsOf(d)
			if err != nil {
				t.Fatal(err)
			}
			for column, got := range map[string]calc.Length{
				"major_min": l.Major.Min, "pitch_max": l.Pitch.Max, "pitch_min": l.Pitch.Min,
			} {
				if want, err := strconv.ParseFloat(row[column], 64); err == nil && math.Abs(got.Inches()-want) > 5e-5 {
					needed[d.String()] = true
				}
			}
		}
	})
	for name, sourced := range calc.ExceptionalThreads() {
		if !sourced || !needed[name] {
			t.Errorf("%s: source %v, needed %v", name, sourced, needed[name])
		}
		delete(needed, name)
	}
	for name := range needed {
		t.Errorf("%s is published otherwise than the formula gives it, and is no exception", name)
	}
}

// Every published metric limit, and the built-in table against its source rows.
func TestMetricLimitsAgainstPublishedRows(t *testing.T) {
	compared := 0
	for _, row := range publishedRows(t, "metric-limits.csv") {
		d, err := calc.ParseDesignation(row["thread"] + "-" + row["class"])
		if err != nil {
			t.Error(err)
			continue
		}
		l, err := calc.LimitsOf(d)
		if err != nil {
			t.Error(err)
			continue
		}
		for column, got := range map[string]calc.Length{
			"major_max": l.Major.Max, "major_min": l.Major.Min, "pitch_max": l.Pitch.Max, "pitch_min": l.Pitch.Min,
			"minor_max": l.Minor.Max, "minor_min": l.Minor.Min,
		} {
			if compare(t, d.String()+" "+column, row[column], got.Millimetres()) {
				compared++
			}
		}
	}
	if compared < 900 {
		t.Errorf("only %d values were compared", compared)
	}
	t.Logf("%d values", compared)
}

func TestMetricTableAgainstItsSources(t *testing.T) {
	for _, row := range publishedRows(t, "metric-tolerances.csv") {
		got := metricTolerance(t, strings.TrimSuffix(row["quantity"], "_g"), "6", row)
		compare(t, "row "+row["quantity"]+" "+row["pitch"], row["value"], got)
	}
}

// Every tolerance of every grade as the tables print it, and no grade where they print a
// dash: from the whole table as data and from the pages of it that were seen.
func TestMetricGradesAgainstTheirSources(t *testing.T) {
	compared := 0
	for _, row := range publishedRows(t, "metric-grades.csv") {
		for _, grade := range []string{"3", "4", "5", "6", "7", "8", "9"} {
			what := "row " + row["quantity"] + " " + row["over"] + " " + row["pitch"] + " grade " + grade
			switch printed := row["g"+grade]; printed {
			case "": // not seen, or no grade of this quantity
			case "-":
				if got := metricTolerance(t, row["quantity"], grade, row); !math.IsNaN(got) {
					t.Errorf("%s: %v, published without", what, got)
				}
			default:
				compare(t, what, printed, metricTolerance(t, row["quantity"], grade, row))
				compared++
			}
		}
	}
	if compared < 880 {
		t.Errorf("only %d values were compared", compared)
	}
	t.Logf("%d values", compared)
}

// metricTolerance is the tables' own value for a row of a source, NaN where they have none.
func metricTolerance(t *testing.T, quantity, grade string, row map[string]string) float64 {
	t.Helper()
	pitch, err := strconv.ParseFloat(row["pitch"], 64)
	if err != nil {
		t.Fatal(err)
	}
	g, _ := strconv.Atoi(grade)
	if quantity == "es" {
		g = 0
	}
	diameter := 20.0
	if to, err := strconv.ParseFloat(row["to"], 64); err == nil {
		diameter = to // the upper end belongs to the step
	}
	got, ok := calc.MetricTolerance(quantity, g, calc.Millimetres(diameter), calc.Millimetres(pitch))
	if over, err := strconv.ParseFloat(row["over"], 64); err == nil {
		above := math.Max(over, 1.4) + 0.11 // the handbook's first step begins at 1.5 mm, the standard's at 1.4
		if over < 1 {
			above = over + 0.01
		}
		if low, lowOK := calc.MetricTolerance(quantity, g, calc.Millimetres(above), calc.Millimetres(pitch)); low != got || lowOK != ok {
			t.Errorf("%s at pitch %v: %v just over %v mm, %v at its end", quantity, pitch, low, over, got)
		}
	}
	if !ok {
		return math.NaN()
	}
	return got
}
