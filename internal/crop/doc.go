// Package crop is the crop book: what is known of each crop and each of its
// uses, number by number, with unit, source and how sure it is. It holds values
// only; the models that compute with them live elsewhere.
//
// A crop has uses (early, table, storage, overwintered), since a carrot to
// store is another sowing than a carrot to pull young. A number is looked up in
// the use, then the crop, then the crop it is like (like.csv, along a chain when
// there is one), then the group, then the class, then the defaults of the whole
// book; the first one found holds, and one of another crop is marked borrowed.
// Which numbers a use must have depends on how it is begun and how it is picked
// (applies.go). A green manure covers its ground and feeds nobody: it has no
// numbers of food, and the table counts nothing of it.
//
// The book is the set of CSV files under data/: parameters.csv says what each
// number means, its unit and the range it may take; families.csv names the
// families and the group that rotates together; sources, crops, uses, names,
// facts and storage are folders, read file by file. The loader refuses a row
// without a source, with another unit or beyond the range, and a crop that would
// be like itself in the end; it tells file, row and column, and loads the rest.
//
// The marks say how a number came about: seen was read in its source; memory is
// recalled from the source named and was not read again; fitted is our own fit;
// borrowed is a near relation's number; judgement is our own.
package crop
