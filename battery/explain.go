package battery

import "example.org/packcheck/answer"

// Explain says what stands behind a finding of this package; false for a code
// that is none of it.
func Explain(code string) (answer.Explanation, bool) { return answer.Explain(Explanations(), code) }

// Explanations returns the explanations of all findings of this package.
func Explanations() []answer.Explanation {
	return []answer.Explanation{
		{
			Code:  CodeUnlikePacks,
			Means: "The two batteries that are joined are not of one kind, or one holds clearly more than the other.",
			Hurts: "In series the smaller one is empty first and is driven backwards by the other. Side by side the one charges the other. Unlike kinds of cells drive each other past their limits, which in lithium can start a fire.",
			Limit: "A tenth of difference in capacity, beyond what two of one kind differ by; own choice. ASTM F963 (clause 4.25.6, from a summary) allows no unlike batteries in one circuit of a toy.",
			Do:    "Use two of one kind, size and age, or one alone.",
		},
		{
			Code:  CodeCurrentLasting,
			Means: "Over the whole ride the battery gives more amps than its cells are made to give for long.",
			Hurts: "The cells heat from inside and lose capacity with every ride. Far above the limit lithium cells may vent and burn.",
			Limit: "The maker's greatest current, or the usual one for such cells. From one and a half times on it is a danger for cells other than lead-acid; that step is an own choice.",
			Do:    "A battery with more cells side by side, one that is made for more current, or less of it: flatter ground, a current limit.",
		},
		{
			Code:  CodeCurrentPeak,
			Means: "The greatest current of the ride, usually at a start, is above what the cells may give for a moment.",
			Hurts: "The voltage collapses for an instant, electronics may switch off, and the weakest cell takes the worst of it.",
			Limit: "The maker's peak current, or the usual one for such cells.",
			Do:    "A softer start, a current limit, or a battery for more current.",
		},
		{
			Code:  CodeTooHot,
			Means: "During the ride the cells get hotter than they may be in use, or hotter than a child may touch.",
			Hurts: "Heat ages all cells. Very hot lithium cells can go on heating by themselves. A child burns a hand.",
			Limit: "The chemistry's own highest temperature in use; 71 degrees Celsius on the surface of a battery in a toy (ASTM F963, clause 4.25.7, from a summary). Measured on the outside: 54 degrees, from one post on a test plan built on it, for a battery that can be touched.",
			Do:    "Less current, shorter rides, and air around the battery. Let it cool before it is charged.",
		},
		{
			Code:  CodeOldHot,
			Means: "The battery that the vehicle came with was too hot to touch after a drive.",
			Hurts: "Something in the vehicle made it so, most likely a joint that resists, wheels that rub or too much load, and it will warm the new battery as well.",
			Limit: "54 degrees Celsius for a battery that can be touched, from one post on a test plan built on ASTM F963.",
			Do:    "Feel plugs and wires after a short drive, turn the wheels by hand, and let less ride before another battery goes in.",
		},
		{
			Code:  CodeTooCold,
			Means: "The cells are colder than they may be used.",
			Hurts: "They give less, sag under load and may be damaged by being pushed.",
			Limit: "The lowest temperature in use of this kind of cell, from its makers' sheets.",
			Do:    "Keep the battery indoors until the ride begins.",
		},
		{
			Code:  CodeLabelMaxVolts,
			Means: "The volts on the label are those of a battery just off the charger. Under load it has the nominal ones, which are less.",
			Hurts: "Nothing, unless somebody compares this number with the nominal number of another battery.",
			Limit: "None. How labels count is common practice: 4.0 V for each lithium cell when they say max, 3.6 V nominal.",
			Do:    "Compare nominal with nominal. For what the vehicle stands use the full voltage, which is higher still.",
		},
		{
			Code:  CodeLabelUnclear,
			Means: "What is printed on the battery fits more than one kind or number of cells.",
			Hurts: "Charger, cutoff and fuse all hang on it. The wrong reading makes the right charger a wrong one.",
			Limit: "None: it is a matter of reading.",
			Do:    "Look for a kind of cell (Li-ion, LiFePO4, AGM, NiMH) and a number of cells, such as 5S2P, and enter both.",
		},
		{
			Code:  CodeParallelMixedChemistry,
			Means: "Two batteries of different kinds are joined plus to plus.",
			Hurts: "They want different voltages. One charges the other past what it stands, without any charger in sight and without an end.",
			Limit: "Sellers' guidance on batteries side by side; and the two kinds' own charging voltages, which do not meet.",
			Do:    "Take them apart. There is no setting that makes it right.",
		},
		{
			Code:  CodeParallelEqualising,
			Means: "Two batteries of different charge are joined plus to plus. At that moment the fuller one charges the other, as fast as their resistances allow.",
			Hurts: "A current far above any charging current heats the emptier one; joints and wires were not made for it.",
			Limit: "The greatest charging current of that kind of cell. From three times on, and for lithium always, it is a danger; that step is an own choice.",
			Do:    "Charge both full on their own chargers before they are joined, and join only what its maker allows to be joined.",
		},
		{
			Code:  CodeParallelUnlikeVolts,
			Means: "Two batteries are joined plus to plus, and the one has more volts when it is empty than the other when it is full, or more when it is full than the other may be charged with.",
			Hurts: "A current far above any charging current flows until the one is drained or the other boils, vents or burns. Charging them first changes nothing.",
			Limit: "The volts of the full battery of fewer volts, or 5 % more than it may be charged with (own choice). That only batteries of the same volts stand side by side is sellers' guidance.",
			Do:    "Take them apart, with the charger and the vehicle off. Use one battery of the vehicle's own volts.",
		},
		{
			Code:  CodeSeriesUnequalCharge,
			Means: "Two batteries stand one behind the other, and one holds less. It is empty first; the other goes on pushing current through it, backwards.",
			Hurts: "The smaller one is ruined, and if it is lithium it may catch fire at its next charge.",
			Limit: "5 % of what the larger still holds is where it begins to matter, 20 % where it is grave: own choices. That the smallest decides is old practice of battery builders.",
			Do:    "Two equal batteries of the same age, charged together, with something that switches off by the volts of each.",
		},
		{
			Code:  CodeSeriesElectronics,
			Means: "Batteries with electronics inside stand one behind the other. When one of them switches off, its electronics get the volts of the whole pair.",
			Hurts: "They were made for one battery and fail, usually closed: after that nothing protects it.",
			Limit: "The full voltage of the one battery. That electronics are made for their own battery is common practice, no published source.",
			Do:    "One battery of the right voltage. In a row only if the maker says so.",
		},
	}
}
