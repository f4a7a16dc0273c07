package charge

import (
	"errors"
	"fmt"
	"math"

	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/chemistry"
)

// Codes of the findings on a pack put away.
const (
	CodeStoredNotFull    = "stored-not-full"     // lead-acid put away part charged
	CodeStoredTooFull    = "stored-too-full"     // lithium put away full
	CodeStoredRunsEmpty  = "stored-runs-empty"   // empty before it is wanted again
	CodeStoredNeedsTopUp = "stored-needs-top-up" // low before it is wanted again
	CodeStoredConnected  = "stored-connected"    // left on the vehicle
	CodeStoredMayFreeze  = "stored-may-freeze"   // lead-acid in frost
	CodeStoredTooHot     = "stored-too-hot"      // above what its cells may be kept at
)

const (
	// monthDays is the month of the figures for self-discharge.
	monthDays = 30.0
	// topUpAt is the charge at which a stored pack is charged again: lead-acid
	// before it falls to the 2 V per cell that suppliers name as the least,
	// which is a quarter, with a good margin; the others before they run low.
	leadTopUpAt, otherTopUpAt = 0.70, 0.20
	// hottestStoreC is the most that data sheets of lithium cells allow for a
	// month of storage; from memory. Lead-acid loses its charge within weeks there.
	hottestStoreC = 60
	// mostDays bounds a plan.
	mostDays = 3660
	// leastFull is the charge from which on lead-acid counts as put away full,
	// mostFull that above which lithium counts as put away full. Own choices.
	leastFull, mostFull = 0.95, 0.9
	// standbyShare is the share of a full charge from which on what is connected
	// takes more than a shelf does. Own choice.
	standbyShare = 0.05
)

// Store is a pack put away.
type Store struct {
	Pack      *battery.Model
	Charge    float64  // state of charge when put away, 0..1
	From      Date     // put away
	Until     Date     // wanted again
	TempC     float64  // mean temperature of the place, deg C
	ColdestC  float64  // the coldest that it gets there, deg C, for what may freeze; above TempC it counts as that
	StandbyA  float64  // what still draws from it; 0 = disconnected
	OwnA      float64  // of that, what its own electronics draw on the vehicle or off it
	DrawnBy   []string // setup keys of what draws
	InVehicle bool     // left in the toy
}

// Task is one line of the list for the winter.
type Task struct {
	On   Date
	What string // plain sentence
}

// Stored is what becomes of a pack in store.
type Stored struct {
	Days float64
	// LeftLeast, LeftLikely and LeftMost are the state of charge at the end
	// if nobody charges it meanwhile, 0..1.
	LeftLeast, LeftLikely, LeftMost float64
	RestV                           float64 // rested volts of the pack then, likely
	// TopUpDays is the time from the charge that it is best put away at to the next
	// charge that is due, with all that is connected.
	TopUpDays float64
	Tasks     []Task // dated, in order, of a pack that is taken off the vehicle
	Findings  []answer.Finding
}

// errStore is wrapped by the errors of [Keep].
var errStore = errors.New("charge: cannot plan the storage")

// Keep follows a pack in store: what is left of its charge, when it must be
// topped up, at what charge lithium should be put away, as a dated list. The
// loss by itself is a constant share of the full charge per day, as makers
// print it. It returns an error when a date or the charge is out of range.
func Keep(s Store) (Stored, error) {
	if s.Pack == nil {
		return Stored{}, fmt.Errorf("%w: no pack", errStore)
	}
	if !s.From.Valid() || !s.Until.Valid() {
		return Stored{}, fmt.Errorf("%w: no such day: %v or %v", errStore, s.From, s.Until)
	}
	days := s.From.DaysUntil(s.Until)
	if days < 1 || days > mostDays {
		return Stored{}, fmt.Errorf("%w: from %v until %v is %d days (want 1 to %d)", errStore, s.From, s.Until, days, mostDays)
	}
	for _, v := range []struct {
		name         string
		value, lo, h float64
	}{
		{"Charge", s.Charge, 0, 1},
		{"TempC", s.TempC, battery.LeastTempC, battery.MostTempC},
		{"ColdestC", s.ColdestC, battery.LeastTempC, battery.MostTempC},
		{"StandbyA", s.StandbyA, 0, 100},
		{"OwnA", s.OwnA, 0, 100},
	} {
		if !(v.value >= v.lo && v.value <= v.h) {
			return Stored{}, fmt.Errorf("%w: %s is %g (want %g to %g)", errStore, v.name, v.value, v.lo, v.h)
		}
	}
	out := Stored{Days: float64(days)}
	least, likely, most := s.Pack.Spec().Profile.MonthlyLoss(s.TempC)
	left := func(monthly float64) float64 { return max(0, s.Charge-out.Days*s.perDay(monthly)) }
	out.LeftLeast, out.LeftLikely, out.LeftMost = left(most), left(likely), left(least)
	out.RestV = s.Pack.RestedV(s.Pack.StateAt(out.LeftLikely, referenceC))
	out.TopUpDays = s.topUpDays()
	out.Tasks = s.tasks()
	out.Findings = s.findings(out)
	return out, nil
}

// perDay returns the share of the full charge lost in a day, at a loss by itself
// of monthly.
func (s *Store) perDay(monthly float64) float64 {
	return monthly/monthDays + s.StandbyA*24/s.Pack.FullAh()
}

// stored returns the charge at which the chemistry is kept.
func (s *Store) stored() float64 { return s.Pack.Spec().Profile.Charge.StorageCharge }

// topUpAt returns the charge at which the pack must be charged again.
func (s *Store) topUpAt() float64 {
	if s.Pack.Spec().Profile.Family == chemistry.LeadAcid {
		return leadTopUpAt
	}
	return otherTopUpAt
}

// SpoilsFlat reports whether a pack that is left charged so little (0 to 1) loses capacity for
// good (source "lead-sulfation"): lead-acid from where it is topped up in store.
func SpoilsFlat(p chemistry.Profile, share float64) bool {
	return p.Family == chemistry.LeadAcid && share < leadTopUpAt
}

// topUpDays returns the days from the right storage charge to the next charge
// that is due, by the loss (taken at its most) and by the makers' calendar,
// whichever is sooner.
func (s *Store) topUpDays() float64 {
	days := math.Inf(1)
	_, _, most := s.Pack.Spec().Profile.MonthlyLoss(s.TempC)
	if loss := s.perDay(most); loss > 0 {
		days = (s.stored() - s.topUpAt()) / loss
	}
	if months := s.Pack.Spec().Profile.Keeping.TopUpMonths; months > 0 {
		days = min(days, months*monthDays)
	}
	return min(max(days, 1), mostDays)
}

// offDays is topUpDays of a pack that was taken off the vehicle.
func (s *Store) offDays() float64 {
	off := *s
	off.StandbyA = min(s.OwnA, s.StandbyA)
	return off.topUpDays()
}

// tasks writes the dated list of a pack that is taken off the vehicle.
func (s *Store) tasks() []Task {
	p := s.Pack.Spec().Profile
	lead := p.Family == chemistry.LeadAcid
	var t []Task
	add := func(on Date, what string) { t = append(t, Task{on, what}) }

	first := "Take the pack off the vehicle, so that nothing draws from it."
	switch {
	case lead && s.Charge < leastFull:
		add(s.From, first+" Charge it full before putting it away.")
	case lead:
		add(s.From, first+" It is full: put it away like this.")
	case s.Charge > s.stored()+0.15:
		add(s.From, first+fmt.Sprintf(" Use it down to about %.0f %% before putting it away.", s.stored()*100))
	case s.Charge < s.stored()-0.15:
		add(s.From, first+fmt.Sprintf(" Charge it to about %.0f %% on its own charger before putting it away.", s.stored()*100))
	default:
		add(s.From, first+" Its charge is right for keeping.")
	}
	step := max(1, int(s.offDays()))
	// A first stretch that begins with a wrong charge is put right on the first
	// day, so all stretches are the same length.
	for on := s.From.AddDays(step); on.DaysUntil(s.Until) > 7; on = on.AddDays(step) {
		if lead {
			add(on, "Charge it full again.")
		} else {
			add(on, fmt.Sprintf("Look at its charge and bring it back to about %.0f %%.", s.stored()*100))
		}
	}
	if lead {
		add(s.Until.AddDays(-1), "Charge it full, let it rest overnight and measure its volts before the first ride.")
	} else {
		add(s.Until.AddDays(-1), "Charge it full on its own charger, at room temperature, with somebody present.")
	}
	return t
}

// inStore says that a finding is about keeping the battery.
func inStore(f answer.Finding) answer.Finding {
	f.Topic, f.Item, f.Charging = answer.TopicCharge, answer.Battery, true
	return f
}

// findings says what is wrong with putting it away so.
func (s *Store) findings(out Stored) []answer.Finding {
	p := s.Pack.Spec().Profile
	var fs []answer.Finding
	lead := p.Family == chemistry.LeadAcid
	switch {
	case lead && s.Charge < leastFull:
		fs = append(fs, inStore(answer.Finding{
			Code: CodeStoredNotFull, Level: answer.FixFirst, Harm: answer.Part,
			Unit: "share", Found: s.Charge, Limit: leastFull, Want: answer.Above, Source: "lead-sulfation",
			Title:  "A lead-acid battery must be put away full: left part charged it sulfates and loses capacity for good.",
			Advice: "Charge it within a day of the last ride, every time.",
			Change: answer.KeepCharged, Decides: []string{answer.KeyPackCharge, answer.KeyPackChemistry},
		}))
	case p.Family == chemistry.Lithium && s.Charge > mostFull:
		fs = append(fs, inStore(answer.Finding{
			Code: CodeStoredTooFull, Level: answer.Watch, Harm: answer.Wear,
			Unit: "share", Found: s.Charge, Limit: s.stored(), Source: "storage-lithium",
			Title:   "Lithium ages fastest when kept full.",
			Advice:  fmt.Sprintf("Put it away at about %.0f %% and charge it full just before the first ride.", s.stored()*100),
			Decides: []string{answer.KeyPackCharge, answer.KeyPackChemistry},
		}))
	}
	fs = append(fs, s.runningDown(out)...)
	if s.StandbyA > 0 || s.InVehicle {
		fs = append(fs, s.connected(out))
	}
	if s.TempC > hottestStoreC {
		f := inStore(answer.Finding{
			Code: CodeStoredTooHot, Level: answer.FixFirst, Harm: answer.Part,
			Unit: "degC", Found: s.TempC, Limit: hottestStoreC, Source: "storage-lithium",
			Title:  "This place is hotter than any battery may be kept at.",
			Advice: "Keep it in a cool, dry place, away from anything that burns.",
			Change: answer.KeepCharged, Decides: []string{answer.KeyStorageTemperature},
		})
		if p.Family == chemistry.Lithium {
			f.Level, f.Harm = answer.Danger, answer.House
		}
		fs = append(fs, f)
	}
	if freezeC, coldestC := freezingC(out.LeftLeast), min(s.TempC, s.ColdestC); lead && coldestC < freezeC {
		fs = append(fs, inStore(answer.Finding{
			Code: CodeStoredMayFreeze, Level: answer.FixFirst, Harm: answer.Part,
			Unit: "degC", Found: coldestC, Limit: freezeC, Want: answer.Above, Source: "lead-freezing",
			Title:  "The battery may freeze here as its charge falls, and burst.",
			Advice: "Keep it charged or in a warmer place. Never charge or use a frozen or swollen battery.",
			Change: answer.KeepCharged, Decides: []string{answer.KeyStorageTemperature, answer.KeyPackCharge},
		}))
	}
	answer.Sort(fs)
	return fs
}

// runningDown judges what is left at the end at the fast end of what makers
// print. Lithium that was drained to nothing is charged again by somebody.
func (s *Store) runningDown(out Stored) []answer.Finding {
	p := s.Pack.Spec().Profile
	f := inStore(answer.Finding{
		Code: CodeStoredNeedsTopUp, Level: answer.Watch, Harm: answer.Wear,
		Unit: "share", Found: out.LeftLeast, Limit: s.topUpAt(), Want: answer.Above, Source: p.Keeping.Source,
		Title:  "It needs a charge before the end of the storage.",
		Advice: fmt.Sprintf("Top it up every %.0f days.", math.Floor(out.TopUpDays)),
		Change: answer.KeepCharged, Habit: answer.HabitTopUp,
		Decides: []string{
			answer.KeyStorageFrom, answer.KeyStorageUntil, answer.KeyStorageTemperature, answer.KeyPackCharge, answer.KeyPackChemistry,
		},
	})
	switch {
	case out.LeftLeast <= 0: // held at 0, so that nothing comes near it by a hair
		f.Code, f.Level, f.Harm = CodeStoredRunsEmpty, answer.FixFirst, answer.Part
		f.Title = "It may be empty before the end of the storage."
		if p.Family == chemistry.Lithium {
			f.Level, f.Harm = answer.Danger, answer.House
			f.Title = "It may be ruined in storage: drained below what a lithium pack survives."
		}
		f.Advice = fmt.Sprintf("Keep it disconnected, in a cool dry place, and even so top it up every %.0f days at the latest.", math.Floor(s.offDays()))
	case out.LeftLeast >= s.topUpAt()*(1-rounding):
		return nil
	}
	if s.drawnShare(out) >= s.Charge { // whatever it loses by itself
		f.Decides = append([]string{answer.KeyStorageConnected, answer.KeyPackChemistry}, s.DrawnBy...)
	}
	return []answer.Finding{f}
}

// drawnShare is the share of a full charge that goes into what is connected.
func (s *Store) drawnShare(out Stored) float64 { return s.StandbyA * 24 * out.Days / s.Pack.FullAh() }

// connected judges a pack that stays on the vehicle.
func (s *Store) connected(out Stored) answer.Finding {
	f := inStore(answer.Finding{
		Code: CodeStoredConnected, Level: answer.Watch, Harm: answer.Wear,
		Unit: "A", Found: s.StandbyA, Reads: answer.AsTold, Source: "storage-lithium",
		Title:   "A pack left in the vehicle goes on being drained, and a fault there has no one watching it.",
		Advice:  "Take the pack out for the winter.",
		Change:  answer.KeepCharged,
		Decides: []string{answer.KeyStorageConnected},
	})
	if s.drawnShare(out) > standbyShare {
		f.Decides = append(f.Decides, s.DrawnBy...)
		f.Level, f.Harm, f.Reads = answer.FixFirst, answer.Part, answer.AsNumber
	}
	if s.Pack.Spec().Profile.Family == chemistry.Lithium {
		f.Level, f.Harm = answer.FixFirst, answer.House
	}
	return f
}

// freezingC returns about where the acid of a sealed lead-acid cell at the
// given charge freezes (source "lead-freezing").
// Sealed cells hold stronger acid than this flooded table; it errs warm.
func freezingC(z float64) float64 {
	table := chemistry.Curve{X: []float64{0, 0.2, 0.4, 0.6, 0.8, 1}, Y: []float64{-7, -10, -16, -25, -38, -58}}
	return table.At(z)
}
