package served_test

import (
	"fmt"
	"testing"

	"scratchpass/lessons/class"
	"scratchpass/lessons/class/journal"
	"scratchpass/lessons/face/inspect"
)

// A program that is dead is told of on the instructor's page and on the wall, with what to do, and
// no longer once it is there again; the page goes on then. What was pressed meanwhile was not done.
func TestADeadProgramIsToldInABrowser(t *testing.T) { onBoth(t, aDeadProgramIsTold) }

func aDeadProgramIsTold(t *testing.T, in journal.At) {
	roster := people(2)
	s := openShopOn(t, in, class.Head{Roster: roster}, fmt.Sprintf(three, "rules: {feedback: end}"), class.Together)
	desk := s.tab(chromium(t), "desk")
	desk.goes("/desk/" + roomCode + "?key=" + privateKey)
	wall := desk.second()
	wall.goes("/wall/" + roomCode)
	const told, fine = `document.getElementById("lost").innerText.includes("the same command")`, `document.getElementById("lost").textContent === ""`
	wall.until(fine)
	desk.goes("/desk/" + roomCode) // it was behind the wall
	desk.until(fine)
	s.restart(func() {
		desk.until(told)
		inspect.Axe(t, desk.ctx, "the page of a dead program")
		desk.js(`document.querySelector("button[value=next]").click()`)
		desk.until(told)
	})
	desk.until(fine)
	s.phone().comesIn(roster[0].Name)
	desk.until(`document.getElementById("here").innerText.includes("In the room: 1.")`)
	s.see(func(r *class.Room) {
		if r.Asking().Open >= 0 {
			t.Error("what was pressed while it was dead is done later")
		}
	})
	s.restart(func() { wall.until(told) })
	wall.until(fine)
}
