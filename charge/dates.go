package charge

import (
	"fmt"
	"time"
)

// Date is a day of the calendar, without a time or a place.
type Date struct {
	Year  int
	Month int // 1 to 12
	Day   int // 1 to 31
}

// String returns the date as 2006-01-02.
func (d Date) String() string { return fmt.Sprintf("%04d-%02d-%02d", d.Year, d.Month, d.Day) }

// Valid reports whether the calendar has the day.
func (d Date) Valid() bool {
	return d.Year >= 1 && d.Year <= 9999 && dateOf(d.time()) == d
}

// time returns the day's beginning in a calendar without daylight saving.
func (d Date) time() time.Time {
	return time.Date(d.Year, time.Month(d.Month), d.Day, 0, 0, 0, 0, time.UTC)
}

// dateOf is the inverse of time.
func dateOf(t time.Time) Date {
	return Date{t.Year(), int(t.Month()), t.Day()}
}

// AddDays returns the date so many days later, or earlier when days is
// negative.
func (d Date) AddDays(days int) Date { return dateOf(d.time().AddDate(0, 0, days)) }

// DaysUntil returns the days from d to e, negative when e is earlier.
func (d Date) DaysUntil(e Date) int { return int(e.time().Sub(d.time()).Hours() / 24) }
