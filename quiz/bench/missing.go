package bench

// Missing lists the moves of the set-up that have not been made before the first cut, by
// their first word.
func (b Bench) Missing() []string {
	var missing []string
	want := func(done bool, verb string) {
		if !done {
			missing = append(missing, verb)
		}
	}
	want(b.Dressed, "dress")
	want(b.KeyOut, "key")
	want(!b.FeedOn, "feed")
	want(b.Set.Speed, "speed")
	want(b.Hand() == b.Job.Thread.Hand, "tumbler")
	want(!b.Job.InReverse() || b.Flipped, "tool")
	drive := "gears"
	if len(b.Job.Lathe.Gears) == 0 {
		drive = "levers"
	}
	want(b.Set.Lead, drive)
	want(b.Set.Angle && !b.SwungWrong(), "angle")
	want(b.Set.Taper || b.Job.Form() != Pipe, "taper")
	want(b.Height, "height")
	want(b.Squared, "square")
	want(b.Snug, "gibs")
	want(b.Oiled || b.Job.CutsDry(), "oil")
	want(b.AtTouch && b.Zeroed[1], "zero")
	return missing
}
