package draft

// exchange spares a row by a change of ground: another of its use takes the ground of
// what stands beside that one, which comes onto the ground of the row that is spared. It
// tells how many rows fewer there are then of those that there were; 0 when no change is
// worth it.
func (g *gathering) exchange(row, before int) int {
	parts := g.partsOf(row)
	if len(parts) != 1 {
		return 0
	}
	from := parts[0]
	for _, to := range g.like[useName(&g.draft.Columns[from.Sowing])] {
		if to == from.Sowing || g.units[g.rowOf[to]] == 0 || !g.near(from.Sowing, to) || g.sameGround(from.Sowing, to) || g.s.Room(to) > 0 {
			continue
		}
		for _, beside := range g.ground[g.draft.Problem.Sowings[to].Ground] {
			if g.s.Units[beside] == 0 || beside == to || !g.overlap(to, beside) {
				continue
			}
			for _, back := range g.like[useName(&g.draft.Columns[beside])] {
				if g.sameGround(from.Sowing, back) && g.near(beside, back) && g.overlap(from.Sowing, back) {
					if saved := g.swapped(from, to, beside, back, before); saved > 0 {
						return saved
					}
				}
			}
		}
	}
	return 0
}

// swapped makes one change of ground when that is worth it.
func (g *gathering) swapped(from Part, to, beside, back, before int) int {
	out := []Part{from, {beside, g.s.Units[beside]}}
	for _, p := range out {
		g.shift(p.Sowing, -p.Units)
	}
	for range from.Units {
		if g.s.Room(to) > 0 {
			g.shift(to, 1)
		}
	}
	for range out[1].Units {
		if g.s.Room(back) > 0 {
			g.shift(back, 1)
		}
	}
	if rise := g.grown(out, false); rise < rowTrouble() {
		if saved := before - len(g.draft.rowsOf(g.s.Units)); saved > 0 && rise < float64(saved)*rowTrouble() {
			g.keep()
			return saved
		}
	}
	g.undo()
	return 0
}

// near tells whether two sowings begin at about the same time.
func (g *gathering) near(a, b int) bool {
	apart := g.draft.Problem.Sowings[a].First - g.draft.Problem.Sowings[b].First
	return -nearWeeks <= apart && apart <= nearWeeks
}

// overlap tells whether two sowings hold ground in one week.
func (g *gathering) overlap(a, b int) bool {
	x, y := &g.draft.Problem.Sowings[a], &g.draft.Problem.Sowings[b]
	return x.First <= y.Last && y.First <= x.Last
}

func (g *gathering) sameGround(a, b int) bool {
	return g.draft.Problem.Sowings[a].Ground == g.draft.Problem.Sowings[b].Ground
}
