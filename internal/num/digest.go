package num

import (
	"crypto/sha256"
	"encoding/binary"
	"hash"
	"math"
)

// Digest is the name of a computed result: a hash of everything it depends on.
type Digest [32]byte

// Digester gathers inputs in a fixed order. Each value is written with its
// length or width, so that no two different lists of inputs look alike.
type Digester struct {
	h   hash.Hash
	buf [8]byte
}

// NewDigester starts a digest under a label, which keeps results of different
// kinds apart.
func NewDigester(label string) *Digester {
	d := &Digester{h: sha256.New()}
	d.Text(label)
	return d
}

// Text adds a string.
func (d *Digester) Text(s string) { d.Int(int64(len(s))); d.h.Write([]byte(s)) }

// Int adds a whole number.
func (d *Digester) Int(v int64) {
	binary.LittleEndian.PutUint64(d.buf[:], uint64(v))
	d.h.Write(d.buf[:])
}

// Float adds a number bit for bit.
func (d *Digester) Float(v float64) { d.Int(int64(math.Float64bits(v))) }

// Digest adds another result's name.
func (d *Digester) Digest(v Digest) { d.h.Write(v[:]) }

// Sum returns the name.
func (d *Digester) Sum() Digest {
	var out Digest
	d.h.Sum(out[:0])
	return out
}
