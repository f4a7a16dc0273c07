package drive

import (
	"slices"

	"example.org/packcheck/answer"
)

// Explain says what stands behind a finding of this package; false for a code
// that is none of it.
func Explain(code string) (answer.Explanation, bool) { return answer.Explain(Explanations(), code) }

// Explanations returns the explanations of all findings of this package: the
// speed first, then motors, parts and the launch.
func Explanations() []answer.Explanation {
	return slices.Concat(aboutSpeed(), aboutRiding(), aboutMotors(), aboutParts(), aboutLaunch())
}

func aboutSpeed() []answer.Explanation {
	return []answer.Explanation{
		{
			Code:  CodeFasterThanOriginal,
			Means: "With this battery the vehicle runs faster than it did when it left the factory. The figure is the new speed over the old one, both computed on level ground, the old one with a new battery of the old kind.",
			Hurts: "The energy of a bump grows with the square of the speed: half as fast again is more than twice the blow. The way to a stop grows alike, while steering, brakes and wheels stay what they were. The one who is hurt is the child, or whoever stands in the way.",
			Limit: "A tenth faster is told, four tenths (twice the energy) is to be put right first. Both steps are this project's own choice. That energy goes with the square is physics.",
			Do:    "Give the speed a limit in the controller and set it to the old speed, or use a battery of the old voltage. Time ten metres before and after: a stopwatch settles what the computation can only estimate.",
		},
		{
			Code:  CodeFastForARideOn,
			Means: "The speed itself is more than ride-on vehicles are made for, whatever this one did before.",
			Hurts: "Frame, axles, steering and seat were designed for walking pace. At running pace a child is thrown off by a kerb, cannot steer round what appears, and rides into things before an adult can reach it.",
			Limit: "5 mph (8 km/h) is the top speed that newspaper reports of a large recall in 1998 give for such vehicles. 8 mph (12.9 km/h) is the fastest for which any was found to be designed; above that it is called a danger. No standard with a number could be read in its own text.",
			Do:    "Limit the speed. A controller with a speed limit does it; less voltage does it; a lower gear does it. Do not rely on the child to press the pedal half way.",
		},
		{
			Code:  CodeWayToStop,
			Means: "How far the vehicle still rolls after something happened: first at full speed until the child lifts the foot, then slowing down. For a child under three it says instead that it is too young to steer and stop.",
			Hurts: "A child needs half a second and more to react to something it waits for, and far longer to something it does not expect. In that time the vehicle goes on at full speed.",
			Limit: "The times are those of a study of 56 children of 4 to 14 years (1984), taken with a sound that they waited for: the best case. The braking is an estimate for hard wheels that slide. The age of three comes from the reasoning in EN 71-1.",
			Do:    "Choose the place to ride by two or three times that way: no road, water, steps or slope within it. Walk beside a beginner.",
		},
	}
}

func aboutMotors() []answer.Explanation {
	return []answer.Explanation{
		{
			Code:  CodeBlockedOverPack,
			Means: "When the wheels are held, by a kerb or a wall, while the pedal is down, the motors ask the battery for more amps than it may give.",
			Hurts: "The battery heats inside and wears; one with electronics may switch off, one without them may be damaged for good. It happens in ordinary use: every child drives into something.",
			Limit: "The greatest current of the battery, as printed by its maker or given in the setup. Where nobody gave it, a value that is usual for such cells stands in, and the finding says that it rests on a guess.",
			Do:    "Fit a controller with a current limit below what the battery gives. Until then teach the driver to let go as soon as the vehicle stops.",
		},
		{
			Code:  CodeBlockedOverController,
			Means: "Held wheels draw more current through the electronic controller than it stands for a moment.",
			Hurts: "The electronic switches in it fail within fractions of a second, and they usually fail closed: the motors then run without the pedal.",
			Limit: "The peak current that the controller's maker prints. For how many seconds it holds is rarely said.",
			Do:    "Use a controller whose own current limit lies below its peak, or a larger one. Keep a switch within reach that cuts the battery off.",
		},
		{
			Code:  CodeBlockedOverSwitch,
			Means: "Held wheels draw more current through the pedal switch than it is made for.",
			Hurts: "The bare metal inside the switch burns each time it opens, gets rough, then hot, and in the end may melt together so that the vehicle does not stop.",
			Limit: "The current that is printed on the switch or given in the setup. What a switch stands on direct current is much less than what it stands on alternating current.",
			Do:    "Let a controller carry the current and use the pedal only as its signal, or limit the current.",
		},
		{
			Code:  CodeBlockedHeatUnknown,
			Means: "How many amps flow with held wheels could be computed, but not how long the motors stand it: nothing is known of their size.",
			Hurts: "A held motor turns all that the battery gives into heat in a few grams of copper. Small ones smoke within seconds.",
			Limit: "None: without the size of the motor there is nothing to hold the current against.",
			Do:    "Read what is printed on a motor, or measure its can, and enter it. Until then let go at once when it does not move.",
		},
		{
			Code:  CodeBlockedHeat,
			Means: "How long it takes, with the wheels held and the pedal down, until the copper in a motor reaches the temperature that its lacquer stands. More seconds are better.",
			Hurts: "Beyond that the lacquer chars, turns touch each other and the motor is lost; it may smoke and smell. The gears beside it, made of plastic, soften from the same heat.",
			Limit: "The temperature is that of the insulation class in IEC 60085. Ten seconds as the least that an adult needs to notice, and sixty as enough, are this project's own choice. Where the original motors did no better on the original battery it is only told, because the vehicle survived that.",
			Do:    "A current limit helps most: half the current gives four times as long. A larger fuse does not, and a smaller one opens in ordinary driving.",
		},
		{
			Code:  CodeToothLoadBlocked,
			Means: "With held wheels the small gear on a motor presses harder on the next one than the original did. The figure is new over old.",
			Hurts: "Plastic teeth do not bend and come back: they strip, without warning, usually the first pair behind the motor.",
			Limit: "Nobody publishes what such teeth stand; the original load is known to have been survived. 1.2 times is told and 1.6 times is to be put right first, both by this project's own choice.",
			Do:    "Limit the current: tooth load follows it. Metal gears move the weak place to the next part.",
		},
		{
			Code:  CodeMotorWarm,
			Means: "At the end of the ride the copper in the motors is within 15 degrees of what its lacquer stands for long.",
			Hurts: "Nothing yet. A hotter day, longer grass or a heavier child takes it over the limit.",
			Limit: "The classes of IEC 60085; class A, 105 degrees Celsius, where nothing is printed on the motor. The 15 degrees are this project's own choice.",
			Do:    "Pause now and then, above all after slopes and long grass.",
		},
		{
			Code:  CodeMotorHot,
			Means: "At the end of the ride the copper in the motors is above what its lacquer stands for long.",
			Hurts: "Every ten degrees above halve the life of the lacquer. Far above it, a motor is lost within an afternoon; the smell of it is the first sign.",
			Limit: "The classes of IEC 60085; class A, 105 degrees Celsius, where nothing is printed on the motor. The halving is Montsinger's rule.",
			Do:    "Shorter rides, longer pauses, firmer and flatter ground, less weight. Less voltage helps twice: less speed and less current. Hold a finger near, not on, the motor after ten minutes.",
		},
		{
			Code:  CodePlasticSoftens,
			Means: "The outside of the motors gets so hot that plastic gives way: their own end caps, and the gears and gearbox that they sit in.",
			Hurts: "The brushes lose their place, gears climb over each other, the motor jams. From then on it is a held motor.",
			Limit: "Nylon softens between 100 and 130 degrees Celsius: trade knowledge, from memory. Below it is not told; from the lower end on it is worth watching, at the upper end, or where a case was measured above the lower, it is to be put right.",
			Do:    "Pause longer, drive shorter, use less voltage. Air holes in the motor cover help only if they keep grass and water out.",
		},
	}
}

func aboutParts() []answer.Explanation {
	return []answer.Explanation{
		{
			Code:  CodeRunningOverController,
			Means: "Level driving, not only the start, takes more current than the controller is made to carry for long.",
			Hurts: "Its transistors overheat. They usually fail closed: the motors then run without the pedal.",
			Limit: "The lasting current that the controller's maker prints.",
			Do:    "A controller for more current, or a vehicle that runs easier: free wheels, firm ground, less load.",
		},
		{
			Code:  CodeBoardVoltsUnknown,
			Means: "Nothing in the setup says what voltage the vehicle's electronics stand, nor for what voltage the vehicle was made.",
			Hurts: "Parts that get more than they stand burst or fail closed. That starts fires or a vehicle that does not stop.",
			Limit: "None: it is not known, and what is not known is not called fine.",
			Do:    "Read the volts on the board's largest capacitor (a small upright can), on its relays and on the label of the vehicle.",
		},
		{
			Code:  CodeBoardOvervoltage,
			Means: "A full battery has more volts than the electronics of the vehicle are made for. What counts is the full voltage just after charging, not the printed one.",
			Hurts: "A little too much, and a part ages fast and fails. Far too much, and capacitors burst and electronic switches fail closed: fire, or motors that run on. Driving slowly does not spare them: their input sees all of it.",
			Limit: "What is printed on the weakest part. Where nothing is known, a quarter above the vehicle's own voltage, which a lead-acid battery reaches on its charger: common practice, no published source. From 1.1 times a printed limit, or 1.5 times the vehicle's voltage, it is a danger; those steps are own choices.",
			Do:    "Use a battery of the voltage that the vehicle was made for, or exchange every part that sees the new voltage: controller, lights, sound, remote receiver. A step-down converter can feed the small ones.",
		},
		{
			Code:  CodeContactsMayWeld,
			Means: "The pedal is a plain switch, and the new battery starts the motors with more volts or amps than it was made for. The surge of a start can melt its two metal faces together.",
			Hurts: "Then lifting the foot changes nothing: the vehicle drives on with the child on it.",
			Limit: "A known case: about 12,000 ride-ons were recalled in 1991 because exactly this may happen with an 18 V system (release 92-008 of the US Consumer Product Safety Commission). A quarter above the design voltage is where this project begins to warn.",
			Do:    "Let a controller with a current limit do the switching, made for the full voltage. Have a switch that an adult, and the child, can reach and that cuts the battery off.",
		},
		{
			Code:  CodeConverterLimitUnknown,
			Means: "A converter that makes fewer volts feeds the motors, and nobody knows how many amps it gives at most.",
			Hurts: "Motors ask for many times their running current at each start and when they reverse. A converter that cannot give it cuts out, restarts, or burns.",
			Limit: "The current of the launch or of reversing, whichever is larger, as computed. The rating of the converter is what is missing.",
			Do:    "Find the peak rating in its papers. A rating for long use alone does not settle it.",
		},
		{
			Code:  CodeConverterTooSmall,
			Means: "The converter that makes fewer volts gives less current than a launch or a reversal asks for, although it may be ample for steady running.",
			Hurts: "It switches off at the start, so that the vehicle jerks or does not move; a cheap one burns.",
			Limit: "The rating that its maker prints, against the peak computed with nothing else in the way.",
			Do:    "A controller made for the battery's own voltage does the same job better. Otherwise a converter above the peak.",
		},
		{
			Code:  CodePlugInSpark,
			Means: "When the battery is plugged in, empty capacitors in the controller fill at once. For an instant the current is limited by nothing but wire and battery.",
			Hurts: "The spark burns the plug a little each time; a burnt plug is a hot plug later. It also frightens whoever plugs it in.",
			Limit: "50 A as the size from which it is worth a word is an own choice. The resistor is computed as component makers advise: full after five time constants, within half a second to two.",
			Do:    "Plug in with the switch off. If there is none between battery and controller, a small resistor bridged by hand takes the spark away.",
		},
		{
			Code:  CodeReversal,
			Means: "Switching to reverse while the vehicle rolls. The motors then work as generators in line with the battery, and the current is larger than with held wheels.",
			Hurts: "It is the hardest blow that switch, motors, gears and battery ever get. Children do it for fun.",
			Limit: "The current follows from the equations of the motor (a textbook's). It is only told unless it is above what battery, switch or controller stand by their own ratings.",
			Do:    "Stop first, then switch. A controller that changes direction only at a standstill takes the matter out of the child's hands.",
		},
	}
}
