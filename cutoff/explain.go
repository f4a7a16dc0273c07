package cutoff

import "example.org/packcheck/answer"

// Explain says what stands behind a finding of this package; false for a code
// that is none of it.
func Explain(code string) (answer.Explanation, bool) { return answer.Explain(Explanations(), code) }

// Explanations returns the explanations of all findings of this package.
func Explanations() []answer.Explanation {
	return []answer.Explanation{
		{
			Code:  CodeNone,
			Means: "As far as anybody has said, nothing switches the battery off when it is empty. The ride ends when the motors give up.",
			Hurts: "By then the weakest cells have been drained too far, or driven backwards. Lead-acid loses capacity for good. Lithium may short inside when somebody charges it again: that can start a fire, days later, indoors.",
			Limit: "The volts at which this kind of cell is harmed, from its sources. A battery of which no electronics were described counts as having none; of a tool battery they often sit in the tool.",
			Do:    "Fit a device that switches off in time and stays off. Until then stop the ride at the first sign of slowing down, and take the battery off.",
		},
		{
			Code:  CodeBelowHarm,
			Means: "There is a cutoff, but it opens at a voltage at which the cells are harmed already.",
			Hurts: "It looks like a protection and is none: each full ride costs capacity, and lithium may become dangerous to charge.",
			Limit: "The chemistry's limit of harm times the number of cells, under the running load.",
			Do:    "Set it higher; the voltage that suits is in the report.",
		},
		{
			Code:  CodeAboveFull,
			Means: "The cutoff opens above the volts of a full battery, so it would never let it run. It was made for another one.",
			Hurts: "Nothing but the ride. Often it is bridged in anger, and then there is none.",
			Limit: "The volts of this battery when full.",
			Do:    "Set it for this battery, or get one for this voltage. Do not bridge it.",
		},
		{
			Code:  CodeWeakCellReversed,
			Means: "When the cutoff opens, the volts of the whole battery look right, but its weakest cell has been driven below zero.",
			Hurts: "Lithium treated so may short inside at the next charge; other cells are worn out soon.",
			Limit: "Zero volts. How five good cells hide a dead one is plain arithmetic: a 12 V battery at 10.5 V may hold five cells at 2.05 V and one at 0.25 V.",
			Do:    "Let it open at more volts, and replace a battery that has drifted so far apart.",
		},
		{
			Code:  CodeWeakCellHarmed,
			Means: "When the cutoff opens, the weakest cell is already below what is good for it.",
			Hurts: "That cell ages fastest and pulls the others along.",
			Limit: "The chemistry's limit of harm under that load.",
			Do:    "More volts at the cutoff, or electronics that watch every cell.",
		},
		{
			Code:  CodeCannotProtect,
			Means: "The battery is so uneven, the load so heavy or so little is known of both, that no one setting of a cutoff on the volts of the whole saves the weakest cell and leaves most of the ride.",
			Hurts: "Set low, the weakest cell is harmed in every full ride; set high, it opens at once.",
			Limit: "The weakest cell saved in nine vehicles of ten, half of the ride left in two of three: own choices.",
			Do:    "A sounder or larger battery, or one whose electronics watch every cell.",
		},
		{
			Code:  CodeLaunchTooDeep,
			Means: "At each start the volts fall so low and for so long that a cutoff cannot tell a start from an empty battery.",
			Hurts: "It either opens at every start or waits so long that it no longer protects.",
			Limit: "15 s as the longest delay that is advised, from what the start takes; any up to 20 s is allowed for. Common practice, no published source.",
			Do:    "A softer start, or a battery that holds its volts better.",
		},
		{
			Code:  CodeMustLatch,
			Means: "After the load is gone the volts of this battery come back almost to full. A cutoff that closes again by itself would close at once.",
			Hurts: "It would drain the battery in many small bites to far below empty.",
			Limit: "How far measured batteries came back, against the volts of a full one.",
			Do:    "One that stays open until somebody resets it by hand.",
		},
		{
			Code:  CodeOpensAtLaunch,
			Means: "A start alone opens the cutoff, although the battery is not empty.",
			Hurts: "The ride stutters or does not begin. People then lower its setting until it protects no more.",
			Limit: "The time that the start holds the volts down, against the delay of the device.",
			Do:    "A longer delay where the finding names one; otherwise a softer start.",
		},
		{
			Code:  CodeEndsRide,
			Means: "The cutoff ends the ride within its first minute, although the battery is not empty.",
			Hurts: "The vehicle stops wherever it is, again and again. People then bridge the cutoff, or lower its setting until it protects no more.",
			Limit: "A minute with the pedal down, from a battery with three tenths of its charge left or more: own choice.",
			Do:    "A lower setting or a longer delay, as far as the battery allows; otherwise a softer start or another battery.",
		},
		{
			Code:  CodeNeverOpens,
			Means: "There is a cutoff, but the battery is empty before it opens.",
			Hurts: "It protects nothing: the battery is drained too far, as it is without any cutoff.",
			Limit: "The volts at which this battery is empty under the load.",
			Do:    "Raise its setting, or fit one that suits this battery.",
		},
		{
			Code:  CodeChatters,
			Means: "When the cutoff opens, the volts recover and it closes again, with the pedal perhaps still down. This repeats.",
			Hurts: "The vehicle starts up unasked, possibly with nobody expecting it, and the battery goes on being drained.",
			Limit: "The closing voltage of the device against the volts that the battery comes back to. Common practice is a device that stays open.",
			Do:    "One that stays open until it is reset by hand.",
		},
		{
			Code:  CodeMayChatter,
			Means: "By the computation the cutoff stays open, but measured batteries have come back above its closing voltage.",
			Hurts: "If it closes, the vehicle starts up unasked.",
			Limit: "Measurements of three batteries of different kinds after a discharge to their end, cited under the source.",
			Do:    "One that stays open, or a closing voltage above the one named.",
		},
		{
			Code:  CodePastSaving,
			Means: "At the end of such a ride the weakest lithium cell is below the last limit.",
			Hurts: "Metal inside it has dissolved and settled elsewhere. When it is charged it may short inside and burn, at once or weeks later.",
			Limit: "1.5 V for a cell: two studies of cells forced far below empty, and an encyclopaedia for the number.",
			Do:    "A cutoff that opens long before. A battery that has come this far is never charged again, by any trick: away from what burns, and to where batteries are collected.",
		},
		{
			Code:  CodeIdleWeek,
			Means: "Left in the vehicle as the ride leaves it, the battery is harmed within a week: what is switched on, and its own loss, drain what is left.",
			Hurts: "Lead-acid loses capacity for good, lithium may become dangerous to charge.",
			Limit: "The chemistry's limit of harm; the week is an own choice, for what a family forgets from one weekend to the next.",
			Do:    "Take it off after every ride, let it cool, charge it the same day.",
		},
		{
			Code:  CodeIdleMonth,
			Means: "Left in the vehicle as the ride leaves it, the battery is harmed within a month.",
			Hurts: "As within a week, only later: a holiday does it.",
			Limit: "The chemistry's limit of harm; the month is an own choice.",
			Do:    "Take it off after every ride and charge it.",
		},
	}
}
