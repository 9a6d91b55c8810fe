package main

import (
	"encoding/csv"
	"fmt"
	"net"
	"net/http"
	"net/url"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"
)

// serverKills is how often the served class is killed; SCRATCHPASS_KILLS makes it more.
func serverKills() int {
	if n, err := strconv.Atoi(os.Getenv("SCRATCHPASS_KILLS")); err == nil {
		return n
	}
	return 2
}

// However often a class is killed while phones answer: what was acknowledged is there, the last
// answer of each phone counts, and phones go on at the same address.
func TestAClassIsKilled(t *testing.T) {
	s := newShop(t)
	const people = 6
	roster := "id,name\n"
	for i := range people {
		roster += fmt.Sprintf("%d,Person %d\n", i, i)
	}
	s.write("roster.csv", roster)
	free, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	at := free.Addr().String()
	if err := free.Close(); err != nil {
		t.Fatal(err)
	}
	c := s.serve("--listen", at)
	desk := c.phone()
	desk.get("/desk/" + c.code + "?key=" + c.key)
	desk.post("/desk/"+c.code+"/do", "do", "open", "place", "0")
	room := "/r/" + c.code
	all := make([]phone, people)
	for i := range all {
		all[i] = c.phone()
		all[i].post(room+"/join", "name", fmt.Sprint("Person ", i))
		all[i].client.Timeout = 4 * time.Second
	}
	var acknowledged atomic.Int64
	stop := make(chan struct{})
	last := make([]string, people) // what was acknowledged last, by person
	var done sync.WaitGroup
	for i, p := range all {
		done.Go(func() {
			for n := 1; ; n++ {
				select {
				case <-stop:
					return
				default:
				}
				text := fmt.Sprintf("0.%d%03d in", i+1, n%1000)
				if p.send(room+"/answer", text, fmt.Sprint("key ", n)) {
					last[i] = text
					acknowledged.Add(1)
				}
			}
		})
	}
	for range serverKills() {
		for was := acknowledged.Load(); acknowledged.Load() < was+15; {
			time.Sleep(time.Millisecond) // until they have answered again
		}
		c.stop(true)
		c = s.serve("--listen", at)
	}
	for was := acknowledged.Load(); acknowledged.Load() < was+15; {
		time.Sleep(time.Millisecond)
	}
	close(stop)
	done.Wait()
	c.stop(true)
	t.Logf("%d acknowledged, %d kills", acknowledged.Load(), serverKills())
	rows, err := csv.NewReader(strings.NewReader(s.run("class", "answers", filepath.Join(s.dir, "lesson.class")))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	got := map[string]string{}
	for _, row := range rows[1:] {
		got[row[5]] = row[2]
	}
	for i, text := range last {
		if got[strconv.Itoa(i)] != text {
			t.Errorf("person %d: %q counts, and %q was acknowledged last", i, got[strconv.Itoa(i)], text)
		}
	}
}

// send sends an answer until it is acknowledged; ok is false where it could not be sent at all.
func (p phone) send(path, text, key string) (ok bool) {
	form := url.Values{"set": {"0"}, "place": {"0"}, "answer": {text}, "key": {key}}
	for {
		r, err := http.NewRequest(http.MethodPost, p.base+path, strings.NewReader(form.Encode()))
		if err != nil {
			return false
		}
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
		r.Header.Set("Accept", "application/json")
		if answer, err := p.client.Do(r); err == nil {
			answer.Body.Close()
			if answer.StatusCode == http.StatusOK {
				return true
			}
		}
		time.Sleep(50 * time.Millisecond) // it is not given up: one that was kept is acknowledged in the end
	}
}
