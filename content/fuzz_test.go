package content

import (
	"testing"
	"testing/fstest"
)

// Whatever a file of words has in it, reading and checking it ends in words or in
// findings. The library has the one file alone: to check all that is shipped each time
// would leave no time to try much.
func FuzzWords(f *testing.F) {
	for _, name := range []string{"tasks/compound-travel.yaml", "tasks/when-to-leave-compound.yaml", "lessons/010-safety-first.yaml", "safety.yaml", "bench.yaml"} {
		text, err := embedded.ReadFile(name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(text[:min(len(text), 2000)])
	}
	f.Add([]byte("title: a\nslips: {a: b}\nask: {1: c}\n"))
	f.Add([]byte("a: &a [*a]"))
	f.Fuzz(func(t *testing.T, text []byte) {
		file := &fstest.MapFile{Data: text}
		lib := &Library{[]folder{{fsys: fstest.MapFS{"tasks/a.yaml": file, "lessons/010-a.yaml": file, "safety.yaml": file, "bench.yaml": file, "jobs/a.yaml": file}}}}
		_, _ = lib.Task("a")
		_, _ = lib.Lesson("a")
		_, _ = lib.Bench()
		_, _ = lib.Job("a")
		for _, finding := range lib.Check(Known{}) {
			if finding.Text == "" || finding.File == "" {
				t.Errorf("%q: a finding without words: %+v", text, finding)
			}
		}
	})
}
