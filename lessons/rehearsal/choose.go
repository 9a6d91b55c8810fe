package rehearsal

import (
	"scratchpass/lessons/page"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/bench"
)

// ChooseJob lets the learner choose one of the jobs that ship, or first look at the card of
// one.
func (s Flow) ChooseJob() (string, error) {
	names := s.Library.JobNames()
	titles := s.jobTitles()
	for {
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
