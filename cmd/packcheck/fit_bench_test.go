package main

import (
	"bytes"
	"io"
	"strconv"
	"testing"
)

// fiftyMegabytes is a log of driving and pausing in turn, a thousand rows a
// second, as a fast logger leaves it.
func fiftyMegabytes(b *testing.B) []byte {
	b.Helper()
	m := toolPack.model(b)
	const everyS = 0.001
	out := make([]byte, 0, 56<<20)
	out = append(out, "time_s,voltage_v,current_a\n"...)
	s, step := m.StateAt(1, toolPack.airC), m.Over(everyS)
	for k := 0; ; k++ {
		amps, at := 0.0, float64(k)*everyS
		if at >= 60 && k%35000 < 25000 {
			amps = toolPack.amps
		}
		u := m.TerminalV(&s, amps)
		out = strconv.AppendFloat(out, at, 'f', 3, 64)
		out = append(out, ',')
		out = strconv.AppendFloat(out, u, 'f', 4, 64)
		out = append(out, ',')
		out = strconv.AppendFloat(out, amps, 'f', 3, 64)
		out = append(out, '\n')
		if u < toolPack.untilV {
			return out
		}
		step.Advance(&s, amps, toolPack.airC)
	}
}

// The aim for reading and fitting a log of 50 MB is five seconds.
func BenchmarkFitFiftyMegabytes(b *testing.B) {
	log := fiftyMegabytes(b)
	if len(log) < 50e6 {
		b.Fatalf("only %d bytes", len(log))
	}
	b.SetBytes(int64(len(log)))
	b.ReportAllocs()
	for b.Loop() {
		var errs bytes.Buffer
		if code := run([]string{"fit", "-", "--label", "20 V max 5 Ah"}, bytes.NewReader(log), io.Discard, &errs); code != exitFine {
			b.Fatalf("code %d: %s", code, errs.String())
		}
	}
}
