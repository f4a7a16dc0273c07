package judge

import "example.org/packcheck/answer"

// Explanations returns the explanations of all findings of this package.
func Explanations() []answer.Explanation {
	return []answer.Explanation{
		{
			Code:  CodeNotTold,
			Means: "Something was left out that decides whether somebody may be hurt: the wire, the slope, the age of the child, how far the fuse is from the battery.",
			Hurts: "Nothing by itself. But what is not known cannot be called fine.",
			Limit: "None. Each of these has plausible values at which other findings would be a danger.",
			Do:    "Look, and enter what you see.",
		},
		{
			Code:  CodeCannotKeepGoing,
			Means: "It may jerk forward, but battery and wires together cannot give what steady driving takes.",
			Hurts: "It is no ride, and whatever limits it gets hot.",
			Limit: "The current that driving takes, against what can flow at all.",
			Do:    "Find the part with too much resistance: a worn battery, thin wire, a bad joint, a small converter.",
		},
		{
			Code:  CodeDoesNotGo,
			Means: "On this ground and slope, with this rider, the vehicle does not get going: its motors stand, or its wheels spin on the spot.",
			Hurts: "Motors that do not turn take their greatest current and no air: they burn within seconds, and children keep the pedal down.",
			Limit: "None: what it takes to move, against what motors and tyres can push.",
			Do:    "Keep to firmer or flatter ground, let less ride, or look for what rubs.",
		},
		{
			Code:  CodeCannotSupply,
			Means: "Before it is empty the battery can no longer give what the load asks for.",
			Hurts: "Its volts collapse; a load that insists drags it below what is good for it.",
			Limit: "The power or current of the load against what the battery can give at that charge.",
			Do:    "Ask for less, end it earlier, or use a battery for that current.",
		},
		{
			Code:  CodeEndsAtOnce,
			Means: "Under this load the volts are below the end from the first moment on.",
			Hurts: "Nothing; there is no discharge to speak of.",
			Limit: "The end voltage in the setup.",
			Do:    "Less current, more charge to begin with, or a lower end, if the battery's maker allows it.",
		},
		{
			Code:  CodeBarelyMoves,
			Means: "It gets going here, and then does less than a quarter of the speed that its wheels have in the air, or stands after a few minutes because the motors weaken as they get hot.",
			Hurts: "The motors take three quarters and more of what they do blocked and turn it into heat: they burn out within minutes.",
			Limit: "A quarter of the speed of free wheels, or five minutes with more than half of the charge left: own choices.",
			Do:    "Let go of the pedal. Firmer or flatter ground, or less to carry.",
		},
		{
			Code:  CodeToAStandstill,
			Means: "Nothing ends the ride but the battery giving out: it gets slower and stops.",
			Hurts: "By then it is drained deeper than it should be, ride after ride.",
			Limit: "None: it follows from nothing opening before.",
			Do:    "Stop when it gets slower. A cutoff does it for you.",
		},
		{
			Code:  CodeReadingsDisagree,
			Means: "Among what was measured, not all can be true of one vehicle, whatever it may be.",
			Hurts: "An answer that rests on a wrong reading is wrong and looks sure.",
			Limit: "How often honest readings with the usual errors would disagree this much by chance; it stands in the report.",
			Do:    "Measure the one named once more, in the way that the report describes. The answer does without it meanwhile.",
		},
		{
			Code:  CodeFuseOpened,
			Means: "A fuse was seen to open while the vehicle was used. From how long it took, at least the current in the finding flowed.",
			Hurts: "The same fault comes again with the next fuse, and heats wire, motors and pedal switch each time.",
			Limit: "What the fuse holds for ever, by the standard of its form.",
			Do:    "Look for wheels that rub or were blocked, chafed wire and a stuck switch. Fit one of the same rating, never a larger one.",
		},
		{
			Code:  CodeCutoffCannotProtect,
			Means: "The battery is so uneven, or the load so heavy, that no cutoff on the volts of the whole saves the weakest cell.",
			Hurts: "The weakest cell is harmed in every full ride.",
			Limit: "Settings were tried upwards until the ride would have become useless; how far that is, is an own choice.",
			Do:    "A sounder or larger battery, or one whose electronics watch every cell.",
		},
		{
			Code:  CodePackWorn,
			Means: "The battery holds much less than when it was new.",
			Hurts: "Below eight tenths it is past its usual life; below half some of its cells are as good as dead, and those get hot.",
			Limit: "80 % is when batteries are commonly replaced (IEEE 1188, from memory); half is an own choice.",
			Do:    "Replace it and hand the old one in. Watch for heat, swelling and a ride that ends suddenly.",
		},
		{
			Code:  CodeCellsAssumed,
			Means: "Nothing says of what kind the cells are; the likeliest kind was taken.",
			Hurts: "Charger, cutoff and fuse hang on the kind. The wrong charger on lithium is a fire.",
			Limit: "None: it has to be read.",
			Do:    "Read it off the battery (Li-ion, LiFePO4, Pb, AGM, NiMH) or ask its maker, and enter it.",
		},
		{
			Code:  CodeBlocksUnclear,
			Means: "The label names several batteries in one, but not whether they stand in a row or side by side.",
			Hurts: "In a row they have twice the volts; side by side they do not. Everything else follows from it.",
			Limit: "None: it has to be looked at.",
			Do:    "Plus of the one to minus of the other is in a row; plus to plus is side by side. Write the volts of the whole.",
		},
		{
			Code:  CodePathUnknown,
			Means: "Nothing was said of the wires and of a fuse.",
			Hurts: "A short circuit is judged by both. Without a fuse that suits the wire it glows.",
			Limit: "The rule for a fuse near the battery, 33 CFR 183.455.",
			Do:    "Enter the wire and the fuse.",
		},
		{
			Code:  CodeBareBench,
			Means: "A battery is to be discharged on a bench without any fuse.",
			Hurts: "If two wires touch, hundreds of amps flow until something burns.",
			Limit: "The rule for a fuse near the battery, 33 CFR 183.455.",
			Do:    "A fuse that suits the wire, before anything is connected.",
		},
		{
			Code:  CodeFuseEndsRide,
			Means: "In the course of an ordinary ride, with its starts and pauses, the fuse opens.",
			Hurts: "The ride ends, and somebody will want to fit a larger one.",
			Limit: "The times of the fuse, even the slowest that its standard allows, against the current of the whole ride.",
			Do:    "Less current. Thicker wire with the fuse that belongs to it. Never only a larger fuse.",
		},
		{
			Code:  CodeFuseMayEndRide,
			Means: "A fuse at the fast edge of what its standard allows opens in an ordinary ride; another of the same size does not.",
			Hurts: "It stops without a cause that anybody can find.",
			Limit: "The fast edge of the times of the fuse.",
			Do:    "If it does, look for the cause before fitting another of the same size.",
		},
	}
}
