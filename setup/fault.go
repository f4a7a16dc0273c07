package setup

import (
	"slices"
	"strings"

	"example.org/packcheck/fault"
)

// Fault is one thing wrong in a setup file: of it, of a file that it names, or of a
// change.
type Fault = fault.Fault

// Faults is every fault of one setup.
type Faults = fault.Faults

// faultsOf reports whether one of the faults is of a key, or of one inside a table.
func faultsOf(fs Faults, path string) bool {
	return slices.ContainsFunc(fs, func(f Fault) bool { return f.Key == path || strings.HasPrefix(f.Key, path+".") })
}

// faultAt reports whether one of the faults is of a key itself.
func faultAt(fs Faults, path string) bool {
	return slices.ContainsFunc(fs, func(f Fault) bool { return f.Key == path })
}

// unknownTable reports whether a whole table was not understood: it may be any.
func unknownTable(fs Faults) bool {
	return slices.ContainsFunc(fs, func(f Fault) bool { return strings.HasPrefix(f.Read, "[") })
}

// BesideNoBattery is what is wrong with a setup but that it tells no battery, its own or that
// of the vehicle as it was made; nil where that is all.
func BesideNoBattery(faults Faults) Faults {
	var left Faults
	for _, f := range faults {
		if f.Read != "" || strings.TrimPrefix(f.Key, "original.") != "pack" {
			left = append(left, f)
		}
	}
	return left
}
