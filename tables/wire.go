package tables

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"example.org/packcheck/internal/portable"
)

// WireSystem is the system in which a wire's size is given.
type WireSystem int

// The systems.
const (
	Metric     WireSystem = iota // nominal cross-section in mm2, flexible (IEC 60228 class 5)
	AWG                          // American wire gauge (ASTM B258)
	Automotive                   // automotive primary wire gauge (SAE J1128 sizes), thinner than AWG
)

// WireSize is a wire as its owner names it.
type WireSize struct {
	System  WireSystem
	AreaMM2 float64 // Metric: nominal area, 0.05 to 240 mm2
	Gauge   int     // AWG: 40 down to -3 (4/0); Automotive: a size of the table, 18 to 8
	Tinned  bool    // Metric: tinned strands, up to 4 percent more resistance
}

// Wire is what a size means electrically.
type Wire struct {
	Size       WireSize
	Name       string  // "AWG 14", "automotive 14 gauge", "2.5 mm2"
	AreaMM2    float64 // metal cross-section; Metric: the nominal area
	OhmPerM20C float64 // resistance of one metre of one conductor at 20 degC
	Source     string  // source ID of the resistance

	zeroBelowK float64
}

// OhmPerM returns the resistance per metre of one conductor at a temperature
// in degC: R = R20 (234.5 + T)/(234.5 + 20), IEC 60949. Below -200 degC it
// stays at the value of -200 degC.
func (w Wire) OhmPerM(tempC float64) float64 {
	return w.OhmPerM20C * (w.zeroBelowK + max(tempC, -200)) / (w.zeroBelowK + 20)
}

// AWGDiameterMM returns the diameter of a solid wire of this gauge in mm:
// 0.127 x 92^((36-n)/39), ASTM B258-02 (No. 36 is 0.0050 in, No. 4/0, given
// as n = -3, is 0.4600 in).
func AWGDiameterMM(gauge int) float64 {
	return 0.127 * portable.Pow(92, float64(36-gauge)/39)
}

// AWGAreaMM2 returns the cross-section of this gauge in mm2.
func AWGAreaMM2(gauge int) float64 {
	d := AWGDiameterMM(gauge)
	return math.Pi / 4 * d * d
}

// Wire looks up what a size means. AWG is copper of 17.241 Ohm mm2/km (IEC
// 60028) over the area of the diameter law; automotive sizes use their own
// smaller areas; metric sizes use the largest resistance that IEC 60228
// allows for flexible (class 5) conductors, interpolated between the
// standard sizes.
//
// It fails for a size outside the ranges of [WireSize].
func (t *Tables) Wire(size WireSize) (Wire, error) {
	w := Wire{Size: size, zeroBelowK: t.Figure(CopperZeroBelow).Likely}
	resistivity := t.Figure(CopperResistivity) // Ohm m; 1 Ohm m = 1e6 Ohm mm2/m
	switch size.System {
	case AWG:
		if size.Gauge < -3 || size.Gauge > 40 {
			return Wire{}, fmt.Errorf("tables: AWG %d %w (want -3, which is 4/0, to 40)", size.Gauge, ErrNotFound)
		}
		w.Name = "AWG " + gaugeText(size.Gauge)
		w.AreaMM2 = AWGAreaMM2(size.Gauge)
		w.OhmPerM20C = resistivity.Likely * 1e6 / w.AreaMM2
		w.Source = resistivity.Source
	case Automotive:
		area, source, ok := t.automotiveArea(size.Gauge)
		if !ok {
			return Wire{}, notFound("automotive gauge", strconv.Itoa(size.Gauge), t.automotiveSizes())
		}
		w.Name = fmt.Sprintf("automotive %d gauge", size.Gauge)
		w.AreaMM2 = area
		w.OhmPerM20C = resistivity.Likely * 1e6 / area
		w.Source = source
	case Metric:
		if !(size.AreaMM2 >= 0.05 && size.AreaMM2 <= 240) {
			return Wire{}, fmt.Errorf("tables: wire of %g mm2 %w (want 0.05 to 240 mm2)", size.AreaMM2, ErrNotFound)
		}
		name := "class5-plain"
		if size.Tinned {
			name = "class5-tinned"
		}
		c, is := t.conductors.Get(name)
		if !is { // the zero Tables
			return Wire{}, fmt.Errorf("tables: conductor %q %w", name, ErrNotFound)
		}
		w.Name = fmt.Sprintf("%g mm2", size.AreaMM2)
		w.AreaMM2 = size.AreaMM2
		// R goes as 1/area outside the table.
		w.OhmPerM20C = logInterpolate(c.ohmPerKM, size.AreaMM2, -1, -1) / 1000
		w.Source = c.source
	default:
		return Wire{}, fmt.Errorf("tables: wire system %d %w", size.System, ErrNotFound)
	}
	return w, nil
}

// gaugeText prints 0 and below as the trade does: 1/0 to 4/0.
func gaugeText(gauge int) string {
	if gauge <= 0 {
		return fmt.Sprintf("%d/0", 1-gauge)
	}
	return strconv.Itoa(gauge)
}

// conductor is the largest resistance of one class by area.
type conductor struct {
	ohmPerKM []Point // X mm2, Y Ohm/km at 20 degC
	source   string
}

func readConductor(t *Tables, w *row) {
	c := conductor{source: w.source()}
	c.ohmPerKM = w.falling("ohm_per_km", w.curve("area_mm2", span{0.01, 1000}, "ohm_per_km", span{1e-4, 1e4}))
	put(w, &t.conductors, c)
}

// ConductorOhmPerKM returns the largest resistance at 20 degC, in Ohm/km, of
// a standard class and size: class "class5-plain", "class5-tinned" or
// "class2-plain" (classes 1 and 2 agree in these sizes), IEC 60228 Tables 1
// to 3. It fails for a size that the standard does not list.
func (t *Tables) ConductorOhmPerKM(class string, areaMM2 float64) (float64, error) {
	c, ok := t.conductors.Get(class)
	if !ok {
		return 0, notFound("conductor class", class, t.conductors.Names())
	}
	for _, p := range c.ohmPerKM {
		if p.X == areaMM2 {
			return p.Y, nil
		}
	}
	return 0, fmt.Errorf("tables: %g mm2 %w of %s", areaMM2, ErrNotFound, class)
}

// gauge is one automotive size.
type gauge struct {
	number  int
	areaMM2 float64
	source  string
}

// mm2PerCircularMil converts the area of a circle of one mil diameter.
const mm2PerCircularMil = math.Pi / 4 * 0.0254 * 0.0254

func readGauge(t *Tables, w *row) {
	g := gauge{source: w.source(), number: int(w.number("gauge", span{0, 40}))}
	g.areaMM2 = w.number("area_cmil", span{10, 1e6}) * mm2PerCircularMil
	for _, had := range t.gauges {
		if had.Value.number == g.number {
			w.fault("gauge", g.number, "a gauge that is not in the table already")
			return
		}
	}
	put(w, &t.gauges, g)
}

func (t *Tables) automotiveArea(number int) (areaMM2 float64, source string, ok bool) {
	for _, g := range t.gauges {
		if g.Value.number == number {
			return g.Value.areaMM2, g.Value.source, true
		}
	}
	return 0, "", false
}

func (t *Tables) automotiveSizes() []string {
	var numbers []int
	for _, g := range t.gauges {
		numbers = append(numbers, g.Value.number)
	}
	slices.Sort(numbers)
	return strings.Fields(strings.Trim(fmt.Sprint(numbers), "[]"))
}
