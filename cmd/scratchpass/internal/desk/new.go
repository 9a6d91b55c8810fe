package desk

import (
	"errors"
	"fmt"
	"io/fs"
	"math"
	"os"
	"strconv"
	"strings"

	"github.com/spf13/cobra"
	"gopkg.in/yaml.v3"

	"scratchpass/calc"
	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/content"
	"scratchpass/lessons/page"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/files"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/set"
	"scratchpass/quiz/tasks"
)

func newCommand(r *cli.Run) *cobra.Command {
	return &cobra.Command{
		Use:   "new [FILE]",
		Short: "Write a blueprint by questions and answers",
		Args:  cobra.MaximumNArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			if r.JSON {
				return cli.Usagef("set new asks questions, so it has no --json: write the blueprint yourself, or leave --json out")
			}
			ctx := r.UntilStopped(cmd.Context())
			s, err := r.OpenUnrecorded(ctx)
			if err != nil {
				return err
			}
			lib, err := r.Library()
			if err != nil {
				return err
			}
			file := ""
			if len(args) == 1 {
				file = args[0]
			}
			return (&newSet{run: r, session: s, lib: lib, of: s.Tasks, file: file}).ask()
		},
	}
}

// newSet is a blueprint while it is asked for.
type newSet struct {
	run     *cli.Run
	session *sitting.Session
	lib     *content.Library
	of      tasks.Set
	file    string

	system machine.System
}

// written is a blueprint as it is written down: no field that nobody was asked for.
type written struct {
	Set   string `yaml:"set"`
	Title string `yaml:"title"`
	Units string `yaml:"units"`
	Time  string `yaml:"time,omitempty"`
	Slots []slot `yaml:"slots"`
}

type slot struct {
	Tasks []string `yaml:"tasks,flow"`
	Level int      `yaml:"level"`
	Count int      `yaml:"count"`
}

// ask asks one thing after the other, writes the blueprint, and says what it asks of someone.
func (n *newSet) ask() error {
	var w written
	err := n.each(
		func() error {
			return n.words("set-new-title", func(text string) error { w.Title, w.Set = text, setNameOf(text); return titleFits(w) })
		},
		func() error { return n.there(&w) },
		func() (err error) {
			w.Units, err = n.menu("set-new-units", "in", "mm")
			n.system, _ = machine.ParseSystem(w.Units) // one of the two
			return err
		},
		func() error {
			return n.words("set-new-tasks", func(text string) (err error) {
				w.Slots = []slot{{Level: 1}}
				w.Slots[0].Tasks, err = n.tasks(text)
				return err
			})
		},
		func() error {
			return n.words("set-new-count", func(text string) (err error) {
				w.Slots[0].Count, err = countOf(text)
				if err == nil {
					w.Slots[0].Tasks = spread(w.Slots[0].Tasks, w.Slots[0].Count)
				}
				return err
			})
		},
		func() error {
			level, err := n.menu("set-new-level", n.session.Say("set-new-level-1"), n.session.Say("set-new-level-2"), n.session.Say("set-new-level-3"))
			for i := range 3 {
				if level == n.session.Say(fmt.Sprint("set-new-level-", i+1)) {
					w.Slots[0].Level = i + 1
				}
			}
			return err
		},
		func() error { return n.time(&w) },
	)
	if err != nil {
		return err
	}
	if err := n.write(w); err != nil {
		return err
	}
	return n.show()
}

// each asks until something goes wrong or is broken off.
func (n *newSet) each(steps ...func() error) error {
	for _, step := range steps {
		if err := step(); err != nil {
			return err
		}
	}
	return nil
}

// words asks for a text until it is one that fits, and says each time why not.
func (n *newSet) words(name string, take func(string) error) error {
	for {
		reply, err := n.session.Face.Ask(page.Prompt{Text: n.session.Say(name), Takes: page.Words{Moves: true}})
		if err != nil {
			return page.Farewell(err, n.session.Say("set-stopped"))
		}
		wrong := take(strings.TrimSpace(content.OneLine(reply)))
		if wrong == nil {
			return nil
		}
		if err := n.session.Face.Show(page.Page{page.Paragraph{Text: wrong.Error()}}); err != nil {
			return err
		}
	}
}

// menu asks for one of some lines.
func (n *newSet) menu(name string, options ...string) (string, error) {
	if err := n.session.Face.Show(page.Page{page.Paragraph{Text: n.session.Say(name)}}); err != nil {
		return "", err
	}
	reply, err := n.session.Face.Ask(page.Prompt{Text: n.session.Say("set-new-line"), Takes: page.Menu{Options: options}})
	if err != nil {
		return "", page.Farewell(err, n.session.Say("set-stopped"))
	}
	i, err := strconv.Atoi(reply)
	if err != nil || i < 1 || i > len(options) {
		return "", fmt.Errorf("line %s: give 1 to %d", calc.Quoted(reply), len(options))
	}
	return options[i-1], nil
}

// there finds the file's name, and ends early where one is there already: nothing that
// someone wrote is written over.
func (n *newSet) there(w *written) error {
	if n.file == "" {
		n.file = w.Set + ".yaml"
	}
	if _, err := os.Lstat(n.file); !errors.Is(err, fs.ErrNotExist) {
		return cli.Usagef("%s is there already: give another name, as in set new FILE", n.file)
	}
	return nil
}

// time asks for the time, with what such questions usually take beside it.
func (n *newSet) time(w *written) error {
	usual := ""
	if e, err := n.effort(*w); err == nil {
		usual = n.session.Say("set-effort-minutes", "n", math.Ceil(e.Minutes))
	}
	if err := n.session.Face.Show(page.Page{page.Paragraph{Text: usual}}); err != nil {
		return err
	}
	return n.words("set-new-time", func(text string) error {
		if text == "" || text == "0" {
			return nil
		}
		minutes, err := strconv.Atoi(strings.TrimSuffix(strings.TrimSuffix(text, "minutes"), " "))
		if err != nil || minutes < 1 || minutes > 600 {
			return fmt.Errorf("time %s: give minutes from 1 to 600, or 0 for none", calc.Quoted(text))
		}
		w.Time = fmt.Sprint(minutes, " minutes")
		return nil
	})
}

// effort draws one sheet of what was asked for so far.
func (n *newSet) effort(w written) (set.Effort, error) {
	text, err := yaml.Marshal(w)
	if err != nil {
		return set.Effort{}, err
	}
	b, err := set.ParseBlueprint(n.file, text, n.of, machine.ReadLathe)
	if err != nil {
		return set.Effort{}, err
	}
	m, err := set.NewMaker(b, previewSecret, n.lib)
	if err != nil {
		return set.Effort{}, err
	}
	items, err := m.Items(nobody.ID)
	return effortOf(items), err
}

// write writes the blueprint to a file that is not there yet, after it was read once: what
// is written can be made.
func (n *newSet) write(w written) error {
	text, err := yaml.Marshal(w)
	if err != nil {
		return err
	}
	if _, err := n.effort(w); err != nil {
		return cli.UsageError(err)
	}
	err = files.WriteNew(n.file, func(f *os.File) error { _, err := f.Write(text); return err })
	if errors.Is(err, fs.ErrExist) {
		return cli.Usagef("%s is there already: give another name, as in set new FILE", n.file)
	}
	return err
}

// show says where the blueprint is, what it asks of someone, and what to do next.
func (n *newSet) show() error {
	d, err := openPreview(n.run, n.file)
	if err != nil {
		return err
	}
	items, err := d.maker.Items(nobody.ID)
	if err != nil {
		return err
	}
	p := page.Page{page.Paragraph{Text: d.say("set-new-made", "where", n.file)}}
	for _, line := range d.effortLines(effortOf(items)) {
		p = append(p, page.Item{Text: line})
	}
	return n.session.Face.Show(p)
}
