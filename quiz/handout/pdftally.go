package handout

import "strings"

const tallyLeast = 30 * point // high enough for two rows of strokes

// tally is a grid to tick by hand: a row an item, a column for each way it can go.
func (p *pdf) tally(name string, items []string) error {
	g := grid{edges: p.tallyEdges()}
	head := g.rows(p, append([]string{p.words.TallyItem}, p.words.TallyColumns...), smaller, 0)
	top := block{}
	top.add(p.lines(margin, joined(": ", p.words.Tally, name), p.paper.inner(), title)...)
	top.add(space(4 * point))
	if p.words.TallyHow != "" {
		top.add(p.lines(margin, p.words.TallyHow, p.paper.inner(), small)...)
		top.add(space(6 * point))
	}
	top.add(head...)
	blocks := []block{top}
	for _, item := range items {
		blocks = append(blocks, block{rows: g.rows(p, []string{item}, small, tallyLeast), again: head})
	}
	return p.write(section{mark: joined(": ", p.words.Tally, name), blocks: blocks, owner: joined(": ", p.words.Tally, name)})
}

// tallyEdges are the places of the grid's upright lines. A column is as wide as its
// longest word; what is left of three fifths of the page goes to the narrow ones.
func (p *pdf) tallyEdges() []int {
	columns := p.words.TallyColumns
	edges := []int{margin}
	if len(columns) == 0 {
		return append(edges, p.paper.right())
	}
	room := p.paper.inner() * 3 / 5
	measure := p.measure(smaller)
	needs := make([]int, len(columns))
	for i, column := range columns {
		for _, word := range strings.Fields(column) {
			needs[i] = max(needs[i], measure(word)+2*cellSide)
		}
	}
	widths := func(least int) (all []int, sum int) {
		for _, need := range needs {
			all = append(all, max(need, least))
			sum += max(need, least)
		}
		return all, sum
	}
	given, sum := widths(0)
	for least := point; sum <= room; least += point {
		wider, more := widths(least)
		if more > room {
			break
		}
		given, sum = wider, more
	}
	edge := p.paper.right() - sum
	if sum > room { // too many for their words: the same width for all
		for i := range given {
			given[i] = room / len(given)
		}
		edge = p.paper.right() - room/len(given)*len(given)
	}
	edges = append(edges, edge)
	for _, width := range given {
		edge += width
		edges = append(edges, edge)
	}
	return edges
}
