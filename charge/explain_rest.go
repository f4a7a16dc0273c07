package charge

import "example.org/packcheck/answer"

func aboutVolts() []answer.Explanation {
	return []answer.Explanation{
		{
			Code:  CodeOvercharged,
			Means: "With nothing connected the battery shows more volts than such cells can rest at.",
			Hurts: "Overcharged lithium cells may catch fire hours later. If it is another battery than the label says, its charger and its cutoff are the wrong ones.",
			Limit: "Lithium: the most that a cell may be charged to; what lies up to 2 % above may be the meter's error, more is a danger. Lead-acid: the volts of a full, rested one and 0.12 V a cell for the hours after the charger.",
			Do:    "Do not charge or use it. Put lithium outside, away from anything that burns, and find out what it is. Let a lead-acid battery stand for a night and measure again.",
		},
		{
			Code:  CodeDeadBlock,
			Means: "A lead-acid battery rests at less than a volt for each of its cells: some of them are shorted, or were driven backwards.",
			Hurts: "A charger pushes its whole current through what is left: it boils, gives off gas that explodes, and gets hot.",
			Limit: "One volt a cell. Even a flat one keeps 1.8 V and more, so that half of the cells must be dead. Common practice, no published source.",
			Do:    "Replace it, and hand the old one in where batteries are collected.",
		},
		{
			Code:  CodeFallsFar,
			Means: "While the vehicle drives, the battery falls to volts at which its maker ends a discharge, or below.",
			Hurts: "A cell that is driven further is ruined, and in lithium it may short inside at the next charge. If it is not the battery but a contact, that contact gets hot.",
			Limit: "The maker's end of discharge at that current; below the limit of harm it is to be put right first.",
			Do:    "Stop and charge. If it was full, measure at the battery's own posts while it drives: if they fall as far it is the battery, otherwise a contact.",
		},
	}
}
