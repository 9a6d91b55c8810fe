package class

import (
	"fmt"
	"strings"
)

// Version changes when what someone's phone shows may have changed. A phone that has it already
// need not ask again, whatever others do.
func (r *Room) Version(p *Person) string {
	var b strings.Builder
	fmt.Fprint(&b, r.Now, flag(r.Paused), flag(r.Ended))
	if a := r.Asking(); a != nil {
		fmt.Fprint(&b, "-", a.Way, a.Open, flag(a.Locked), a.Until.Unix())
		if a.Way == Together {
			fmt.Fprint(&b, "-", flag(a.shown[a.Open] > 0))
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

// Claimed is whose name a device waits for; nil for nobody.
func (r *Room) Claimed(device string) *Person {
	for _, p := range r.people {
		for _, d := range p.Claims {
			if d == device {
				return p
			}
		}
	}
	return nil
}
