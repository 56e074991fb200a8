package outlook

import (
	"slices"

	"garner/internal/fault"
	"garner/internal/ground"
	"garner/internal/num"
	"garner/internal/place"
	"garner/internal/words"
)

// Alike names all that the growth of a planting hangs on at a bed, beside the
// planting itself: its weather, its light, shade and covers, and the state of its
// soil. Beds of one name are alike.
func (s *Scales) Alike(bed string) (num.Digest, error) {
	s.memory.mu.Lock()
	defer s.memory.mu.Unlock()
	at := slices.IndexFunc(s.job.Holding.Beds, func(b place.Bed) bool { return b.ID == bed })
	if at < 0 {
		return num.Digest{}, fault.New(fault.NotFound, "outlook.bed_unknown", words.Args{"planting": "", "bed": bed})
	}
	b := s.job.Holding.Beds[at]
	site, ok := s.job.sites[b.Site]
	if !ok {
		return num.Digest{}, fault.New(fault.NotFound, "outlook.site_unknown", words.Args{"bed": b.ID, "site": b.Site})
	}
	between, shade := s.job.groundOf(b, site)
	d := num.NewDigester("alike")
	d.Text(b.Site)
	d.Digest(digestGround(site, &between, shade, 0))
	d.Float(ground.WeightFactor(b.Soil))
	return d.Sum(), nil
}
