package tables_test

import (
	"errors"
	"testing"

	"example.org/packcheck/tables"
)

// Tables that nobody made hold nothing: a wire is not found, and no pulse is stood.
func TestZeroTablesHoldNothing(t *testing.T) {
	var none tables.Tables
	if w, err := none.Wire(tables.WireSize{System: tables.Metric, AreaMM2: 2.5}); !errors.Is(err, tables.ErrNotFound) {
		t.Errorf("a wire of no table is %+v, %v", w, err)
	}
	if share, source := none.PulseShare(100); share != 0 || source != "" {
		t.Errorf("a pulse may have %g of what melts, by %q", share, source)
	}
	if n := none.PulsesFor(0.1); n != 0 {
		t.Errorf("%g pulses are stood", n)
	}
}
