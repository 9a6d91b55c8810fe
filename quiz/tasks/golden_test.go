package tasks_test

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
)

var update = flag.Bool("update", false, "write the golden files anew; read them before committing")

// Five problems of every task, as a learner and an instructor see them. Read what
// changed before committing a new golden.
func TestGoldenProblems(t *testing.T) {
	for _, task := range tasks.All() {
		t.Run(task.Name, func(t *testing.T) {
			words := load(t, task.Name)
			var b strings.Builder
			for i, k := range []struct {
				level problem.Level
				s     machine.System
			}{{1, 0}, {2, 0}, {3, 0}, {1, 1}, {3, 1}} {
				if !task.Allows(k.s) {
					k.s = task.Systems[0]
				}
				p := made(t, task, k.level, k.s, 0x1a00+i, machine.DefaultLathe(k.s))
				prompt, _ := words.Ask(p)
				fmt.Fprintf(&b, "%s\n%s\n%s\n", p.Code, prompt, words.Expects(p))
				for _, line := range words.StepLines(p) {
					fmt.Fprintln(&b, "  ", line)
				}
				fmt.Fprintf(&b, "   key: %s\n", words.KeyText(p))
				for _, slip := range p.Expected.Errors {
					fmt.Fprintf(&b, "   %s: %s\n", slip.Name, p.Expected.Join(p.Expected.Kind.Print(&p.Expected, slip.Response), words.Phrases["between-readings"]))
				}
				b.WriteString("\n")
			}
			golden(t, filepath.Join("testdata", task.Name+".golden"), b.String())
		})
	}
}

func golden(t *testing.T, file, got string) {
	t.Helper()
	if *update {
		if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("%s differs; run go test ./quiz/tasks -update and read the change.\ngot:\n%s", file, got)
	}
}
