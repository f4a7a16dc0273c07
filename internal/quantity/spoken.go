package quantity

import (
	"strconv"
	"strings"

	"example.org/packcheck/internal/later"
)

// spokenTimes are parts of hours and minutes in words, each before what it begins with.
var spokenTimes = later.Value[*strings.Replacer]{Make: func() *strings.Replacer {
	var pairs []string
	for _, u := range []struct{ a, one, many, unit string }{{"an", "hour", "hours", "h"}, {"a", "minute", "minutes", "min"}} {
		of := u.a + " " + u.one
		for _, part := range []struct{ words, share string }{
			{"three quarters", ".75"}, {"half", ".5"}, {"quarter", ".25"},
		} {
			for i, whole := range []string{u.a, "one", "two", "three"} {
				n := strconv.Itoa(max(i, 1)) + part.share + " " + u.unit
				one := u.one
				if i > 1 {
					one = u.many
				}
				for _, and := range []string{" and a " + part.words, " and " + part.words} {
					pairs = append(pairs, " "+whole+" "+one+and, " "+n)
					if i > 0 {
						pairs = append(pairs, " "+whole+and+" "+u.many, " "+n)
					}
				}
			}
			for _, before := range []string{" a ", " "} {
				for _, joint := range []string{" of " + of, " " + of, " " + u.one} {
					pairs = append(pairs, before+part.words+joint, " 0"+part.share+" "+u.unit)
				}
			}
		}
		pairs = append(pairs, " "+of, " 1 "+u.unit)
	}
	return strings.NewReplacer(pairs...)
}}
