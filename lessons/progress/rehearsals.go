package progress

import (
	"cmp"
	"slices"
	"time"

	"scratchpass/lessons/record"
	"scratchpass/quiz/bench"
)

// Rehearsed is what the rehearsals of one job that were brought to their end come to.
type Rehearsed struct {
	Job       string        `json:"job"`
	JobSum    string        `json:"job_sum,omitempty"` // of one that does not ship
	Thread    string        `json:"thread"`
	Times     int           `json:"times"`
	Mistakes  []int         `json:"mistakes"`        // how many in each, the oldest first
	Again     []MadeAgain   `json:"made_again"`      // those of the last that were made before too
	Faultless int           `json:"without_mistake"` // in how many the part fits and nothing went wrong
	Verdict   bench.Verdict `json:"last_verdict"`
	Date      string        `json:"last_date"`
	Room      []RoomAt      `json:"live_room"` // that passes by the clock left, at each speed
	Runs      []Run         `json:"-"`         // each of them, the oldest first
}

// Run is one rehearsal of a job.
type Run struct {
	Date     string
	Verdict  bench.Verdict
	Mistakes int
	Back     []string   // the mistakes that the rehearsal before it had too
	Closest  record.Way // the least that a pass left; nothing where none came to the end
}

// MadeAgain is a mistake that came back.
type MadeAgain struct {
	Mistake string `json:"mistake"`
	Times   int    `json:"rehearsals"` // in so many of them
}

// RoomAt is what passes by the clock left at one speed, when the carriage stood.
type RoomAt struct {
	RPM    float64    `json:"rpm"`
	Passes int        `json:"passes"`
	Most   record.Way `json:"most"`
	Least  record.Way `json:"least"`
}

// BegunJob is a rehearsal that was begun and not brought to its end. It counts for nothing.
type BegunJob struct {
	Job    string `json:"job"`
	JobSum string `json:"job_sum,omitempty"`
	Thread string `json:"thread"`
	Date   string `json:"date"` // when its first move was made
}

// RehearsedOf puts the rehearsals of each job together, the job rehearsed last first.
func RehearsedOf(all []record.Rehearsal) []Rehearsed {
	jobs := []Rehearsed{}
	of := map[[2]string][]record.Rehearsal{}
	for _, x := range slices.Backward(all) {
		key := [2]string{x.Job, x.JobSum}
		if of[key] == nil {
			jobs = append(jobs, Rehearsed{Job: x.Job, JobSum: x.JobSum, Thread: x.Thread, Verdict: x.Verdict, Date: x.At.Format(time.DateOnly)})
		}
		of[key] = append([]record.Rehearsal{x}, of[key]...)
	}
	for i := range jobs {
		jobs[i].count(of[[2]string{jobs[i].Job, jobs[i].JobSum}])
	}
	return jobs
}

// count puts together the rehearsals of one job, the oldest first.
func (j *Rehearsed) count(all []record.Rehearsal) {
	j.Times, j.Mistakes, j.Again, j.Room = len(all), []int{}, []MadeAgain{}, []RoomAt{}
	in := map[string]int{}
	for i, x := range all {
		run := Run{Date: x.At.Format(time.DateOnly), Verdict: x.Verdict, Mistakes: x.MistakesMade()}
		if x.Room.Passes > 0 {
			run.Closest = x.Room.Shortest
		}
		for _, m := range x.Mistakes {
			if i > 0 && slices.ContainsFunc(all[i-1].Mistakes, func(k record.MistakeMade) bool { return k.Name == m.Name }) {
				run.Back = append(run.Back, m.Name)
			}
		}
		j.Runs = append(j.Runs, run)
		j.Mistakes = append(j.Mistakes, x.MistakesMade())
		if x.Faultless() {
			j.Faultless++
		}
		for _, m := range x.Mistakes {
			in[m.Name]++
		}
		if x.Live {
			j.addRoom(x.Room.Speeds)
		}
	}
	for _, m := range all[len(all)-1].Mistakes {
		if in[m.Name] > 1 {
			j.Again = append(j.Again, MadeAgain{m.Name, in[m.Name]})
		}
	}
	slices.SortStableFunc(j.Again, func(a, b MadeAgain) int { return cmp.Compare(b.Times, a.Times) })
	slices.SortFunc(j.Room, func(a, b RoomAt) int { return cmp.Compare(a.RPM, b.RPM) })
}

func (j *Rehearsed) addRoom(speeds []record.SpeedRoom) {
	for _, s := range speeds {
		i := slices.IndexFunc(j.Room, func(r RoomAt) bool { return r.RPM == s.RPM })
		if i < 0 {
			j.Room = append(j.Room, RoomAt{s.RPM, s.Passes, s.Longest, s.Shortest})
			continue
		}
		r := &j.Room[i]
		r.Passes += s.Passes
		if s.Longest.Seconds > r.Most.Seconds {
			r.Most = s.Longest
		}
		if s.Shortest.Seconds < r.Least.Seconds {
			r.Least = s.Shortest
		}
	}
}

// BegunOf are the rehearsals that were begun.
func BegunOf(all []record.Begun) []BegunJob {
	begun := []BegunJob{}
	for _, b := range all {
		begun = append(begun, BegunJob{b.Job, b.JobSum, b.Thread, b.At.Format(time.DateOnly)})
	}
	return begun
}

// Rehearsals are all that a record has of them.
type Rehearsals struct {
	Done  []Rehearsed `json:"rehearsed"`
	Begun []BegunJob  `json:"rehearsals_begun"`
}

// RehearsalsOf reads them from a record.
func RehearsalsOf(r *record.Record) (all Rehearsals, err error) {
	done, err := r.Rehearsals()
	if err != nil {
		return all, err
	}
	begun, err := r.BegunRehearsals()
	return Rehearsals{RehearsedOf(done), BegunOf(begun)}, err
}

// OfJob are those of the jobs of one name.
func (r Rehearsals) OfJob(name string) Rehearsals {
	return Rehearsals{
		slices.DeleteFunc(slices.Clone(r.Done), func(j Rehearsed) bool { return j.Job != name }),
		slices.DeleteFunc(slices.Clone(r.Begun), func(j BegunJob) bool { return j.Job != name }),
	}
}

// Faultless are the jobs that were rehearsed without a mistake.
func (r Rehearsals) Faultless() []Rehearsed {
	return slices.DeleteFunc(slices.Clone(r.Done), func(j Rehearsed) bool { return j.Faultless == 0 })
}
