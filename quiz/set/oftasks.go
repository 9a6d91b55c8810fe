package set

import (
	"fmt"
	"strings"

	"scratchpass/quiz/machine"
)

// OfTasks is a blueprint of tasks and stages, a question each, all of one level. Its first line is its
// name.
func OfTasks(name, title string, units machine.System, tasks []string, level int) string {
	var b strings.Builder
	fmt.Fprintf(&b, "set: %s\ntitle: %s\nunits: %s\nslots:\n", name, title, units)
	for _, task := range tasks {
		fmt.Fprintf(&b, "  - {tasks: [%q], level: %d}\n", task, level)
	}
	return b.String()
}
