package reckon

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/chemistry"
	"example.org/packcheck/drive"
	"example.org/packcheck/internal/quantity"
	"example.org/packcheck/setup"
)

// purchases is what may have to be bought, as somebody would ask for it over a
// counter.
func purchases(a *answer.Assessment, p *setup.Parts) []answer.Purchase {
	var out []answer.Purchase
	add := func(item, text string) {
		if text != "" {
			out = append(out, answer.Purchase{Item: item, Text: text})
		}
	}
	add("Controller", controllerToBuy(a))
	add("Fuse", fuseToBuy(a, p))
	add("Cutoff", cutoffToBuy(a, p))
	add("Charger", chargerToBuy(a))
	return out
}

// forWays says of what is to be bought that it is for the battery as it is, where a way
// out puts another in; where all of them do only that there is no charger for it.
func forWays(list []answer.Purchase, ways []answer.Way, today map[string]string) []answer.Purchase {
	keeps, all := false, true
	for i := range ways {
		other := otherBattery(&ways[i], today)
		keeps, all = keeps || !other, all && !other
	}
	if all {
		return list
	}
	var out []answer.Purchase
	for _, p := range list {
		switch {
		case keeps:
			p.Text = "for the battery as it is now, " + p.Text
		case p.Item == "Charger":
			p.Text = "none for the battery as it is now: no way keeps it. The new one needs a charger made for it."
		default:
			continue
		}
		out = append(out, p)
	}
	return out
}

// otherBattery reports whether a way puts a battery of another kind or size in.
func otherBattery(w *answer.Way, today map[string]string) bool {
	return slices.ContainsFunc(w.Sets, func(s answer.Set) bool {
		switch s.Key {
		case answer.KeyPackLabel, answer.KeyPackChemistry, answer.KeyPackCells, answer.KeyPackJoined:
			return s.Value != today[s.Key]
		}
		return false
	})
}

// must reports whether something to fix asks for one of the changes.
func must(a *answer.Assessment, level answer.Level, changes ...answer.Change) bool {
	return slices.ContainsFunc(a.Findings, func(f answer.Finding) bool {
		return f.Level >= level && slices.Contains(changes, f.Change)
	})
}

func volts(v float64) string { return quantity.Format(quantity.Voltage, v, quantity.Metric) }
func amps(v float64) string  { return quantity.Format(quantity.Current, v, quantity.Metric) }

// controllerToBuy is named where contacts or a missing current limit are what
// has to be changed.
func controllerToBuy(a *answer.Assessment) string {
	if !must(a, answer.FixFirst, answer.FitController, answer.LimitCurrent) {
		return ""
	}
	if a.Launch != nil && a.Launch.Case.LimitA > 0 {
		return "" // there is one: it has to be set, not bought
	}
	text := "a speed control for " + volts(drive.MadeForV(a.Pack.FullV)) + " or more with a current limit"
	if most := leastLimitA(a); !math.IsInf(most, 1) {
		text += " of " + amps(math.Floor(most)) + " or less"
	}
	return text + ". Set the limit as low as it still starts well."
}

// leastLimitA is the lowest of the current limits that findings ask for, +Inf
// where none does.
func leastLimitA(a *answer.Assessment) float64 {
	least := math.Inf(1)
	for _, f := range a.Findings {
		if f.Change == answer.LimitCurrent && f.LimitA > 0 {
			least = min(least, f.LimitA)
		}
	}
	return least
}

// fuseToBuy names standard sizes, or what has to be known or changed before
// any can be named.
func fuseToBuy(a *answer.Assessment, p *setup.Parts) string {
	w := a.Path
	if w == nil {
		return ""
	}
	onFuse := func(f answer.Finding) bool { return f.Item == answer.Fuse && f.Topic == answer.TopicPath }
	sound := slices.ContainsFunc(a.Findings, func(f answer.Finding) bool { return onFuse(f) && f.Level == answer.Fine })
	if sound && !slices.ContainsFunc(a.Findings, func(f answer.Finding) bool { return onFuse(f) && f.Level > answer.Fine && f.Change == answer.FitFuse }) {
		return "the one that is fitted suits"
	}
	switch {
	case len(w.FuseSizesA) > 0: // of the vehicle whose fuse is advised
	case w.FuseLeastA == nil || w.FuseMostA == nil:
		return "none yet: no rating suits this wire and this load. First limit the current or fit thicker wire."
	default: // the amps told are of all vehicles, this of that one
		return "none yet: no standard size suits this wire and this load. First limit the current or strengthen the path."
	}
	text := sizes(w.FuseSizesA) + "; printed with " + volts(math.Ceil(a.Pack.FullV)) + " or more; right at the pack."
	if wire := p.Wire; wire != nil && (wire.Gauge.Assumed || wire.AreaMM2.Assumed) {
		text = "read the size printed on the wire before you buy: it was taken as " + wire.Gauge.String() +
			", and thinner wire needs a smaller fuse. As it was taken: " + text
	}
	return text
}

// sizes lists ratings: "20, 25 A, the smallest that holds".
func sizes(list []float64) string {
	var texts []string
	for _, s := range list {
		texts = append(texts, quantity.Digits(s, 3))
	}
	text := strings.Join(texts, ", ") + " A"
	if len(list) > 1 {
		text += ", the smallest that holds"
	}
	return text
}

// cutoffToBuy gives the setting that suits, where nothing disconnects the pack
// or what does is set wrong.
func cutoffToBuy(a *answer.Assessment, p *setup.Parts) string {
	c := &a.Cutoff
	fitted := slices.ContainsFunc(c.OpensShare, func(n answer.Named) bool { return n.Name != answer.OpensNothing && n.Share >= likelyShare })
	adv := c.Advised
	switch {
	case fitted && !must(a, answer.FixFirst, answer.FitCutoff):
		return "the one that is fitted does"
	case p.Pack.Profile.Family == chemistry.LeadAcid && !must(a, answer.FixFirst, answer.FitCutoff):
		text := "none is needed: vehicles with lead-acid batteries are sold without"
		if !a.Finished() {
			text += ". Stop as soon as it grows slow, and charge it after every ride" + wouldDo(adv)
		}
		return text + "."
	case adv == nil:
		return "none that watches the volts of the whole battery: one that saves its weakest cell opens far too early in many vehicles like this. " +
			"Use a sounder or larger battery, or one whose own electronics watch every cell."
	}
	text := fmt.Sprintf("one that opens at %s after %s and stays open", volts(adv.OpensAtV), delayOf(adv))
	switch {
	case adv.MustLatch:
		text += " until it is reset by hand"
	case adv.ClosesAtV > 0:
		text += "; if it cannot, closes again only at " + volts(adv.ClosesAtV)
	}
	return text + ". Once open it may draw " + amps(adv.StandbyA) + " at most, by its sheet; of one that draws more, or does not say, unplug the battery after every ride."
}

// wouldDo says what a cutoff is set to that nobody needs.
func wouldDo(adv *answer.AdvisedCutoff) string {
	if adv == nil {
		return ""
	}
	return fmt.Sprintf(". One that opens at %s after %s would end the ride in time", volts(adv.OpensAtV), delayOf(adv))
}

// delayOf is the delay of a cutoff that does: any from what rides through the launch to what
// still protects, because no table knows to which ones that are sold can be set.
func delayOf(adv *answer.AdvisedCutoff) string {
	return quantity.FormatRangeOne(quantity.Duration, quantity.Spread(adv.DelayS, adv.DelayS, adv.LongestS), quantity.Metric)
}

// chargerToBuy describes the right charger.
func chargerToBuy(a *answer.Assessment) string {
	if a.Charge.Match == answer.MatchYes {
		return "the one that you have suits"
	}
	if len(unread(a)) > 0 {
		return "the one that you have, if its label says what was not told; else " + a.Charge.Right
	}
	return a.Charge.Right
}
