package charge_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/charge"
)

// winter is from the first frost to the Easter holidays.
var (
	autumn = charge.Date{Year: 2026, Month: 10, Day: 31}
	spring = charge.Date{Year: 2027, Month: 4, Day: 1}
)

func keep(t testing.TB, s charge.Store) charge.Stored {
	t.Helper()
	out, err := charge.Keep(s)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// Self-discharge as makers print it. The likely value must come out, and the
// printed ones must lie within least and most.
func TestWhatIsLeftAgreesWithMakersFigures(t *testing.T) {
	tests := []struct {
		chem    string
		months  int
		tempC   float64
		printed []float64 // share left
		within  float64
		source  string
	}{
		{"agm", 3, 25, []float64{0.91}, 0.02, "LC-R061R3P sheet, 20-25 degC"},
		{"agm", 6, 25, []float64{0.82, 0.80}, 0.04, "LC-R061R3P 82 %, NP4-12 80 %"},
		{"agm", 12, 25, []float64{0.64, 0.60}, 0.05, "LC-R061R3P 64 %, NP4-12 60 %"},
		{"agm", 1, 20, []float64{0.97}, 0.02, "\"3 % per month at 20 degC\", held to -/+ 2 %"},
		{"agm", 1, 25, []float64{0.95}, 0.02, "40 Ah sheet, one month"},
		{"agm", 2, 25, []float64{0.90}, 0.04, "40 Ah sheet, two months; -/+ 2 % a month"},
		{"agm", 3, 25, []float64{0.81}, math.Inf(1), "40 Ah sheet, three months: 6.3 % a month, which only the least has to hold"},
		{"li-ion", 1, 25, []float64{0.97, 0.98}, 0.02, "diracdelta.co.uk and yokenergy.com 2 to 3 % a month"},
		{"li-ion", 1, 25, []float64{0.95}, 0.025, "cell specification: more than 95 % after 30 days"},
		{"nimh", 1, 20, []float64{0.70}, 0.02, "diracdelta.co.uk 30 % a month"},
	}
	for _, tt := range tests {
		out := keep(t, charge.Store{
			Pack: pack(t, tt.chem, 6, 7), Charge: 1, TempC: tt.tempC,
			From: autumn, Until: autumn.AddDays(tt.months * 30),
		})
		for _, p := range tt.printed {
			if math.Abs(out.LeftLikely-p) > tt.within+1e-9 {
				t.Errorf("%s, %d months: %.3f left, printed %.2f (%s)", tt.chem, tt.months, out.LeftLikely, p, tt.source)
			}
			if p < out.LeftLeast || p > out.LeftMost {
				t.Errorf("%s, %d months: printed %.2f outside %.3f to %.3f (%s)", tt.chem, tt.months, p, out.LeftLeast, out.LeftMost, tt.source)
			}
		}
	}
}

func TestTheWinterListIsDatedAndInOrder(t *testing.T) {
	tests := []struct {
		name  string
		s     charge.Store
		first string
		last  string
		code  string
		level answer.Level
	}{
		{
			"lead-acid put away half full",
			charge.Store{Pack: pack(t, "agm", 6, 7), Charge: 0.5, TempC: 8},
			"Charge it full before", "Charge it full, let it rest", charge.CodeStoredNotFull, answer.FixFirst,
		},
		{
			"lead-acid put away full",
			charge.Store{Pack: pack(t, "agm", 6, 7), Charge: 1, TempC: 8},
			"It is full", "Charge it full, let it rest", "", 0,
		},
		{
			"lithium put away full",
			charge.Store{Pack: pack(t, "li-ion", 5, 5), Charge: 1, TempC: 12},
			"down to about 50 %", "own charger", charge.CodeStoredTooFull, answer.Watch,
		},
		{
			"lithium put away nearly empty",
			charge.Store{Pack: pack(t, "li-ion", 5, 5), Charge: 0.1, TempC: 12},
			"Charge it to about 50 %", "own charger", charge.CodeStoredRunsEmpty, answer.Danger,
		},
		{
			"lithium left in the toy on standby",
			charge.Store{Pack: pack(t, "li-ion", 5, 5), Charge: 0.5, TempC: 12, StandbyA: 0.005, InVehicle: true},
			"Take the pack off", "own charger", charge.CodeStoredRunsEmpty, answer.Danger,
		},
		{
			"lead-acid part full in hard frost",
			charge.Store{Pack: pack(t, "agm", 6, 7), Charge: 0.3, TempC: -18},
			"Charge it full before", "Charge it full, let it rest", charge.CodeStoredMayFreeze, answer.FixFirst,
		},
		{
			"lead-acid part full in a place with hard frost at times",
			charge.Store{Pack: pack(t, "agm", 6, 7), Charge: 0.3, TempC: 0, ColdestC: -18},
			"Charge it full before", "Charge it full, let it rest", charge.CodeStoredMayFreeze, answer.FixFirst,
		},
	}
	for _, tt := range tests {
		tt.s.From, tt.s.Until = autumn, spring
		out := keep(t, tt.s)
		if len(out.Tasks) < 2 || !strings.Contains(out.Tasks[0].What, tt.first) || !strings.Contains(out.Tasks[len(out.Tasks)-1].What, tt.last) {
			t.Errorf("%s: tasks %+v, want %q first and %q last", tt.name, out.Tasks, tt.first, tt.last)
		}
		for i := 1; i < len(out.Tasks); i++ {
			if out.Tasks[i-1].On.DaysUntil(out.Tasks[i].On) <= 0 {
				t.Errorf("%s: %v comes before %v", tt.name, out.Tasks[i-1].On, out.Tasks[i].On)
			}
		}
		if out.Tasks[0].On != autumn || out.Tasks[len(out.Tasks)-1].On.DaysUntil(spring) != 1 {
			t.Errorf("%s: from %v to %v", tt.name, out.Tasks[0].On, out.Tasks[len(out.Tasks)-1].On)
		}
		if f, ok := find(out.Findings, tt.code); tt.code != "" && (!ok || f.Level != tt.level) {
			t.Errorf("%s: findings %+v, want %s at %v", tt.name, out.Findings, tt.code, tt.level)
		}
		if tt.code == "" && len(out.Findings) != 0 {
			t.Errorf("%s: findings %+v, want none", tt.name, out.Findings)
		}
	}
}

// Data sheets of 7.2 and 20 Ah blocks: a freshening charge at six months at
// the latest at 25 degC.
func TestLeadAcidIsToppedUpWithinSixMonths(t *testing.T) {
	for _, tempC := range []float64{-10, 5, 25, 35} {
		out := keep(t, charge.Store{Pack: pack(t, "agm", 6, 7), Charge: 1, TempC: tempC, From: autumn, Until: autumn.AddDays(500)})
		if out.TopUpDays > 180 {
			t.Errorf("%g degC: topped up after %g days, six months are the most", tempC, out.TopUpDays)
		}
		for i := 1; i < len(out.Tasks); i++ {
			if gap := out.Tasks[i-1].On.DaysUntil(out.Tasks[i].On); gap > 180+8 {
				t.Errorf("%g degC: %d days between charges", tempC, gap)
			}
		}
	}
	// In warmth the loss at its fastest decides: 1 - 0.7 of the charge.
	warm := keep(t, charge.Store{Pack: pack(t, "agm", 6, 7), Charge: 1, TempC: 35, From: autumn, Until: spring})
	if warm.TopUpDays > 100 {
		t.Errorf("35 degC: topped up after %g days", warm.TopUpDays)
	}
}

func TestDatesKeepTheCalendar(t *testing.T) {
	if got := (charge.Date{Year: 2027, Month: 2, Day: 28}).AddDays(1); got != (charge.Date{Year: 2027, Month: 3, Day: 1}) {
		t.Errorf("28 February 2027 and a day: %v", got)
	}
	if got := (charge.Date{Year: 2028, Month: 2, Day: 28}).AddDays(1); got.String() != "2028-02-29" {
		t.Errorf("28 February 2028 and a day: %v", got)
	}
	if got := autumn.DaysUntil(spring); got != 152 {
		t.Errorf("31 October to 1 April: %d days, want 152", got)
	}
	if got := spring.DaysUntil(autumn); got != -152 {
		t.Errorf("backwards: %d", got)
	}
	for _, d := range []charge.Date{{}, {2026, 2, 30}, {2026, 13, 1}, {2026, 1, 0}, {-1, 1, 1}} {
		if d.Valid() {
			t.Errorf("%v is no day", d)
		}
	}
}

func TestStorageOutOfRangeIsAnError(t *testing.T) {
	m := pack(t, "agm", 6, 7)
	good := charge.Store{Pack: m, Charge: 1, TempC: 10, From: autumn, Until: spring}
	for name, change := range map[string]func(*charge.Store){
		"no pack":         func(s *charge.Store) { s.Pack = nil },
		"backwards":       func(s *charge.Store) { s.From, s.Until = s.Until, s.From },
		"no such day":     func(s *charge.Store) { s.Until.Day = 31 },
		"charge above 1":  func(s *charge.Store) { s.Charge = 1.1 },
		"not a number":    func(s *charge.Store) { s.TempC = math.NaN() },
		"negative drain":  func(s *charge.Store) { s.StandbyA = -1 },
		"a hundred years": func(s *charge.Store) { s.Until.Year = 2126 },
	} {
		s := good
		change(&s)
		if _, err := charge.Keep(s); err == nil || !strings.HasPrefix(err.Error(), "charge: ") {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// What draws on the vehicle empties nothing that was taken off it.
func TestThePlanIsOfAPackThatWasTakenOff(t *testing.T) {
	off := charge.Store{Pack: pack(t, "lifepo4", 4, 6), Charge: 1, TempC: 10, From: autumn, Until: spring}
	on := off
	on.StandbyA, on.InVehicle = 0.02, true
	a, b := keep(t, off), keep(t, on)
	if !slices.Equal(a.Tasks, b.Tasks) {
		t.Errorf("taken off: %v; left on until then: %v", a.Tasks, b.Tasks)
	}
	if f, ok := find(b.Findings, charge.CodeStoredRunsEmpty); !ok || strings.Contains(f.Advice, " 1 days") {
		t.Errorf("left on: %+v", b.Findings)
	}
	on.OwnA = on.StandbyA
	if c := keep(t, on); len(c.Tasks) <= len(a.Tasks) {
		t.Errorf("its own electronics go on drawing off the vehicle: %v", c.Tasks)
	}
	if !(b.TopUpDays < a.TopUpDays) {
		t.Errorf("left on it is due after %g days, taken off after %g", b.TopUpDays, a.TopUpDays)
	}
}
