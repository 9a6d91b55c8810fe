package record_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
)

// BenchmarkNextItem chooses what comes next from a record of 100,000 answers.
func BenchmarkNextItem(b *testing.B) {
	path := filepath.Join(b.TempDir(), "r.db")
	fill(b, path, 100_000)
	info, err := os.Stat(path)
	if err != nil {
		b.Fatal(err)
	}
	defer b.ReportMetric(float64(info.Size())/1e6, "MB")
	for b.Loop() {
		r, err := record.Open(path, "Ada")
		if err != nil {
			b.Fatal(err)
		}
		of, _, err := r.Summaries()
		if err != nil {
			b.Fatal(err)
		}
		if _, ok := schedule.Next(items, of, nil, time.Now()); !ok {
			b.Fatal("nothing to practise")
		}
		r.Close()
	}
}

func BenchmarkAppend(b *testing.B) {
	r := open(b, filepath.Join(b.TempDir(), "r.db"), "Ada")
	fold := schedule.Fold(items)
	n := 0
	for b.Loop() {
		if err := r.Append(nth(n), fold); err != nil {
			b.Fatal(err)
		}
		n++
	}
}

// fill writes a record by way of an import: one transaction.
func fill(b *testing.B, path string, n int) {
	b.Helper()
	r, err := record.Open(path, "Ada")
	if err != nil {
		b.Fatal(err)
	}
	defer r.Close()
	var lines strings.Builder
	for i := range n {
		fmt.Fprintf(&lines, `{"at":%q,"task":"task-%d","code":"task-%d@1-%08x","given":"0.0613 in","verdict":"right","points":1,"seconds":42.5,"form":"outside","key":"0.0613 in","content":"0123abcd"}`+"\n",
			nth(i).At.Format(time.RFC3339Nano), i%94, i%94, i)
	}
	if _, err := importInto(r, strings.NewReader(lines.String()), schedule.Fold(items)); err != nil {
		b.Fatal(err)
	}
}
