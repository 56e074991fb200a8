// Package appetite says what a household eats: how much of each vegetable a
// week and in which season, from who sits at the table and what they like.
//
// An adult who eats a vegetable often has so many portions of it a week in its
// season (data/vegetables.csv), each of the weight that the crop book gives a
// portion; sometimes is a third of often, and a child eats half of what an
// adult does. Who ticks everything does not eat for ten: the whole is held to
// what one person eats in a year.
//
// Left out: tastes of single eaters. Guests and absences are told as visits, which
// package larder reads. Wants are a start, which a household changes as it learns.
package appetite
