package main

import (
	"net"
	"net/url"
	"strings"
	"testing"
)

// come lets someone in as a visitor.
func (c serving) come(name string) {
	c.t.Helper()
	p := c.phone()
	p.get("/" + c.code)
	if page := p.post("/r/"+c.code+"/join", "name", name, "visitor", "yes"); !strings.Contains(page, "Wait for the first question") {
		c.t.Fatal("not let in: ", page)
	}
}

// Classes of tasks have a file that nobody has named. The same command goes on with it; other
// questions, and a class that is over, do not end in the room of another class.
func TestTwoClassesOnOneDay(t *testing.T) {
	s := newShop(t)
	first := s.class("compound-travel", "--listen", "127.0.0.1:0")
	first.come("Zoe")
	first.stop(true)

	again := s.class("compound-travel", "--listen", "127.0.0.1:0")
	if again.code != first.code || again.base != first.base {
		t.Error("cut off, the class does not go on: ", again.code, first.code)
	}
	again.stop(false)
	if !strings.Contains(again.notes.String(), "goes on with the class that began") || !strings.Contains(again.notes.String(), "--room FILE") {
		t.Error("it is not said that this is the class of before: ", again.notes)
	}

	other := s.class("single-depth", "--listen", "127.0.0.1:0")
	if other.code == first.code {
		t.Error("other questions are asked in the room of the first class")
	}
	other.come("Yan")
	desk := other.phone()
	desk.get("/desk/" + other.code + "?key=" + other.key)
	desk.post("/desk/"+other.code+"/do", "do", "end", "sure", "yes")
	other.stop(false)
	if !strings.Contains(other.notes.String(), "is another class.") {
		t.Error("it is not said why the file has another name: ", other.notes)
	}

	third := s.class("single-depth", "--listen", "127.0.0.1:0")
	third.stop(false)
	if third.code == other.code {
		t.Error("a class goes on in the room of one that is over")
	}
	file := ""
	for _, word := range strings.Fields(third.notes.String()) {
		if strings.HasSuffix(word, ".class.") {
			file = strings.TrimSuffix(word, ".")
		}
	}
	asked := s.class("single-depth", "--listen", "127.0.0.1:0", "--room", file)
	asked.stop(false)
	if !strings.Contains(asked.notes.String(), "That class was ended, and still is.") {
		t.Error("it is not said that it is over: ", asked.notes)
	}
	if asked.code != other.code {
		t.Errorf("asked for with --room %s, the class that is over does not come", file)
	}
}

// Links hold without a fixed port, and where they can't it is said.
func TestLinksHold(t *testing.T) {
	s := newShop(t)
	c := s.serve()
	c.stop(true)
	u, err := url.Parse(c.base)
	if err != nil {
		t.Fatal(err)
	}
	taken, err := net.Listen("tcp", u.Host) // by another program
	if err != nil {
		t.Fatal(err)
	}
	defer taken.Close()
	c = s.serve()
	c.stop(false)
	if c.base == "http://"+u.Host || !strings.Contains(c.notes.String(), "The links are others than before, which led to "+u.Host) {
		t.Errorf("the port is taken, and nothing is said of it: %s\n%s", c.base, c.notes)
	}
	s.write("roster.csv", "id,name\n1,Ada Brink\n2,Ben Corrie\n3,Cy Dorn\n")
	c = s.serve()
	c.stop(false)
	if !strings.Contains(c.notes.String(), "The class list is another one now") {
		t.Error("nothing is said of a list that the class does not have: ", c.notes)
	}
}
