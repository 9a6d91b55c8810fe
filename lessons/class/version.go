package class

import (
	"fmt"
	"slices"
	"strings"
	"time"
)

// Version changes when what someone's phone shows may have changed. A phone that has it already
// need not ask again, whatever others do.
func (r *Room) Version(p *Person, now time.Time) string {
	var b strings.Builder
	fmt.Fprint(&b, r.Now, flag(r.Paused), flag(r.Ended))
	if round, n := r.Round(); round != nil {
		fmt.Fprint(&b, "-bench", n, flag(round.Closed), round.Shown)
	}
	if a := r.Asking(); a != nil {
		fmt.Fprint(&b, "-", a.Way, a.Open, flag(a.Locked), a.Until.Unix())
		for place := range a.Places() {
			if shown := a.shown[place]; shown > 0 { // phones have as many lines of the working as the wall
				fmt.Fprint(&b, "-", place, ".", shown)
			}
		}
		if p != nil {
			ends, timed := r.Ends(p, r.Now)
			fmt.Fprint(&b, "-", flag(timed && now.After(ends)))
		}
	}
	if p != nil {
		fmt.Fprint(&b, "-", p.ID, "-", p.seq)
	}
	return b.String()
}

// flag is y or n.
func flag(on bool) string {
	if on {
		return "y"
	}
	return "n"
}

// Gone reports whether the name of a device was given to another.
func (r *Room) Gone(device string) bool { return r.gone[device] }

// Claimed is whose name a device waits for; nil for nobody.
func (r *Room) Claimed(device string) *Person {
	if device == "" {
		return nil
	}
	for _, p := range r.People() {
		if slices.Contains(p.Claims, device) {
			return p
		}
	}
	return nil
}
