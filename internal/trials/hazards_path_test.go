package trials_test

import (
	"example.org/packcheck/battery"
	"example.org/packcheck/drive"
	"example.org/packcheck/internal/judge"
	"example.org/packcheck/wiring"
)

const (
	noFuse    = wiring.CodeNoFuse
	aboveWire = wiring.CodeFuseAboveWire
	wireLoad  = wiring.CodeWireOverloaded
	fuseOpens = wiring.CodeFuseOpensRunning + "|" + judge.CodeFuseEndsRide + "|" + wiring.CodeFuseOpensAtLaunch + "|" + wiring.CodeFuseMayOpenAtLaunch
	burns     = wiring.CodeShortBurnsWire + "|" + aboveWire + "|" + wireLoad + "|" + wiring.CodeBlockedOverloadsWire
)

// fuseHazards are fuses that are missing, too large, too small, too far or of
// the wrong kind.
func fuseHazards() []hazard {
	return []hazard{
		{
			name: "tool pack without a fuse", base: "lithium", set: "-fuse; fuse.form=none", least: danger, codes: noFuse,
			why: "hundreds of amperes into a short circuit", from: cfrFuse,
		},
		{
			name: "tool pack without a fuse, thick wire", base: "lithium", set: "-fuse; fuse.form=none; wire.gauge=8 AWG", least: danger, codes: noFuse,
			why: "thick wire only carries the fire further", from: cfrFuse,
		},
		{
			name: "block without a fuse, as it was made by hand", base: "block", set: "-fuse; fuse.form=none", least: danger, codes: noFuse,
			why: "stated none: a sealed block gives 300 A and more", from: cpscFire,
		},
		{
			name: "factory vehicle by labels whose fuse was removed", base: "labels", set: "fuse.form=none", least: danger, codes: noFuse,
			why: "the recall's remedy was a fuse that cannot be removed", from: cpscFire,
		},
		{
			name: "6 V vehicle whose fuse was removed", base: "labels6", set: "fuse.form=none", least: danger, codes: noFuse,
			why: "small blocks burn wire as well", from: cpscFire,
		},
		{
			name: "24 V pair without a fuse", base: "pair", set: "-fuse; fuse.form=none", least: danger, codes: noFuse,
			why: "two blocks, more volts, more fire", from: cpscFire,
		},
		{
			name: "LiFePO4 without a fuse", base: "iron", set: "-fuse; fuse.form=none", least: danger, codes: noFuse,
			why: "the cells stand a short circuit that the wire does not", from: cfrFuse,
		},
		{
			name: "tool pack in a changed vehicle, nothing said of a fuse", base: "lithium", set: "-fuse", least: fixFirst, codes: wiring.CodeFuseUnknown,
			why: "the factory's thermal fuse often sat in the battery and left with it", from: "manual of a 6 V vehicle, p. 32: self-resetting fuse inside the battery (copy)",
		},
		{
			name: "tool pack by labels, nothing said of a fuse", base: "swap", set: "", least: fixFirst, codes: wiring.CodeFuseUnknown + "|" + judge.CodePathUnknown,
			why: "the same", from: "manual of a 6 V vehicle, p. 32: self-resetting fuse inside the battery (copy)",
		},
		{
			name: "LiFePO4 in place of a block, nothing said of a fuse", base: "labels", set: "pack.chemistry=lifepo4; pack.label=12.8 V 10 Ah LiFePO4; cutoff.pack.opens_at=10 V", least: fixFirst, codes: wiring.CodeFuseUnknown + "|" + judge.CodePathUnknown,
			why: "the same", from: "manual of a 12 V two-seater, p. 7: self-resetting fuse inside the battery (copy)",
		},
		{
			name: "30 A blade on 18 AWG of 60 C", base: "lithium", set: "wire.gauge=18 AWG; wire.insulation=60 C; fuse.rating=30 A", least: danger, codes: aboveWire,
			why: "three times the ampacity of 10 A", from: cfrFuse,
		},
		{
			name: "40 A blade on 16 AWG of 60 C", base: "lithium", set: "wire.gauge=16 AWG; wire.insulation=60 C; fuse.rating=40 A", least: danger, codes: aboveWire,
			why: "2.7 times 15 A", from: cfrFuse,
		},
		{
			name: "60 A large blade on 14 AWG of 80 C", base: "lithium", set: "wire.gauge=14 AWG; wire.insulation=80 C; fuse.form=large blade; fuse.rating=60 A", least: danger, codes: aboveWire,
			why: "2.4 times 25 A, and the large blade is slow", from: cfrFuse,
		},
		{
			name: "100 A fuse on 12 AWG", base: "lithium", set: "fuse.form=large blade; fuse.rating=100 A", least: danger, codes: aboveWire,
			why: "2.2 times 45 A", from: cfrFuse,
		},
		{
			name: "30 A blade on 0.75 mm2 of 70 C", base: "block", set: "-wire.gauge; wire.area=0.75 mm2; wire.insulation=70 C; fuse.rating=30 A", least: danger, codes: aboveWire,
			why: "twice the 15 A that it carries in free air", from: vdeWire,
		},
		{
			name: "80 A large blade on 2.5 mm2 of 70 C", base: "pair", set: "-wire.gauge; wire.area=2.5 mm2; wire.insulation=70 C; fuse.form=large blade; fuse.rating=80 A", least: danger, codes: aboveWire,
			why: "2.5 times 32 A", from: vdeWire,
		},
		{
			name: "40 A blade on 1.5 mm2 of 70 C", base: "block", set: "-wire.gauge; wire.area=1.5 mm2; wire.insulation=70 C; fuse.rating=40 A", least: fixFirst, codes: aboveWire,
			why: "1.7 times 24 A", from: vdeWire,
		},
		{
			name: "30 A blade on speaker wire of 0.5 mm2", base: "block", set: "-wire.gauge; wire.area=0.5 mm2; wire.insulation=60 C; fuse.rating=30 A", least: danger, codes: aboveWire,
			why: "below any wire of the table", from: cfrWire,
		},
		{
			name: "40 A blade in a factory 12 V vehicle with 18 AWG wire of 60 C", base: "labels", set: "wire.gauge=18 AWG; wire.insulation=60 C; fuse.form=small blade; fuse.rating=40 A", least: danger, codes: aboveWire,
			why: "a larger fuse on the old wire is the classic mistake", from: cfrFuse,
		},
		{
			name: "30 A blade on wire of 12 to 18 AWG of 60 C", base: "lithium", set: "wire.gauge=12 to 18 AWG; wire.insulation=60 C; fuse.rating=30 A", least: fixFirst, codes: aboveWire,
			why: "too much for half of what the wire may be", from: cfrFuse,
		},
		{
			name: "40 A blade on 14 AWG of unknown insulation", base: "lithium", set: "-wire.insulation; wire.gauge=14 AWG; fuse.rating=40 A", least: fixFirst, codes: aboveWire,
			why: "cheap 60 C insulation takes 30 A at most", from: cfrFuse,
		},
		{
			name: "40 A blade on wire of unknown gauge with a tool pack", base: "lithium", set: "-wire.gauge; -wire.insulation; fuse.rating=40 A", least: fixFirst, codes: aboveWire,
			why: "factory wire is often 16 to 18 AWG; nobody looked", from: "factory wire gauge from memory only; " + cfrFuse,
		},
		{
			name: "auto-reset breaker alone on a tool pack", base: "lithium", set: "fuse.form=auto-reset breaker; fuse.rating=30 A; wire.gauge=16 AWG; wire.insulation=80 C", least: fixFirst, codes: wiring.CodeBreakerAlone + "|" + aboveWire,
			why: "it closes by itself into the same fault, and it is slow", from: breakerAlone,
		},
		{
			name: "auto-reset breaker of 30 A on 18 AWG of 60 C", base: "lithium", set: "fuse.form=auto-reset breaker; fuse.rating=30 A; wire.gauge=18 AWG; wire.insulation=60 C", least: danger, codes: aboveWire,
			why: "three times the ampacity behind a device that takes a minute at twice its rating", from: cfrFuse,
		},
		{
			name: "auto-reset breaker of 50 A on 14 AWG of 60 C", base: "pair", set: "fuse.form=auto-reset breaker; fuse.rating=50 A; wire.gauge=14 AWG; wire.insulation=60 C", least: danger, codes: aboveWire,
			why: "2.5 times 20 A", from: cfrFuse,
		},
		{
			name: "fuse two metres from a tool pack", base: "lithium", set: "fuse.distance_from_pack=2 m", least: danger, codes: wiring.CodeFuseTooFar,
			why: "two metres of wire through the vehicle have no fuse at all", from: cfrFuse,
		},
		{
			name: "fuse half a metre from a tool pack", base: "lithium", set: "fuse.distance_from_pack=0.5 m", least: fixFirst, codes: wiring.CodeFuseTooFar,
			why: "three times the reach for bare wire", from: cfrFuse,
		},
		{
			name: "fuse a metre and a half from two blocks", base: "pair", set: "fuse.distance_from_pack=1.5 m", least: fixFirst, codes: wiring.CodeFuseTooFar,
			why: "beyond the reach even of sheathed wire", from: cfrFuse,
		},
		{
			name: "32 V fuse on 42 V", base: "lithium", set: "pack.label=36 V 5 Ah; pack.cells_in_series=10; -pack.strings; controller.max_voltage=60 V; cutoff.module.opens_at=33 V; charger.voltage=42 V", least: fixFirst, codes: wiring.CodeFuseVoltage,
			why: "it may go on burning as an arc", from: blade,
		},
		{
			name: "32 V fuse on two tool packs in series", base: "lithium", set: "pack.joined=series; controller.max_voltage=60 V; cutoff.module.opens_at=33 V; -charger", least: fixFirst, codes: wiring.CodeFuseVoltage,
			why: "42 V full", from: blade,
		},
		{
			name: "5 A fuse in a 12 V vehicle", base: "block", set: "fuse.rating=5 A", least: fixFirst, codes: fuseOpens,
			why: "two 550 motors run at 5 to 9 A", from: "builder 2016: 5 A running, 13 A with other motors opened the stock fuse (copy)",
		},
		{
			name: "10 A fuse with two 550 motors on plain contacts", base: "block", set: "fuse.rating=10 A; outing.drive=10 s", least: watch, codes: fuseOpens,
			why: "every launch is several times its rating", from: blade,
		},
		{
			name: "3 A fuse behind a tool pack", base: "lithium", set: "fuse.rating=3 A", least: fixFirst, codes: fuseOpens,
			why: "below the running current", from: blade,
		},
		{
			name: "a 30 A fuse that opened in three seconds, measured", base: "block", set: "fuse.rating=30 A; measured.fuse_rating=30 A; measured.fuse_seconds=3 s", least: fixFirst, codes: wantFuseOpened,
			why: "60 A and more flow for seconds in use: something is stuck or shorted", from: blade,
		},
		{
			name: "a breaker that comes back by itself under the child, measured", base: "block", set: "fuse.form=auto-reset breaker; measured.fuse_rating=30 A; measured.reset_seconds=20 s", least: fixFirst, codes: judge.CodeFuseOpened,
			why: "with the pedal held or welded it drives off again by itself", from: breakerAlone,
		},
	}
}

// wireHazards are wires and joints that get too hot, and what was measured
// through them.
func wireHazards() []hazard {
	return []hazard{
		{
			name: "speaker wire of 0.5 mm2 and no fuse", base: "block", set: "-wire.gauge; wire.area=0.5 mm2; wire.insulation=60 C; -fuse; fuse.form=none", least: danger, codes: noFuse + "|" + burns,
			why: "it glows before anything gives way", from: cfrWire,
		},
		{
			name: "22 AWG wire of 60 C under a driving vehicle", base: "lithium", set: "wire.gauge=22 AWG; wire.insulation=60 C", least: danger, codes: burns,
			why: "running current alone is more than it carries, and a 25 A fuse never sees it", from: cfrWire,
		},
		{
			name: "20 AWG wire of 60 C behind two blocks", base: "pair", set: "wire.gauge=20 AWG; wire.insulation=60 C", least: danger, codes: burns,
			why: "a 25 A fuse on wire for 5 A or so", from: cfrFuse,
		},
		{
			name: "ten metres of 18 AWG", base: "lithium", set: "wire.gauge=18 AWG; wire.one_way_length=10 m; fuse.rating=15 A", least: watch, codes: wiring.CodeDropLarge,
			why: "0.4 Ohm: a sixth of the volts and more stay in the wire", from: "ASTM B258-02 and IACS resistance",
		},
		{
			name: "six loose joints of 20 mOhm, measured", base: "lithium", set: "wire.joint_resistance=20 mOhm; measured.loaded_current=13 A; measured.loaded_voltage=19 V", least: fixFirst, codes: wiring.CodeJointHot + "|" + wiring.CodeJointOverloaded,
			why: "3.4 W in each terminal discolours and softens plastic", from: "crimp resistance aged 5 to 20 mOhm (memory); 3 W level: " + practice,
		},
		{
			name: "a joint of 100 mOhm", base: "block", set: "wire.joints=1; wire.joint_resistance=100 mOhm; measured.loaded_current=12 A", least: danger, codes: wiring.CodeJointHot + "|" + wiring.CodeJointOverloaded,
			why: "14 W in one terminal: the recall's overheated connector", from: cpscFire,
		},
		{
			name: "35 A measured through 16 AWG of 60 C", base: "block", set: "wire.gauge=16 AWG; wire.insulation=60 C; fuse.form=large blade; fuse.rating=40 A; measured.loaded_current=35 A; measured.loaded_voltage=10 V", least: danger, codes: burns,
			why: "2.3 times 15 A while it drives: five times the heat", from: cfrWire,
		},
		{
			name: "25 A measured through 18 AWG of 60 C", base: "lithium", set: "wire.gauge=18 AWG; wire.insulation=60 C; fuse.rating=30 A; measured.loaded_current=25 A; measured.loaded_voltage=18 V", least: danger, codes: burns,
			why: "2.5 times 10 A", from: cfrWire,
		},
		{
			name: "40 A measured through crimped tabs", base: "block", set: "wire.gauge=8 AWG; wire.joint=crimped tab; fuse.form=large blade; fuse.rating=60 A; measured.loaded_current=40 A; measured.loaded_voltage=10 V", least: fixFirst, codes: wiring.CodeJointOverloaded + "|" + wiring.CodeJointHot + "|" + wiring.CodeFuseAboveJoint,
			why: "twice what a tab carries", from: tabs,
		},
		{
			name: "35 A measured through a 25 A fuse", base: "lithium", set: "measured.loaded_current=35 A; measured.loaded_voltage=17 V", least: fixFirst, codes: fuseOpens + "|" + wantRunningOver,
			why: "140 % opens it within minutes", from: blade,
		},
		{
			name: "14 A measured through a 10 A fuse of a board vehicle", base: "board", set: "measured.loaded_current=14 A; measured.loaded_voltage=11.5 V", least: fixFirst, codes: fuseOpens + "|" + wantRunningOver,
			why: "140 % opens it within minutes", from: blade,
		},
		{
			name: "22 A blocked, measured, behind 30 A and 18 AWG of 60 C", base: "block", set: "motors.stall_current=11 A; -motors.no_load_current; wire.gauge=18 AWG; wire.insulation=60 C; fuse.rating=30 A; measured.blocked_current=22 A", least: danger, codes: burns,
			why: "the fuse never opens and the wire carries more than twice its amperes", from: "repository issue 1: 22 A blocked, the 30 A fuse never opened (copy); " + cfrWire,
		},
		{
			name: "60 A blocked, measured, behind 60 A and 18 AWG of 60 C", base: "block", set: "wire.gauge=18 AWG; wire.insulation=60 C; fuse.form=large blade; fuse.rating=60 A; measured.blocked_current=60 A", least: danger, codes: burns,
			why: "six times the ampacity and the fuse holds it for ever", from: cfrWire,
		},
		{
			name: "40 A blocked, measured, behind a 40 A breaker and 18 AWG", base: "labels", set: "fuse.form=auto-reset breaker; fuse.rating=40 A; wire.gauge=18 AWG; wire.insulation=60 C; measured.blocked_current=40 A", least: danger, codes: burns,
			why: "a breaker holds 100 % for ever", from: breakerAlone,
		},
		{
			name: "running current above a board's lasting rating, measured", base: "lithium", set: "controller.continuous_current=15 A; controller.peak_current=30 A; measured.loaded_current=22 A; measured.loaded_voltage=18 V", least: fixFirst, codes: wantRunningOver,
			why: "half as much again for as long as it drives", from: practice,
		},
		{
			name: "200 A blocked, measured, on a pack for 40 A", base: "lithium", set: noConverter + "-controller.current_limit; measured.blocked_current=200 A", least: fixFirst, codes: drive.CodeBlockedOverPack,
			why: "five times what the pack's maker allows", from: cellSheets,
		},
		{
			name: "30 A measured from a 7 Ah block", base: "block", set: "fuse.form=large blade; fuse.rating=40 A; wire.gauge=8 AWG; measured.loaded_current=30 A; measured.loaded_voltage=10.2 V", least: fixFirst, codes: battery.CodeCurrentLasting + "|" + wantRunningOver,
			why: "4.3 C, lasting, of at most 3 C", from: blockSheets,
		},
		{
			name: "a tool pack asked for four times its lasting current", base: "lithium", set: "pack.max_current=2 A", least: danger, codes: battery.CodeCurrentLasting + "|" + drive.CodeLaunchOverPack + "|" + battery.CodeCurrentPeak,
			why: "cells in a closed shell overheat long before the pack is empty", from: cellSheets,
		},
		{
			name: "a tool pack that may stand 2 to 40 A", base: "lithium", set: "pack.max_current=2 to 40 A", least: watch, codes: battery.CodeCurrentLasting + "|" + drive.CodeLaunchOverPack + "|" + battery.CodeCurrentPeak,
			why: "a ninth of the range is below the running current: possible, one level milder", from: cellSheets,
		},
	}
}
