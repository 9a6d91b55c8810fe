package set

import (
	"bytes"
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"scratchpass/calc"
	"scratchpass/content"
	"scratchpass/quiz/files"
	"scratchpass/quiz/qti"
)

// sessionOf is what one learner answered to one item, as a learning system reports it.
type sessionOf struct {
	who, item string
	when      string // sorts by time
	values    map[string][]string
	line      int // of the file, 0 where that is unknown
}

// IsResponses reports whether a file is what a learning system handed back: results in the
// XML of QTI, or a table with the names of items in it.
func IsResponses(text []byte) bool {
	text = bytes.TrimSpace(bytes.TrimPrefix(text, []byte("\ufeff")))
	if bytes.HasPrefix(text, []byte("<")) {
		return true
	}
	head, _, _ := bytes.Cut(text, []byte("\n"))
	return slices.ContainsFunc(cellsOf(string(head)), func(name string) bool { return isItem(name) || plainName(name) == "itemidentifier" })
}

func cellsOf(line string) []string {
	return strings.FieldsFunc(line, func(r rune) bool { return r == ',' || r == ';' || r == '\t' || r == '\r' })
}

// plainName is the name of a column without capitals, spaces, lines and quotation marks.
func plainName(name string) string {
	return strings.NewReplacer(" ", "", "_", "", "-", "", `"`, "").Replace(strings.ToLower(strings.TrimSpace(name)))
}

// itemName are the names of questions in a package, with the number of a box behind them.
var itemName = regexp.MustCompile(`^"?([qwc])(\d{1,2})-([0-9A-Z]{3}-[0-9A-Z]{4})(?:[.: _]+(RESPONSE\d{0,2}))?"?$`)

func isItem(name string) bool { return itemName.MatchString(strings.TrimSpace(name)) }

// ReadResponses is Responses for a file.
func (m *Maker) ReadResponses(class []Apprentice, path string) ([]Given, error) {
	text, err := files.Read(path, mostAnswerBytes)
	if err != nil {
		return nil, err
	}
	return m.Responses(class, path, text)
}

// Responses reads what a learning system handed back, as answers that were typed at a
// screen. It takes
//   - assessmentResult of QTI results reporting 2.1, 2.2 or 3.0, one or several in a file:
//     context/@sourcedId says whose it is; of itemResult the identifier, datestamp and
//     sessionStatus are read, of responseVariable the candidateResponse;
//   - CSV, a row a response, with the names that the standard has: sourcedId,
//     itemIdentifier, responseIdentifier, candidateResponse. Values of one response stand in
//     rows of their own, or in one cell with | between them;
//   - CSV, a row a learner, with the identifiers of items as names of columns; of items with
//     several boxes q3-K7F-2QXM.RESPONSE1 and so on.
//
// Of several attempts the first that says anything counts, for feedback came after it. What
// is no item of a set is passed over, unless there is nothing else.
func (m *Maker) Responses(class []Apprentice, file string, text []byte) ([]Given, error) {
	text = bytes.TrimPrefix(text, []byte("\ufeff"))
	read := csvSessions
	if bytes.HasPrefix(bytes.TrimSpace(text), []byte("<")) {
		read = xmlSessions
	}
	sessions, err := read(file, text)
	if err != nil {
		return nil, err
	}
	return m.given(class, file, sessions)
}

// given finds the question of each session, and keeps the first answer to it.
func (m *Maker) given(class []Apprentice, file string, sessions []sessionOf) ([]Given, error) {
	codes, err := m.Codes(class)
	if err != nil {
		return nil, err
	}
	slices.SortStableFunc(sessions, func(x, y sessionOf) int { return strings.Compare(x.when, y.when) })
	sheets := map[string][]Item{}
	at := map[[2]string]int{} // learner and item, where their answer stands
	var all []Given
	var wrong faults
	ours := 0
	for _, s := range sessions {
		name := itemName.FindStringSubmatch(s.item)
		if name == nil {
			continue
		}
		ours++
		g, err := m.oneGiven(file, s, name, codes, sheets)
		if err != nil {
			wrong.add(err)
			continue
		}
		key := [2]string{s.who, s.item}
		if i, before := at[key]; before {
			if all[i].Text == "" {
				all[i] = g
			}
			continue
		}
		at[key] = len(all)
		all = append(all, g)
	}
	if ours == 0 {
		return nil, fmt.Errorf("%s: no response in it is to an item of a set: those are called q1-K7F-2QXM and so on", file)
	}
	return all, wrong.err()
}

// oneGiven is one answer. Who has no name of their own in a learning system is told apart
// by what it calls them: the answers of each are like a file of their own.
func (m *Maker) oneGiven(file string, s sessionOf, name []string, codes map[string]Apprentice, sheets map[string][]Item) (Given, error) {
	g := Given{Who: content.OneLine(s.who), File: file, Line: s.line}
	who, ok := codes[name[3]]
	if !ok {
		return g, fmt.Errorf("%s: %s: no sheet of this set has the code %s", g.Where(), calc.Quoted(s.item), calc.Quoted(name[3]))
	}
	if sheets[name[3]] == nil {
		made, err := m.Items(who.ID)
		if err != nil {
			return g, err
		}
		sheets[name[3]] = made
	}
	number, _ := strconv.Atoi(name[2]) // two figures
	if number < 1 || number > len(sheets[name[3]]) {
		return g, fmt.Errorf("%s: %s: question %d: the set has %d", g.Where(), calc.Quoted(s.item), number, len(sheets[name[3]]))
	}
	it := sheets[name[3]][number-1]
	if len(it.From) > 0 {
		it.Problem = alone(it)
	}
	how := qti.AsItIs
	for asked, letter := range letters {
		if letter == name[1] {
			how = asked
		}
	}
	text, err := qti.Reply(qti.Item{ID: s.item, Problem: it.Problem, Words: it.Words, Points: it.Points}, how, s.values)
	if err != nil {
		return g, fmt.Errorf("%s: %s of %s: %w", g.Where(), s.item, calc.Quoted(s.who), err)
	}
	g.Code, g.Text = it.Problem.Code.String(), answerText(text)
	g.File = file + " (" + cmp.Or(g.Who, "no sourcedId") + ")"
	return g, nil
}
