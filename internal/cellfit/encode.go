package cellfit

import (
	"fmt"
	"io"
	"strconv"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/chemistry"
)

// ChemistryFile is a fitted chemistry about to be written.
type ChemistryFile struct {
	Name    string // key in setup files, for instance "my-pack"
	Title   string
	BasedOn string // profile that gives what was not fitted
	Profile chemistry.Profile
	Source  answer.Source // what the figures were fitted to
	// Also are IDs of sources of BasedOn that the groups rest on as well.
	Also []string
	Heat bool // the thermal side was fitted too
	// Acceptance says that how it takes a charge was fitted too.
	Acceptance bool
	Comments   []string // lines at the top of the file
	// Member, where it is not nil, says that the cell is one of a family; its
	// Profile and Share are not looked at. Such files are part of the program,
	// so their curves are thinned out.
	Member *chemistry.Member
}

// WriteChemistry writes the groups that a fit finds as a file that
// [chemistry.Set.Extend] reads.
func WriteChemistry(w io.Writer, c ChemistryFile) error {
	e := &encoder{table: "chemistry"}
	if c.Member != nil {
		e.table, e.restOffV, e.ohmOff = "member", memberOffV, memberOhmOff
	}
	for _, line := range c.Comments {
		e.line("# %s", line)
	}
	e.line("[source.%s]", c.Source.ID)
	e.line("text = %s", quoted(c.Source.Text))
	e.line("known = %s", quoted(c.Source.Known))
	e.line("")
	e.line("[%s.%s]", e.table, c.Name)
	e.line("based_on = %s", quoted(c.BasedOn))
	e.line("title = %s", quoted(c.Title))
	if m := c.Member; m != nil {
		e.line("kind = %s", quoted(string(m.Kind)))
		e.num("cell_ah", m.CellAh)
		e.num("printed_ah", m.PrintedAh)
		e.num("cell_kg", m.CellKg)
	}
	e.name, e.source = c.Name, strings.Join(append([]string{c.Source.ID}, c.Also...), ", ")
	p := c.Profile
	e.group("rest", func() {
		e.curve("charge", "volts", Thinned(p.Rest.VoltsAt, func(float64) float64 { return e.restOffV }))
		e.num("over_full_v", p.Rest.OverFullV)
		e.num("spread_v", p.Rest.SpreadV)
		e.num("surface_v", p.Rest.SurfaceV)
		e.num("under_v", p.Rest.UnderV)
		e.num("settle_h", p.Rest.SettleH)
	})
	e.group("resistance", func() {
		r := p.Resistance
		e.num("reference_c", r.ReferenceC)
		e.curve("charge", "ohm_ah", e.thin(r.OhmAh))
		e.curve("temp_c", "factor", r.TempFactor)
		e.num("uncertainty", r.Uncertainty)
		e.num("at_health_80", r.AtHealth80)
	})
	for _, b := range []struct {
		name   string
		branch chemistry.Branch
	}{{"fast", p.Fast}, {"slow", p.Slow}} {
		e.group(b.name, func() {
			e.curve("charge", "ohm_ah", e.thin(b.branch.OhmAh))
			e.num("tau_s", b.branch.TauS)
			if b.branch.KneeV > 0 {
				e.num("knee_v", b.branch.KneeV)
			}
			if !b.branch.TempFactor.Empty() {
				e.curve("temp_c", "factor", b.branch.TempFactor)
			}
		})
	}
	e.group("wells", func() {
		e.num("c", p.Wells.C)
		e.num("k_per_s", p.Wells.KPerS)
	})
	e.group("capacity", func() {
		e.num("rated_hours", p.Capacity.RatedHours)
		e.num("ratio", p.Capacity.Ratio)
		e.curve("hours", "share", p.Capacity.HourShare)
		e.curve("temp_c", "factor", p.Capacity.TempFactor)
	})
	if a := p.Acceptance; c.Acceptance {
		e.group("acceptance", func() {
			e.num("ohm_ah", a.OhmAh)
			e.num("power", a.Power)
			e.num("offset", a.Offset)
			e.num("gas_c", a.GasC)
			e.num("gas_v", a.GasV)
			e.num("gas_per_100mv", a.GasPer100mV)
			e.num("gas_doubling_k", a.GasDoublingK)
		})
	}
	if c.Heat {
		e.group("heat", func() {
			e.num("specific_j_kg_k", p.Heat.SpecificJKgK)
			e.num("cooling_w_m2_k", p.Heat.CoolingWM2K)
			e.num("shell_share", p.Heat.ShellShare)
			e.num("area_m2_per_kg23", p.Heat.AreaM2PerKg23)
		})
	}
	_, err := io.WriteString(w, e.b.String())
	return err
}

// encoder collects the lines of a file.
type encoder struct {
	b            strings.Builder
	table        string
	name, source string
	restOffV     float64 // by how much a thinned rest curve may lie off; 0 = not thinned
	ohmOff       float64 // the same of a resistance, as a share
}

// How far the thinned curves of a member may lie off.
const (
	memberOffV   = 0.0015
	memberOhmOff = 0.02
)

func (e *encoder) thin(c chemistry.Curve) chemistry.Curve {
	return Thinned(c, func(y float64) float64 { return e.ohmOff * y })
}

func (e *encoder) line(format string, args ...any) { fmt.Fprintf(&e.b, format+"\n", args...) }

// group writes one table with its source.
func (e *encoder) group(name string, body func()) {
	e.line("")
	e.line("[%s.%s.%s]", e.table, e.name, name)
	body()
	e.line("source = %s", quoted(e.source))
}

func (e *encoder) num(key string, x float64) { e.line("%s = %s", key, digits(x)) }

func (e *encoder) curve(x, y string, c chemistry.Curve) {
	e.line("%s = %s", x, list(c.X))
	e.line("%s = %s", y, list(c.Y))
}

func list(x []float64) string {
	parts := make([]string, len(x))
	for i, v := range x {
		parts[i] = digits(v)
	}
	return "[" + strings.Join(parts, ", ") + "]"
}

// digits gives five figures, as a number that TOML accepts.
func digits(x float64) string {
	s := strconv.FormatFloat(x, 'g', 5, 64)
	if mantissa, exponent, ok := strings.Cut(s, "e"); ok && !strings.Contains(mantissa, ".") {
		s = mantissa + ".0e" + exponent
	}
	return s
}

// quoted writes a TOML basic string.
func quoted(s string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range s {
		switch {
		case r == '"' || r == '\\':
			b.WriteByte('\\')
			b.WriteRune(r)
		case r < 0x20 || r == 0x7f:
			b.WriteByte(' ')
		default:
			b.WriteRune(r)
		}
	}
	b.WriteByte('"')
	return b.String()
}
