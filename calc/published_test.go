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
	if compared < 150 {
		t.Errorf("only %d values were compared", compared)
	}
	t.Logf("%d values", compared)
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
	if compared < 45 {
		t.Errorf("only %d values were compared", compared)
	}
	t.Logf("%d values", compared)
}

func TestMetricTableAgainstItsSources(t *testing.T) {
	for _, row := range publishedRows(t, "metric-tolerances.csv") {
		pitch, _ := strconv.ParseFloat(row["pitch"], 64)
		diameter := 20.0
		if to, err := strconv.ParseFloat(row["to"], 64); err == nil {
			diameter = to // the upper end belongs to the step
		}
		got := calc.MetricTolerance(strings.TrimSuffix(row["quantity"], "_g"), calc.Millimetres(diameter), calc.Millimetres(pitch))
		compare(t, "row "+row["quantity"]+" "+row["pitch"], row["value"], got)
	}
}
