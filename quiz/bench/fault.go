package bench

// fault is what came of a fault that the lathe was left with, as the name of the reason in
// the verdict: "fault-found" by the scratch pass, "fault-unseen" where the gears were set
// anew before anything was cut, "fault-missed" where a thread was cut with them. It is
// empty for a lathe without one.
func (b Bench) fault() string {
	if b.Job.GearsLeft <= 0 {
		return ""
	}
	scratched := false
	for _, p := range b.all() {
		if !b.rightLead(p.Lead) {
			scratched = true
		}
	}
	switch {
	case b.wrongLead(), scratched && !b.rightLead(b.Lead):
		return "fault-missed"
	case scratched && b.counted():
		return "fault-found"
	case b.rightLead(b.Lead):
		return "fault-unseen"
	}
	return "fault-missed"
}

// counted reports whether a rule was laid on the thread.
func (b Bench) counted() bool {
	for _, e := range b.Log {
		if e.Event.Verb == "count" {
			return true
		}
	}
	return false
}
