package report

import (
	"slices"
	"strconv"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/quantity"
)

// reasons are the findings that the page tells, the first one and then gravest first: every danger, and all
// that has to be put right, what nobody gets anywhere with and what asks for a change of
// its own before what another one asks for too. Of what is to be watched it is one for each change, because nobody has
// to fit the same thing twice; to load it less is another thing for a slope than for motors,
// and where some get nowhere the others are told what happens to them.
func (b *builder) reasons() []*answer.Finding {
	type asked struct {
		change answer.Change
		of     answer.Item // that is loaded less
	}
	asks := func(f *answer.Finding) asked {
		if f.Change == answer.LoadLess && f.Level == answer.Watch {
			return asked{f.Change, f.Item}
		}
		return asked{change: f.Change}
	}
	done := map[asked]bool{}
	first := b.a.First()
	var list []*answer.Finding
	if first != nil && first.Level >= answer.Watch {
		list, done[asks(first)] = append(list, first), true
	}
	for _, level := range []answer.Level{answer.Danger, answer.FixFirst, answer.Watch} {
		var again []*answer.Finding
		for i := range b.a.Findings {
			f := &b.a.Findings[i]
			own := f.Change == answer.ChangeNone || f.Change == answer.LookUp || f.EndsRides
			switch {
			case f.Level != level || f == first:
			case level < answer.Danger && !own && done[asks(f)]:
				again = append(again, f)
			default:
				list = append(list, f)
				done[asks(f)] = done[asks(f)] || !own || level > answer.Watch
			}
		}
		if level > answer.Watch {
			list = append(list, again...)
		}
	}
	return list
}

// why is the section of the reasons.
func (b *builder) why(r room) section {
	s := section{title: "Why not", numbered: true}
	switch b.a.Verdict {
	case answer.FixFirst:
		s.title = "Why not yet"
	case answer.Watch:
		s.title = "What to watch"
	}
	list := b.reasons()
	asked, room := b.asksFor(r), r.why
	if asked != nil { // in its place is one question more
		list = slices.DeleteFunc(list, func(f *answer.Finding) bool { return f == asked })
		room--
	}
	list, follow := causes(list)
	if len(follow) > 0 {
		room--
	}
	shown := list[:min(room, len(list))]
	if len(follow) == 0 && len(dangersOf(list[len(shown):])) > 0 { // no danger is left out, however many there are
		shown = shown[:len(shown)-1]
	}
	more := b.moreDangers(follow, list[len(shown):], 2*r.whyLen)
	told := false // what a share is of, once
	for _, f := range shown {
		if f.Level < answer.Danger && more != "" {
			s.items, more = append(s.items, more), ""
		}
		opening := b.opening(f)
		if !told && f.Certainty != answer.Plain {
			opening, told = b.spelled(f), true
		}
		s.items = append(s.items, b.reason(f, opening, r.whyLen))
	}
	if more != "" {
		s.items = append(s.items, more)
	}
	if asked != nil { // it is shown, among the questions
		shown = append(slices.Clone(shown), asked)
	}
	s.more = b.untold(shown)
	return s
}

// causes parts a list in the first danger of each cause, beside all that is no danger, and
// the dangers that follow from one of these: the same change to the same thing ends them.
// One alone follows nothing: to name it takes as much room.
func causes(list []*answer.Finding) (first, follow []*answer.Finding) {
	type cause struct {
		change answer.Change
		topic  answer.Topic
		item   answer.Item
	}
	seen := map[cause]bool{}
	for _, f := range list {
		of := cause{f.Change, f.Topic, f.Item}
		own := f.Change == answer.ChangeNone || f.Change == answer.LookUp
		if f.Level == answer.Danger && !own && seen[of] {
			follow = append(follow, f)
			continue
		}
		first, seen[of] = append(first, f), true
	}
	if len(follow) <= 1 {
		return list, nil
	}
	return first, follow
}

// untold counts what is found and not shown, as the first line counts it.
func (b *builder) untold(shown []*answer.Finding) string {
	left := func(l answer.Level) int {
		n := b.count(l)
		for _, f := range shown {
			if f.Level == l {
				n--
			}
		}
		return n
	}
	var parts []string
	for _, l := range []struct {
		level answer.Level
		words string
	}{{answer.Danger, "in danger"}, {answer.FixFirst, "to put right"}, {answer.Watch, "to watch"}} {
		if n := left(l.level); n > 0 {
			more := ""
			if len(parts) == 0 {
				more = "more "
			}
			parts = append(parts, strconv.Itoa(n)+" "+more+l.words)
		}
	}
	return strings.Join(parts, ", ")
}

// dangersOf are the dangers of a list.
func dangersOf(list []*answer.Finding) (dangers []*answer.Finding) {
	for _, f := range list {
		if f.Level == answer.Danger {
			dangers = append(dangers, f)
		}
	}
	return dangers
}

// moreDangers says in one item the dangers that follow from what is told, and those of a
// list; empty where there are none. Where all have a cause that is told, some may be counted.
func (b *builder) moreDangers(follow, list []*answer.Finding, room int) string {
	const opening = "Danger as well: "
	list = dangersOf(list)
	switch {
	case len(list) > 0:
		return opening + sentence(b.named(slices.Concat(follow, list), room-len(opening)))
	case len(follow) == 0:
		return ""
	}
	text := ""
	for i, f := range follow {
		more, rest := f.Certainty.Hedge()+firstClause(b.say(f.Title)), ""
		if n := len(follow) - i - 1; n > 0 {
			rest = "; and " + strconv.Itoa(n) + " more that the same changes end"
		}
		if i > 0 {
			more = text + "; " + more
		}
		if i > 0 && len(opening+more+rest) > room {
			return opening + sentence(text+"; and "+strconv.Itoa(len(follow)-i)+" more that the same changes end")
		}
		text = more
	}
	return opening + sentence(text)
}

// leastTitle is with how few characters a title still says what it is of. Own choice.
const leastTitle = 26

// named names findings in so many characters, the gravest first: each by its title without why,
// or by a clause that it begins with, as long as there is room to name the things that the others
// are about, and how many are about each. Dots would tell nothing.
func (b *builder) named(list []*answer.Finding, room int) string {
	const between = "; "
	var said []string
	var rest []*answer.Finding
	fits := func(title string, after []*answer.Finding) bool {
		all := append(slices.Clone(said), title)
		if left := slices.Concat(rest, after); len(left) > 0 {
			all = append(all, countedThings(left))
		}
		return len(strings.Join(all, between)) <= room
	}
	for i, f := range list {
		title := f.Certainty.Hedge() + apartFrom(between, firstClause(b.say(f.Title)))
		if !fits(title, list[i+1:]) {
			short, ok := ending(title, min(len(title)-1, leastTitle))
			if short = strings.TrimRight(short, "."); !ok || !fits(short, list[i+1:]) {
				rest = append(rest, f)
				continue
			}
			title = short
		}
		said = append(said, title)
	}
	if len(rest) > 0 {
		said = append(said, countedThings(rest))
	}
	return strings.Join(said, between)
}

// countedThings names what findings are about: "the charger (2), the fuse".
func countedThings(list []*answer.Finding) string {
	var names []string
	n := map[string]int{}
	for _, f := range list {
		name := thing(f)
		if n[name]++; n[name] == 1 {
			names = append(names, name)
		}
	}
	for i, name := range names {
		if n[name] > 1 {
			names[i] += " (" + strconv.Itoa(n[name]) + ")"
		}
	}
	return strings.Join(names, ", ")
}

// thing names what a finding is about in a word or two.
func thing(f *answer.Finding) string {
	if item := clean(string(f.Item)); item != "" {
		return "the " + cut(item, 20)
	}
	switch f.Topic {
	case answer.TopicCharge:
		return "the charging"
	case answer.TopicSpeed:
		return "the speed"
	case answer.TopicLaunch:
		return "the start"
	case answer.TopicPath:
		return "the wiring"
	}
	return "the whole"
}

// reason says a finding in one or two lines: how sure it is, what it is, and
// what it rests on where that was guessed.
func (b *builder) reason(f *answer.Finding, text string, length int) string {
	switch risk := atRisk(f); {
	case f.Level == answer.Danger:
		text = "Danger" + inBrackets(risk) + ": " + text
	case f.Level == answer.FixFirst && risk != "": // who suffers where it stays as it is
		text = capital(risk) + ": " + text
	}
	guess := ""
	if f.Guess != "" && f.Reads != answer.AsUnknown && f.Change != answer.LookUp { // what is not known is no guess
		guess = " (A guess: " + cut(everyday(clean(f.Guess)), 60) + ".)"
	}
	title := shorten(b.say(f.Title), max(min(length, aLine), length-len(text)-len(guess)))
	return text + sentence(title) + guess
}

// inBrackets sets a word behind another one; nothing where there is none.
func inBrackets(word string) string {
	if word == "" {
		return ""
	}
	return " (" + word + ")"
}

// fullyCharged is from where on a battery passes as full. Own choice.
const fullyCharged = 0.95

// charged says of a battery that is not full that all figures are for what is in it, and
// of one that spoils when it is left so that it is to be charged, unless that is the first reason.
func (b *builder) charged() []fact {
	of := b.a.Ride.StartsCharged
	if of >= fullyCharged {
		return nil
	}
	return append([]fact{{"Charged now", b.span("ride.starts_charged", share, of) + "; what follows is for that"}}, b.leftFlat()...)
}

// leftFlat says that a battery of a kind that spoils is to be charged.
func (b *builder) leftFlat() []fact {
	if first := b.a.First(); !b.a.Ride.SpoilsFlat || first != nil && first.Today || b.a.Finished() || b.a.NeverRidden() {
		return nil
	}
	return []fact{{"Left so flat", "it loses capacity for good: charge it today"}}
}

// few are the figures that people ask for, beside those of the original.
func (b *builder) few(r room) section {
	s := section{title: "In figures"}
	if why := b.noRide(); why != "" {
		return section{title: s.title, text: []string{why}, facts: append(b.onTheLevel(), b.leftFlat()...)}
	}
	ride := b.a.Ride
	s.facts = append(s.facts, b.charged()...)
	if b.bench() {
		s.facts = append(s.facts, b.underLoad())
	} else {
		down := b.beside("Pedal down", b.lasts(), b.was("original_pedal_min", minutes))
		down.value += b.allUphill()
		s.facts = append(s.facts, down, fact{pedalClock, b.clock().brief()})
		s.facts = append(s.facts, b.onTheLevel()...)
	}
	if asked := b.asked(); asked != "" {
		s.facts = append(s.facts, fact{asYouAsked, asked})
	}
	if st := b.a.Steady; st != nil {
		speed := b.beside(b.speedName("Speed"), b.figure("steady.speed_kmh", kmPerH, st.SpeedKmh), b.was("original_speed_kmh", kmPerH))
		speed.value += b.withoutRead()
		s.facts = append(s.facts, speed)
	}
	if l := b.a.Launch; l != nil {
		s.facts = append(s.facts, b.beside(capital(startAmps), b.figure("launch.peak_battery_a", amps, about(l.PeakBatteryA)), b.was("original_launch_a", amps)))
	}
	if !b.bench() {
		far := b.figure("ride.distance_km", kilometr, ride.DistanceKm).brief()
		if len(s.facts) < r.figures {
			s.facts = append(s.facts, fact{"Distance", far + b.inTimeAsked()})
		} else if k := slices.IndexFunc(s.facts, func(f fact) bool { return f.name == asYouAsked }); k >= 0 {
			s.facts[k].value = strings.Replace(s.facts[k].value, withPauses, "", 1) + "; " + far // on one line
		} else { // how far it goes stands beside how long it takes for that
			s.facts[slices.IndexFunc(s.facts, func(f fact) bool { return f.name == pedalClock })].value += "; " + far
		}
	}
	s.facts = append(s.facts, b.chargeTimes()...)
	s.facts = s.facts[:min(len(s.facts), r.figures)]
	if len(b.a.Ranges) > 0 && len(s.facts) > 0 && b.a.Draws.Count > 0 {
		s.text = []string{"Likely, and in brackets where " + counted(b.a.Draws.Inside) + " " + b.kindred() + " lie:"}
	}
	return s
}

// underLoad is how long a bench load lasts.
func (b *builder) underLoad() fact {
	text := b.lasts().brief()
	if b.a.Ride.End == answer.EndPattern {
		text += "; then the pattern was over"
	}
	return fact{"Under load", text}
}

// beside is a figure with the original's behind it.
func (b *builder) beside(name string, now figure, was string) fact {
	if was == "" {
		return fact{name, now.brief()}
	}
	then := "original"
	if b.a.Original.Read {
		then = "old battery"
	}
	return fact{name, now.brief() + "; " + then + " " + was}
}

// was is the original's likely figure; empty where there is none.
func (b *builder) was(key string, u unit) string {
	o := b.a.Original
	if o == nil {
		return ""
	}
	var value *float64
	switch key {
	case "original_pedal_min":
		value = o.OriginalPedalMin
	case "original_speed_kmh":
		value = o.OriginalSpeedKmh
	case "original_launch_a":
		value = o.OriginalLaunchA
	}
	if value == nil {
		return ""
	}
	return b.figure("original."+key, u, *value).likely
}

// asked says whether the time that was asked for will do.
func (b *builder) asked() string {
	r := b.a.Ride
	if r.WantedMin == nil {
		return ""
	}
	pauses := withPauses
	if b.bench() && !(r.ClockMin > r.PedalMin) { // a steady load has none
		pauses = ""
	}
	return b.one(minutes, *r.WantedMin) + pauses + ": " + reaches(r.WantedShare())
}

// pedalClock is the name of how long it lasts by the clock.
const pedalClock = "With the pauses"

// asYouAsked is the name of how surely the time asked for is reached, withPauses how that time is counted.
const asYouAsked, withPauses = "As you asked", " with the pauses"

// inTimeAsked says behind a distance that it is that of the time asked for, and not of
// the whole charge; nothing where none was asked for.
func (b *builder) inTimeAsked() string {
	if b.a.Ride.WantedMin == nil {
		return ""
	}
	return " in the " + b.one(minutes, *b.a.Ride.WantedMin) + " asked"
}

// reaches says how surely a time is reached.
func reaches(share float64) string {
	const nearly = 0.9
	switch {
	case counted(share) == "all":
		return "yes"
	case share >= nearly:
		return so("yes", share)
	case share <= 0:
		return "no"
	}
	return shared(share)
}

// overnight says what becomes of a charge that takes longer than anybody stays awake;
// nothing where it does not.
func (b *builder) overnight() string {
	if !b.a.Charge.Overnight() {
		return ""
	}
	return ", paused overnight"
}

// unplug says when the charger must be off, or that its timer ends a charge that has to go
// on: next day, because nobody is awake beside it for that long.
func (b *builder) unplug(hours string) (name, text string) {
	if b.a.Charge.CutShort() {
		return "Its timer ends it", "after " + hours + ", not full: start it again next day"
	}
	return "Unplug after", hours + b.overnight()
}

// chargeTimes are how long the charger takes, where it is one that suits.
func (b *builder) chargeTimes() []fact {
	c := b.a.Charge
	if c == nil || c.Match != answer.MatchYes && c.Match != answer.MatchCare {
		return nil
	}
	var facts []fact
	if c.HoursToFull != nil {
		facts = append(facts, fact{"Charged full in", b.figure("charge.hours_to_full", hours, *c.HoursToFull).brief()})
	}
	if c.UnplugAfterH != nil {
		name, text := b.unplug(b.figure("charge.unplug_after_h", hours, *c.UnplugAfterH).brief())
		facts = append(facts, fact{name, text})
	}
	return facts
}

// rareFate is the share up to which the page is silent on draws that have no ride:
// as many are lost in the error of the draws. Own choice.
const rareFate = 0.01

// sure says how sure the answer is.
func (b *builder) sure() section {
	s := section{title: "How sure"}
	d := b.a.Draws
	var parts []string
	if d.Count > 0 {
		parts = append(parts, quantity.Digits(float64(d.Count), 3)+" "+b.kindred()+" were computed, not tested.")
	}
	if c := b.a.Conflict; c != nil {
		text := "What was measured does not go together"
		if out := b.readingNames(c.LeftOut); len(out) > 0 {
			text += "; the answer does without: " + strings.Join(out, ", ")
		}
		parts = append([]string{sentence(text)}, parts...)
	}
	if apart := b.readApart(); apart != "" {
		parts = append([]string{apart}, parts...)
	}
	if fates := b.fates(rareFate); len(fates) > 0 {
		parts = append(parts, capital(strings.Join(fates, "; "))+".")
	}
	if n := len(b.a.Assumed); n > 0 {
		text := things(n, "value") + " assumed"
		if first := b.a.Assumed[0]; first.Effect >= moving {
			text += ", first of all " + cut(everyday(clean(first.Key)), 60)
		}
		parts = append(parts, sentence(text))
	}
	if d.Rough {
		parts = append(parts, "The ranges rest on few of them and are rough.")
	}
	if len(parts) > 0 {
		s.text = []string{strings.Join(parts, " ")}
	}
	return s
}

// readApart tells of the reading that lies farthest outside of what is foretold with it, by its
// own error: who reads the page sees another figure than the own one.
func (b *builder) readApart() string {
	var most *answer.Reading
	far := 0.0
	for i := range b.a.Readings {
		r := &b.a.Readings[i]
		if r.LeftOut || !r.After.Valid() || !(r.Error > 0) {
			continue
		}
		if by := max(r.Value-r.After.High, r.After.Low-r.Value) / r.Error; by > far {
			most, far = r, by
		}
	}
	if most == nil {
		return ""
	}
	text := capital(b.readingName(most.Key)) + ": read " + orElse(clean(most.Text), b.inUnit(most.Value, most.Unit)) + ", computed " + b.between(most.After, most.Unit)
	if says := clean(most.Explains); says != "" {
		text += "; " + says
	}
	return sentence(text)
}

// safety are the lines that no setup and no layout leaves out.
func (b *builder) safety() section {
	first := "First run: wheels up, then with no child, then with a grown-up beside it and a hand on a switch that cuts the battery off."
	if b.bench() {
		first = "Stay beside it while it runs, on something that does not burn, with a hand on what cuts the battery off."
	}
	s := section{title: "Safety", items: []string{
		"Go by maker's instructions, local codes, licensed practice. A changed vehicle no longer is the one that was tested.",
		first,
		"Charge with the charger made for this battery, and be there and awake. Never bridge what switches it off, fit a larger fuse or bring back a lithium battery drained flat.",
	}}
	if n := len(b.a.Cautions); n > 0 {
		s.more = things(n, "caution")
	}
	return s
}
