package set

import (
	"cmp"
	"maps"
	"slices"
	"strconv"
	"strings"
	"sync"
	"time"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/quiz/answer"
	"scratchpass/quiz/handout"
	"scratchpass/quiz/problem"
)

// Printer fills the model of sheets and keys.
type Printer struct {
	maker     *Maker
	says      map[string]string
	rehearsal string // the caution at the foot
	drawings  map[string]content.DrawingWords
	lessons   func() map[string]TaughtIn
}

// NewPrinter reads the words that sheets and keys need.
func NewPrinter(m *Maker, lib *content.Library) (*Printer, error) {
	says, err := lib.Screens()
	if err != nil {
		return nil, err
	}
	phrases, err := lib.Phrases()
	if err != nil {
		return nil, err
	}
	drawings, err := lib.Drawings()
	lessons := sync.OnceValue(func() map[string]TaughtIn { return Taught(lib) })
	return &Printer{m, says, phrases["rehearsal"], drawings, lessons}, err
}

// Say fills a phrase of the set's words, its ${names} from pairs of name and value.
func (p *Printer) Say(name string, pairs ...any) string {
	return content.FillPairs(p.says[name], pairs...)
}

// Options are what a document of this set needs to know.
func (p *Printer) Options(title string) handout.Options {
	date, err := time.Parse(time.DateOnly, p.maker.Blueprint.Date)
	if err != nil {
		date = handout.Made
	}
	return handout.Options{Paper: handout.Paper(p.maker.Blueprint.Paper), Duplex: p.maker.Blueprint.Duplex, Layout: handout.Layout(p.maker.Blueprint.Layout), Title: title, Date: date, Words: handout.Words{
		Lang: "en", Name: p.Say("set-name"), Form: p.Say("set-form"), Code: p.Say("set-code"), Date: p.Say("set-date"), Answer: p.Say("set-answer"),
		Page: p.says["set-page"], Rehearsal: p.rehearsal, Star: p.Say("set-star"), Key: p.Say("set-key"),
		Accepted: p.Say("set-accepted"), Path: p.Say("set-path"), Seen: p.Say("set-seen"), Tally: p.Say("set-tally"), TallyItem: p.Say("set-tally-item"),
		TallyHow: p.Say("set-tally-how"), TallyColumns: split(p.Say("set-tally-columns")),
	}}
}

// Sheet is what one apprentice gets.
func (p *Printer) Sheet(a Apprentice, items []Item) (handout.Sheet, error) {
	b := p.maker.Blueprint
	s := handout.Sheet{Title: b.Title, Name: a.Name, Form: a.Form, Code: p.maker.Code(a.ID)}
	if b.Date != "" {
		s.Facts = append(s.Facts, p.Say("set-on", "date", b.Date))
	}
	if b.Time != "" {
		s.Facts = append(s.Facts, p.Say("set-time", "time", b.Time))
	}
	s.Facts = append(s.Facts, p.Say("set-worth", "n", len(items), "points", p.points(b.Points())))
	s.Facts = append(s.Facts, b.Notes...)
	for _, it := range items {
		d, err := it.Words.Drawing(it.Problem, p.drawings)
		if err != nil {
			return s, err
		}
		item := handout.Item{Number: it.Number, Points: p.points(it.Points), Text: strings.Split(it.Words.Question(it.Problem), "\n"),
			Readings: it.Words.ReadingLabels(it.Problem), Expects: it.Words.PaperExpects(it.Problem), Sure: p.sure(), Unit: it.Problem.Expected.UnitBehind(), Drawing: d, Caution: it.Problem.Task.SafetyCritical}
		if len(it.Words.Task.Options) > 0 {
			item.Options, item.Choose = it.Words.Options(it.Problem), chosen[it.Problem.Task.Kind]
		}
		s.Items = append(s.Items, item)
	}
	return s, nil
}

// chosen is how the options of a kind are ticked.
var chosen = map[answer.Kind]handout.Choose{answer.Choice: handout.One, answer.Several: handout.Some}

// FieldOptions are Options for the sheet of one apprentice with fields to fill in.
func (p *Printer) FieldOptions(a Apprentice) handout.Options {
	o := p.Options(strings.TrimSpace(p.maker.Blueprint.Title + " " + a.Name))
	o.Fields = true
	w := &o.Words
	w.PickOne, w.PickSome = p.Say("set-qti-choice"), p.Say("set-qti-several")
	w.Fill, w.Save, w.Saved, w.None, w.Sure = p.Say("set-fill"), p.Say("set-save"), p.says["set-saved"], p.Say("set-none"), p.Say("say-how-sure")
	for _, c := range answer.Certainties {
		w.Sures = append(w.Sures, handout.Sure{Value: string(c), Name: p.Say("say-sure-" + string(c))})
	}
	return o
}

// sure is where it is ticked how sure someone is, if that is asked.
func (p *Printer) sure() string {
	if p.maker.Blueprint.Sure {
		return p.Say("set-sure")
	}
	return ""
}

// Errors explains the names of common errors that stand in the keys, task by task.
func (p *Printer) Errors() handout.Report {
	r := handout.Report{Title: p.Say("set-roads"), Owner: p.Say("set-key")}
	done := map[string]bool{}
	for _, place := range p.maker.places {
		for _, name := range place.tasks {
			if done[name] {
				continue
			}
			done[name] = true
			w := p.maker.words[name]
			table := &handout.Table{Columns: split(p.Say("set-roads-columns"))}
			for _, known := range slices.Sorted(maps.Keys(w.Task.Slips)) {
				text := w.Task.Slips[known]
				if strings.Contains(text, "${") { // it has this apprentice's figures in it
					continue
				}
				table.Rows = append(table.Rows, []string{errorName(known), text})
			}
			if len(table.Rows) > 0 {
				r.Parts = append(r.Parts, handout.Part{Heading: w.Task.Title, Table: table})
			}
		}
	}
	return r
}

// errorName is the name of a common error as it is printed.
func errorName(known string) string { return strings.ReplaceAll(known, "-", " ") }

func (p *Printer) points(x float64) string {
	if x == 1 {
		return p.Say("set-point")
	}
	return p.Say("set-points", "n", calc.Shortest(x, 1))
}

// Key is the key of one apprentice's sheet.
func (p *Printer) Key(a Apprentice, items []Item) handout.Key {
	k := handout.Key{Title: p.maker.Blueprint.Title, Name: a.Name, Form: a.Form, Code: p.maker.Code(a.ID)}
	for _, it := range items {
		key := handout.KeyItem{Number: it.Number, Title: it.Words.Task.Title, Points: p.points(it.Points), Answer: it.Words.PaperKey(it.Problem), Limits: it.Problem.Task.Kind.Accepts(&it.Problem.Expected),
			Path: path(it.Problem), Seen: p.seen(it), Caution: it.Problem.Task.SafetyCritical}
		var from []string
		for _, n := range FollowsFrom(items, it) {
			from = append(from, strconv.Itoa(n))
		}
		if len(from) > 0 {
			key.Carried = p.Say("set-carried", "from", strings.Join(from, ", "))
		}
		k.Items = append(k.Items, key)
	}
	return k
}

// path is the working on one line.
func path(p *problem.Problem) string {
	var parts []string
	for i, s := range p.Working.Steps {
		if s.Formula == "" && i < len(p.Working.Steps)-1 {
			parts = append(parts, s.Symbol+" = "+s.Value())
			continue
		}
		parts = append(parts, p.Working.Line(i))
	}
	return strings.Join(parts, "; ")
}

// seen is what each common error gives, by size, so that a number on paper is found
// at a glance.
func (p *Printer) seen(it Item) []handout.Seen {
	type row struct {
		x    float64
		seen handout.Seen
	}
	var rows []row
	for _, s := range it.Problem.Expected.Errors {
		value := it.Words.Numbered(it.Problem, s.Response)
		if it.Problem.Task.Kind.OneNumber() { // its unit stands at the top
			value = it.Problem.Expected.Unit.Fixed(s.Response.X)
		}
		name := p.seenName(s)
		same := slices.IndexFunc(rows, func(r row) bool { return r.seen.Value == value })
		if same >= 0 { // errors that give one number
			rows[same].seen.Name += ", " + name
			continue
		}
		rows = append(rows, row{s.Response.X, handout.Seen{Value: value, Name: name}})
	}
	slices.SortStableFunc(rows, func(a, b row) int { return cmp.Or(cmp.Compare(a.x, b.x), cmp.Compare(a.seen.Value, b.seen.Value)) })
	seen := make([]handout.Seen, len(rows))
	for i, r := range rows {
		seen[i] = r.seen
	}
	return seen
}

// seenName is the printed name of an error; of a convention with what it is worth.
func (p *Printer) seenName(known answer.Known) string {
	name := errorName(known.Name)
	switch costs := conventionCosts[p.maker.Blueprint.Rules.Conventions]; {
	case known.Convention && costs == 0:
		return p.Say("set-counts", "name", name)
	case known.Convention && costs < 1:
		return p.Say("set-counts-half", "name", name)
	}
	return name
}

// TallyItems are the rows of the class tally grid.
func (p *Printer) TallyItems() []string {
	var rows []string
	for i, place := range p.maker.places {
		title := p.maker.words[place.tasks[0]].Task.Title
		if len(place.tasks) > 1 {
			title = p.Say("set-mixed")
		}
		if !p.maker.Blueprint.Rules.Shuffle { // else each sheet has another number for it
			title = strconv.Itoa(i+1) + ". " + title
		}
		rows = append(rows, title)
	}
	return rows
}

// split parts a phrase that is a list.
func split(text string) []string { return strings.Split(text, ", ") }
