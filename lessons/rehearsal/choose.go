package rehearsal

import (
	"slices"
	"time"

	"scratchpass/lessons/page"
	"scratchpass/lessons/record"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/bench"
)

// ChooseJob lets the learner choose one of the jobs that ship, or first look at the card of
// one.
func (s Flow) ChooseJob() (string, error) {
	names := s.Library.JobNames()
	for {
		titles, err := s.jobsSoFar()
		if err != nil {
			return "", err
		}
		i, err := sitting.Choose(s.Session, s, s.Say("bench-which"), page.Menu{Options: append(titles, s.Say("bench-card-door"))})
		if err != nil {
			return "", err
		}
		if i < len(names) {
			return names[i], nil
		}
		if err := s.chooseCard(names); err != nil {
			return "", err
		}
	}
}

func (s Flow) jobTitles() []string {
	var titles []string
	for _, name := range s.Library.JobNames() {
		titles = append(titles, JobTitle(s.Library, name))
	}
	return titles[:len(titles):len(titles)]
}

// jobsSoFar are the titles with what the learner's record says of each: when it was rehearsed
// and with how many mistakes, or that it was begun.
func (s Flow) jobsSoFar() ([]string, error) {
	titles := s.jobTitles()
	if s.Book == nil {
		return titles, nil
	}
	done, err := s.Book.Rehearsals()
	if err != nil {
		return nil, err
	}
	begun, err := s.Book.BegunRehearsals()
	if err != nil {
		return nil, err
	}
	for i, name := range s.Library.JobNames() {
		of := slices.DeleteFunc(slices.Clone(done), func(x record.Rehearsal) bool { return x.Job != name || x.JobSum != "" })
		if n := len(of); n > 0 {
			titles[i] += s.Say("bench-job-done", "date", of[n-1].At.Format(time.DateOnly), "mistakes", of[n-1].MistakesMade())
		}
		if at := slices.IndexFunc(begun, func(b record.Begun) bool { return b.Job == name && b.JobSum == "" }); at >= 0 {
			titles[i] += s.Say("bench-job-begun", "date", begun[at].At.Format(time.DateOnly))
		}
	}
	return titles, nil
}

// chooseCard shows the card of a job that ships.
func (s Flow) chooseCard(names []string) error {
	i, err := sitting.Choose(s.Session, s, s.Say("bench-which-card"), page.Menu{Options: append(s.jobTitles(), s.Say("home-back")), Back: true})
	if err != nil || i == len(names) {
		return err
	}
	written, err := s.Library.Job(names[i])
	if err != nil {
		return err
	}
	job, err := bench.ParseJob(written, s.Lathe)
	if err != nil {
		return err
	}
	return s.card(job)
}

// card shows the card of a job.
func (s Flow) card(j bench.Job) error {
	p, err := bench.NewPlan(j, bench.AsUsual)
	if err != nil {
		return s.tell(err.Error())
	}
	return s.Show(s.PlanPage(p))
}
