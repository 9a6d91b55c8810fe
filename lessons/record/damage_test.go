package record_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"scratchpass/lessons/record"
	"scratchpass/lessons/schedule"
)

var damages = flag.Int("damages", 40, "how many damaged records are opened")

// spoilable is a closed record of Ada's with so many answers, and one of Ben's; the copy of
// the day has the first of them.
func spoilable(t *testing.T, answers, inCopy int) (path string) {
	t.Helper()
	path = filepath.Join(t.TempDir(), "r.db")
	fold := schedule.Fold(items)
	for _, part := range [][2]int{{0, inCopy}, {inCopy, answers}} {
		r := open(t, path, "Ada")
		for n := part[0]; n < part[1]; n++ {
			if err := r.Append(nth(n), fold); err != nil {
				t.Fatal(err)
			}
		}
		ben := open(t, path, "Ben") // makes the copy, when there is something in it
		if part[0] == 0 {
			if err := ben.Append(nth(0), fold); err != nil {
				t.Fatal(err)
			}
		}
		ben.Close()
		r.Close()
	}
	return path
}

// spoil changes a file.
func spoil(t *testing.T, path string, how func([]byte) []byte) (spoilt []byte) {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	spoilt = how(bytes.Clone(text))
	if bytes.Equal(text, spoilt) {
		t.Fatal("nothing was changed")
	}
	if err := os.WriteFile(path, spoilt, 0o600); err != nil {
		t.Fatal(err)
	}
	return spoilt
}

const page = 4096

// damageKinds are ways to spoil a file of a hundred answers, with what comes of each when the
// copy has the first sixty.
var damageKinds = map[string]struct {
	how      func([]byte) []byte
	all      bool // nothing is lost
	withCopy bool // unless there is no copy
}{
	"the header":                    {func(b []byte) []byte { copy(b[20:], "xxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxx"); return b }, true, true},
	"the list of the tables":        {func(b []byte) []byte { copy(b[100:], bytes.Repeat([]byte{0xff}, 2000)); return b }, true, true},
	"the first page":                {func(b []byte) []byte { clear(b[:page]); return b }, true, true},
	"an index":                      {func(b []byte) []byte { return flipText(b, "single-depth@1-0032", false) }, false, false},
	"a letter of an answer in copy": {func(b []byte) []byte { return flipText(b, "single-depth@1-0010", false) }, true, true},
	"a letter of a newer answer":    {func(b []byte) []byte { return flipText(b, "single-depth@1-005a", false) }, false, false},
	"the end is gone":               {func(b []byte) []byte { return b[:len(b)-2*page] }, false, false},
	"no database at all":            {func([]byte) []byte { return []byte(strings.Repeat("this is no database ", 500)) }, false, false},
}

// flipText changes the last letter of a text, where it stands first or last.
func flipText(b []byte, text string, last bool) []byte {
	at := bytes.Index(b, []byte(text))
	if last {
		at = bytes.LastIndex(b, []byte(text))
	}
	b[at+len(text)-1] ^= 0x04
	return b
}

// A damaged record is mended from what can be read of it and from the copy. The damaged file
// stays as it was under another name; what is lost is known by its number, and is told once.
func TestDamagedRecordIsMended(t *testing.T) {
	oneAtATime(t)
	for name, kind := range damageKinds {
		t.Run(name, func(t *testing.T) {
			path := spoilable(t, 100, 60)
			spoilt := spoil(t, path, kind.how)
			r := open(t, path, "Ada")
			if r.Mended == nil {
				t.Fatal("it was not noticed")
			}
			if was, err := os.ReadFile(r.Mended.Aside); err != nil || !bytes.Equal(was, spoilt) || !strings.HasPrefix(r.Mended.Aside, path+".damaged-") {
				t.Errorf("set aside as %s, %v", r.Mended.Aside, err)
			}
			all, lost := kept(t, r), lostNumbers(t, r, false)
			if len(all) != r.Mended.Kept || kind.all && len(all) != 100 {
				t.Errorf("%d answers are there, and %+v is said", len(all), r.Mended)
			}
			if len(all)+len(lost) != 100 && !r.Mended.Unsure {
				t.Errorf("%d answers are there, and %v are told to be lost", len(all), lost)
			}
			if len(all) < 60 {
				t.Errorf("%d answers: the copy has more", len(all))
			}
			if _, err := schedule.NewBook(r, 0); err != nil {
				t.Fatal(err)
			}
			sound(t, r, len(all))
			if err := r.Append(nth(200), schedule.Fold(items)); err != nil {
				t.Fatal(err)
			}
			if err := r.LostSaid(); err != nil {
				t.Fatal(err)
			}
			r.Close()
			again := open(t, path, "Ada")
			if again.Mended != nil || len(lostNumbers(t, again, false)) != 0 || len(lostNumbers(t, again, true)) != len(lost) {
				t.Errorf("it was mended twice: %+v", again.Mended)
			}
			sound(t, again, len(all)+1)
			ben := open(t, path, "Ben") // whose answer is not in the copy
			if n := len(kept(t, ben)) + len(lostNumbers(t, ben, false)); n != 1 && !(n == 0 && r.Mended.Unsure) {
				t.Error("the answer of another learner is gone, and he is not told")
			}
		})
	}
}

// lostNumbers are the numbers of the answers that are told to be lost.
func lostNumbers(t *testing.T, r *record.Record, all bool) (numbers []int64) {
	t.Helper()
	lost, err := r.Lost(all)
	if err != nil {
		t.Fatal(err)
	}
	for _, l := range lost {
		numbers = append(numbers, l.N)
	}
	return numbers
}

// Without a copy what can be read is there all the same, even where the list of the tables is
// gone: that of a new record stands in for it.
func TestDamagedWithoutCopy(t *testing.T) {
	oneAtATime(t)
	for name, want := range map[string]int{"a letter of an answer in copy": 99, "the list of the tables": 100} {
		path := spoilable(t, 100, 0)
		if err := os.Remove(path + ".copy"); err != nil && !errors.Is(err, os.ErrNotExist) {
			t.Fatal(err)
		}
		spoil(t, path, damageKinds[name].how)
		r := open(t, path, "Ada")
		if m := r.Mended; m == nil || m.Kept != want || m.Unsure != (want == 0) || m.FromCopy != 0 {
			t.Errorf("%s: %+v", name, m)
		}
		if lost := lostNumbers(t, r, false); want == 99 && !slices.Equal(lost, []int64{17}) {
			t.Errorf("%s: lost %v", name, lost)
		}
	}
}

// What is lost is told with the moments it was given between.
func TestLostBetween(t *testing.T) {
	r := fresh(t, 5)
	if err := r.Exec("INSERT INTO lost (learner, n, at_ms, said) VALUES ('Ada', 9, 0, 0); DELETE FROM answers WHERE n IN (1, 3); INSERT INTO lost (learner, n, at_ms, said) VALUES ('Ada', 1, 0, 0), ('Ada', 3, 0, 1), ('Ben', 1, 0, 0)"); err != nil {
		t.Fatal(err)
	}
	lost, err := r.Lost(true)
	if err != nil || len(lost) != 3 {
		t.Fatal(lost, err)
	}
	for i, want := range []record.Lost{{N: 1, Before: nth(1).At}, {N: 3, After: nth(1).At, Before: nth(3).At}, {N: 9, After: nth(4).At}} {
		if !lost[i].After.Equal(want.After) || !lost[i].Before.Equal(want.Before) || lost[i].N != want.N {
			t.Errorf("%+v, want %+v", lost[i], want)
		}
	}
	if numbers := lostNumbers(t, r, false); !slices.Equal(numbers, []int64{1, 9}) {
		t.Errorf("not said yet: %v", numbers)
	}
	if err := r.LostSaid(); err != nil || len(lostNumbers(t, r, false)) > 0 {
		t.Error(err)
	}
	r.Learner = "Ben"
	if len(lostNumbers(t, r, false)) != 1 {
		t.Error("another learner was not told")
	}
}

// The number of an answer that was lost is not given again.
func TestNumbersAreNotGivenAgain(t *testing.T) {
	r := fresh(t, 3)
	if err := r.Exec("DELETE FROM answers WHERE n = 3; INSERT INTO lost (learner, n, at_ms, said) VALUES ('Ada', 3, 0, 1)"); err != nil {
		t.Fatal(err)
	}
	if err := r.Append(nth(9), schedule.Fold(items)); err != nil {
		t.Fatal(err)
	}
	var numbers string
	if err := r.QueryRow("SELECT group_concat(n) FROM answers ORDER BY n", &numbers); err != nil || numbers != "1,2,4" {
		t.Errorf("%s, %v", numbers, err)
	}
}

// However a file is damaged, in one place or in many: each answer that was acknowledged can be
// exported, or it is told which can't. Nothing is made up.
func TestAnyDamage(t *testing.T) {
	runs := *damages
	if testing.Short() {
		runs = 10
	}
	path := spoilable(t, 300, 200)
	whole, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	theCopy, err := os.ReadFile(path + ".copy")
	if err != nil {
		t.Fatal(err)
	}
	truth := map[string]bool{}
	for n := range 300 {
		truth[key(nth(n))] = true
	}
	counts := map[string]int{}
	for run := range runs {
		random := rand.New(rand.NewPCG(uint64(run), 5))
		b := bytes.Clone(whole)
		what := damageAtRandom(random, b)
		at := filepath.Join(t.TempDir(), "r.db")
		files := map[string][]byte{at: b}
		if random.IntN(3) > 0 {
			files[at+".copy"] = theCopy
		}
		for file, text := range files {
			if err := os.WriteFile(file, text, 0o600); err != nil {
				t.Fatal(err)
			}
		}
		r, err := record.OpenChecked(at, "Ada")
		if err != nil {
			if !says(err, "is no record of this program") || len(files) > 1 { // nothing shows whose it was
				t.Errorf("run %d, %s: %v", run, what, err)
			}
			counts["refused, and left as it is"]++
			continue
		}
		all, lost := kept(t, r), lostNumbers(t, r, true)
		for _, a := range all {
			if !truth[key(a)] {
				t.Errorf("run %d, %s: an answer that nobody gave: %+v", run, what, a)
			}
		}
		switch {
		case r.Mended == nil && len(all) == 300:
			counts["nothing was spoilt that matters"]++
		case r.Mended == nil:
			t.Errorf("run %d, %s: %d answers, and nothing was said", run, what, len(all))
		case len(all) == 300:
			counts["mended, and all are there"]++
		case len(all)+len(lost) == 300:
			counts["mended, and those that are lost were named"]++
		case r.Mended.Unsure:
			counts["mended, and it was said that there may have been more"]++
		default:
			t.Errorf("run %d, %s: %d answers, %d lost: %+v", run, what, len(all), len(lost), r.Mended)
		}
		r.Close()
	}
	t.Logf("%d damaged records: %v", runs, counts)
}

// key is all of an answer.
func key(a record.Answer) string {
	a.Learner, a.At = "Ada", a.At.UTC()
	text, _ := json.Marshal(a)
	return string(text)
}

// damageAtRandom spoils a file: some bits, a stretch of bytes, or whole pages.
func damageAtRandom(random *rand.Rand, b []byte) (what string) {
	switch random.IntN(4) {
	case 0:
		n := 1 + random.IntN(20)
		for range n {
			b[random.IntN(len(b))] ^= 1 << random.IntN(8)
		}
		return fmt.Sprintf("%d bits", n)
	case 1:
		at, n := random.IntN(len(b)), 1+random.IntN(2000)
		for i := at; i < min(len(b), at+n); i++ {
			b[i] = byte(random.Uint32())
		}
		return fmt.Sprintf("%d bytes at %d", n, at)
	case 2:
		n := 1 + random.IntN(5)
		for range n {
			at := page * random.IntN(len(b)/page)
			clear(b[at : at+page])
		}
		return fmt.Sprintf("%d pages", n)
	}
	n := 1 + random.IntN(10)
	for range n { // a page in the place of another
		from, to := page*random.IntN(len(b)/page), page*random.IntN(len(b)/page)
		copy(b[to:to+page], b[from:from+page])
	}
	return fmt.Sprintf("%d pages in the wrong place", n)
}

// A copy is made on the first day with answers, and again on another; it is a record by itself.
func TestCopyOfTheDay(t *testing.T) {
	path := filepath.Join(t.TempDir(), "r.db")
	r := open(t, path, "Ada")
	r.Close()
	if _, err := os.Stat(path + ".copy"); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("of nothing: %v", err)
	}
	answers := func() int {
		c, err := record.OpenTrial(path+".copy", "Ada")
		if err != nil {
			t.Fatal(err)
		}
		defer c.Close()
		return len(kept(t, c))
	}
	for n, want := range []int{0, 1, 1, 3} {
		r := open(t, path, "Ada") // makes the copy of what is there
		if n > 0 && answers() != want {
			t.Errorf("after %d answers the copy has %d, want %d", n, answers(), want)
		}
		if err := r.Append(nth(n), nil); err != nil {
			t.Fatal(err)
		}
		r.Close()
		if n == 2 {
			yesterday := time.Now().AddDate(0, 0, -1)
			if err := os.Chtimes(path+".copy", yesterday, yesterday); err != nil {
				t.Fatal(err)
			}
		}
	}
	if info, err := os.Stat(path + ".copy"); err != nil || info.Mode().Perm()&0o077 != 0 {
		t.Errorf("others may read the copy: %v, %v", info.Mode(), err)
	}
}
