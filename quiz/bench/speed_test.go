package bench

import (
	"testing"
)

func BenchmarkPass(b *testing.B) {
	start := ready(b)
	e := Event{Verb: "pass", X: 0.003, Has: true}
	b.ReportAllocs()
	for b.Loop() {
		start.Step(e)
	}
}

func BenchmarkAhead(b *testing.B) {
	start := do(b, ready(b), "compound in 0.003", "cross to 0", "close on 1")
	b.ReportAllocs()
	for b.Loop() {
		start.Ahead(3.3)
	}
}

func BenchmarkWholeJob(b *testing.B) {
	_, played := playRun(b, "testdata/runs/good-outside.run")
	events := eventsOf(played.Bench)
	b.ReportAllocs()
	for b.Loop() {
		Play(played.Bench.Job, false, events)
	}
}
