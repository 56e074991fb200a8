package frost

import (
	"math"
	"slices"

	"garner/internal/crop"
	"garner/internal/growth"
	"garner/internal/outlook"
	"garner/internal/plan"
)

// Plant is one planting that stands on a bed.
type Plant struct {
	Planting plan.Planting
	Use      *crop.Use
	Stage    growth.Stage // on the first of the nights on which it is there
	AgeD     float64      // days since it came through or was planted, in the middle of the futures
	Harden   float64      // how far it is hardened, 0-1, likewise
	Exposed  bool         // a frost in the air can hurt it: it is no seed in the ground and no perennial
	KillC    float64      // minimum that kills half of it [C], likewise
	FirstC   float64      // minimum under which the first plants are lost [C]
	Tender   bool         // an air frost hurts it
	Odds     []float64    // share of the futures in which it is hurt, by night
	Lost     []float64    // share of it that is lost, mean of the futures, by night
	First    int          // the first night on which it is there; 0: tonight
}

// plant is one planting over all futures.
type plant struct {
	planting plan.Planting
	use      *crop.Use
	lethalC  [][]float64 // by night and future; NaN where it is not there or cannot be hurt
	there    []int       // futures in which it is there, by night
	sets     []int       // futures in which it sets fruit, by night
	first    int         // the first night on which it is there
	stages   []growth.Stage
	ages     []float64 // on that night, by future
	hardens  []float64
}

func newPlant(g *outlook.Growing, a *Seen) *plant {
	p := &plant{planting: g.Planting, use: g.Use, there: make([]int, a.nights), sets: make([]int, a.nights), first: a.nights}
	for range a.nights {
		row := make([]float64, a.futures)
		for f := range row {
			row[f] = math.NaN()
		}
		p.lethalC = append(p.lethalC, row)
	}
	return p
}

// see books a planting's days under one future.
func (p *plant) see(g *outlook.Growing, f, nights int) {
	for i := range min(nights, len(g.Days)) {
		d := &g.Days[i]
		if !d.There || !inGround(d.Stage) {
			continue
		}
		p.there[i]++
		if i < p.first {
			p.first, p.stages, p.ages, p.hardens = i, nil, nil, nil
		}
		if i == p.first {
			p.stages, p.ages, p.hardens = append(p.stages, d.Stage), append(p.ages, float64(d.AgeD)), append(p.hardens, d.Harden)
		}
		if p.use.OrganStart > 0 && d.Development >= p.use.OrganStart {
			p.sets[i]++
		}
		if exposed(p.use, d.Stage) {
			p.lethalC[i][f] = lethalC(p.use, d.AgeD, d.Harden)
		}
	}
}

// inGround tells whether a planting at a stage is in the ground.
func inGround(s growth.Stage) bool {
	return s == growth.Germinating || s == growth.Resting || standing(s)
}

// standing tells whether it is in leaf.
func standing(s growth.Stage) bool {
	return s == growth.Young || s == growth.Growing || s == growth.Ready
}

// exposed tells whether a frost in the air can hurt what stands there.
func exposed(u *crop.Use, s growth.Stage) bool { return u.Pattern != crop.Perennial && standing(s) }

// lethalC is the minimum that kills half a stand [C]. Young plants are never taken to bear
// more than grown ones: the book's figures for the young are fitted by class to the
// dates on which people sow, and those of potatoes come out too hardy.
func lethalC(u *crop.Use, ageD int, harden float64) float64 {
	return max(growth.LethalC(u, ageD, harden), growth.LethalC(u, grownD, harden))
}

// HurtBelowC is the minimum under which the first plants of a stand are lost [C], so many
// days after it came through or was planted and hardened so far (0-1).
func HurtBelowC(u *crop.Use, ageD int, harden float64) float64 {
	return growth.FirstHurtC(lethalC(u, ageD, harden))
}

// grownD is an age at which no plant counts as young [d].
const grownD = 1000

// hurt tells whether a planting is hurt in a night under a future.
func (p *plant) hurt(minimumC float64, i, f int) bool {
	return minimumC < growth.FirstHurtC(p.lethalC[i][f]) // never of one that is not there
}

// tell is what there is to say of a planting; false where it is in the ground in too
// few futures of the nights that are told one by one.
func (p *plant) tell(b *bed, a *Seen) (Plant, bool) {
	if p.first >= nightsTold || slices.Max(p.there[:nightsTold]) <= a.futures/2 {
		return Plant{}, false
	}
	out := Plant{Planting: p.planting, Use: p.use, Stage: commonest(p.stages), AgeD: middle(p.ages), Harden: middle(p.hardens)}
	for p.there[out.First] <= a.futures/2 {
		out.First++
	}
	out.Exposed = exposed(p.use, out.Stage)
	out.KillC = lethalC(p.use, int(out.AgeD), out.Harden)
	out.FirstC = growth.FirstHurtC(out.KillC)
	out.Tender = out.Exposed && out.FirstC >= frostC
	for i := range nightsTold {
		hurt, lost := 0, 0.0
		for f := range a.futures {
			if low := float64(b.under[i][f]); p.hurt(low, i, f) {
				hurt++
				lost += growth.LostToCold(p.lethalC[i][f], low)
			}
		}
		n := float64(max(1, p.there[i]))
		out.Odds, out.Lost = append(out.Odds, float64(hurt)/n), append(out.Lost, lost/n)
	}
	return out, true
}

// commonest is the stage in which most futures have it.
func commonest(stages []growth.Stage) (out growth.Stage) {
	count := map[growth.Stage]int{}
	for _, s := range stages {
		if count[s]++; count[s] > count[out] {
			out = s
		}
	}
	return out
}

func middle(values []float64) float64 {
	sorted := slices.Clone(values)
	slices.Sort(sorted)
	return sorted[len(sorted)/2]
}
