package charge_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.org/packcheck/charge"
	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

func TestLabelsAreReadAsPeopleTypeThem(t *testing.T) {
	tests := []struct {
		text string
		want charge.Label
		why  string
	}{
		{
			"12V 1000Ma",
			charge.Label{PrintedV: 12, PrintedA: 1, Outputs: 1},
			"milliamps in any case; nothing said on AC or DC, nor on the battery",
		},
		{"14.7 V 1.5 A", charge.Label{PrintedV: 14.7, PrintedA: 1.5, Outputs: 1}, "spaces before the units"},
		{"14,7V 1,5A", charge.Label{PrintedV: 14.7, PrintedA: 1.5, Outputs: 1}, "decimal comma"},
		{"OUTPUT: 12V DC 1A", charge.Label{PrintedV: 12, PrintedA: 1, Outputs: 1, Output: charge.DC}, "the word output"},
		{"AC 12 V 500 mA", charge.Label{PrintedV: 12, PrintedA: 0.5, Outputs: 1, Output: charge.AC}, "AC in front"},
		{"12VAC 500mA", charge.Label{PrintedV: 12, PrintedA: 0.5, Outputs: 1, Output: charge.AC}, "AC behind"},
		{"12V~500mA", charge.Label{PrintedV: 12, PrintedA: 0.5, Outputs: 1, Output: charge.AC}, "the wave sign"},
		{
			"21V 2A Li-ion",
			charge.Label{PrintedV: 21, PrintedA: 2, Outputs: 1, MadeFor: charge.ForLithiumIon},
			"five cells at 4.20 V",
		},
		{"DC 29.4V==2A", charge.Label{PrintedV: 29.4, PrintedA: 2, Outputs: 1, Output: charge.DC}, "== typed for the direct current sign"},
		{"29.4V \u2393 2A", charge.Label{PrintedV: 29.4, PrintedA: 2, Outputs: 1, Output: charge.DC}, "the direct current sign itself"},
		{"19 V 3.42 A", charge.Label{PrintedV: 19, PrintedA: 3.42, Outputs: 1}, "a laptop's volts, but the label does not say so"},
		{
			"laptop adapter 19V 3.42A",
			charge.Label{PrintedV: 19, PrintedA: 3.42, Outputs: 1, MadeFor: charge.PowerSupply},
			"now it does",
		},
		{
			"INPUT: AC 100-240V~ 50/60Hz 0.5A OUTPUT: DC 12.6V 1A",
			charge.Label{PrintedV: 12.6, PrintedA: 1, Outputs: 1, Output: charge.DC},
			"the input side is not the output",
		},
		{
			"Output 12V=1A Input 230V~50Hz 18W",
			charge.Label{PrintedV: 12, PrintedA: 1, Outputs: 1, Output: charge.DC},
			"input behind output, and its watts left out",
		},
		{
			"AC 230 V 50 Hz 12 V DC 1 A",
			charge.Label{PrintedV: 12, PrintedA: 1, Outputs: 1, Output: charge.DC},
			"mains volts without the word input",
		},
		{
			"AC/DC adaptor 6V 500mA centre positive",
			charge.Label{PrintedV: 6, PrintedA: 0.5, Outputs: 1, Polarity: charge.CentrePositive},
			"AC/DC names the device, not its output",
		},
		{
			"6V DC 500mA center -",
			charge.Label{PrintedV: 6, PrintedA: 0.5, Outputs: 1, Output: charge.DC, Polarity: charge.CentreNegative},
			"American spelling and a sign",
		},
		{
			"12.6 V 1 A DC li-ion stops by itself",
			charge.Label{PrintedV: 12.6, PrintedA: 1, Outputs: 1, Output: charge.DC, MadeFor: charge.ForLithiumIon, Stops: charge.StopsByItself},
			"as people say it",
		},
		{
			"14.4V 1A DC lead acid, switches off when full",
			charge.Label{PrintedV: 14.4, PrintedA: 1, Outputs: 1, Output: charge.DC, MadeFor: charge.ForLeadAcid, Stops: charge.StopsByItself},
			"the same in other words",
		},
		{
			"14.4V 1A DC lead acid, does not stop by itself",
			charge.Label{PrintedV: 14.4, PrintedA: 1, Outputs: 1, Output: charge.DC, MadeFor: charge.ForLeadAcid, Stops: charge.StopsNever},
			"the contrary",
		},
		{
			"14.4V 1A DC lead acid, not automatic",
			charge.Label{PrintedV: 14.4, PrintedA: 1, Outputs: 1, Output: charge.DC, MadeFor: charge.ForLeadAcid},
			"which does not say how it ends then",
		},
		{
			"12 V 1 A DC lead acid, long life power",
			charge.Label{PrintedV: 12, PrintedA: 1, Outputs: 1, Output: charge.DC, MadeFor: charge.ForLeadAcid},
			"life power is no LiFePO4",
		},
		{
			"Sealed lead acid charger 14.4V 800mA automatic",
			charge.Label{PrintedV: 14.4, PrintedA: 0.8, Outputs: 1, MadeFor: charge.ForLeadAcid, Stops: charge.StopsByItself},
			"says that it stops",
		},
		{
			"LiFePO4 14.6V 5A",
			charge.Label{PrintedV: 14.6, PrintedA: 5, Outputs: 1, MadeFor: charge.ForLithiumIronPhosphate},
			"iron phosphate is not lithium-ion",
		},
		{
			"PD 5V 3A / 9V 3A / 20V 3.25A",
			charge.Label{PrintedV: 20, PrintedA: 3.25, Outputs: 3},
			"the highest of several outputs with the amps printed behind it",
		},
		{"12 V 18 W", charge.Label{PrintedV: 12, PrintedA: 1.5, PrintedW: 18, Outputs: 1}, "amps from watts"},
		{"12V1000mA", charge.Label{PrintedV: 12, PrintedA: 1, Outputs: 1}, "nothing between the figures"},
		{"12V DC 1A for 12V 7Ah battery", charge.Label{PrintedV: 12, PrintedA: 1, Outputs: 1, Output: charge.DC}, "amp-hours are not amps"},
		{
			"charger in good condition, out of the box, leads 2 m, 12V DC 1A",
			charge.Label{PrintedV: 12, PrintedA: 1, Outputs: 1, Output: charge.DC},
			"plain words in, out and leads say nothing",
		},
		{
			"LiFePO4 lithium battery charger 14.6V 2A",
			charge.Label{PrintedV: 14.6, PrintedA: 2, Outputs: 1, MadeFor: charge.ForLithiumIronPhosphate},
			"lithium beside iron phosphate is no second kind",
		},
		{"12.6V 1A lithium", charge.Label{PrintedV: 12.6, PrintedA: 1, Outputs: 1}, "lithium alone is not a kind"},
		{"1000 mA", charge.Label{PrintedA: 1}, "amps alone"},
	}
	for _, tt := range tests {
		got, err := charge.ParseLabel(tt.text)
		if err != nil {
			t.Errorf("%q (%s): %v", tt.text, tt.why, err)
			continue
		}
		tt.want.Text = tt.text
		if d := cmp.Diff(tt.want, got, cmpopts.IgnoreFields(charge.Label{}, "Unclear"), cmpopts.EquateApprox(0, 1e-12)); d != "" {
			t.Errorf("%q (%s) (-want +got):\n%s", tt.text, tt.why, d)
		}
	}
}

func TestWhatALabelLeavesOpenIsSaid(t *testing.T) {
	tests := []struct {
		text, says string
	}{
		{"12V 1A", "AC or DC"},
		{"12V DC 1A", "kind of battery"},
		{"12V DC", "amps are not printed"},
		{"DC 1A", "volts are not printed"},
		{"12V DC AC 1A", "both AC and DC"},
		{"6V 500mA 12V 1A DC", "2 output voltages"},
		{"SLA / LiFePO4 14.6 V 2 A", "more than one kind"},
		{"19 V 3.42 A", "laptop"},
		{"12.6V 1A lithium", "not which kind"},
		{"12V 18W", "follows from the watts"},
		{"centre positive, not centre negative 6V 1A", "both polarities"},
	}
	for _, tt := range tests {
		l, err := charge.ParseLabel(tt.text)
		if err != nil {
			t.Errorf("%q: %v", tt.text, err)
			continue
		}
		if all := strings.Join(l.Unclear, "\n"); !strings.Contains(all, tt.says) {
			t.Errorf("%q: unclear says %q, want %q in it", tt.text, all, tt.says)
		}
	}
	l, err := charge.ParseLabel("OUTPUT: DC 21 V 2 A Li-ion centre positive")
	if err != nil || len(l.Unclear) != 0 {
		t.Errorf("a full label leaves %q open, %v", l.Unclear, err)
	}
}

func TestLabelsThatCannotBeReadAreErrors(t *testing.T) {
	for _, text := range []string{
		"", "charger", "0 V 1 A", "12 V 0 A", "99999999 V", "12 V 5000 A", "INPUT 230V 50Hz 2A", strings.Repeat("9", 5000) + " V",
		strings.Repeat("9", 400) + "V",
	} {
		if l, err := charge.ParseLabel(text); !errors.Is(err, charge.ErrLabel) {
			t.Errorf("%.20q gave %+v, %v; want ErrLabel", text, l, err)
		}
	}
}

func FuzzParseLabel(f *testing.F) {
	for _, s := range []string{
		"12V 1000Ma", "14.7 V 1.5 A", "OUTPUT: 12V DC 1A", "AC 12 V 500 mA", "21V 2A Li-ion", "DC 29.4V==2A",
		"INPUT: 100-240V~ OUTPUT: 12.6V 1A", "\u2393 \u223f 6V 5W", "in out 1V", "output input 1V 1A", "1,1,1V\x00\xff",
		"2V\x1dA Li-ion",
	} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		l, err := charge.ParseLabel(text)
		if err != nil {
			if !errors.Is(err, charge.ErrLabel) {
				t.Fatalf("foreign error %v", err)
			}
			return
		}
		for _, v := range []float64{l.PrintedV, l.PrintedA, l.PrintedW} {
			if math.IsNaN(v) || math.IsInf(v, 0) || v < 0 {
				t.Fatalf("%q gave %+v", text, l)
			}
		}
		if l.PrintedV == 0 && l.PrintedA == 0 {
			t.Fatalf("%q gave nothing and no error", text)
		}
		again, err := charge.ParseLabel(l.Text)
		if err != nil || !cmp.Equal(l, again) {
			t.Fatalf("%q read twice differs: %s %v", text, cmp.Diff(l, again), err)
		}
		c := l.Charger()
		// Where no upper end is known it is zero, beside a lower end that is.
		if c.EndLeastV > c.EndMostV && c.EndMostV != 0 || c.EndLeastV < 0 || math.IsInf(c.EndMostV, 0) {
			t.Fatalf("%q: end %g to %g V", text, c.EndLeastV, c.EndMostV)
		}
	})
}
