package served

import (
	"context"
	"crypto/rand"
	"errors"
	"net/http"
	"slices"
	"strings"

	"scratchpass/lessons/class"
	"scratchpass/lessons/school"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/set"
)

// NoLathe refuses a blueprint that names a lathe of its own: a file of whose computer would it be?
func NoLathe(string) (machine.Lathe, error) {
	return machine.Lathe{}, errors.New("a lathe of its own can't be named here: leave lathe out")
}

// begun is what was sent to begin a room.
type begun struct {
	Blueprint string
	Tasks     []string // names
	Way       string
}

// text is the blueprint with the ends of lines that files have, whatever browsers send.
func (b begun) text() string { return strings.ReplaceAll(b.Blueprint, "\r\n", "\n") }

// readBlueprint reads what was sent as a blueprint.
func (s *Server) readBlueprint(text string) (*set.Blueprint, error) {
	return set.ParseBlueprint("the blueprint", []byte(text), s.o.Session.Tasks, NoLathe)
}

// stageTasks are the tasks of a stage, to be ticked.
type stageTasks struct {
	Stage string
	Open  bool // one of them is ticked
	Tasks []askable
}

// askable is a task that can be asked in a room.
type askable struct {
	Name, Title string
	Ticked      bool
}

// stages are all tasks, by stage, with those ticked that were sent.
func (s *Server) stages(given begun) (all []stageTasks) {
	for _, of := range s.ticks() {
		of.Tasks = slices.Clone(of.Tasks)
		for i := range of.Tasks {
			of.Tasks[i].Ticked = slices.Contains(given.Tasks, of.Tasks[i].Name)
			of.Open = of.Open || of.Tasks[i].Ticked
		}
		all = append(all, of)
	}
	return all
}

// allTasks are all tasks, by stage. One whose words can't be read is left out: asking it says why.
func (s *Server) allTasks() (all []stageTasks) {
	for _, t := range s.o.Session.Tasks.All() {
		words, err := s.o.Session.Library.Task(t.Name)
		if err != nil {
			continue
		}
		if title := s.say("stage-" + string(t.Stage)); len(all) == 0 || all[len(all)-1].Stage != title {
			all = append(all, stageTasks{Stage: title})
		}
		of := &all[len(all)-1]
		of.Tasks = append(of.Tasks, askable{Name: t.Name, Title: words.Title})
	}
	return all
}

// beginRoom begins a room of a group, from a blueprint or from tasks.
func (s *Server) beginRoom(w http.ResponseWriter, r *http.Request, p school.Person) {
	given := begun{Blueprint: r.PostFormValue("blueprint"), Way: r.PostFormValue("way")}
	given.Tasks = strings.Fields(strings.Join(r.PostForm["tasks"], " "))
	if r.PostFormValue("do") == "keep" {
		s.keepSet(w, r, p, given)
		return
	}
	head, text, way, err := s.roomOf(r.Context(), r.PathValue("group"), given)
	if err != nil {
		s.groupAs(w, r, p, http.StatusBadRequest, given, err)
		return
	}
	for tries := 0; tries == 0 || errors.Is(err, class.ErrTaken) && tries < 4; tries++ { // of a code that another room has nothing comes
		head.Code = class.NewCode()
		if err = s.o.Audit.Note(r.Context(), p, school.BeganRoom, head.Code); err == nil {
			_, err = s.o.Hall.Begin(r.Context(), head, text, way)
		}
	}
	if err != nil {
		s.trouble(w, err)
		return
	}
	http.Redirect(w, r, "/desk/"+head.Code, http.StatusSeeOther)
}

// roomOf is the room that is to begin, without a code.
func (s *Server) roomOf(ctx context.Context, group string, given begun) (head class.Head, blueprint string, way class.Way, err error) {
	if way, err = class.ParseWay(given.Way); err != nil {
		return head, "", "", err
	}
	blueprint = given.text()
	tasks := given.Tasks
	switch {
	case strings.TrimSpace(blueprint) == "" && len(tasks) == 0:
		return head, "", "", errors.New("there are no questions: tick tasks, or give a blueprint")
	case strings.TrimSpace(blueprint) != "" && len(tasks) > 0:
		return head, "", "", errors.New("there are a blueprint and tasks: give one of both")
	case len(tasks) > 0:
		blueprint = set.OfTasks("room-"+s.o.Clock().Format("2006-01-02"), s.say("class-title"), s.o.Session.System, tasks, 1)
	}
	read, err := s.readBlueprint(blueprint)
	if err != nil {
		return head, "", "", err
	}
	g, _, _ := s.o.Settings.Group(group)
	list, err := s.o.Rosters.Of(ctx, g)
	if err != nil {
		return head, "", "", err
	}
	return class.Head{Title: read.Title, Key: rand.Text(), Roster: list.People, Group: group}, blueprint, way, nil
}
