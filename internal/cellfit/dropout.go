package cellfit

import "slices"

// dropoutShare is the share of the median voltage below which a row is taken
// for one that the logger missed. No cell falls that far and comes back.
const dropoutShare = 0.1

// WithoutDropouts returns the log without the rows whose voltage the logger did
// not get; charge and time of the others stay as they are.
func (l *Log) WithoutDropouts() *Log {
	if len(l.Volts) == 0 {
		return l
	}
	sorted := slices.Sorted(slices.Values(l.Volts))
	least := dropoutShare * sorted[len(sorted)/2]
	var keep []int
	for i, v := range l.Volts {
		if v >= least {
			keep = append(keep, i)
		}
	}
	if len(keep) == l.Rows() {
		return l
	}
	return l.pick(keep)
}
