package course

import (
	"slices"
	"testing"

	"scratchpass/content"
	"scratchpass/quiz/tasks"
)

// practiceOnly are tasks that no lesson uses: they are there to practise.
var practiceOnly = []string{"threading-speed-metric"}

// Every task is used by a lesson or is listed as practice only, and every caution
// can come up.
func TestEveryTaskAndCautionIsUsed(t *testing.T) {
	lib := content.Shipped()
	used, cautions := map[string]bool{}, map[string]bool{}
	for _, name := range lib.LessonNames() {
		l, err := lib.Lesson(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range l.Parts {
			used[p.Task] = true
			for _, b := range p.Explain {
				cautions[b.Caution] = true
			}
		}
		for _, task := range l.Check.Tasks {
			used[task] = true
		}
		for _, key := range l.Cautions {
			cautions[key] = true
		}
	}
	for _, task := range tasks.All() {
		if used[task.Name] == slices.Contains(practiceOnly, task.Name) {
			t.Errorf("%s: used by a lesson %v, practice only %v", task.Name, used[task.Name], !used[task.Name])
		}
		if !task.SafetyCritical {
			continue
		}
		w, err := lib.Task(task.Name)
		if err != nil {
			t.Fatal(err)
		}
		for _, key := range w.Safety {
			cautions[key] = true
		}
	}
	safety, err := lib.Safety()
	if err != nil {
		t.Fatal(err)
	}
	for key := range safety {
		if !cautions[key] {
			t.Errorf("the caution %s never comes up", key)
		}
	}
}
