package calc

// engagementRow is a row of the table of lengths of engagement: up to short it is short,
// beyond long it is long, and between them normal. All in millimetres.
type engagementRow struct{ over, to, pitch, short, long float64 }

// engagementRows are the usual part of the table. Source: Machinery's Handbook 27th ed. p. 1792,
// after ISO 965-1 and ASME B1.13M.
var engagementRows = []engagementRow{
	{5.6, 11.2, 0.75, 2.4, 7.1}, {5.6, 11.2, 1, 3, 9}, {5.6, 11.2, 1.25, 4, 12}, {5.6, 11.2, 1.5, 5, 15},
	{11.2, 22.4, 1, 3.8, 11}, {11.2, 22.4, 1.25, 4.5, 13}, {11.2, 22.4, 1.5, 5.6, 16}, {11.2, 22.4, 1.75, 6, 18},
	{11.2, 22.4, 2, 8, 24}, {11.2, 22.4, 2.5, 10, 30},
	{22.4, 45, 1, 4, 12}, {22.4, 45, 1.5, 6.3, 19}, {22.4, 45, 2, 8.5, 25}, {22.4, 45, 3, 12, 36},
	{22.4, 45, 3.5, 15, 45}, {22.4, 45, 4, 18, 53}, {22.4, 45, 4.5, 21, 63},
}

// NormalEngagement returns the lengths of engagement between which a metric thread has a
// normal one: over short, up to long. ok is false for a thread that the table at hand does
// not have, which is for 5.6 to 45 mm.
func NormalEngagement(nominal, pitch Length) (short, long Length, ok bool) {
	d, p := nominal.Millimetres(), pitch.Millimetres()
	for _, row := range engagementRows {
		if d > row.over && d <= row.to+1e-9 && Within(p, row.pitch, 1e-6) {
			return Millimetres(row.short), Millimetres(row.long), true
		}
	}
	return 0, 0, false
}
