package interview

import (
	"slices"
	"strconv"
	"strings"
	"time"
)

// Dated puts a day in the place of a month as people say it: "november", "15 Nov",
// "end of march". Of a month alone it takes the day by which most is in store: the first
// where the store begins, the last where it ends. A year that was not said is that which
// lies nearest to today, or the next after the day on which the store begins. Any other
// text, and one for another question, stays as it is.
func Dated(q Question, text string, given map[string]string, today time.Time) string {
	if keyOf(q.Key).What != "date" {
		return text
	}
	d, ok := spokenDay(text)
	if !ok {
		return text
	}
	until := strings.HasSuffix(q.Key, "until")
	day := func(year int) time.Time {
		switch n := d.day; {
		case n > 0:
			return time.Date(year, d.month, n, 0, 0, 0, 0, time.UTC)
		case d.last || n == 0 && until && !d.first:
			return time.Date(year, d.month+1, 0, 0, 0, 0, 0, time.UTC)
		}
		return time.Date(year, d.month, 1, 0, 0, 0, 0, time.UTC)
	}
	best := day(d.year)
	if d.year == 0 {
		today = time.Date(today.Year(), today.Month(), today.Day(), 0, 0, 0, 0, time.UTC)
		best = day(today.Year())
		from, err := time.Parse(time.DateOnly, given["storage.from"])
		switch {
		case until && err == nil:
			if best = day(from.Year()); !best.After(from) {
				best = day(from.Year() + 1)
			}
		default:
			for _, year := range []int{today.Year() - 1, today.Year() + 1} {
				if x := day(year); best.Sub(today).Abs() > x.Sub(today).Abs() {
					best = x
				}
			}
		}
	}
	if d.day > 0 && best.Day() != d.day { // the 31st of February
		return text
	}
	return best.Format(time.DateOnly)
}

// saidDay is a day as somebody says it; what was not said is zero.
type saidDay struct {
	month       time.Month
	day, year   int
	first, last bool
}

// spokenDay reads a month with what stands around it; nothing else may stand there.
func spokenDay(text string) (d saidDay, ok bool) {
	for _, w := range strings.Fields(strings.NewReplacer(",", " ", ".", " ").Replace(strings.ToLower(text))) {
		number, err := strconv.Atoi(strings.TrimRight(w, "sthndr"))
		switch month := monthOf(w); {
		case month > 0 && d.month == 0:
			d.month = month
		case err == nil && number >= 1 && number <= 31 && d.day == 0:
			d.day = number
		case err == nil && number >= 1990 && number <= 2200 && d.year == 0:
			d.year = number
		case slices.Contains([]string{"beginning", "start", "early"}, w):
			d.first = true
		case slices.Contains([]string{"end", "late"}, w):
			d.last = true
		case w == "mid" || w == "middle":
			d.day = 15
		case !slices.Contains([]string{"of", "in", "the", "on", "from", "until"}, w):
			return saidDay{}, false
		}
	}
	return d, d.month > 0
}

// monthOf is the month of a name or of its first three letters or more; 0 for none.
func monthOf(word string) time.Month {
	const shortest = 3
	if len(word) < shortest {
		return 0
	}
	for m := time.January; m <= time.December; m++ {
		if strings.HasPrefix(strings.ToLower(m.String()), word) {
			return m
		}
	}
	return 0
}
