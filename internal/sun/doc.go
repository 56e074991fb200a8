// Package sun answers where the sun stands, how long the day is and how much
// radiation arrives above the air, under a clear sky and split into beam and
// diffuse.
//
// The position is Meeus's low-precision sun with the horizontal parallax, good
// to 0.01 degrees from 1950 to 2050. Day length takes Spencer's declination and
// the centre of the disc at -0.833 degrees. Radiation follows FAO Irrigation
// and Drainage Paper 56 and its own, coarser, declination, so that the paper's
// tables and examples come back digit for digit. The beam and diffuse parts are
// the correlations of Erbs, Klein and Duffie.
//
// Latitude decides the hemisphere. Every function gives a defined answer where
// the sun does not rise or does not set. Shade by things on the ground, slopes
// and the colour of the light are left out.
//
// Sources: Meeus J. 1998, Astronomical Algorithms, 2nd ed.; Spencer J.W. 1971,
// Search 2(5):172; Allen R.G., Pereira L.S., Raes D., Smith M. 1998, FAO
// Irrigation and Drainage Paper 56; Erbs D.G., Klein S.A., Duffie J.A. 1982,
// Solar Energy 28:293-302; Szeicz G. 1974, J. Applied Ecology 11:617-636.
package sun
