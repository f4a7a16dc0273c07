package rows_test

import (
	"testing"

	"example.org/packcheck/internal/rows"
	"github.com/google/go-cmp/cmp"
)

func TestRowsStaySortedAndNeverChangeOneAnother(t *testing.T) {
	var none rows.Rows[int]
	all := none.With("wheel", 3).With("axle", 1).With("hub", 2)
	renewed := all.With("hub", 20)
	less := all.Without("axle").Without("mudguard")
	for _, c := range []struct {
		name      string
		got, want rows.Rows[int]
	}{
		{"none", none, nil},
		{"all", all, rows.Rows[int]{{"axle", 1}, {"hub", 2}, {"wheel", 3}}},
		{"renewed", renewed, rows.Rows[int]{{"axle", 1}, {"hub", 20}, {"wheel", 3}}},
		{"less", less, rows.Rows[int]{{"hub", 2}, {"wheel", 3}}},
	} {
		if diff := cmp.Diff(c.want, c.got); diff != "" {
			t.Errorf("%s (-want +got):\n%s", c.name, diff)
		}
	}
	if diff := cmp.Diff([]string{"axle", "hub", "wheel"}, all.Names()); diff != "" {
		t.Errorf("names (-want +got):\n%s", diff)
	}
}

func TestARowIsFoundByItsNameAlone(t *testing.T) {
	all := rows.Rows[string]{{"axle", "steel"}, {"hub", "brass"}, {"wheel", "rubber"}}
	for _, r := range all {
		if got, ok := all.Get(r.Name); !ok || got != r.Value || !all.Has(r.Name) {
			t.Errorf("%s: %q, %v", r.Name, got, ok)
		}
	}
	for _, name := range []string{"", "a", "axles", "hu", "zebra"} {
		if got, ok := all.Get(name); ok || got != "" || all.Has(name) {
			t.Errorf("%q was found: %q", name, got)
		}
	}
}
