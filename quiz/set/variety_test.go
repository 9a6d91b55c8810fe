package set

import (
	"fmt"
	"testing"

	"scratchpass/content"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/tasks"
)

// A class does not get one answer to share: of no task has one answer more than most of
// the sheets, though all its problems are equally hard.
func TestAnswersOfAClassDiffer(t *testing.T) {
	class, most := 100, 85
	if testing.Short() {
		class, most = 40, 37
	}
	for _, system := range []machine.System{machine.Imperial, machine.Metric} {
		units := system.Length().Name
		for _, task := range tasks.All() {
			if !task.Allows(system) {
				continue
			}
			for level := 1; level <= 3; level++ {
				b, err := ParseBlueprint("test.yaml", fmt.Appendf(nil, "set: x\ntitle: X\nunits: %s\nslots:\n- tasks: [%s]\n  level: %d\n", units, task.Name, level), tasks.Set{},
					func(string) (machine.Lathe, error) { return machine.DefaultLathe(system), nil })
				if err != nil {
					t.Fatal(err)
				}
				m, err := NewMaker(b, testSecret, content.Shipped())
				if err != nil {
					t.Fatal(err)
				}
				seen := map[string]int{}
				for _, who := range roster(class) {
					answer := meaning(items(t, m, who.ID)[0].Problem)
					if seen[answer]++; seen[answer] > most {
						t.Errorf("%s, level %d, %s: more than %d of %d sheets have the answer %s", task.Name, level, units, most, class, answer)
						break
					}
				}
			}
		}
	}
}
