package qti

import (
	"encoding/json"
	"flag"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"
)

var (
	export      = flag.String("export", "", "folder to write packages and answers to, for testdata/player")
	exportDraws = flag.Uint("export-draws", 1, "draws of each task, level and system of units for -export")
)

// forPlayer is an item, with answers and what has to come of each.
type forPlayer struct {
	File    string
	Answers []playerAnswer
}

type playerAnswer struct {
	Given    responses
	Score    float64
	Feedback string
	Text     string // of the feedback shown
}

// Not a test: it writes what a player in a browser is tried with.
func TestExportForPlayer(t *testing.T) {
	if *export == "" {
		t.Skip("give -export DIR to write packages for a player")
	}
	slot := everyTask(t, uint32(*exportDraws))
	for name, p := range map[string]Package{
		"2p1": packageOf(V21, false, slot), "3p0": packageOf(V30, false, slot), "3p0-choice": packageOf(V30, true, slot),
	} {
		names, files := packed(t, p)
		for _, file := range names {
			write(t, filepath.Join(*export, name, file), files[file])
		}
		var all []forPlayer
		for _, it := range slot.Items {
			all = append(all, forPlayer{itemFile(it.ID), playerAnswers(it, parse(t, files[itemFile(it.ID)]), p.ChoiceOnly)})
		}
		data, err := json.Marshal(all)
		if err != nil {
			t.Fatal(err)
		}
		write(t, filepath.Join(*export, name+".json"), data)
	}
}

func write(t *testing.T, path string, data []byte) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, data, 0o644); err != nil {
		t.Fatal(err)
	}
}

// playerAnswers are two answers for each feedback of an item, and no answer; but for
// an order, which some players hand on as it first stood.
func playerAnswers(it Item, item *tree, choiceOnly bool) []playerAnswer {
	given := []responses{{}}
	if item.all("orderInteraction") != nil {
		given = nil
	}
	if choiceOnly {
		for _, o := range item.all("simpleChoice") {
			given = append(given, responses{response: {o.attrs["identifier"]}})
		}
	} else {
		for _, c := range casesOf(it, rand.New(rand.NewPCG(3, 4))) {
			if !besideAnEnd(endsOf(item), c.given) {
				given = append(given, c.given)
			}
		}
	}
	var all []playerAnswer
	seen := map[string]int{}
	for _, g := range given {
		r := evaluate(item, g)
		if seen[r.feedback]++; seen[r.feedback] <= 2 {
			all = append(all, playerAnswer{g, r.score, r.feedback, shown(item, r.feedback)})
		}
	}
	return all
}
