package draw

import (
	"garner/internal/desk"
	"garner/internal/place"
)

// Sizes and the room round words on a plan [px].
const (
	bedNameSize = 14.0
	planInset   = 6.0
	firstLine   = 15.5
	secondLine  = 28.5
)

// words name the bed and what stands in its parts, as far as there is room.
func (b *planBed) words() {
	flip := b.turn > 90 || b.turn < -90
	if flip {
		b.WriteString(`<g transform="rotate(180)">`)
	}
	top, high := b.top(flip), (b.high-b.low)*b.perM
	line := min(firstLine, (high-footHeight)/2+4.7) // clear of the leaf along the foot
	used := 0.0
	for i, part := range b.parts {
		left, right := b.span(part, flip)
		if i == 0 && !flip || i == len(b.parts)-1 && flip {
			used = b.bedName(left, right, top+line)
			left += used
		}
		if part.Held == nil {
			if w := widthOf(b.options.Free, 15) + 2*planInset; w < right-left && high >= 12 {
				b.text("free end halo", right-planInset, top+line, b.options.Free)
			}
			continue
		}
		b.partWords(part, left+planInset, right-2, top, line, high)
	}
	if flip {
		b.WriteString(`</g>`)
	}
}

// top is the upper edge of the bed in the frame of its words [px].
func (b *planBed) top(flip bool) float64 {
	if flip {
		return b.low * b.perM
	}
	return -b.high * b.perM
}

// span is from where to where a part runs in the frame of its words [px].
func (b *planBed) span(part desk.Part, flip bool) (left, right float64) {
	left, right = b.along(part.At)*b.perM, b.along(part.At+part.Share)*b.perM
	if b.bed.Shape == place.Round || b.bed.Shape == place.ByOutline {
		left, right = left+4, right-4
	}
	if flip {
		return -right, -left
	}
	return left, right
}

// bedName sets the bed's own name and returns how far it reaches [px].
func (b *planBed) bedName(left, right, y float64) float64 {
	if b.options.BedNames == nil {
		return 0
	}
	for _, words := range b.options.BedNames(b.bed) {
		if long := semiBold * widthOf(words, bedNameSize); left+planInset+long < right {
			b.text("t-ink b halo f14", left+planInset, y, words)
			return planInset + long + 2
		}
	}
	return 0
}

// serifWidth is how wide the bold serif of the names is against the axis's sans.
const serifWidth = 1.12

// partWords set what stands in a part and until when.
func (b *planBed) partWords(part desk.Part, left, right, top, line, high float64) {
	if b.options.Names == nil {
		return
	}
	class := "t-name halo"
	if b.options.Tried[part.Held.ID] {
		class += " tried"
	}
	for _, name := range b.options.Names(part.Held) {
		long := serifWidth * widthOf(name, 15)
		if left+long > right || high < 13 {
			continue
		}
		b.text(class, left, top+line, name)
		b.untilWords(part, left, left+long, right, top, line, high)
		return
	}
}

// untilWords set until when it stands: below the name, or behind it.
func (b *planBed) untilWords(part desk.Part, left, behind, right, top, line, high float64) {
	if b.options.Until == nil {
		return
	}
	for _, words := range b.options.Until(part.Held) {
		long := widthOf(words, labelSize)
		switch {
		case high >= secondLine+footHeight+2 && left+long <= right:
			b.text("t-ink halo", left, top+secondLine, words)
			return
		case high < secondLine+footHeight+2 && behind+10+long <= right:
			b.text("t-ink halo", behind+10, top+line, words)
			return
		}
	}
}
