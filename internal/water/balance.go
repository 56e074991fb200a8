package water

// Stand is what grows on a piece of ground on a day.
type Stand struct {
	Basal   float64 // basal crop coefficient as it stands, 0: nothing is through
	Cover   float64 // share of the ground under leaves, 0-1
	HeightM float64 // of the leaves
	RootM   float64 // depth that roots reach; 0: none, only what dries from above
	Easy    float64 // tabulated share of the water that is taken without want, at 5 mm a day
	Firm    bool    // that share holds whatever the air asks
	Mulch   float64 // share of the evaporation from the soil that a mulch keeps, 0-1
}

// Given is the water and the air of a day at the ground.
type Given struct {
	ReferenceMM  float64 // asked by the air (ET0)
	RainMM       float64 // that reaches the soil
	IrrigationMM float64 // over all of the ground
	Wetted       float64 // share of the ground that the irrigation wets; 0: all of it
	WindMS       float64 // at 2 m
	LeastPct     float64 // least relative humidity of the day
}

// Flux is what became of it.
type Flux struct {
	EvaporatedMM float64 // from the soil
	TranspiredMM float64 // by the leaves
	DrainedMM    float64 // below the roots
	Stress       float64 // share of its water that the crop got, 0-1
}

// LostMM is what soil and leaves lost together (ETc) [mm].
func (f *Flux) LostMM() float64 { return f.EvaporatedMM + f.TranspiredMM }

// Balance is the water that is missing in a piece of ground, to what it holds after
// draining. The zero value is ground that has just drained.
type Balance struct {
	MissingMM float64 // within reach of the roots (Dr)
	DryMM     float64 // from the surface, where it is bare and wetted (De)
	Wetted    float64 // share of the ground that the last water wetted; 0: all of it

	ReachM float64 // depth that MissingMM is of; 0: that of the first day
	DeepMM float64 // missing below that reach, down to DeepM
	DeepM  float64 // the deepest that any crop has reached
}

// Day takes the balance through a day and returns what became of the water. Rain and
// irrigation come first, in the morning, and what is too much drains at once
// (FAO-56 example 38); then soil and leaves lose. Ground that roots reach for the first
// time has drained: nothing is missing in it. Where a crop with shallow roots follows
// one with deep ones, what those took from below stays missing there until water gets
// down to it or roots come back. No water rises from below. Runoff is none.
//
// Kept for any weather: rain and irrigation are what is lost, drained and less
// missing, above and below. Check: FAO-56 examples 31, 35, 37 and 38. Source: FAO-56 eq. 69 to 88.
func (b *Balance) Day(s *Soil, on *Stand, g *Given) Flux {
	var f Flux
	b.reach(on.reachM())
	f.DrainedMM = b.wet(g)
	held := s.HeldMM(on.reachM())
	most := MostCoefficient(on.Basal, g.LeastPct, g.WindMS, on.HeightM)
	bare := Bare(on.Cover, b.wetted())
	soil := Evaporation(s.Drying(b.DryMM), most, on.Basal, bare) * (1 - on.Mulch)
	f.Stress = 1
	if on.Basal > 0 {
		f.Stress = Stress(held, b.MissingMM, on.easy((on.Basal+soil)*g.ReferenceMM))
	}
	left := max(0, held-b.MissingMM)
	f.TranspiredMM = min(left, f.Stress*on.Basal*g.ReferenceMM)
	f.EvaporatedMM = min(left-f.TranspiredMM, soil*g.ReferenceMM, bare*max(0, s.SurfaceMM-b.DryMM))
	b.MissingMM += f.LostMM()
	b.DryMM = min(s.SurfaceMM, b.DryMM+f.EvaporatedMM/bare) // eq. 77
	return f
}

// easy is the share of the water within reach that is taken without want on a day on
// which so much is lost [mm].
func (on *Stand) easy(lostMM float64) float64 {
	if on.Firm {
		return on.Easy
	}
	return Easy(on.Easy, lostMM)
}

// reachM is the depth over which water is reckoned [m].
func (on *Stand) reachM() float64 {
	if on.RootM > 0 {
		return on.RootM
	}
	return bareM
}

// bareM is the depth of the balance of ground without roots: what dries from above
// [m] (FAO-56, page 144: 0.10 to 0.15).
const bareM = 0.15

// wet brings a day's rain and irrigation into the ground and returns what drains.
func (b *Balance) wet(g *Given) (drainedMM float64) {
	wetted := g.Wetted
	if wetted <= 0 {
		wetted = 1
	}
	switch {
	case g.IrrigationMM > 0:
		b.Wetted = wetted
		b.DryMM -= g.IrrigationMM/wetted + g.RainMM
	case g.RainMM > 0:
		if g.RainMM >= wettingRainMM {
			b.Wetted = 1
		}
		b.DryMM -= g.RainMM
	}
	b.DryMM = max(0, b.DryMM) // the rest seeps deeper (eq. 79)
	b.MissingMM -= g.RainMM + g.IrrigationMM
	drainedMM = max(0, -b.MissingMM) // eq. 88
	b.MissingMM = max(0, b.MissingMM)
	below := min(drainedMM, b.DeepMM)
	b.DeepMM -= below
	return drainedMM - below
}

// Reach moves the balance to the depth that a stand's roots have got to, so that what is
// missing is within their reach. Day does the same.
func (b *Balance) Reach(on *Stand) { b.reach(on.reachM()) }

// reach moves the balance to another depth of roots [m]. What is missing is taken to be
// spread evenly over the depth that it is missing from (judgement).
func (b *Balance) reach(rootM float64) {
	switch {
	case b.ReachM <= 0 || rootM == b.ReachM:
	case rootM < b.ReachM:
		moved := b.MissingMM * (1 - rootM/b.ReachM)
		b.MissingMM -= moved
		b.DeepMM += moved
	case b.DeepM > b.ReachM:
		moved := b.DeepMM * min(1, (rootM-b.ReachM)/(b.DeepM-b.ReachM))
		b.MissingMM += moved
		b.DeepMM -= moved
	}
	b.ReachM, b.DeepM = rootM, max(b.DeepM, rootM)
}

// wettingRainMM is the least rain that wets all of the ground, so that what
// evaporates is no longer that of the part watered last (FAO-56, text of eq. 75: more
// than 3 to 4 mm).
const wettingRainMM = 3.5

func (b *Balance) wetted() float64 {
	if b.Wetted <= 0 {
		return 1
	}
	return b.Wetted
}

// DueMM returns the water that would fill the ground [mm] if, without it, the crop
// would come to want on a day like the given one, else 0.
func (b *Balance) DueMM(s *Soil, on *Stand, g *Given) float64 {
	if on.Basal <= 0 {
		return 0
	}
	tried := *b
	tried.reach(on.reachM())
	missing := tried.MissingMM
	dry := *g
	dry.IrrigationMM = 0
	f := tried.Day(s, on, &dry)
	if f.Stress >= 1 && Stress(s.HeldMM(on.reachM()), tried.MissingMM, on.easy(f.LostMM())) >= 1 {
		return 0
	}
	return max(0, missing-g.RainMM)
}
