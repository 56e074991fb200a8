package draw

import (
	"html"
	"math"

	"garner/internal/place"
)

// Sizes of the words on a site [px], as a phone sets them: a desk's are smaller,
// see the stylesheet.
const (
	siteName = 16.5
	siteSize = 14.5
	siteLine = 16.0
)

// label sets a thing's name into it: along its length, else across, else below it.
func (d *siteDrawing) label(t *SiteThing) {
	along, across := t.LengthM*d.perM, t.WidthM*d.perM
	at := place.Point{X: t.At.XM, Y: t.At.YM}
	if t.Trunk {
		d.named(t, at, 0, math.Min(along, across)*1.4, 0, 24)
		return
	}
	if len(t.Corners) != 4 && t.Class == "bed" {
		if at, along = d.widest(t); along == 0 {
			return
		}
	}
	turn := readable(-t.At.TurnDeg)
	off := at.X < 0 || at.Y < 0 || at.X > d.site.PlanWidthM || at.Y > d.site.PlanDepthM
	if !off && d.named(t, at, turn, along, across, 0) {
		return
	}
	if !off && d.named(t, at, readable(turn-90), across, along, 0) {
		return
	}
	d.beside = append(d.beside, t)
}

// readable turns words so that they are not read upside down [degrees clockwise].
func readable(degrees float64) float64 {
	degrees = math.Remainder(degrees, 180)
	if degrees >= 89.9 {
		return degrees - 180
	}
	return degrees
}

// named sets the longest name that has room, with its size below where there is
// room for both, and tells whether it could. Shift moves the words down [px].
func (d *siteDrawing) named(t *SiteThing, at place.Point, degrees, along, across, shift float64) bool {
	for _, words := range t.Names {
		class := "name"
		if semiBoldWidth*widthOf(words, siteName)+4 > along {
			class = "name small"
		}
		if semiBoldWidth*widthOf(words, siteSize)+4 > along || across < siteLine && shift == 0 {
			continue
		}
		x, y := d.at(at)
		d.WriteString(`<g class="words" transform="` + turned(x, y, degrees) + `">`)
		size := ""
		for _, s := range t.Size {
			if widthOf(s, siteSize)+8 <= along && across >= 2*siteLine {
				size = s
				break
			}
		}
		if size == "" {
			d.set(class, shift+5, words)
		} else {
			d.set(class, -3, words)
			d.set("size", 13, size)
		}
		d.WriteString(`</g>`)
		return true
	}
	return false
}

// semiBoldWidth is how wide the names are set against the figures.
const semiBoldWidth = 1.08

func (d *siteDrawing) set(class string, y float64, words string) {
	d.WriteString(`<text class="` + class + ` mid" y="` + px(y) + `">` + html.EscapeString(words) + `</text>`)
}

// widest is where in a shape that is no rectangle a line of words has most room,
// and how much [px].
func (d *siteDrawing) widest(t *SiteThing) (best place.Point, room float64) {
	const rows = 12
	sin, cos := math.Sincos(t.At.TurnDeg * math.Pi / 180)
	half := siteLine / 2 / d.perM
	for i := 1; i < rows; i++ {
		y := t.WidthM * (float64(i)/rows - 0.5)
		from, to := 0.0, 0.0
		on := false
		const steps = 60
		for k := 0; k <= steps; k++ {
			x := t.LengthM * (float64(k)/steps - 0.5)
			in := true
			for _, dy := range []float64{-half, half} {
				in = in && place.Contains(t.Corners, place.Point{X: t.At.XM + x*cos - (y+dy)*sin, Y: t.At.YM + x*sin + (y+dy)*cos})
			}
			if in && !on {
				from = x
			}
			if in {
				to = x
			}
			on = in
			if long := (to - from) * d.perM; on && long > room+0.5 {
				mid := (from + to) / 2
				best, room = place.Point{X: t.At.XM + mid*cos - y*sin, Y: t.At.YM + mid*sin + y*cos}, long
			}
		}
	}
	return best, room
}

// names sets the names that found no room in their things below or above them,
// clear of each other and inside the drawing, and clear of other things where
// that can be.
func (d *siteDrawing) names(things []SiteThing) {
	var set []taken
	for _, t := range d.beside {
		if len(t.Names) == 0 {
			continue
		}
		places := d.besidePlaces(t)
		here, found := firstClear(places, append(d.boxes(things, t), set...))
		if !found {
			here, found = firstClear(places, set)
		}
		if found {
			d.text("site-name mid halo", (here.left+here.right)/2, here.bottom-nameDescent, t.Names[0])
			set = append(set, here)
		}
	}
}

// nameDescent is how far a name's box reaches under its base line [px].
const nameDescent = 3.0

// besidePlaces are the boxes in which a thing's name may stand beside it, the best
// first: beneath or above its middle or its ends.
func (d *siteDrawing) besidePlaces(t *SiteThing) []taken {
	box := d.bounds(t.Corners)
	half := widthOf(t.Names[0], siteSize)/2 + 2
	var out []taken
	for _, y := range []float64{box.bottom + 14, box.top - 5, box.bottom + 28, box.top - 19, box.bottom + 42} {
		base := math.Max(12, math.Min(d.foot+13, y))
		for _, x := range []float64{(box.left + box.right) / 2, box.left + half, box.right - half} {
			x = math.Max(half, math.Min(d.w+2*siteEdge-half, x))
			out = append(out, taken{x - half, base - 13 + nameDescent, x + half, base + nameDescent})
		}
	}
	return out
}

// boxes are where the other things that are walked round lie [px].
func (d *siteDrawing) boxes(things []SiteThing, but *SiteThing) []taken {
	var out []taken
	for i := range things {
		if t := &things[i]; t != but && !t.Trunk {
			out = append(out, d.bounds(t.Corners))
		}
	}
	return out
}

// firstClear is the first of the places that meets nothing.
func firstClear(places, others []taken) (taken, bool) {
	for _, here := range places {
		if !here.meetsAny(others) {
			return here, true
		}
	}
	return taken{}, false
}
