package drive

import "example.org/packcheck/answer"

func aboutRiding() []answer.Explanation {
	return []answer.Explanation{
		{
			Code:  CodeTooYoung,
			Means: "The driver is younger than vehicles with a motor are meant for.",
			Hurts: "Such a child cannot steer, let go of the pedal and look ahead at once. It is the one who is hurt.",
			Limit: "Three years. The rationale of EN 71-1 speaks of no speed limit for children over 3 years, so that none of these vehicles is meant for younger ones. The age on the vehicle's own label comes first.",
			Do:    "Wait, or push it by hand without the motor.",
		},
		{
			Code:  CodeOverloaded,
			Means: "More rides on the vehicle than its label or manual allows, or than such vehicles usually allow where nothing was told.",
			Hurts: "Axles, frame and steering break while somebody rides, and a brake that was tested with less needs a longer way.",
			Limit: "The greatest load of the maker. Where it is not known: 29.5 kg on 6 V, 59 kg on two seats at 12 V, from manuals; between those judgement.",
			Do:    "Read the label under the seat or the manual, and let no more ride than it says.",
		},
		{
			Code:  CodeRollsBack,
			Means: "On the steepest slope that was named the vehicle is pulled downhill by more than its wheels resist. Motors that brake when the pedal is up slow it, and do not hold it; what brakes it stands under brake.",
			Hurts: "It rolls away with a child on it, backwards as a rule, and picks up speed.",
			Limit: "The resistance of the ground. Above (M + 50) x 1.7 N, M the mass of the vehicle in kg, not even the brake that EN 71-1 asks for holds it. Motors that brake let it creep; from 1 m/s on, up to which EN 71-1 asks for no brake, that is too fast. From 10 degrees (18 %), on which toys to sit on are tested not to tip, it has to change; from 15 degrees (27 %), and downhill from 10 %, own choices.",
			Do:    "Try it without a child: let go of the pedal on the slope. If it moves, keep to the level.",
		},
		{
			Code:  CodeNoBrake,
			Means: "When the pedal is let go nothing stops the vehicle: neither its motors nor a brake of its own.",
			Hurts: "It rolls on for many times the way of a braked one, and on a slope it does not stop at all. A child lets go of the pedal and expects it to stand.",
			Limit: "1 m/s, up to which EN 71-1 asks for no brake where the feet are free. A danger from where the speed is brisk for the driver's age; own choice.",
			Do:    "Fit a pedal switch or a speed control that shorts the motors when the pedal is up, or a brake. Until then, level ground and somebody beside it.",
		},
		{
			Code:  CodeAboveToyVolts,
			Means: "The battery has a higher nominal voltage than toys may have.",
			Hurts: "Damaged insulation gives more of a shock, sparks and arcs last longer, and switches made for less do not break them.",
			Limit: "24 V DC nominal between points that can be reached, ASTM F963 4.25.2; 1.6 V are let pass (own choice), because packs of 25.2 and 25.6 V are sold as 24 V and have no more volts than lead-acid of 24 V on its charger.",
			Do:    "Use a battery of at most 24 V.",
		},
		{
			Code:  CodeRemoteOnFaster,
			Means: "A remote control still drives the vehicle, and it now goes faster than it was made to.",
			Hurts: "Whoever holds the remote control sees late and from far off. The child on it cannot do anything.",
			Limit: "A tenth more than the old speed; own choice, as for speed itself.",
			Do:    "Bring the speed down to what it was, or take the remote control out of use.",
		},
		{
			Code:  CodeAccessoryVolts,
			Means: "A steering motor, a radio or lights hang on the battery itself and get more volts than they were made for.",
			Hurts: "They fail, and small boards may burn. Where a motor steers, it fails while somebody rides.",
			Limit: "1.25 times the volts that the vehicle was made for: what a lead-acid battery of its own reaches on the charger. Own choice.",
			Do:    "Feed them through a step-down converter, or disconnect them.",
		},
		{
			Code:  CodeAccessoryUnread,
			Means: "Nobody told where steering, radio and lights get their volts from. If they hang on the battery they get more than they were made for.",
			Hurts: "Nothing, if they have a supply of their own. Otherwise they fail.",
			Limit: "1.25 times the volts that the vehicle was made for; own choice.",
			Do:    "Follow their wires. What ends at the battery needs a step-down converter.",
		},
	}
}
