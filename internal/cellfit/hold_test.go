package cellfit_test

import (
	"errors"
	"fmt"
	"io"
	"math"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.org/packcheck/internal/cellfit"
)

// allRows holds any log of these tests whole.
const allRows = 1 << 30

func readHolding(t testing.TB, text string, rows int) *cellfit.Log {
	t.Helper()
	l, err := cellfit.Read(strings.NewReader(text), cellfit.Options{Name: "log.csv", HeldRows: rows})
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// resting is at rest for half an hour, pulsed for ten seconds, and drawn from for
// half an hour, in turn.
func resting(amps float64) func(float64) float64 {
	return func(s float64) float64 {
		switch s = math.Mod(s, 3600); {
		case s < 1000 || s >= 1010 && s < 1800:
			return 0
		case s < 1010:
			return 2 * amps
		}
		return amps
	}
}

// The error that Log tells of.
func TestAThinnedLogGivesTheFitOfTheWholeOne(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name    string
		everyS  float64
		held    int // 0 = as usual
		current func(float64) float64
	}{
		{"driving and pausing, a row each 10 ms", 0.01, 0, drivingAndPausing(8)},
		{"one current, a row each 20 ms", 0.02, 0, always(5)},
		{"rests, pulses and draws, a row each 50 ms", 0.05, 0, resting(4)},
		{"driving and pausing, an eighth held", 0.1, 4096, drivingAndPausing(8)},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			text := "time_s,voltage_v,current_a\n" + trip{spec: known(t), endV: 14.9, everyS: c.everyS, current: c.current}.log(t)
			all, few := readHolding(t, text, allRows), readHolding(t, text, c.held)
			if few.FileRows != all.Rows() || few.Rows() > all.Rows()/2 {
				t.Fatalf("%d rows of %d are held, of a file of %d", few.Rows(), few.FileRows, all.Rows())
			}
			var found [2]cellfit.Result
			for i, l := range []*cellfit.Log{all, few} {
				var err error
				if found[i], err = cellfit.Fit([]*cellfit.Log{l}, cellfit.FitOptions{Chemistry: profile(t, "li-ion"), CellsInSeries: 5, LabelAh: 5}); err != nil {
					t.Fatal(err)
				}
			}
			want, got := found[0], found[1]
			near := func(what string, got, want cellfit.Estimate, within float64) {
				if !want.Known || !(math.Abs(got.Value/want.Value-1) <= within) || !(math.Abs(got.Sigma/want.Sigma-1) <= 0.02) {
					t.Errorf("%s %+v, from all rows %+v", what, got, want)
				}
			}
			near("capacity", got.CapacityAh, want.CapacityAh, 0.002)
			near("full charge", got.FullAh, want.FullAh, 0.002)
			near("resistance", got.MidOhm, want.MidOhm, 0.005)
			if got.Rests != want.Rests || got.Pulses != want.Pulses || len(got.Runs) != len(want.Runs) {
				t.Errorf("%d rests, %d pulses, %d runs; from all rows %d, %d, %d", got.Rests, got.Pulses, len(got.Runs), want.Rests, want.Pulses, len(want.Runs))
			}
			if !holds(got.Health, 0.9) || !holds(got.MidOhm, 0.06) {
				t.Errorf("health %+v, resistance %+v; is 0.9 and 0.06 Ohm", got.Health, got.MidOhm)
			}
		})
	}
}

// Ten or a hundred times the rows of one discharge are no other discharge; they
// only show better how the voltage jumps.
func TestALogWrittenFasterGivesTheSameFit(t *testing.T) {
	t.Parallel()
	var slow cellfit.Result
	for i, everyS := range []float64{1, 0.1, 0.01} {
		text := trip{spec: known(t), endV: 14.9, everyS: everyS, current: drivingAndPausing(8)}.log(t)
		r, err := cellfit.Fit([]*cellfit.Log{readHolding(t, "time_s,voltage_v,current_a\n"+text, 1<<14)},
			cellfit.FitOptions{Chemistry: profile(t, "li-ion"), CellsInSeries: 5, LabelAh: 5})
		if err != nil {
			t.Fatal(err)
		}
		if !holds(r.MidOhm, 0.06) || !holds(r.Health, 0.9) {
			t.Errorf("a row each %g s: health %+v, resistance %+v; is 0.9 and 0.06 Ohm", everyS, r.Health, r.MidOhm)
		}
		if i == 0 {
			slow = r
		}
		if math.Abs(r.FullAh.Value/slow.FullAh.Value-1) > 0.002 || math.Abs(r.CapacityAh.Value/slow.CapacityAh.Value-1) > 0.002 || r.Pulses != slow.Pulses {
			t.Errorf("a row each %g s: %+v, %+v, %d pulses; a row each second: %+v, %+v, %d", everyS, r.FullAh, r.CapacityAh, r.Pulses, slow.FullAh, slow.CapacityAh, slow.Pulses)
		}
	}
}

// rowsOf is a file of so many rows, made while it is read.
type rowsOf struct {
	rows int
	row  func(b []byte, k int) []byte
	next int
	left []byte
	buf  []byte
}

func (r *rowsOf) Read(p []byte) (int, error) {
	if len(r.left) == 0 {
		if r.next == r.rows {
			return 0, io.EOF
		}
		r.buf = r.buf[:0]
		for ; r.next < r.rows && len(r.buf) < 1<<16; r.next++ {
			r.buf = r.row(r.buf, r.next)
		}
		r.left = r.buf
	}
	n := copy(p, r.left)
	r.left = r.left[n:]
	return n, nil
}

// discharging falls by a volt in an hour, with a pause of a second in each ten.
func discharging(b []byte, k int) []byte {
	if k == 0 {
		b = append(b, "ms,V,A,degC\n"...)
	}
	amps := int64(4)
	if k%10_000 >= 9000 {
		amps = 0
	}
	b = strconv.AppendInt(b, int64(k), 10)
	b = append(b, ',')
	b = strconv.AppendFloat(b, 13-float64(k)/3.6e6-0.1*float64(amps), 'f', 4, 64)
	b = append(b, ',')
	b = strconv.AppendInt(b, amps, 10)
	return append(b, ",20\n"...)
}

func TestTheMemoryOfALogDoesNotGrowWithItsRows(t *testing.T) {
	allocated := func(rows int) uint64 {
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		l, err := cellfit.Read(&rowsOf{rows: rows, row: discharging}, cellfit.Options{})
		runtime.ReadMemStats(&after)
		if err != nil || l.FileRows != rows || l.Rows() > 1<<16 {
			t.Fatalf("%d of %d rows held (%v), want no more than %d", l.Rows(), l.FileRows, err, 1<<16)
		}
		return after.TotalAlloc - before.TotalAlloc
	}
	once, twentyTimes := allocated(150_000), allocated(3_000_000)
	if twentyTimes > once+once/20 {
		t.Errorf("%d bytes for 150,000 rows, %d for twenty times as many", once, twentyTimes)
	}
}

// What steps, rests and ends are told from stands as it did in the file.
func TestAThinnedLogKeepsItsMoments(t *testing.T) {
	var b strings.Builder
	b.WriteString("ms,V,A\n")
	for k := range 40_000 {
		amps, volts := 4+0.1*math.Sin(float64(k)), 12.5-float64(k)/40_000
		switch {
		case k < 5000 || k > 39_000:
			amps = 0
		case k == 22_222: // one row alone
			amps = 11
		case k > 30_000:
			amps, volts = -2, volts+3
		case k > 12_345:
			amps += 0.9 // less than a fifth of the greatest
		}
		if k == 17_171 {
			volts -= 2
		}
		fmt.Fprintf(&b, "%d,%.4f,%.4f\n", k, volts, amps)
	}
	all, few := readHolding(t, b.String(), allRows), readHolding(t, b.String(), 1024)
	if few.Rows() > 512 || few.FileRows != 40_000 {
		t.Fatalf("%d of %d rows are held", few.Rows(), few.FileRows)
	}
	at := map[float64]int{}
	for i, s := range few.TimeS {
		at[s] = i
	}
	for _, k := range []int{0, 4999, 5000, 12_345, 12_346, 17_171, 22_221, 22_222, 22_223, 30_000, 30_001, 39_000, 39_001, 39_999} {
		i, ok := at[all.TimeS[k]]
		if !ok {
			t.Errorf("row %d is not held", k)
			continue
		}
		if few.Volts[i] != all.Volts[k] || few.Amps[i] != all.Amps[k] || few.ChargeAh[i] != all.ChargeAh[k] {
			t.Errorf("row %d is %g V, %g A, %g Ah; was %g, %g, %g", k, few.Volts[i], few.Amps[i], few.ChargeAh[i], all.Volts[k], all.Amps[k], all.ChargeAh[k])
		}
	}
	if low, high := slices.Min(few.Volts), slices.Max(few.Volts); low != slices.Min(all.Volts) || high != slices.Max(all.Volts) {
		t.Errorf("%g to %g V, want %g to %g", low, high, slices.Min(all.Volts), slices.Max(all.Volts))
	}
	for i := 1; i < few.Rows(); i++ {
		if gap := few.TimeS[i] - few.TimeS[i-1]; gap > 40./32*1.01 {
			t.Errorf("%.3f s lie between two rows at %.3f s, want no more than a thirty-second of the whole", gap, few.TimeS[i])
		}
	}
}

// What is not known of the charge is a matter of the rows of the file, not of
// those that are held: a load that switches at each second row.
func TestAThinnedLogDoubtsItsChargeAsTheWholeOne(t *testing.T) {
	t.Parallel()
	every := 0.25
	text := "time_s,voltage_v,current_a\n" + trip{spec: known(t), endV: 14.9, everyS: every, current: func(s float64) float64 {
		return 8 * float64(int(s/every)/2%2)
	}}.log(t)
	o := cellfit.FitOptions{Chemistry: profile(t, "li-ion"), CellsInSeries: 5, LabelAh: 5}
	var sigma [2]float64
	for i, held := range []int{allRows, 2048} {
		r, err := cellfit.Fit([]*cellfit.Log{readHolding(t, text, held)}, o)
		if err != nil {
			t.Fatal(err)
		}
		sigma[i] = r.CapacityAh.Sigma
		if !holds(r.MidOhm, 0.06) || !holds(r.Health, 0.9) {
			t.Errorf("%d rows held: health %+v, resistance %+v; is 0.9 and 0.06 Ohm", held, r.Health, r.MidOhm)
		}
	}
	if !(math.Abs(sigma[1]/sigma[0]-1) < 0.02) {
		t.Errorf("standard uncertainty %.4f Ah, from all rows %.4f Ah", sigma[1], sigma[0])
	}
}

func TestAFaultInALateRowIsToldWhere(t *testing.T) {
	for fault, want := range map[string]string{
		"400000,low,4,20\n":    `log.csv:400002: column 2: "low"; want a number for volts`,
		"399998,12.5,4,20\n":   "log.csv:400002: column 1: a time 0.001 s before that of the row above; want rows in the order of time",
		"400000,12.5\n":        "log.csv:400002: 2 columns; want at least 3, as in the rows before",
		"400000,12.5,4,99 V\n": `log.csv:400002: column 4: "99 V"; want a number for a temperature`,
	} {
		_, err := cellfit.Read(io.MultiReader(&rowsOf{rows: 400_000, row: discharging}, strings.NewReader(fault+"400001,12,4,20\n")), cellfit.Options{Name: "log.csv"})
		if re, ok := errors.AsType[cellfit.ReadError](err); !ok || err.Error() != want || re.Line != 400_002 {
			t.Errorf("%q: %v, want %q", fault, err, want)
		}
	}
}

// A current that changes more often than there are rows to keep must not use
// them all up before the end.
func TestALoadThatSwitchesOftenIsCondensedToItsEnd(t *testing.T) {
	l := &cellfit.Log{}
	for k := range 40_000 {
		l.TimeS, l.Volts = append(l.TimeS, float64(k)), append(l.Volts, 12)
		l.Amps, l.ChargeAh = append(l.Amps, float64(8*(k%2))), append(l.ChargeAh, float64(k)/900)
	}
	short := l.Condense(1000)
	if short.Rows() > 2001 {
		t.Errorf("%d rows, want about 1000", short.Rows())
	}
	jumps := [2]int{} // down, up
	for i := 1; i < short.Rows(); i++ {
		gap := short.TimeS[i] - short.TimeS[i-1]
		if gap > 400 {
			t.Errorf("%.0f s lie between two rows at %.0f s", gap, short.TimeS[i])
		}
		if gap == 1 {
			jumps[int(short.Amps[i])/8]++
		}
	}
	if jumps[0] < 100 || jumps[1] < 100 {
		t.Errorf("%d switchings off and %d on are left of 20,000 each", jumps[0], jumps[1])
	}
}

// A rest in which nothing but noise is logged is no load that switches.
func TestALogThatIsKnownBySamplesSaysSo(t *testing.T) {
	for every, want := range map[int]bool{1: true, 4: true, 500: false} {
		var b strings.Builder
		b.WriteString("s,V,A\n")
		for k := range 20_000 {
			amps := 0.05 * float64(k%3)
			if k > 5000 {
				amps += float64(8 * (k / every % 2))
			}
			fmt.Fprintf(&b, "%d,%.3f,%.2f\n", k, 12.6-0.1*amps-float64(k)/20_000, amps)
		}
		l := readHolding(t, b.String(), 1024)
		noted := slices.ContainsFunc(l.Notes, func(n string) bool { return strings.Contains(n, "changes more often") })
		if l.Sampled != want || noted != want {
			t.Errorf("switched each %d rows: sampled %v, noted %v; want %v", every, l.Sampled, noted, want)
		}
		if whole := readHolding(t, b.String(), allRows); whole.Sampled || len(whole.Notes) > 0 {
			t.Errorf("switched each %d rows, all held: sampled %v, notes %q", every, whole.Sampled, whole.Notes)
		}
	}
}
