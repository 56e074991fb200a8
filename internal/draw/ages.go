package draw

// AgesOptions say how a perennial's yield by age is drawn.
type AgesOptions struct {
	WidthPX  float64
	HeightPX float64 // of a full yield
	Label    string  // what it shows, in text
	Share    func(share float64) string
	Season   func(season int) string // 0: the season of planting
}

// The room over and under the yields by age [px].
const (
	agesTop  = 20
	agesFoot = 22
	agesAir  = 6 // between two seasons
)

// Ages draws what a perennial bears by its season in the ground, as blocks whose
// height is the share of a full yield, each with its figure.
func Ages(shares []float64, o AgesOptions) string {
	most := 1.0
	for _, v := range shares {
		most = max(most, v)
	}
	base := agesTop + o.HeightPX
	each := o.WidthPX / float64(max(1, len(shares)))
	var c sheet
	c.frame("ages", "img", o.Label, o.WidthPX, base+agesFoot, false)
	for i, v := range shares {
		x, h := each*float64(i), max(0, v)/most*o.HeightPX
		if h > 0 {
			c.rect("ground", x+agesAir/2, base-h, each-agesAir, h)
		}
		if o.Share != nil {
			c.text("mid t-ink", x+each/2, base-h-5, o.Share(v))
		}
		if o.Season != nil {
			c.text("mid", x+each/2, base+16, o.Season(i))
		}
	}
	c.level("base", 0, o.WidthPX, base+.5)
	return c.done()
}
