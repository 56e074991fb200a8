// Package sun answers where the sun stands, how long the day is and how much
// radiation arrives above the air, under a clear sky and split into beam and
// diffuse.
package sun
