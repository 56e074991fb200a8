package desk

import (
	"math"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/fault"
	"garner/internal/growth"
	"garner/internal/holding"
	"garner/internal/plan"
	"garner/internal/words"
)

// CropView is one crop in one of its uses.
type CropView struct {
	CropLine
	Use, Label   string
	Pattern      crop.Pattern
	Today        cal.Date
	Rotation     string  // the group it rotates with, see crop.Family
	RotationYear float64 // years before the family comes back; 0: not told
	Cautions     []string
	Brief        CropBrief
	Facts        []FactGroup
	Storage      []StorageView
	Varieties    []VarietyView
	AgeYield     []float64   // of a perennial: share of a full yield by season in the ground
	Heirs        []HeirView  // of the perennial's standing plantings, soonest first
	Recorded     RecordsView // what the household wrote down of it
	Sites        []SiteName
}

// SiteName is a piece of ground that can be asked about.
type SiteName struct{ ID, Name string }

// CropBrief are the numbers a grower looks for first; 0: not told.
type CropBrief struct {
	InRowM, BetweenRowM, SowDepthM float64
	PlantsPerM2                    float64
	SowPerM                        float64 // seeds in a metre of row
	SeedGPerM                      float64 // their weight [g]
	SeedGPerM2                     float64 // seed for a square metre of ground [g]
	Days                           []MethodDays
	YieldKgM2                      [3]float64 // low, typical, high
	TableG, PieceG                 float64
}

// MethodDays are the published days to first use by a way of starting.
type MethodDays struct {
	Method string
	Days   float64
}

// StorageView is a way a crop keeps.
type StorageView struct {
	Method           string
	BestC, LifeDays  float64
	LossShare, Month float64 // lost on preparing, and of the rest each month
	Prepare          []words.Phrase
	Source           FactSource
	Sure             string
}

// VarietyView is a variety of the household's own, by how it differs.
type VarietyView struct {
	Name       string
	DaysOffset float64
	Yield      float64 // factor; 1: as the crop
}

// HeirView says when the heir of a standing planting goes in.
type HeirView struct {
	Planting, Bed string
	Since         cal.Date
	growth.Renewal
}

// CropView returns a crop of the book in one of its uses; "" is its common one.
func (o *Office) CropView(id, useName string) (*CropView, error) {
	h, err := o.Holding()
	if err != nil {
		return nil, err
	}
	b, err := bookOf(h)
	if err != nil {
		return nil, err
	}
	c, u, err := useOf(b, id, useName)
	if err != nil {
		return nil, err
	}
	v := &CropView{CropLine: cropLine(b, c, grownIn(h)), Use: u.Name, Label: u.Label, Pattern: u.Pattern, Rotation: rotationOf(c, u), RotationYear: u.RotationYears}
	if v.Today, err = today(h); err != nil {
		return nil, err
	}
	for _, key := range c.Cautions {
		if caution, ok := b.Caution(key); ok {
			v.Cautions = append(v.Cautions, caution.Text)
		}
	}
	plain, err := book()
	if err != nil {
		return nil, err
	}
	v.Brief, v.Storage = briefOf(u), storageOf(b, u)
	v.Facts = factGroups(plain, b, h, u)
	v.Varieties = varietiesOf(h, c.ID, u.Name)
	v.Recorded = recordedOf(h, c.ID)
	for _, s := range h.Sites {
		v.Sites = append(v.Sites, SiteName{s.ID, s.Name})
	}
	if u.Pattern == crop.Perennial {
		v.AgeYield = u.AgeYield[:]
		v.Heirs = heirsOf(h, u, v.Today)
	}
	return v, nil
}

func useOf(b *crop.Book, id, use string) (*crop.Crop, *crop.Use, error) {
	c, ok := b.Crop(id)
	if !ok {
		return nil, nil, fault.New(fault.NotFound, "desk.crop_unknown", words.Args{"name": id})
	}
	u, err := c.Use(use)
	return c, u, err
}

func briefOf(u *crop.Use) CropBrief {
	b := CropBrief{InRowM: u.InRowM, BetweenRowM: u.BetweenRowM, SowDepthM: u.SowDepthM, PlantsPerM2: u.PlantsPerM2(), SowPerM: u.SowPerM,
		YieldKgM2: [3]float64{u.YieldLowKgM2, u.YieldKgM2, u.YieldHighKgM2}, TableG: u.TableG, PieceG: u.PieceG}
	b.SeedGPerM2 = SeedG(u, 1)
	b.SeedGPerM = b.SeedGPerM2 * u.BetweenRowM
	for _, method := range u.Methods {
		if d := u.Fact(daysParameter(method)); d.Value > 0 {
			b.Days = append(b.Days, MethodDays{method, d.Value})
		}
	}
	return b
}

// daysParameter names the published days that go with a method.
func daysParameter(method string) string {
	switch growth.StartOf(method) {
	case growth.FromSeed:
		return "days_seed"
	case growth.FromPlant:
		return "days_plant"
	}
	return "days_set"
}

// SeedG returns the seed for an area of ground sown in rows [m2 to g]; 0 when the
// book does not tell how thick the use is sown.
func SeedG(u *crop.Use, areaM2 float64) float64 {
	if u.SowPerM <= 0 || u.SeedsPerGram <= 0 || u.BetweenRowM <= 0 {
		return 0
	}
	return areaM2 / u.BetweenRowM * u.SowPerM / u.SeedsPerGram
}

func storageOf(b *crop.Book, u *crop.Use) []StorageView {
	var out []StorageView
	for _, s := range u.Storage {
		out = append(out, StorageView{Method: s.Method, BestC: s.BestC, LifeDays: s.LifeDays, LossShare: s.LossShare, Month: s.LossMonth, Prepare: preparingOf(b, u.Crop, &s),
			Source: citedOf(b, s.Source, s.Where, s.Note), Sure: s.Mark})
	}
	return out
}

func varietiesOf(h *holding.Holding, id, use string) []VarietyView {
	var out []VarietyView
	for _, v := range h.Varieties {
		if v.Crop != id || v.Use != "" && v.Use != use {
			continue
		}
		view := VarietyView{Name: v.Name, DaysOffset: v.DaysOffset, Yield: v.YieldFactor}
		if view.Yield == 0 {
			view.Yield = 1
		}
		out = append(out, view)
	}
	return out
}

// heirsOf tells the heirs of a perennial's plantings that stand today, the
// soonest first.
func heirsOf(h *holding.Holding, u *crop.Use, now cal.Date) []HeirView {
	var out []HeirView
	list, _ := plan.Resolve(h.Plans, h.Plantings, h.Changes, h.Plan)
	cleared := clearedBy(h.Records, now)
	for i := range list {
		p := &list[i]
		if p.Crop != u.Crop || p.Use != u.Name || p.Date > now || cleared[p.ID] {
			continue
		}
		if heir, ok := heirOf(h, u, p); ok {
			at := len(out)
			for at > 0 && out[at-1].Heir > heir.Heir {
				at--
			}
			out = append(out[:at], append([]HeirView{heir}, out[at:]...)...)
		}
	}
	return out
}

func heirOf(h *holding.Holding, u *crop.Use, p *plan.Planting) (HeirView, bool) {
	r, ok := growth.RenewalOf(u, p.Date, int(math.Round(p.YearsOld)))
	if !ok {
		return HeirView{}, false
	}
	v := HeirView{Planting: p.ID, Bed: p.Bed, Since: p.Date, Renewal: r}
	for _, b := range h.Beds {
		if b.ID == p.Bed {
			v.Bed = b.Name
		}
	}
	return v, true
}

// rotationOf is the group a use rotates with: what bears year after year stands
// outside, and what its family's perennials stand outside of does not bind a crop
// of one year.
func rotationOf(c *crop.Crop, u *crop.Use) string {
	switch {
	case u.Pattern == crop.Perennial:
		return "permanent"
	case c.RotationGroup == "permanent":
		return "anywhere"
	}
	return c.RotationGroup
}
