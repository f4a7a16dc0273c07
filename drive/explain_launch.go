package drive

import "example.org/packcheck/answer"

func aboutLaunch() []answer.Explanation {
	return []answer.Explanation{
		{
			Code:  CodeLaunchUnknown,
			Means: "The start from rest could not be computed with the figures of this setup, so nothing is said about it.",
			Hurts: "The start is when current and load on the gears are greatest. Not knowing it means not knowing what fails first.",
			Limit: "None: nothing was computed.",
			Do:    "Look over the figures of motors, gears, wheels and mass; one of them is far from what such vehicles have.",
		},
		{
			Code:  CodeLaunchOverPack,
			Means: "For a moment at each start the motors take more amps from the battery than it may give.",
			Hurts: "A battery with electronics switches off, and the ride stutters. Without them the cells heat and age; the weakest of them suffers most.",
			Limit: "The greatest current of the battery, printed or assumed. A passing of less than a tenth of a second and less than half as much again is only told; that step is an own choice.",
			Do:    "A soft start or a current limit. A battery with more cells side by side gives more.",
		},
		{
			Code:  CodeLaunchOverJoint,
			Means: "A plug, crimp or terminal carries more amps at the start than its maker allows.",
			Hurts: "It warms a little each time, its springs and coating age, its resistance grows, and it warms more. That ends in melted plastic.",
			Limit: "The rating of that kind of connector. Short and small excesses are only told.",
			Do:    "Fit connectors made for the launch, not for the running current. Feel them after ten minutes.",
		},
		{
			Code:  CodeLaunchOverSwitch,
			Means: "The pedal switch carries more amps at the start than it is made for.",
			Hurts: "Its metal faces burn and may in the end stick, so that lifting the foot does not stop the vehicle.",
			Limit: "The rating printed on the switch or given in the setup, for direct current.",
			Do:    "Use the pedal as the signal of a controller. A switch made for motors on direct current is the second best.",
		},
		{
			Code:  CodeLaunchOverControllerPeak,
			Means: "The start asks the electronic controller for more than its peak current.",
			Hurts: "Its electronic switches fail within milliseconds, mostly closed: the vehicle drives without the pedal.",
			Limit: "The peak rating that its maker gives.",
			Do:    "A controller that limits the current below its own peak cannot be hurt this way. Otherwise a larger one.",
		},
		{
			Code:  CodeLaunchOverController,
			Means: "The start takes more than the controller may carry for long. Whether it may do so for a moment is another rating, which may not be known.",
			Hurts: "Where the peak rating covers it, hard starts in a row heat the controller until it switches off. Where nothing covers it, it may fail.",
			Limit: "The lasting current that its maker gives, and the peak current where the setup has it.",
			Do:    "Look up the peak rating and enter it. Pause between hard starts.",
		},
		{
			Code:  CodeRampBoundsNothing,
			Means: "The controller starts softly, which keeps the current small while the wheels turn. But nothing limits the current itself: with held wheels it grows to what battery and wire allow.",
			Hurts: "The soft start looks like a protection and is none. In the grass, at a kerb or on a slope the parts see the full current.",
			Limit: "The current with held wheels against that of a free start, both computed. It is to be put right where battery or controller cannot stand it.",
			Do:    "A controller with a true current limit, in amps.",
		},
		{
			Code:  CodeTwoSoftStarts,
			Means: "Two devices in a row start softly: one at the battery and the controller itself.",
			Hurts: "The slower one decides. Meanwhile the other sees too few volts and may restart or report a fault, so that the vehicle stutters.",
			Limit: "None; it follows from how they are connected.",
			Do:    "Switch one of the two off.",
		},
		{
			Code:  CodeSpinsOnTheSpot,
			Means: "The driven wheels spin and the vehicle stays where it is: ground and slope ask for more push than the wheels can hold.",
			Hurts: "Nothing breaks at once, but the wheels wear, the lawn suffers, and the motors turn current into heat without any wind to cool them.",
			Limit: "The grip of such wheels on that ground against its rolling resistance. For toy wheels nobody has published either: the figures are estimates of plus or minus half.",
			Do:    "Firmer or flatter ground. Weight over the driven wheels, or softer wheels, help a little.",
		},
		{
			Code:  CodeCannotStart,
			Means: "The motors do not manage to set the vehicle in motion here. They stand like held motors.",
			Hurts: "All current becomes heat in the motors; they may be lost within seconds, while the child goes on pressing.",
			Limit: "Push at the wheels against rolling resistance and slope, computed. A current limit that is set too low can be the reason.",
			Do:    "Easier ground. Pull the vehicle along with a luggage scale: that number tells more about the ground than any table.",
		},
		{
			Code:  CodeStallsSoon,
			Means: "It starts, but what the battery gives soon no longer suffices for slope or ground.",
			Hurts: "It ends as a held motor, with the heat that belongs to it, in the middle of a slope.",
			Limit: "Steady running computed with a tired battery.",
			Do:    "Keep to easier ground. On slopes stay behind it, and do not count on the motors to hold it.",
		},
		{
			Code:  CodeWheelsSpin,
			Means: "At the start the driven wheels turn faster than the vehicle moves. The ground, not the motors, decides how hard the start is.",
			Hurts: "It spares the gears a little. It wears the wheels, digs into grass and throws small stones.",
			Limit: "The grip of the wheels on that ground, an estimate.",
			Do:    "A soft start ends it.",
		},
		{
			Code:  CodeToothLoad,
			Means: "At the start the gears are pressed harder than by the original battery. The figure is new over old.",
			Hurts: "Plastic teeth strip without warning, and a start comes dozens of times in each ride.",
			Limit: "What such teeth stand is not published. 1.2 times the original is told, 1.6 times is to be put right first; both are own choices.",
			Do:    "A soft start or a current limit, or the voltage that the vehicle was made for.",
		},
	}
}
