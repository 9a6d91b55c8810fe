package bench

import (
	"scratchpass/content"
	"scratchpass/quiz/machine"
)

// CheckJobs reads every job of a library and reports all that is wrong: what can't be
// read, and jobs that can't be cut on the lathe they name.
func CheckJobs(lib *content.Library) content.Findings {
	var found content.Findings
	for _, name := range lib.JobNames() {
		w, err := lib.Job(name)
		if err == nil {
			_, err = ParseJob(w, machine.InchLathe)
		}
		if err != nil {
			found = append(found, content.Finding{File: "jobs/" + name + ".yaml", Text: err.Error()})
		}
	}
	return found
}
