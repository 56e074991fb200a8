package words

import (
	"strconv"

	"garner/internal/cal"
)

// Date writes a date with its year: 4 January 2027.
func (f Formatter) Date(d cal.Date) string {
	if !d.IsSet() {
		return absent
	}
	year, month, day := d.YMD()
	return f.catalogue.Text(P("words.date", Args{
		"day": day, "month": f.Month(month), "year": strconv.Itoa(year),
	}))
}

// Day writes a date without its year: 4 Jan.
func (f Formatter) Day(d cal.Date) string {
	if !d.IsSet() {
		return absent
	}
	_, month, day := d.YMD()
	return f.catalogue.Text(P("words.day", Args{"day": day, "month": f.ShortMonth(month)}))
}

// MonthDay writes a day of any year: 15 March.
func (f Formatter) MonthDay(m cal.MonthDay) string {
	if m.Month == 0 {
		return absent
	}
	return f.catalogue.Text(P("words.day", Args{"day": m.Day, "month": f.Month(m.Month)}))
}

// Month names a month, 1-12.
func (f Formatter) Month(month int) string {
	return f.catalogue.Text(P("words.month_"+strconv.Itoa(month), nil))
}

// ShortMonth names a month, 1-12, in three letters.
func (f Formatter) ShortMonth(month int) string {
	return f.catalogue.Text(P("words.short_month_"+strconv.Itoa(month), nil))
}

// date writes a date in the way a text asks for.
func (f Formatter) date(d cal.Date, style string) string {
	switch {
	case style == "day":
		return f.Day(d)
	case style == "month" && d.IsSet():
		return f.Month(d.Month())
	}
	return f.Date(d)
}
