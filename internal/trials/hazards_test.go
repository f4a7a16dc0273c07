package trials_test

import (
	"errors"
	"os"
	"slices"
	"strings"
	"sync"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/setup"
)

// hazard is a setup that must not be answered milder than an experienced helper
// would answer it.
type hazard struct {
	name  string
	base  string // which vehicle it starts from
	set   string // what is different, see rig.but
	least answer.Level
	codes string // any of these must be found at that level, parted by |; empty: any that the base has not
	why   string
	from  string // where the level comes from

	refused bool // a refusal that shows both readings is right as well
}

// Short names for the levels of the tables.
const (
	watch    = answer.Watch
	fixFirst = answer.FixFirst
	danger   = answer.Danger
)

// Where the levels of the tables come from.
const (
	practice     = "common practice, no published source"
	cfrFuse      = "33 CFR 183.455(b), (c)(1): fuse at most 150 % of the wire's ampacity, within 178 mm of the source, 1016 mm if sheathed"
	cfrWire      = "33 CFR 183.425 Table 5: ampacity at 30 C"
	vdeWire      = "DIN VDE 0298-4:2023-06 Table 11: ampacity of single cores"
	cpscWeld     = "US CPSC Release 92-008 (25 Oct 1991): 18 V on pedal contacts that stood 12 V welded them, the vehicle could not be stopped"
	cpscFire     = "US CPSC recall of 22 Oct 1998: 150 fires of ride-ons, connectors and wiring overheated; remedy a tamper-proof fuse"
	cpscCharger  = "US CPSC ride-on charger recalls about 2000: chargers and wires overheated, five house fires (copy of reports)"
	toyVolts     = "ASTM F963 4.25.2: at most 24 V DC nominal between accessible points (copy of a summary)"
	toySurface   = "ASTM F963 4.25.7: battery surface at most 71 C (copy of a summary)"
	toyMixed     = "ASTM F963 4.25.6: no mixed sizes or capacities in one circuit (copy of a summary)"
	toyCharging  = "IEC 62115:2003 14.12: no driving while charging (copy)"
	breakerAlone = "SAE J553: a type 1 breaker must be used with self-limiting means, such as a main fuse (copy of the abstract)"
	blade        = "ISO 8820-3:2015: 110 % holds 100 h, 135 % 0.75 to 600 s; 32 V or 58 V (copy)"
	cellSheets   = "specifications of 18650 and 21700 power cells: 2.5 to 4.2 V, charge 0 to 50 C, discharge -20 to 75 C (copy)"
	overDeep     = "encyclopaedia text: below 2.4 V irreversible loss, below 1.5 V do not use again (copper bridges) (copy, secondary); Guo et al., Sci. Rep. 6:30248 (2016)"
	overFull     = "IEC 62133-2:2017: upper limit charging voltage 4.25 V per cell (figure from memory)"
	gates        = "TI BQ76942 defaults: no charge at or below 0 C or at or above 55 C (copy)"
	jeita        = "JEITA charging zones: none below 0 C and above 60 C (copy)"
	ironSheets   = "26650 LiFePO4 specifications: charge to 3.65 V, cut at 2.0 V (copy)"
	blockSheets  = "data sheets of 12 V sealed blocks: 14.4 to 15.0 V cycle, at most 0.3 C, 3 C lasting; at rest 12.8 V full, 11.8 V empty (copy)"
	blockStore   = "battery supplier's tips: never below 2 V per cell in storage (copy)"
	modulePower  = "listings of a 12 to 36 V cutoff module: below 1.5 W, up to 83 mA at 18 V (copy, computed)"
	toolPacks    = "tool makers' association: only the original combinations of tool, pack and charger (copy)"
	cpscPacks    = "US CPSC notice of 4 Sep 2025 on reworked packs; only the supplied charger (copy)"
	riderLimit   = "manuals: 29.5 kg in a 6 V one-seater, 59 kg in a 12 V two-seater, 25 kg in a 12 V board car (copy)"
	speedClaims  = "makers' claims of 8 km/h for 12 V; a 24 V go-kart for 3 to 8 years designed for 12.9 km/h (copy)"
	reaction     = "Dev. Med. Child Neurol. 1984; 26:490-494: reaction 465 ms at 5 years (copy); energy goes with the square of the speed"
	tipping      = "ASTM F963 4.15: stability on 10 degrees (17.6 %) (copy, partly garbled); EN 71-1:2005+A8 brake test on 10 degrees (copy)"
	tabs         = "rule of the trade: a 6.3 mm tab carries 15 to 20 A (memory)"
	motorHeat    = "IEC 60085 insulation classes; mentor of a robotics contest: a blocked 550 motor is destroyed almost at once (copy)"
	weakCell     = "arithmetic: five cells at 15.0 V with four at 3.40 V leave 1.40 V for the fifth (computed)"
	equalising   = "Ohm: two packs of 46.5 mOhm, 21.0 V onto 18.0 V, 32 A (computed)"
	contradicts  = "both cannot be true; which of them is wrong decides a danger"
)

func hazards() []hazard {
	return slices.Concat(voltHazards(), fuseHazards(), wireHazards(), cutoffHazards(), restHazards(), chargerHazards(),
		joinedHazards(), contradictionHazards(), speedHazards(), rideHazards(), heatHazards(), storageHazards(), benchHazards(), aboardHazards(), typedHazards(), keptHazards(), againHazards(), freshHazards())
}

// tried reports whether a row of a long table is tried now: all of them when
// there is time (PACKCHECK_SLOW=1), else every ninth.
func tried(row int) bool { return os.Getenv("PACKCHECK_SLOW") != "" || row%9 == 0 }

func TestNoHazardIsToldMilderThanItIs(t *testing.T) {
	t.Parallel()
	rows := hazards()
	if len(rows) < 150 {
		t.Errorf("%d hazards, want 150 at least", len(rows))
	}
	names := map[string]bool{}
	for _, h := range rows {
		if names[h.name] || h.why == "" || h.from == "" {
			t.Errorf("%s: twice, or without why or source", h.name)
		}
		names[h.name] = true
	}
	bases := map[string]levels{}
	for name, r := range rigs() {
		if _, err := r.assess(few); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		bases[name] = sync.OnceValues(r.levels)
	}
	for i, h := range rows {
		if !tried(i) {
			continue
		}
		t.Run(h.name, func(t *testing.T) {
			t.Parallel()
			checkHazard(t, h, bases[h.base])
		})
	}
}

// levels gives the worst level of each code that a rig has.
type levels func() (map[string]answer.Level, error)

func (r rig) levels() (map[string]answer.Level, error) {
	a, err := r.assess(128)
	if err != nil {
		return nil, err
	}
	out := map[string]answer.Level{}
	for _, f := range a.Findings {
		out[f.Code] = max(out[f.Code], f.Level)
	}
	return out, nil
}

func checkHazard(t *testing.T, h hazard, base levels) {
	t.Helper()
	told := rigNamed(t, h.base).but(h.set)
	a, err := told.assess(128)
	var faults setup.Faults
	switch {
	case errors.As(err, &faults):
		if !h.refused {
			t.Errorf("refused, want %v: %v", h.least, err)
		}
		return
	case err != nil:
		t.Errorf("cannot be computed, want %v: %v", h.least, err)
		return
	}
	hold(t, a, told)
	codes := strings.Split(h.codes, "|")
	var had map[string]answer.Level // asked for where it is held against only
	if h.codes == "" {
		if had, err = base(); err != nil {
			t.Fatal(err)
		}
	}
	for _, f := range a.Findings {
		named := h.codes != "" && slices.Contains(codes, f.Code)
		raised := h.codes == "" && had[f.Code] < h.least
		if f.Level >= h.least && (named || raised) {
			t.Logf("%v by %v %s", h.least, f.Level, f.Code)
			return
		}
	}
	t.Errorf("want %v (%s) %s: verdict %v; %s", h.least, h.why, h.codes, a.Verdict, strings.Join(findingsAt(a, answer.Watch), ", "))
}
