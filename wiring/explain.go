package wiring

import (
	"slices"

	"example.org/packcheck/answer"
)

// Explain says what stands behind a finding of this package; false for a code
// that is none of it.
func Explain(code string) (answer.Explanation, bool) { return answer.Explain(Explanations(), code) }

// Explanations returns the explanations of all findings of this package: wire
// and joints first, then the fuse.
func Explanations() []answer.Explanation { return slices.Concat(aboutPath(), aboutFuses()) }

func aboutPath() []answer.Explanation {
	return []answer.Explanation{
		{
			Code:  CodeWireCarries,
			Means: "In steady driving the wire stays within the current that its size and insulation may carry.",
			Hurts: "Nothing: this is the good case. It says nothing about a short circuit, which is the fuse's matter.",
			Limit: "Tables of wire for small vehicles and boats (33 CFR 183.425 for gauges, DIN VDE 0298-4 for square millimetres), brought to the temperature of the outing.",
			Do:    "Nothing. Where it is not called fine although it carries, the table was only remembered: compare with the maker's sheet.",
		},
		{
			Code:  CodeWireOverloaded,
			Means: "The wire carries more amps in steady driving than it may for long.",
			Hurts: "It gets hot all along, hottest where it is bundled or covered. Its insulation ages, softens and in the end melts; bare wires then touch.",
			Limit: "What a wire of its size and insulation carries for long, by tables for small vehicles and boats (33 CFR 183.425, DIN VDE 0298-4); where the heat would reach what insulation stands only for seconds, it is called a danger.",
			Do:    "Thicker wire, or less current. Never a larger fuse: it would take away the one thing that protects this wire.",
		},
		{
			Code:  CodeWireThin,
			Means: "The wire is thinner than what is used for single wires outside a sheath.",
			Hurts: "It breaks from being bent, plugged and pulled, long before the current is too much for it. A broken wire with the ends near each other sparks.",
			Limit: "1 square millimetre for a single wire, ISO 10133, clause 7.7, a standard for small boats.",
			Do:    "Put it into a sheath and hold it in place, or take a thicker one.",
		},
		{
			Code:  CodeJointOverloaded,
			Means: "A plug, terminal or switch carries more amps in steady driving than its maker allows.",
			Hurts: "A joint is where wiring fails first: it warms, oxidises, resists more and warms more.",
			Limit: "The rating of the part, printed or usual for its kind.",
			Do:    "A connector made for the current. Two in parallel do not share fairly and are no way out.",
		},
		{
			Code:  CodeJointHot,
			Means: "One joint or switch turns more power into heat than it can get rid of.",
			Hurts: "Three watts in something as small as a blade connector make it too hot to touch, and its plastic housing soft.",
			Limit: "3 W, this project's own warning level; no published source. The resistance of the joint is mostly an estimate.",
			Do:    "Renew it: a fresh joint has a tenth of the resistance of an aged one. Clean metal, firm fit, no wire strands outside.",
		},
		{
			Code:  CodeJointWarm,
			Means: "One joint or switch gets noticeably warm.",
			Hurts: "Little by itself. It is the sign that shows before a joint fails.",
			Limit: "1 W, this project's own warning level; no published source.",
			Do:    "Feel it after ten minutes of driving, with the battery off. What is too warm to hold is renewed.",
		},
		{
			Code:  CodeDropLarge,
			Means: "More than a tenth of the battery's volts is lost between battery and motors.",
			Hurts: "It runs slower and shorter, and what is lost heats wire and joints.",
			Limit: "10 %, what ABYC E-11 (boats) allows for what is not critical.",
			Do:    "Shorter or thicker wire, and fewer and better joints.",
		},
		{
			Code:  CodeNoFuse,
			Means: "There is no fuse between the battery and the rest.",
			Hurts: "If two wires touch, a small battery gives more than a hundred amps for as long as it can. The wire glows within seconds and sets fire to what it lies on.",
			Limit: "33 CFR 183.455 asks for protection of every such wire, close to the battery: a rule for boats, the nearest that exists.",
			Do:    "Fit a fuse right at the battery, of the size that the wire allows. If none fits both wire and load, change the wire or the current, not the rule.",
		},
		{
			Code:  CodeFuseUnknown,
			Means: "Nobody has said whether there is a fuse, or of which kind and size.",
			Hurts: "If there is none, a short circuit makes the wire glow. If there is one, it may be far too large, which comes to the same.",
			Limit: "33 CFR 183.455 asks for protection of every such wire, close to the battery: a rule for boats, the nearest that exists.",
			Do:    "Follow the red wire from the battery: a fuse sits within a hand's breadth of it, often in a plastic holder. Read its number and enter it.",
		},
	}
}
