package report

import (
	"slices"
	"strconv"
	"strings"

	"example.org/packcheck/answer"
)

// answerWord is the answer to "may it be used like this?".
func answerWord(l answer.Level) string {
	switch l {
	case answer.Fine:
		return "YES"
	case answer.Watch:
		return "YES, WITH CARE"
	case answer.FixFirst:
		return "NOT YET"
	}
	return "NO"
}

// verdict is the answer to the question asked, and what it comes down to.
func (b *builder) verdict() fact {
	f := fact{answerWord(b.a.Verdict), ""}
	dangers, fixes, watches := b.count(answer.Danger), b.count(answer.FixFirst), b.count(answer.Watch)
	switch b.a.Verdict {
	case answer.Fine:
		f.value = b.andLasting(f.name, "as far as these figures go.")
	case answer.Watch:
		f.value = b.andLasting(f.name, things(watches, "thing")+" to watch.", strconv.Itoa(watches)+" to watch.")
	case answer.FixFirst:
		f.value = things(fixes, "thing") + " to put right first" + inBrackets(b.a.PassedOver()) + also(watches, "to watch") + "."
		switch {
		case b.a.TooYoung() != nil:
			rest := also(watches, "to watch")
			if fixes > 1 { // there is room for one of them
				rest = also(fixes-1, "more to put right")
			}
			f.value = "the child is too young for it" + strings.Replace(rest, ",", ";", 1) + "."
		case b.a.PassedOver() != "": // there is no room for both
		case b.batteryItself():
			f.value = "its battery is not in order: " + f.value
		case b.onlyPutAway():
			f.value = "the way it is put away is not in order: " + f.value
		case b.onlyCharging():
			f.value = "its charging is not in order: " + f.value
		}
	default:
		use := "no child may ride it like this"
		switch {
		case b.a.Finished(), b.batteryItself():
			use = "nobody uses or charges this battery"
		case b.onlyPutAway():
			use = "do not put it away like this"
		case b.onlyCharging():
			use = "do not charge it like this"
		case b.bench():
			use = "do not connect it like this"
		}
		f.value = use + ": " + things(dangers, "danger") + also(fixes, "to put right") + "."
	}
	return f
}

// count is how many findings have a level.
func (b *builder) count(l answer.Level) int {
	n := 0
	for _, f := range b.a.Findings {
		if f.Level == l {
			n++
		}
	}
	return n
}

// onlyCharging reports whether the worst is all about charging.
func (b *builder) onlyCharging() bool {
	found := false
	for _, f := range b.a.Findings {
		if f.Level == b.a.Verdict {
			if f.Topic != answer.TopicCharge {
				return false
			}
			found = true
		}
	}
	return found
}

// onlyPutAway reports whether the worst is all about how the battery is kept.
func (b *builder) onlyPutAway() bool {
	return b.onlyCharging() && !slices.ContainsFunc(b.a.Findings, func(f answer.Finding) bool { return f.Level == b.a.Verdict && !f.PutAway() })
}

// allPutAway reports whether nothing but how the battery is kept has to be put right.
func (b *builder) allPutAway() bool {
	return b.onlyPutAway() && !slices.ContainsFunc(b.a.Findings, func(f answer.Finding) bool { return f.Level >= answer.FixFirst && !f.PutAway() })
}

// batteryItself reports whether what was read on the battery is the worst of
// charging: then another charger mends nothing.
func (b *builder) batteryItself() bool { return b.onlyCharging() && b.a.First().RestsBadly() }

// andLasting says behind one of some beginnings how long it lasts, as roomy as its line
// allows. The range is what is left out last, and then the likely value says that it is
// about that: who passes on three lines passes on no more, and dots would tell nothing.
func (b *builder) andLasting(name string, beginnings ...string) string {
	last := ""
	for _, lasting := range b.lasting() {
		for _, beginning := range beginnings {
			if last = beginning + " " + lasting; last == oneLine(name, last) {
				return last
			}
		}
	}
	return last
}

// lasting says in one clause how long it lasts, the roomiest way first.
func (b *builder) lasting() []string {
	switch {
	case b.stuck():
		return []string{b.surelyStuck() + "."}
	case b.a.Ride.End == answer.EndPattern:
		return []string{"It gives the whole pattern."}
	}
	if asked := b.a.Ride.WantedMin; asked != nil && b.a.Ride.WantedShare() < hardlyEver {
		time, f := b.one(minutes, *asked), b.clock()
		return append(ranged("Not for the "+time+" you asked: ", f), ranged("Not "+time+" as asked: ", f)...)
	}
	it, briefly := "It lasts ", "Lasts "
	switch charged := len(b.charged()) == 0; {
	case b.climbs() && !charged:
		it, briefly = "Not full and uphill, it lasts ", "Not full, uphill: "
	case b.climbs():
		it, briefly = "Uphill it lasts ", "Uphill: "
	case !charged:
		it, briefly = "Not full, it lasts ", "Not full: "
	}
	f := b.lasts()
	return append(ranged(it, f), briefly+f.ends+".")
}

// hardlyEver is the share of the draws below which a time that was asked for is told in
// the first line not to be reached. Own choice.
const hardlyEver = 0.01

// ranged says a range in full and as its ends alone.
func ranged(it string, f figure) []string {
	return []string{it + f.brief() + ".", it + f.ends + "."}
}

// lasts is how long the load or the pedal can be held, whatever was asked for.
func (b *builder) lasts() figure {
	path, value := b.lastsAt()
	return b.figure(path, minutes, value)
}

// lastsAt is where the answer has that, and the likely minutes.
func (b *builder) lastsAt() (path string, likely float64) {
	if b.a.Ride.WantedMin != nil {
		return "ride.lasts_pedal_min", b.a.Ride.LastsPedalMin
	}
	return "ride.pedal_min", b.a.Ride.PedalMin
}

// clock is how long it lasts by the clock, whatever was asked for.
func (b *builder) clock() figure {
	if b.a.Ride.WantedMin != nil {
		return b.figure("ride.lasts_clock_min", minutes, b.a.Ride.LastsClockMin)
	}
	return b.figure("ride.clock_min", minutes, b.a.Ride.ClockMin)
}

// things counts in words: "1 danger", "2 dangers".
func things(n int, what string) string {
	text := strconv.Itoa(n) + " " + what
	if n != 1 {
		text += "s"
	}
	return text
}

// also adds a second count where there is one.
func also(n int, what string) string {
	if n == 0 {
		return ""
	}
	return ", " + strconv.Itoa(n) + " " + what
}
