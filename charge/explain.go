package charge

import (
	"slices"

	"example.org/packcheck/answer"
)

// Explain says what stands behind a finding of this package; false for a code
// that is none of it.
func Explain(code string) (answer.Explanation, bool) { return answer.Explain(Explanations(), code) }

// Explanations returns the explanations of all findings of this package: the
// charger, the charge, storage, and what an old battery may be.
func Explanations() []answer.Explanation {
	return slices.Concat(aboutChargers(), aboutPlaces(), aboutKeeping(), aboutVolts())
}

func aboutChargers() []answer.Explanation {
	return []answer.Explanation{
		{
			Code:  CodePurposeUnknown,
			Means: "The charger does not say for what kind of battery it is made.",
			Hurts: "Volts that look right are not enough: how a charge begins and ends differs from kind to kind, and with the wrong end lithium burns.",
			Limit: "How this kind of cell is charged, from its makers' sheets.",
			Do:    "Find its maker and type. Until then use only the charger that came with the battery.",
		},
		{
			Code:  CodeWrongChemistry,
			Means: "The charger is made for another kind of battery than this one.",
			Hurts: "It goes on where it should end, or pushes where it should hold back. Charging is when batteries burn.",
			Limit: "The kinds that charger and battery name.",
			Do:    "Do not connect them. A charger for this kind, this voltage, that stops by itself.",
		},
		{
			Code:  CodeForeignCharger,
			Means: "A battery made for tools is put on a charger that is not its own.",
			Hurts: "Such a battery relies on its charger for watching temperature and cells through the small terminals. Another charger watches nothing.",
			Limit: "The warnings that every such tool carries (IEC 62841-1): recharge only with the charger that the maker names.",
			Do:    "Its own maker's charger and no other, with the battery taken off the vehicle.",
		},
		{
			Code:  CodePowerSupply,
			Means: "This is no charger but a supply that holds a voltage.",
			Hurts: "It neither limits the current at the beginning nor ends the charge. The battery takes all it can and goes on being pushed when full.",
			Limit: "What such supplies are: common practice, no published source.",
			Do:    "Do not connect it, not even for a moment.",
		},
		{
			Code:  CodeGivesAC,
			Means: "The adaptor gives alternating current.",
			Hurts: "It cannot charge; connected to a battery it pushes great currents back and forth and overheats.",
			Limit: "The sign on the label: AC, or a wave.",
			Do:    "Do not connect it. A charger's output says DC.",
		},
		{
			Code:  CodeOutputUnknown,
			Means: "The label was not read far enough to know whether the output is alternating (AC) or direct (DC).",
			Hurts: "If it is alternating, connecting it is dangerous.",
			Limit: "The sign on the label: DC, or a straight line over a broken one.",
			Do:    "Read the line that begins with output. Or measure it without a battery, with a meter set to DC volts: it must show its number steadily.",
		},
		{
			Code:  CodePolarityReversed,
			Means: "Plus and minus of the plug are the other way round than the jack wants.",
			Hurts: "The battery is charged backwards: heat, gas, fire.",
			Limit: "The two small drawings on charger and vehicle.",
			Do:    "Do not connect it, and do not make an adapter by guess.",
		},
		{
			Code:  CodePolarityUnchecked,
			Means: "It is not known which wire of plug or jack is plus.",
			Hurts: "If they do not match, the battery is charged backwards.",
			Limit: "None: it has to be looked up.",
			Do:    "Measure both with a meter before the plug goes in for the first time.",
		},
		{
			Code:  CodeEndVoltsUnknown,
			Means: "Nobody knows what voltage this charger rises to when the battery is full.",
			Hurts: "Half a volt too much for each cell overcharges it; lithium then burns.",
			Limit: "The end voltage of this kind of cell, from its makers' sheets. The volts in large print are often those of the battery, not of the end.",
			Do:    "Look into its papers. A battery is not charged on a guess.",
		},
		{
			Code:  CodeVoltsTooHigh,
			Means: "The charger drives each cell higher than it may go.",
			Hurts: "Lithium overcharged catches fire. Lead-acid loses its water as gas that burns, and heats.",
			Limit: "The most that a cell of this kind may have, from its makers' sheets, with the accuracy of ordinary chargers allowed for.",
			Do:    "Do not connect it. Where the finding says that it may only rise so far, measure once near the end with somebody beside it.",
		},
		{
			Code:  CodeVoltsTooLow,
			Means: "The charger ends below the volts of a full battery.",
			Hurts: "Part of the ride is missing. Lead-acid that never gets full grows hard crystals and dies early.",
			Limit: "The volts of a full battery of this kind.",
			Do:    "A charger for the whole voltage. Never charge half of a row through a tap.",
		},
		{
			Code:  CodeVoltsNotHeld,
			Means: "A simple adaptor: its volts rise as the battery fills, and nothing holds them.",
			Hurts: "It goes by the clock. Forgotten, it overcharges.",
			Limit: "A plain adaptor may stand at one and a half times its printed volts: from memory.",
			Do:    "Set an alarm, stay near, unplug. For lithium: never.",
		},
		{
			Code:  CodeCurrentUnknown,
			Means: "The amps of the charger are not known.",
			Hurts: "Without them nobody can say how hot the battery gets or how long it takes.",
			Limit: "The greatest charging current of this kind of cell.",
			Do:    "Read A or mA on the label.",
		},
		{
			Code:  CodeCurrentTooHigh,
			Means: "The charger pushes more amps than the battery may take.",
			Hurts: "It heats, ages and may vent; far above the limit it is dangerous.",
			Limit: "The greatest charging current of this kind of cell, from its makers' sheets. Three times it counts as far too much, an own choice.",
			Do:    "A charger with at most the amps named.",
		},
		{
			Code:  CodeSlow,
			Means: "A charge takes more than a day.",
			Hurts: "Nothing, if it gets full in the end. Cut short each time, lead-acid dies early.",
			Limit: "A twentieth of the capacity in an hour; an own choice.",
			Do:    "Begin right after the ride, unplug it overnight, and go on next day until it is full; or use a stronger one that the battery allows.",
		},
		{
			Code:  CodeTimer,
			Means: "A clock ends the charge, whatever was in the battery before.",
			Hurts: "After a short ride the full time overcharges it.",
			Limit: "How this kind of cell is charged, from its sources.",
			Do:    "Unplug early after a short ride.",
		},
		{
			Code:  CodeStopUnknown,
			Means: "It is not known whether the charger ends by itself.",
			Hurts: "If it does not, a forgotten night overcharges the battery.",
			Limit: "How this kind of cell is charged, from its sources.",
			Do:    "Treat it as one that does not: an alarm, and somebody near.",
		},
		{
			Code:  CodeNeverStops,
			Means: "The charger goes on when the battery is full.",
			Hurts: "Lithium is overcharged and may burn. Lead-acid dries out, heats and gives off gas that burns; so does nickel at more than a tenth of its ampere-hours.",
			Limit: "How this kind of cell is charged, from its sources.",
			Do:    "For lithium another charger. For lead-acid and nickel the unplugging time in the report, an alarm, and better one that stops.",
		},
		{
			Code:  CodeNeverFull,
			Means: "With this charger the charge ends, or comes to a standstill, before the battery is full.",
			Hurts: "The ride is shorter; lead-acid also ages.",
			Limit: "A full battery, simulated with the same cells as the ride.",
			Do:    "A charger with the voltage and current that the battery's maker gives.",
		},
		{
			Code:  CodeHeatsPack,
			Means: "During the charge itself the cells get too warm.",
			Hurts: "They age; a charge is the worst moment for heat.",
			Limit: "The highest temperature for charging of this kind of cell.",
			Do:    "Less current, a cooler place, and a pause after the ride.",
		},
	}
}
