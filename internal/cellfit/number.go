package cellfit

import (
	"slices"
	"strconv"
	"strings"
)

var tens = [...]float64{1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22}

// parseNumber reads a decimal number. Most numbers of a log have few digits,
// for which mantissa and power of ten are exact in float64 and one division
// gives the nearest value; the rest goes to strconv.
func parseNumber(f []byte, comma bool) (float64, bool) {
	i, negative := 0, false
	if len(f) > 0 && (f[0] == '-' || f[0] == '+') {
		negative = f[0] == '-'
		i++
	}
	point := byte('.')
	if comma {
		point = ','
	}
	var mantissa uint64
	digits, decimals, seen := 0, 0, false
	for ; i < len(f); i++ {
		c := f[i]
		switch {
		case isDigit(c):
			mantissa = mantissa*10 + uint64(c-'0')
			digits++
			if seen {
				decimals++
			}
		case c == point && !seen:
			seen = true
		default:
			return parseSlow(f, comma)
		}
	}
	if digits == 0 || digits > 15 {
		return parseSlow(f, comma)
	}
	x := float64(mantissa) / tens[decimals]
	if negative {
		x = -x
	}
	return x, true
}

// parseSlow reads exponents and long numbers.
func parseSlow(f []byte, comma bool) (float64, bool) {
	if len(f) == 0 || len(f) > 64 {
		return 0, false
	}
	for _, c := range f {
		// Neither a clock nor a unit is worth a try, nor hexadecimal, NaN or Inf.
		if !isDigit(c) && strings.IndexByte("+-.,eE", c) < 0 {
			return 0, false
		}
	}
	s := string(f)
	if comma {
		s = strings.ReplaceAll(strings.ReplaceAll(s, ".", ""), ",", ".")
	}
	x, err := strconv.ParseFloat(s, 64)
	return x, err == nil
}

// absent is what loggers and spreadsheets write where nothing was read. What was
// too much for a meter ("OL", "inf") was read, and is none of these.
var absent = []string{"nan", "-", "--", "---", "n/a", "na", "#n/a", "null", "none", "nil"}

// blank reports whether a field says that there is no value.
func blank(f []byte) bool {
	switch {
	case len(f) == 0:
		return true
	case isDigit(f[0]), len(f) > 4, len(f) > 1 && isDigit(f[1]):
		return false
	}
	return slices.ContainsFunc(absent, func(word string) bool { return strings.EqualFold(string(f), word) })
}
