// Package climate turns what is known of a place's weather (daily records,
// monthly normals, a short forecast) into days without gaps and into many
// possible futures, and gives the soil temperature at sowing depth.
package climate
