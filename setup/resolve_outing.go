package setup

import (
	"fmt"
	"strings"

	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/quantity"
)

// outing settles how it is driven.
func (r *resolver) outing() {
	raw := r.setup.Outing
	p := &r.parts.Outing
	p.AirC = r.or(raw.Air, blank{
		table: "outing", name: "air", kind: quantity.Temperature, Range: quantity.Spread(10, 20, 30),
		why: "Not given; a mild day.", source: srcOuting,
	})
	p.WantedS = r.orUnknown("outing", "wanted", quantity.Duration, raw.Wanted)
	p.ChargedAtC = r.orUnknown("outing", "charged_at", quantity.Temperature, raw.ChargedAt)
	r.parts.StoreC = r.orUnknown("storage", "temperature", quantity.Temperature, r.setup.Storage.Temperature)
	defer r.track(&r.parts.StoreC, &p.AirC, &p.ChargedAtC, &p.DriveS, &p.PauseS, &p.WantedS)
	if r.setup.Bench.Given {
		// A bench load runs without pauses unless it is told to pause.
		p.DriveS = r.orUnknown("outing", "drive", quantity.Duration, raw.Drive)
		p.PauseS = r.orUnknown("outing", "pause", quantity.Duration, raw.Pause)
		if raw.Pause.Given && !raw.Drive.Given {
			p.DriveS = r.assume(usualDrive())
		}
		return
	}
	p.DriveS = r.or(raw.Drive, usualDrive())
	p.PauseS = r.or(raw.Pause, blank{
		table: "outing", name: "pause", kind: quantity.Duration, Range: quantity.Spread(5, 10, 20),
		why: "Not given; how long a child pauses.", source: srcOuting,
	})
}

// usualDrive is how long the load is on at a time.
func usualDrive() blank {
	return blank{
		table: "outing", name: "drive", kind: quantity.Duration, Range: quantity.Spread(15, 25, 40),
		why: "Not given; how long a child keeps the pedal down.", source: srcOuting,
	}
}

// bench settles a load in place of a vehicle.
func (r *resolver) bench() {
	raw := r.setup.Bench
	p := &BenchPart{
		CurrentA: r.orUnknown("load", "current", quantity.Current, raw.Current),
		PowerW:   r.orUnknown("load", "power", quantity.Power, raw.Power),
		UntilV:   r.orUnknown("load", "until", quantity.Voltage, raw.Until),
	}
	r.parts.Bench = p
	r.track(&p.CurrentA, &p.PowerW, &p.UntilV)
	if full := r.fullV(); raw.Until.Given && full > 0 && raw.Until.Low >= full {
		r.fault(raw.Until.Line, raw.Until.Key, raw.Until.Text,
			fmt.Sprintf("less than %s, at which this battery stands when it is full: at more it ends before it begins",
				quantity.Format(quantity.Voltage, full, r.parts.System)))
	}
	if raw.Pattern.Given {
		r.open(raw.Pattern, func(f *file) error {
			got, err := readPattern(f, f.name)
			if err != nil {
				return patternFault(raw.Pattern, f.name, err)
			}
			p.Pattern = got.demands
			r.parts.Notes = append(r.parts.Notes, got.note)
			return nil
		})
	}
}

// fullV is the highest voltage that the whole battery rests at, 0 when it is
// not understood.
func (r *resolver) fullV() float64 {
	return r.parts.Pack.volts(func(c *chemistry.Profile) float64 { return max(c.FullV, c.Rest.VoltsAt.At(1)) })
}

// plainError drops the name of the package that an error comes from.
func plainError(err error) string {
	_, rest, ok := strings.Cut(err.Error(), ": ")
	if !ok {
		return err.Error()
	}
	return rest
}
