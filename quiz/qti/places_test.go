package qti

import (
	"flag"
	"fmt"
	"math"
	"slices"
	"testing"

	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/tasks"
)

var sheets = flag.Int("sheets", 60, "sheets of each task whose right places are counted")

// counted is how often the right answer stood at each place, by how many options there were.
type counted map[int][]int

func (c counted) add(n, place int) {
	if c[n] == nil {
		c[n] = make([]int, n)
	}
	c[n][place]++
}

// uneven says where a place comes so often or so seldom that no chance does it.
func (c counted) uneven(sigmas float64) string {
	for n, places := range c {
		all := 0
		for _, times := range places {
			all += times
		}
		mean := float64(all) / float64(n)
		for place, times := range places {
			if math.Abs(float64(times)-mean) > sigmas*math.Sqrt(mean*(1-1/float64(n)))+1 {
				return fmt.Sprintf("place %d of %d is right %d times of %d: %v", place+1, n, times, all, places)
			}
		}
	}
	return ""
}

// Over a class the place of the right answer among whole answers tells nothing: not where it
// stands, and of a number not how many are smaller.
func TestPlaceTellsNothing(t *testing.T) {
	total, bySize := counted{}, counted{}
	for _, task := range tasks.All() {
		if task.Kind == answer.Choice {
			continue
		}
		places, ranks := counted{}, counted{}
		for seed := range uint32(*sheets) {
			it, ok := drawn(t, task, 1, machine.Imperial, seed)
			if !ok {
				if it, ok = drawn(t, task, 1, machine.Metric, seed); !ok {
					continue
				}
			}
			d := &draft{Item: it, pack: &Package{}}
			all, err := d.wholes()
			if err != nil {
				t.Fatal(err)
			}
			again, _ := d.wholes()
			right := slices.IndexFunc(all, func(w whole) bool { return it.Problem.Expected.Right(w.response) })
			if right < 0 || !slices.EqualFunc(all, again, func(x, y whole) bool { return x.shown == y.shown }) {
				t.Fatalf("%s: no right one in %v, or another order", it.Problem.Code, all)
			}
			places.add(len(all), right)
			total.add(len(all), right)
			if !task.Kind.OneNumber() {
				continue
			}
			smaller := 0
			for _, w := range all {
				if w.response.X < all[right].response.X {
					smaller++
				}
			}
			ranks.add(len(all), smaller)
			bySize.add(len(all), smaller)
			if len(all) < usualWholes {
				t.Errorf("%s: %d options: %v", it.Problem.Code, len(all), all)
			}
		}
		if wrong := places.uneven(5); wrong != "" {
			t.Errorf("%s: %s", task.Name, wrong)
		}
		if wrong := ranks.uneven(5); wrong != "" {
			t.Errorf("%s, by size: %s", task.Name, wrong)
		}
	}
	t.Logf("right places %v, by size %v", total, bySize)
	for _, c := range []counted{total, bySize} {
		if wrong := c.uneven(4); wrong != "" {
			t.Error(wrong)
		}
	}
}
