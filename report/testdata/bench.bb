[b]Verdict:[/b] WATCH: works as a bench load
[b]Risk:[/b] none found; the cautions still hold
[b]Next:[/b] read the cautions
[list]
[*]Setup: [b]Bench discharge at 5 A[/b]
[*]Ranges: [b]8 of 10 setups like this lie in a range[/b]
[*]Draws: [b]1024 drawn; 256 of them judged, so a share may be off by 7 in 100[/b]
[/list]

[b]How long and how far[/b]
[list]
[*]Under load: [b]22 to 38 min, likely 29 min[/b]
[*]Ended by: [b]wanted time reached[/b]
[*]Asked for: [b]45 min by the clock[/b]
[*]It would last: [b]33 min; with the pauses 46 min[/b]
[*]And end by: [b]cutoff in the pack[/b]
[*]Delivered: [b]4.62 Ah[/b]
[*]Energy delivered: [b]80 Wh[/b]
[*]Charge left: [b]7.6 %[/b]
[*]Rests at, after: [b]15.9 V[/b]
[*]Pack gets to: [b]34 C (93 F)[/b]
[/list]

[b]How fast on the level[/b]
Not computed: the setup is a bench load, not a vehicle.

[b]The battery[/b]
[list]
[*]Cells: [b]li-ion, 5 in series, 1 in parallel[/b]
[*]Label read as: [b]5 cells in series, one string, 18 V nominal, 21 V full[/b]
[*]Volts when full: [b]21 V[/b]
[*]Nominal volts: [b]18 V[/b]
[*]Volts when empty: [b]14 V[/b]
[*]Rated capacity: [b]5 Ah[/b]
[*]Usable at this load: [b]4.6 Ah[/b]
[*]Usable energy: [b]80 Wh[/b]
[*]Inner resistance: [b]81 mOhm[/b]
[*]Short at its posts: [b]259 A[/b]
[*]Weight: [b]640 g (1.4 lb)[/b]
[/list]

[b]The first shove from rest[/b]
Not computed: the setup is a bench load, not a vehicle.

[b]Wire and fuse[/b]
Not known: the setup does not describe the way from pack to motors.

[b]What stops the drain[/b]
[list]
[*]Opens first: [b]nothing: the pack can be drained to ruin[/b]
[*]Weakest cell at end: [b]2.4 V[/b]
[*]Cuts in and out: [b]no[/b]
[*]Then left, load off: [b]harm not reached[/b]
[/list]

[b]Charging[/b]
No charger was described, so none was judged. Use only the charger that the maker of the pack names for it.

[b]Against the vehicle as it was made[/b]
Not compared: the setup does not describe the original.

[b]What to change, in this order[/b]
Nothing that these figures call for.

[b]What to buy[/b]
Nothing that these figures call for.

[b]What was assumed, most important first[/b]
These values were not given. They move the answer, the first one most, or findings rest on them. A finding with a share in front holds only where values like these fall badly.
[list]
[*]gears.ratio: 60:1 to 110:1 (not given; usual for this can size)
[*]rider.mass: 15 to 24 kg (age 4 to 6)
[*]wire.insulation: 80 C (the weakest in common use)
[/list]
Also assumed, as one value or with little effect on time, speed and launch current: pack.charge: 100 %.

[b]What to measure next[/b]
[list=1]
[*]Current with the wheels blocked for one second. Clamp meter on the red wire. Why: launch and fuse. Expected: it narrows minutes by 12 %, speed by 8 %, launch current by 55 %. In 2 of 10 cases the verdict changes. It is written as measured.blocked_current.
[/list]

[b]Cautions[/b]
[list]
[*]The maker's instructions, local codes and licensed practice come before this report.
[*]A changed vehicle no longer is the one that was tested when it was sold.
[*]These are computed figures. Try the vehicle without a child first, and stay within reach after that.
[/list]
