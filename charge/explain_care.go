package charge

import "example.org/packcheck/answer"

func aboutPlaces() []answer.Explanation {
	return []answer.Explanation{
		{
			Code:  CodeVehicleJack,
			Means: "A lithium battery is charged through the socket of the vehicle.",
			Hurts: "The socket leads straight to the wires, past whatever watches the cells. It was made for a lead-acid charger, which somebody will plug in again one day.",
			Limit: "How such vehicles are wired: common practice, no published source.",
			Do:    "Take the battery out to charge it, and close the socket off so that nobody can use it.",
		},
		{
			Code:  CodeDrivesPlugged,
			Means: "The vehicle can be driven while its battery is being charged.",
			Hurts: "A child drives off with the mains adaptor behind it and tears the lead. Motors and charger pull on the battery at once, so that neither cutoff nor charger sees what it is made to see; lithium is then overcharged or drained, and burns.",
			Limit: "IEC 62115:2003, 14.12, from a digest: charging in the toy only where it cannot be driven meanwhile.",
			Do:    "Take the battery out to charge it, or have a charging socket that cuts the motors off.",
		},
		{
			Code:  CodeInVehicle,
			Means: "The battery stays in the vehicle while it charges.",
			Hurts: "That is right only for the battery and charger that it was built with, and only if it cannot be driven meanwhile.",
			Limit: "IEC 62115, clause 14.12, from a digest.",
			Do:    "Make sure that it cannot be driven off the plug, and that replacements are of the same kind and voltage.",
		},
		{
			Code:  CodeChargedInSeries,
			Means: "Two batteries in a row are charged as if they were one.",
			Hurts: "The fuller one is full first and is overcharged until the other has caught up. For lithium that is a danger.",
			Limit: "A charge must end when any cell is full; in a row the smallest is first.",
			Do:    "Charge each by itself.",
		},
		{
			Code:  CodeChargedInParallel,
			Means: "Two batteries side by side are charged as if they were one.",
			Hurts: "The current splits as it likes; the emptier one takes more than its share.",
			Limit: "The greatest charging current of one; how it splits follows from their resistances.",
			Do:    "Charge each by itself before they are joined.",
		},
		{
			Code:  CodeNeverRecharge,
			Means: "The volts that were read at rest are below the last limit of a lithium cell.",
			Hurts: "Charged again it may short inside and burn.",
			Limit: "The last limit of this kind of cell, from its sources.",
			Do:    "Do not charge it, however slowly, and do not let anybody wake it up. Hand it in where batteries are collected.",
		},
		{
			Code:  CodeTooLow,
			Means: "At rest the cells are below where an ordinary charge begins.",
			Hurts: "Pushed with the full current they are damaged.",
			Limit: "Makers of charging circuits begin the full charge at 3.0 V for a lithium cell only.",
			Do:    "Its own charger may decide. If that refuses, the battery is finished; no other charger may help.",
		},
		{
			Code:  CodeDeeplyFlat,
			Means: "A lead-acid battery rests below the volts of an empty one.",
			Hurts: "It has stood flat, which hardens it inside, or one of its six cells is dead. A dead cell makes the charger overcharge the others.",
			Limit: "1.9 V for each cell of lead-acid: empty and rested it has 1.97 V by makers' tables. Five good cells of six with charge come to 10.5 V where the sixth is shorted. Other kinds: the volts below which they are harmed.",
			Do:    "Do not leave it alone on a charger. One charge at the right charger, with somebody beside it. Hot, or 2 V short of full again the next day: replace it.",
		},
		{
			Code:  CodeTooCold,
			Means: "The cells are colder than they may be charged.",
			Hurts: "At or below freezing lithium plates out as metal inside the cell. Nobody can see it, it never goes away, and it may short the cell later.",
			Limit: "The lowest charging temperature of this kind of cell.",
			Do:    "Bring it indoors and wait the time that the finding names; the middle warms last.",
		},
		{
			Code:  CodeTooHot,
			Means: "After the ride the cells are hotter than they may be charged.",
			Hurts: "A hot cell ages fast when charged, and charging adds heat.",
			Limit: "The highest charging temperature of this kind of cell; 45 degrees Celsius is usual for lithium.",
			Do:    "Take it off the vehicle and let it cool for the time that the finding names.",
		},
		{
			Code:  CodeSlowInCold,
			Means: "The cells are so cool that they may be charged with part of the current only.",
			Hurts: "With the full current lithium is damaged as in the cold, only more slowly.",
			Limit: "The temperatures and shares that makers of charging circuits build in.",
			Do:    "Warm it to the room first.",
		},
		{
			Code:  CodePlaceNoGood,
			Means: "The place of charging is itself too cold or too hot.",
			Hurts: "A charge takes hours, and the battery becomes as warm as its place.",
			Limit: "The charging temperatures of this kind of cell.",
			Do:    "Charge it in a room, on something that does not burn.",
		},
	}
}

func aboutKeeping() []answer.Explanation {
	return []answer.Explanation{
		{
			Code:  CodeStoredNotFull,
			Means: "A lead-acid battery is put away with part of its charge missing.",
			Hurts: "What is discharged turns into hard crystals within weeks and does not come back. A winter so costs much of the capacity.",
			Limit: "95 % as good enough for full is an own choice; that incomplete charging is the main cause of early loss is published.",
			Do:    "Charge it within a day of the last ride, and again as the dates in the report say.",
		},
		{
			Code:  CodeStoredTooFull,
			Means: "A lithium battery is put away full.",
			Hurts: "It ages fastest so. It is a matter of years, not of danger.",
			Limit: "About half is common practice, no published source.",
			Do:    "Ride it down to about half, store it cool and off the vehicle, and charge it before the first ride.",
		},
		{
			Code:  CodeStoredRunsEmpty,
			Means: "Before it is wanted again, its own loss and what stays connected may drain it to empty.",
			Hurts: "Lead-acid is lost; lithium may fall below what it survives and become dangerous to charge.",
			Limit: "What makers' sheets say is left after months, with the spread between them.",
			Do:    "Disconnect it, and top it up by the date named.",
		},
		{
			Code:  CodeStoredNeedsTopUp,
			Means: "Before it is wanted again it loses more than is good for it.",
			Hurts: "Lead-acid hardens inside, a little with each week.",
			Limit: "The charge below which makers ask for a refreshing charge, from their sheets.",
			Do:    "A charge in between; the dates stand in the report.",
		},
		{
			Code:  CodeStoredConnected,
			Means: "It stays connected to the vehicle while it is put away.",
			Hurts: "Whatever draws a little drains it, and a fault in a shed has nobody who smells it. Fires of parked ride-ons were part of a large recall in 1998.",
			Limit: "A twentieth of its charge over the time in store, own choice; lithium in no case: common practice.",
			Do:    "Take it out for the winter.",
		},
		{
			Code:  CodeStoredTooHot,
			Means: "The place where it is kept is hotter than its cells may ever be.",
			Hurts: "Lithium swells and may vent and burn; lead-acid dries out and is empty within weeks.",
			Limit: "60 degrees Celsius, the most that data sheets of lithium cells allow for a month of storage; from memory.",
			Do:    "Move it to a cool, dry place, away from anything that burns.",
		},
		{
			Code:  CodeStoredMayFreeze,
			Means: "The emptier a lead-acid battery, the earlier the liquid in it freezes. Here it may, before spring.",
			Hurts: "The case bursts; the acid comes out.",
			Limit: "Freezing points of the acid, from -7 degrees Celsius when flat to -58 when full: from memory, for batteries with free liquid.",
			Do:    "Keep it charged, or in a warmer place. Never charge or use one that is frozen or swollen.",
		},
		{
			Code:  CodeOldFlat,
			Means: "From what was read, the old battery is most likely only flat.",
			Hurts: "Every day that it stands so costs capacity.",
			Limit: "How likely each cause is was estimated from what such batteries show; from memory, no published source.",
			Do:    "The next test that the finding names. Most often one full charge and a night of rest decide.",
		},
		{
			Code:  CodeOldWorn,
			Means: "From what was read, the old battery is most likely worn out.",
			Hurts: "It takes a charge, shows good volts and is empty after minutes.",
			Limit: "How likely each cause is was estimated; from memory, no published source.",
			Do:    "The next test that the finding names. Then replace it, and hand it in.",
		},
		{
			Code:  CodeOldDeadCell,
			Means: "From what was read, one cell of the old battery is most likely dead.",
			Hurts: "The charger sees too few volts and overcharges the others: heat, gas, acid.",
			Limit: "How likely each cause is was estimated; from memory, no published source.",
			Do:    "Do not leave it on a charger. Confirm with the test named, and replace it.",
		},
		{
			Code:  CodeOldContact,
			Means: "From what was read, the fault is most likely a bad contact and not the battery.",
			Hurts: "A bad contact grows hot under load, and melts its plug.",
			Limit: "How likely each cause is was estimated; from memory, no published source.",
			Do:    "Measure at the battery's own posts and behind the plug, under load: the difference is the contact.",
		},
	}
}
