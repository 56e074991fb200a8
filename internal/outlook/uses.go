package outlook

import (
	"fmt"
	"reflect"

	"garner/internal/crop"
	"garner/internal/fault"
	"garner/internal/growth"
	"garner/internal/num"
	"garner/internal/plan"
	"garner/internal/words"
)

// uses resolves the crop, use and variety of plantings once each.
type uses struct {
	book      *crop.Book
	varieties map[string]crop.Variety
	prepared  map[useKey]*prepared
	memory    *Memory
}

type useKey struct {
	crop, use, variety string
	start              growth.Start
	northern           bool
	inRowM, betweenM   float64
}

// prepared is a use ready for the day loop, with the hash of its numbers.
type prepared struct {
	use    *crop.Use
	params *growth.Parameters
	digest num.Digest
}

func newUses(book *crop.Book, varieties []crop.Variety, m *Memory) *uses {
	u := &uses{book: book, varieties: map[string]crop.Variety{}, prepared: map[useKey]*prepared{}, memory: m}
	for _, v := range varieties {
		u.varieties[v.ID] = v
	}
	return u
}

// of returns what a planting is, ready for the day loop.
func (u *uses) of(p *plan.Planting, northern bool) (*prepared, error) {
	use, err := u.find(p)
	if err != nil {
		return nil, err
	}
	method := string(p.Method)
	if method == "" && len(use.Methods) > 0 {
		method = use.Methods[0]
	}
	key := useKey{use.Crop, use.Name, p.Variety, growth.StartOf(method), northern, p.InRowM, p.BetweenRowM}
	if found, ok := u.prepared[key]; ok {
		return found, nil
	}
	if v, ok := u.varieties[p.Variety]; ok {
		own := use.WithVariety(v)
		use = &own
	}
	use = growth.Spaced(use, p.InRowM, p.BetweenRowM)
	digest := digestUse(use)
	made := &prepared{use: use, params: u.memory.parameters(digest, use, key.start, northern), digest: digest}
	u.prepared[key] = made
	return made, nil
}

func (u *uses) find(p *plan.Planting) (*crop.Use, error) {
	c, ok := u.book.Crop(p.Crop)
	if !ok {
		return nil, fault.New(fault.NotFound, "outlook.crop_unknown", words.Args{"planting": p.ID, "crop": p.Crop})
	}
	return c.Use(p.Use)
}

// digestUse hashes every number and word of a use that the engine reads.
func digestUse(u *crop.Use) num.Digest {
	d := num.NewDigester("use")
	v := reflect.ValueOf(*u)
	t := v.Type()
	for i := 0; i < t.NumField(); i++ {
		if !t.Field(i).IsExported() {
			continue
		}
		switch f := v.Field(i); f.Kind() {
		case reflect.Float64:
			d.Float(f.Float())
		case reflect.String:
			d.Text(f.String())
		default:
			d.Text(fmt.Sprint(f.Interface()))
		}
	}
	return d.Sum()
}
