package outlook

import (
	"garner/internal/num"
	"garner/internal/place"
	"garner/internal/season"
	"garner/internal/shade"
)

// bedShade is what stands round a bed, worked out, with a name for it.
type bedShade struct {
	shade *season.Shade // nil: nothing takes any light
	name  num.Digest
}

// siteShade works out the shade of a site's beds, each once, from memory where
// the bed and all that stands round it are as they were.
type siteShade struct {
	site     place.Site
	features []place.Feature
	digest   num.Digest
	scene    *shade.Scene // nil until it is needed
	memory   *Memory
}

func newSiteShade(site place.Site, all []place.Feature, m *Memory) *siteShade {
	s := &siteShade{site: site, memory: m}
	for _, f := range all {
		if f.Site == site.ID && f.Kind != place.Path && f.HeightM > 0 {
			s.features = append(s.features, f)
		}
	}
	s.digest = s.name()
	return s
}

// name hashes what the shade of all beds depends on.
func (s *siteShade) name() num.Digest {
	d := num.NewDigester("shade")
	d.Float(s.site.Location.LatitudeDeg)
	d.Float(s.site.Location.LongitudeDeg)
	d.Float(s.site.UpDeg)
	for i := range s.features {
		f := &s.features[i]
		d.Text(string(f.Kind))
		digestSpot(d, f.At)
		for _, v := range []float64{f.LengthM, f.WidthM, f.HeightM, f.BaseM, f.ThroughLeaf, f.ThroughBare} {
			d.Float(v)
		}
		d.Text(f.LeafOn.String())
		d.Text(f.LeafOff.String())
	}
	return d.Sum()
}

func digestSpot(d *num.Digester, at place.Spot) {
	d.Float(at.XM)
	d.Float(at.YM)
	d.Float(at.TurnDeg)
}

// shadeOf returns the shade of a bed; nil and the zero name where nothing
// stands round it or it is not drawn.
func (s *siteShade) shadeOf(b place.Bed) (*season.Shade, num.Digest) {
	if !b.At.IsSet() || len(s.features) == 0 {
		return nil, num.Digest{}
	}
	d := num.NewDigester("bed shade")
	d.Digest(s.digest)
	digestSpot(d, b.At)
	d.Float(b.LengthM)
	d.Float(b.WidthM)
	d.Text(string(b.Shape))
	d.Text(b.Outline)
	name := d.Sum()
	known, ok := s.memory.shade(name)
	if !ok {
		known = &bedShade{}
		if known.shade = s.compute(b); known.shade != nil {
			known.name = name
		}
		s.memory.keepShade(name, known)
	}
	return known.shade, known.name
}

func (s *siteShade) compute(b place.Bed) *season.Shade {
	if s.scene == nil {
		s.scene, _ = shade.NewScene(s.site, s.features) // what throws no shade is told where the plan is shown
	}
	year := s.scene.Bed(b)
	if year.IsOpen() {
		return nil
	}
	out := &season.Shade{}
	for day := 1; day < len(out.Beam); day++ {
		out.Beam[day], out.Diffuse[day] = year.OnDay(day)
	}
	return out
}
