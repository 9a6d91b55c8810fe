package set

import (
	"bytes"
	"cmp"
	"encoding/csv"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
)

// result is one learner's results, as the standard has them. Names count without their name
// spaces, which differ from version to version.
type result struct {
	Context struct {
		SourcedID string `xml:"sourcedId,attr"`
	} `xml:"context"`
	Items []struct {
		Identifier string `xml:"identifier,attr"`
		Datestamp  string `xml:"datestamp,attr"`
		Status     string `xml:"sessionStatus,attr"`
		Responses  []struct {
			Identifier string   `xml:"identifier,attr"`
			Values     []string `xml:"candidateResponse>value"`
		} `xml:"responseVariable"`
	} `xml:"itemResult"`
}

// unanswered are the states of an item that nobody has handed in.
var unanswered = []string{"initial", "pendingSubmission"}

// xmlSessions reads every assessmentResult of a file, wherever it stands.
func xmlSessions(file string, text []byte) ([]sessionOf, error) {
	decoder := xml.NewDecoder(bytes.NewReader(text))
	var all []sessionOf
	results := 0
	for {
		token, err := decoder.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, fmt.Errorf("%s is no whole XML: %w", file, err)
		}
		start, ok := token.(xml.StartElement)
		if !ok || start.Name.Local != "assessmentResult" {
			continue
		}
		line, _ := decoder.InputPos()
		var r result
		if err := decoder.DecodeElement(&r, &start); err != nil {
			return nil, fmt.Errorf("%s is no whole XML: %w", file, err)
		}
		results++
		for _, it := range r.Items {
			if slices.Contains(unanswered, it.Status) {
				continue
			}
			s := sessionOf{who: r.Context.SourcedID, item: it.Identifier, when: it.Datestamp, values: map[string][]string{}, line: line}
			for _, v := range it.Responses {
				s.values[v.Identifier] = v.Values
			}
			all = append(all, s)
		}
		if len(all) > MostAnswers {
			return nil, fmt.Errorf("%s has more than %d answers: give that many at most", file, MostAnswers)
		}
	}
	if results == 0 {
		return nil, fmt.Errorf("%s has no assessmentResult in it: export the results as QTI results reporting", file)
	}
	return all, nil
}

// csvSessions reads a table of responses.
func csvSessions(file string, text []byte) ([]sessionOf, error) {
	r := csv.NewReader(bytes.NewReader(text))
	head, _, _ := bytes.Cut(text, []byte("\n"))
	for _, comma := range []rune{';', '\t'} {
		if bytes.Count(head, []byte(string(comma))) > bytes.Count(head, []byte(",")) {
			r.Comma = comma
		}
	}
	r.FieldsPerRecord = -1
	names, err := r.Read()
	if err != nil {
		return nil, fmt.Errorf("%s: %w", file, err)
	}
	t := responseTable{file: file, at: map[string]int{}, of: map[[3]string]int{}}
	for i, name := range names {
		t.names = append(t.names, strings.TrimSpace(name))
		t.at[plainName(name)] = i
	}
	for {
		cells, err := r.Read()
		if errors.Is(err, io.EOF) {
			return t.sessions, nil
		}
		if err != nil {
			return nil, fmt.Errorf("%s: %w", file, err)
		}
		line, _ := r.FieldPos(0)
		if err := t.row(cells, line); err != nil {
			return nil, err
		}
		if len(t.sessions) > MostAnswers {
			return nil, fmt.Errorf("%s has more than %d answers: give that many at most", file, MostAnswers)
		}
	}
}

// responseTable is a table of responses while it is read.
type responseTable struct {
	file     string
	names    []string
	at       map[string]int
	sessions []sessionOf
	of       map[[3]string]int // where the session of a learner and an item stands
}

// cell is a cell by one of the names that its column may have.
func (t *responseTable) cell(cells []string, names ...string) string {
	for _, name := range names {
		if i, ok := t.at[name]; ok && i < len(cells) {
			return strings.TrimSpace(cells[i])
		}
	}
	return ""
}

func (t *responseTable) row(cells []string, line int) error {
	if len(cells) > len(t.names) {
		return rowError(t.file, line, "%d cells where there are %d columns", len(cells), len(t.names))
	}
	who := t.cell(cells, "sourcedid", "candidate", "id", "name")
	if item, long := t.at["itemidentifier"]; long {
		if item >= len(cells) {
			return rowError(t.file, line, "no item")
		}
		t.add("", who, strings.TrimSpace(cells[item]), cmp.Or(t.cell(cells, "responseidentifier"), "RESPONSE"), t.cell(cells, "candidateresponse"), line)
		return nil
	}
	for i, cell := range cells {
		if name := itemName.FindStringSubmatch(t.names[i]); name != nil && strings.TrimSpace(cell) != "" {
			t.add(strconv.Itoa(line), who, name[1]+name[2]+"-"+name[3], cmp.Or(name[4], "RESPONSE"), cell, line)
		}
	}
	return nil
}

// add adds what a cell has to the session that it belongs to. A row that has a learner's
// answers is an attempt of its own; rows of responses are parts of one.
func (t *responseTable) add(attempt, who, item, response, cell string, line int) {
	key := [3]string{attempt, who, item}
	i, there := t.of[key]
	if !there {
		i = len(t.sessions)
		t.of[key] = i
		t.sessions = append(t.sessions, sessionOf{who: who, item: item, values: map[string][]string{}, line: line})
	}
	for value := range strings.SplitSeq(cell, "|") {
		if value = strings.TrimSpace(value); value != "" {
			t.sessions[i].values[response] = append(t.sessions[i].values[response], value)
		}
	}
}
