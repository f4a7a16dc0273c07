package setup

import (
	"errors"
	"fmt"
	"io"
	"math"
	"path/filepath"
	"strconv"

	"example.org/packcheck/internal/cellfit"
	"example.org/packcheck/internal/quantity"
)

// Bounds of a pattern file: what a logger writes in some hours, with room to
// spare.
const (
	maxPatternA = 5000.0
	maxLogBytes = 128 << 20
	logPieces   = 4000 // of a longer log, the charge of every piece kept
)

// pattern is a load pattern as it was read.
type pattern struct {
	demands []Demand
	note    string // how the file was understood
}

// readPattern reads a load pattern: any table of time and amperes that
// [cellfit.Read] understands. With volts beside them it is a log: between two
// rows flows the mean current, and the volts tell its sign. Without volts the
// current of a row flows until the next row, as in a list of steps, and the
// sign that most of the charge has is discharging.
func readPattern(r io.Reader, name string) (pattern, error) {
	log, err := cellfit.Read(&bounded{r, maxLogBytes}, cellfit.Options{WithoutVolts: true})
	if err != nil {
		return pattern{}, err
	}
	log = log.Condense(logPieces)
	last := log.Rows() - 1
	sign, turned := 1.0, ""
	if net := log.ChargeAh[last]; net < 0 && log.Volts != nil {
		return pattern{}, cellfit.ReadError{
			Got:  fmt.Sprintf("a charge: %.3g Ah more go in than come out", -net),
			Want: "the log of a discharge",
		}
	} else if net < 0 {
		sign, turned = -1, " Most of its current is negative; without volts beside it, that is taken as discharging."
	}
	out := make([]Demand, 0, last)
	most := 0.0
	for i := 1; i <= last; i++ {
		d := Demand{Seconds: log.TimeS[i] - log.TimeS[i-1]}
		d.CurrentA = sign * (log.ChargeAh[i] - log.ChargeAh[i-1]) / d.Seconds * 3600
		if !(math.Abs(d.CurrentA) <= maxPatternA) {
			return pattern{}, cellfit.ReadError{
				Got:  fmt.Sprintf("%g A, %.0f s into the log", d.CurrentA, log.TimeS[i]),
				Want: fmt.Sprintf("at most %g A", maxPatternA),
			}
		}
		most = max(most, d.CurrentA)
		out = append(out, d)
	}
	note := fmt.Sprintf("The load pattern %s: %q is read as time, %q as current; it lasts %s and draws at most %s.%s",
		filepath.Base(name), log.Columns.Time, log.Columns.Amps,
		quantity.Format(quantity.Duration, log.TimeS[last], quantity.Metric), quantity.Format(quantity.Current, most, quantity.Metric), turned)
	if log.Sampled {
		note += " Its current changes more often than is followed: some of the changes are drawn as they are, and between them the mean, which heats less."
	}
	return pattern{out, note}, nil
}

// patternFault says what is wrong with a pattern file, where in it.
func patternFault(w Word, name string, err error) error {
	var re cellfit.ReadError
	if !errors.As(err, &re) {
		return err
	}
	f := Fault{File: name, Line: re.Line, Key: w.Key, Read: re.Got, Want: re.Want}
	if re.Column > 0 {
		f.Key += fmt.Sprintf(", column %d", re.Column)
	}
	if bare, err := strconv.Unquote(re.Got); err == nil {
		f.Read = bare
	}
	return f
}

// bounded is a reader that fails, instead of ending, when more than left bytes
// come.
type bounded struct {
	io.Reader
	left int64
}

// Read reads on.
func (b *bounded) Read(p []byte) (int, error) {
	n, err := b.Reader.Read(p)
	if b.left -= int64(n); b.left < 0 {
		return 0, fmt.Errorf("more than %d MiB", maxLogBytes>>20)
	}
	return n, err
}
