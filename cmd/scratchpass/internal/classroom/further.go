package classroom

import (
	"strings"

	"scratchpass/calc"
	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/class"
	"scratchpass/lessons/class/served"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/files"
	"scratchpass/quiz/set"
)

func isBlueprint(name string) bool {
	return strings.HasSuffix(name, ".yaml") || strings.HasSuffix(name, ".yml")
}

// further reads the blueprints that the instructor may ask after the first. A lathe that they name
// lies beside the first: the room is made again from that alone.
func (q *questions) further(names []string, first *set.Blueprint, way class.Way, s *sitting.Session) error {
	sets := map[string]string{first.Set: "the first"}
	for _, name := range names {
		if !isBlueprint(name) {
			return cli.Usagef("%s: give blueprints (.yaml), or tasks, not both", calc.Quoted(name))
		}
		text, err := files.Read(name, files.MostWords)
		if err != nil {
			return err
		}
		b, err := set.ParseBlueprint(name, text, s.Tasks, q.lathe)
		if err != nil {
			return cli.UsageError(err)
		}
		if other, twice := sets[b.Set]; twice {
			return cli.Usagef("%s: its set is called %s, as in %s: give it another name, which gives other numbers", name, calc.Quoted(b.Set), other)
		}
		sets[b.Set] = name
		q.next = append(q.next, served.Further{Title: b.Title, Text: string(text), Way: class.WayOf(b, way)})
	}
	return nil
}
