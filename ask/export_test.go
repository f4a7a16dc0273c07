package ask

import "example.org/packcheck/battery"

// RuntimeOfDraws returns the 10, 50 and 90 % points of minutes at a current of as
// many batteries as answers are made of, and of sixteen times as many.
func RuntimeOfDraws(b Battery, currentA float64) (few, many [3]float64, err error) {
	all, err := b.find()
	if err != nil {
		return few, many, err
	}
	for n, out := range map[int]*[3]float64{enoughDraws: &few, 16 * enoughDraws: &many} {
		got, err := all.over(n, 1, func(out []float64, m *battery.Model) error {
			out[0] = m.Discharge(m.StateAt(1, roomC), currentA, m.EndV(currentA), roomC).Hours * 60
			return nil
		})
		if err != nil {
			return few, many, err
		}
		*out = [3]float64{got[0].P10, got[0].P50, got[0].P90}
	}
	return few, many, nil
}
