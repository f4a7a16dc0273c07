package reckon

import (
	"encoding/csv"
	"fmt"
	"io"
	"strconv"

	"example.org/packcheck/drive"
	"example.org/packcheck/internal/ride"
	"example.org/packcheck/setup"
)

// Trace writes the outing of the representative case as a time series, one row a step, as CSV:
// seconds, amperes from the pack, volts at the pack and behind the path, km/h,
// charge from 0 to 1, deg C of pack and motor winding, and what it does.
func Trace(s *setup.Setup, o Options, w io.Writer) error {
	v, err := Representative(s, o)
	if err != nil {
		return err
	}
	c := &v.Now.Case
	table := newCSV(w, "time_s", "current_a", "pack_v", "bus_v", "speed_kmh", "charge", "pack_c", "motor_c", "state")
	ride.Run(c, func(x ride.Sample) {
		table.write(x.Phase.String(), []cell{
			{x.ClockS, 3},
			{x.CurrentA, 3},
			{x.PackV, 4},
			{x.BusV, 4},
			{x.SpeedMS * 3.6, 3},
			{x.Charge, 5},
			{x.PackC, 2},
			{x.WindingC, 2},
		})
	})
	return table.done()
}

// TraceLaunch writes the representative launch from rest as CSV, one row a moment
// that the solver looks at. A bench load has none and is an error.
func TraceLaunch(s *setup.Setup, o Options, w io.Writer) error {
	v, err := Representative(s, o)
	if err != nil {
		return err
	}
	c := &v.Now.Case
	if c.Load.Kind != ride.NoLoad {
		return fmt.Errorf("packcheck: a bench load has no launch to write")
	}
	l := c.LaunchCase()
	table := newCSV(w, "time_s", "battery_a", "motor_a", "pack_v", "bus_v", "duty", "speed_kmh", "wheel_kmh", "wheel_n", "state")
	drive.Launch(&l, c.LaunchSeconds(), func(x drive.LaunchSample) {
		state := "rolling"
		switch {
		case x.SpeedMS == 0:
			state = "at rest"
		case x.WheelMS > x.SpeedMS*1.001+1e-6:
			state = "wheels spin"
		}
		table.write(state, []cell{
			{x.TimeS, 6},
			{x.BatteryA, 3},
			{x.MotorA, 3},
			{x.PackV, 4},
			{x.BusV, 4},
			{x.Duty, 4},
			{x.SpeedMS * 3.6, 4},
			{x.WheelMS * 3.6, 4},
			{x.WheelN, 2},
		})
	})
	return table.done()
}

// csvTable writes numbers with fixed decimals, so that equal runs give equal bytes.
type csvTable struct {
	csv *csv.Writer
	err error
}

// cell is one number and its decimals.
type cell struct {
	value    float64
	decimals int
}

func newCSV(w io.Writer, header ...string) *csvTable {
	r := &csvTable{csv: csv.NewWriter(w)}
	r.err = r.csv.Write(header)
	return r
}

func (r *csvTable) write(state string, cells []cell) {
	if r.err != nil {
		return
	}
	record := make([]string, 0, len(cells)+1)
	for _, c := range cells {
		text := strconv.FormatFloat(c.value, 'f', c.decimals, 64)
		if value, err := strconv.ParseFloat(text, 64); err == nil && value == 0 {
			text = strconv.FormatFloat(0, 'f', c.decimals, 64) // never "-0.000"
		}
		record = append(record, text)
	}
	r.err = r.csv.Write(append(record, state))
}

func (r *csvTable) done() error {
	r.csv.Flush()
	if r.err == nil {
		r.err = r.csv.Error()
	}
	if r.err != nil {
		return fmt.Errorf("packcheck: writing the trace: %w", r.err)
	}
	return nil
}
