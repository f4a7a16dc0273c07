[b]Verdict:[/b] DANGER: do not let a child ride this yet
[b]Risk:[/b] `(/code)(/pre)(url=http: //x)~~~ *_(script)(31m.
[b]Next:[/b] Fit a fuse of 20 to 30 A within 178 mm of the pack.
[list]
[*]Risk in full: [b]`(/code)(/pre)(url=http: //x)~~~ *_(script)(31m (at)everyone gnp ueber... 25deg C # $x$ www .x &amp;[/b]
[*]Setup: [b]`(/code)(/pre)(url=http: //x)~~~ *_(script)(31m (at)everyone gnp ueber... 25deg C # $x$ www .x &amp;[/b]
[*]Ranges: [b]8 of 10 vehicles like this lie in a range[/b]
[*]Draws: [b]1024 drawn; 256 of them judged, so a share may be off by 7 in 100; in 1 of 12 it does not get going; in 1 of 50 the motors burn out on the way[/b]
[/list]

[b]Part by part, the worst of each[/b]
[list]
[*]Fuse: [b]DANGER: `(/code)(/pre)(url=http: //x)~~~ *_(script)(31m (at)everyone gnp ueber... 25deg C # $x$ www .x &amp;[/b]
[*]Charger: [b]DANGER: Never put this charger on this pack.[/b]
[*]`(/code)(/pre)(url=http: //x)~~~ *_(script)(31m (at)everyone gnp ueber... 25deg C # $x$ www .x &amp;: [b]FIX FIRST: Likely: The board was made for 12 V and sees 21 V.[/b]
[*]Child: [b]WATCH: Possibly (3 of 10): It is faster than a walking adult.[/b]
[*]Pedal switch: [b]WATCH: In 1 of 30 vehicles like this: The pedal switch can melt shut.[/b]
[*]Battery: [b]WATCH: The weakest cell runs low.[/b]
[/list]

[b]How long and how far[/b]
[list]
[*]Pedal down: [b]22 to 38 min, likely 29 min[/b]
[*]With the pauses: [b]30 to 54 min, likely 41 min[/b]
[*]Distance: [b]2.3 to 4 km (1.4 to 2.5 mi), likely 3.1 km[/b]
[*]Starts: [b]71[/b]
[*]Ended by: [b]wanted time reached[/b]
[*]Over all draws: [b]`(/code)(/pre)(url=http: //x)~~~ *_(script)(31m (at)everyone gnp ueber... 25deg C # $x$ www .x &amp; in 7 of 10; a cutoff opens in 3 of 10[/b]
[*]Asked for: [b]45 min by the clock[/b]
[*]It would last: [b]33 min; with the pauses 46 min[/b]
[*]And end by: [b]cutoff in the pack[/b]
[*]Delivered: [b]4.62 Ah[/b]
[*]Energy delivered: [b]80 Wh[/b]
[*]Charge left: [b]7.6 %[/b]
[*]Rests at, after: [b]15.9 V[/b]
[*]Pack gets to: [b]34 C (93 F)[/b]
[*]Motor case gets to: [b]71 C (160 F)[/b]
[*]Winding gets to: [b]98 C (208 F)[/b]
[/list]
[i]Note:[/i] Amp-hours say how long, not how hard it pulls.

[b]How fast on the level[/b]
[list]
[*]Speed: [b]6.1 to 7.5 km/h (3.8 to 4.7 mph), likely 6.8 km/h[/b]
[*]Amps from the pack: [b]9.3 A[/b]
[*]Amps in the motors: [b]4.7 A[/b]
[*]Volts at controller: [b]17.4 V[/b]
[*]Power at the wheels: [b]61 % of the pack's[/b]
[/list]
[b]WATCH:[/b] Possibly (3 of 10): It is faster than a walking adult. Found 6.8 km/h (4.3 mph); right is at most 5 km/h (3.1 mph) (source: walking-pace). At risk: a child. [b]To do:[/b] Keep to a fenced place.

[b]The battery[/b]
[list]
[*]Cells: [b]li-ion, 5 in series, 1 in parallel[/b]
[*]Label read as: [b]`(/code)(/pre)(url=http: //x)~~~ *_(script)(31m (at)everyone gnp ueber... 25deg C # $x$ www .x &amp;[/b]
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
[i]Note:[/i] `(/code)(/pre)(url=http: //x)~~~ *_(script)(31m (at)everyone gnp ueber... 25deg C # $x$ www .x &amp;

[b]The first shove from rest[/b]
[list]
[*]Peak from the pack: [b]71 to 118 A, likely 88 A, after 2.1 ms[/b]
[*]Peak in the motors: [b]44 A[/b]
[*]Volts fall to: [b]9.7 V[/b]
[*]Speed after 1 s: [b]4.4 km/h (2.7 mph)[/b]
[*]Speed after 3 s: [b]6.5 km/h (4 mph)[/b]
[*]Grip: [b]the wheels spin: the ground, not the motors, sets the shove[/b]
[*]Above limit: [b]pack, 30 A: for 620 ms[/b]
[*]Blocked, from pack: [b]92 A[/b]
[*]Blocked, in motors: [b]46 A[/b]
[*]Winding stands that: [b]14 s[/b]
[*]Reversed at speed: [b]151 A[/b]
[*]Spark at plugging in: [b]210 A, 0.104 J[/b]
[*]Resistor to tame it: [b]47 Ohm[/b]
[/list]
The figures above are over all draws. One representative launch, with every unknown at its middle, stands as launch.case in the JSON form, for whoever wants to compute it again. By itself it gives 86 A from the pack after 2.2 ms, 43 A in the motors, 9.9 V at the lowest, 90 A when blocked, and then 6.7 km/h (4.2 mph).
[b]WATCH:[/b] In 1 of 30 vehicles like this: The pedal switch can melt shut. Found 88 A; right is at most 60 A (source: vehicle-trade). At risk: a child. [b]To do:[/b] Fit a speed control.

[b]Wire and fuse[/b]
[list]
[*]Fuse must be: [b]at least 18.6 A, at most 47.1 A[/b]
[*]Standard sizes: [b]20, 25, 30, 40 A[/b]
[*]Wire carries: [b]31.4 A[/b]
[*]Resistance in all: [b]31 mOhm[/b]
[*]Volts lost running: [b]0.29 V = 1.6 %[/b]
[*]`(/code)(/pre)(url=http: //x)~~~ *_(script)(31m (at)everyone gnp ueber... 25deg C # $x$ www .x &amp;: [b]12 mOhm, 0.12 V, 1.1 W as heat[/b]
[*]Switch: [b]15 mOhm, 0.14 V, 1.3 W as heat[/b]
[*]Short in the wire: [b]187 A[/b]
[*]It is cleared in: [b]never: nothing opens it[/b]
[*]Wire stands it for: [b]1.9 s[/b]
[/list]
[b]DANGER:[/b] `(/code)(/pre)(url=http: //x)~~~ *_(script)(31m (at)everyone gnp ueber... 25deg C # $x$ www .x &amp; Found 187 `(/code)(/pre)(url=http: //x)~~~ *_(script)(31m (at)everyone gnp ueber... 25deg C # $x$ www .x &amp;; right is at most 31.4 `(/code)(/pre)(url=http: //x)~~~ *_(script)(31m (at)everyone gnp ueber... 25deg C # $x$ www .x &amp; (source: cfr-183-455). At risk: the house, by fire. [b]To do:[/b] Fit one close to the pack before anybody rides.

[b]What stops the drain[/b]
[list]
[*]Opens first: [b]the pack's own electronics[/b]
[*]Over all draws: [b]the pack's own electronics in 9 of 10; nothing in 1 of 10[/b]
[*]Charge left then: [b]7.6 %[/b]
[*]Weakest cell at end: [b]2.71 V[/b]
[*]Cuts in and out: [b]3 times[/b]
[*]Left switched on: [b]41 days until harm[/b]
[*]Left for a week: [b]after a week 5 % of its charge is gone[/b]
[*]Setting that suits: [b]opens at 15.5 V after 2 s and stays open; if it cannot, closes again only at 18.2 V[/b]
[/list]

[b]Charging[/b]
[list]
[*]Charger suits: [b]no: do not connect it to this pack[/b]
[*]Takes each cell to: [b]2.94 V at most[/b]
[*]The right one: [b]`(/code)(/pre)(url=http: //x)~~~ *_(script)(31m (at)everyone gnp ueber... 25deg C # $x$ www .x &amp;.[/b]
[*]Left plugged in: [b]`(/code)(/pre)(url=http: //x)~~~ *_(script)(31m (at)everyone gnp ueber... 25deg C # $x$ www .x &amp;: Some gas is lost.[/b]
[*]Left plugged in: [b]One week, one month: It is gassed dry.[/b]
[/list]
[b]DANGER:[/b] Never put this charger on this pack. Source: iec-62133. At risk: the house, by fire.

[b]Against the vehicle as it was made[/b]
Each figure is this setup's over the original's: 1 is the same, 2 is double.
[list]
[*]Speed: [b]1.5 times[/b]
[*]Launch current: [b]1.9 times[/b]
[*]Blocked current: [b]1.8 times[/b]
[*]Load on gear teeth: [b]1.8 times[/b]
[*]Motor heat: [b]3.4 times[/b]
[*]Ride time: [b]0.71 times[/b]
[*]Short-circuit amps: [b]not known[/b]
[*]Original speed: [b]4.5 km/h (2.8 mph)[/b]
[*]Original ride: [b]41 min[/b]
[*]Original launch: [b]47 A[/b]
[/list]

[b]While it is put away[/b]
[list]
[*]Put away at: [b]50 %[/b]
[*]Left at the end: [b]31 % with nothing done[/b]
[/list]
[list]
[*]2026-01-15: Look at the volts and top up to half.
[/list]
[b]WATCH:[/b] The weakest cell runs low. Found 2.71 V; right is at least 2.8 V (source: iec-62133).

[b]What you read, and what was foretold[/b]
`(/code)(/pre)(url=http: //x)~~~ *_(script)(31m (at)everyone gnp ueber... 25deg C # $x$ www .x &amp;.
[list]
[*]`(/code)(/pre)(url=http: //x)~~~ *_(script)(31m (at)everyone gnp ueber... 25deg C # $x$ www .x &amp;: [b]38 min, give or take 5 min as such readings usually are. Foretold: 21 min to 2 h 50 min by labels alone, 33 to 45 min with all readings. The slow reading of the two.[/b]
[*]Top speed: [b]`(/code)(/pre)(url=http: //x)~~~ *_(script)(31m (at)everyone gnp ueber... 25deg C # $x$ www .x &amp;. Foretold: 5 to 9.4 km/h (3.1 to 5.8 mph) by labels alone, 6.1 to 7.6 km/h (3.8 to 4.7 mph) with all readings. Left out, because it contradicts the others. Three times what it can do.[/b]
[*]Not all true: [b]top speed; `(/code)(/pre)(url=http: //x)~~~ *_(script)(31m (at)everyone gnp ueber... 25deg C # $x$ www .x &amp;[/b]
[*]Likeliest wrong: [b]top speed; the answer does without it[/b]
[*]Nearly as likely: [b]`(/code)(/pre)(url=http: //x)~~~ *_(script)(31m (at)everyone gnp ueber... 25deg C # $x$ www .x &amp;[/b]
[*]By mere chance: [b]honest readings disagree this much in 1 of 500[/b]
[*]They would need: [b]The x &amp; of the `(/code)(/pre)(url=http: //x)~~~ * (script)(31m (at)everyone gnp ueber  25deg C # $x$ www at 42:1, 3.1 standard deviations from its middle[/b]
[/list]
[b]INFO:[/b] The volts at rest are sound.

[b]What else that tells[/b]
[list]
[*]`(/code)(/pre)(url=http: //x)~~~ *_(script)(31m (at)everyone gnp ueber... 25deg C # $x$ www .x &amp;: [b]measured 18.6 V, computed 20.1 to 20.9 V. The pack was not full.[/b]
[/list]

[b]Also found[/b]
[b]FIX FIRST:[/b] Likely: The board was made for 12 V and sees 21 V. Found 21 V; right is at most 12 V. It rests on a guess: the x &amp; of the `(/code)(/pre)(url=http: //x)~~~ * (script)(31m (at)everyone gnp ueber  25deg C # $x$ www, taken as `(/code)(/pre)(url=http: //x)~~~ *_(script)(31m (at)everyone gnp ueber... 25deg C # $x$ www .x &amp;. [b]To do:[/b] Replace the board by one that stands the pack's full volts.

[b]What to change, in this order[/b]
[list=1]
[*]- # 1. `(/code)(/pre)(url=http: //x)~~~ *_(script)(31m (at)everyone gnp ueber... 25deg C # $x$ www .x &amp;
[*]Replace the board.
[/list]

[b]What to buy[/b]
[list]
[*]`(/code)(/pre)(url=http: //x)~~~ *_(script)(31m (at)everyone gnp ueber... 25deg C # $x$ www .x &amp;: [b]`(/code)(/pre)(url=http: //x)~~~ *_(script)(31m (at)everyone gnp ueber... 25deg C # $x$ www .x &amp;[/b]
[*]Charger: [b]one for li-ion cells that ends at 21 V[/b]
[/list]

[b]How to use it[/b]
[list]
[*]Let go of the pedal at once when the vehicle does not move.
[/list]

[b]What was assumed, most important first[/b]
These values were not given. They move the answer, the first one most, or findings rest on them. A finding with a share in front holds only where values like these fall badly.
[list]
[*]rider.mass: 15 to 24 kg (age 4 to 6)
[*]wire.insulation: 80 C (the weakest in common use)
[/list]
Also assumed, as one value or with little effect on time, speed and launch current: `(/code)(/pre)(url=http: //x)~~~ *_(script)(31m (at)everyone gnp ueber... 25deg C # $x$ www .x &amp;: `(/code)(/pre)(url=http: //x)~~~ *_(script)(31m (at)everyone gnp ueber... 25deg C # $x$ www .x &amp;; pack.charge: 100 %.

[b]What to measure next[/b]
[list=1]
[*]Current with the wheels blocked for one second. Clamp meter on the red wire. Why: launch and fuse. Expected: it narrows minutes by 12 %, speed by 8 %, launch current by 55 %. In 2 of 10 cases the verdict changes. It is written as `(/code)(/pre)(url=http: //x)~~~ *_(script)(31m (at)everyone gnp ueber... 25deg C # $x$ www .x &amp;.
[/list]

[b]Cautions[/b]
[list]
[*]`(/code)(/pre)(url=http: //x)~~~ *_(script)(31m (at)everyone gnp ueber... 25deg C # $x$ www .x &amp;
[*]A changed vehicle no longer is the one that was tested.
[/list]

[b]Sources[/b]
[list]
[*]cfr-183-455: 33 CFR 183.455, overcurrent protection (how known: primary)
[*]changed-toy: a standard on toys (how known: memory)
[*]child-charts: a chart (how known: copy)
[*]iec-62133: a standard on packs (how known: memory)
[*]vehicle-trade: the trade (how known: memory)
[*]walking-pace: common practice, no published source (how known: common practice)
[/list]
These are the sources of the findings, the cautions and the weightiest assumptions, by name. Left out here: 1. The JSON form of this report holds them all and whole, and "packcheck sources" lists every source there is.
