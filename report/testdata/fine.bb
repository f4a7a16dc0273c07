[b]Verdict:[/b] FINE: fits
[b]Risk:[/b] Nothing above watch.
[b]Next:[/b] Ride, and measure the time.
[list]
[*]Setup: [b]Bramble Lane tractor with controller, cutoff and fuse[/b]
[*]Ranges: [b]8 of 10 vehicles like this lie in a range[/b]
[*]Draws: [b]1024 drawn; 256 of them judged, so a share may be off by 7 in 100[/b]
[/list]

[b]How long and how far[/b]
[list]
[*]Pedal down: [b]29 min[/b]
[*]With the pauses: [b]41 min[/b]
[*]Distance: [b]3.1 km (1.93 mi)[/b]
[*]Starts: [b]71[/b]
[*]Ended by: [b]wanted time reached[/b]
[*]Delivered: [b]4.62 Ah[/b]
[*]Energy delivered: [b]80 Wh[/b]
[*]Charge left: [b]7.6 %[/b]
[*]Rests at, after: [b]15.9 V[/b]
[*]Pack gets to: [b]34 C (93 F)[/b]
[*]Motor case gets to: [b]71 C (160 F)[/b]
[*]Winding gets to: [b]98 C (208 F)[/b]
[/list]

[b]How fast on the level[/b]
[list]
[*]Speed: [b]6.8 km/h (4.3 mph)[/b]
[*]Amps from the pack: [b]9.3 A[/b]
[*]Amps in the motors: [b]4.7 A[/b]
[*]Volts at controller: [b]17.4 V[/b]
[*]Power at the wheels: [b]61 % of the pack's[/b]
[/list]

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
[list]
[*]Peak from the pack: [b]88 A, after 2.1 ms[/b]
[*]Peak in the motors: [b]44 A[/b]
[*]Volts fall to: [b]9.7 V[/b]
[*]Speed after 1 s: [b]4.4 km/h (2.7 mph)[/b]
[*]Speed after 3 s: [b]6.5 km/h (4 mph)[/b]
[*]Blocked, from pack: [b]92 A[/b]
[*]Blocked, in motors: [b]46 A[/b]
[*]Winding stands that: [b]14 s[/b]
[*]Reversed at speed: [b]151 A[/b]
[/list]
The figures above are over all draws. One representative launch, with every unknown at its middle, stands as launch.case in the JSON form, for whoever wants to compute it again. By itself it gives 86 A from the pack after 2.2 ms, 43 A in the motors, 9.9 V at the lowest, 90 A when blocked, and then 6.7 km/h (4.2 mph).

[b]Wire and fuse[/b]
[list]
[*]Fuse must be: [b]at least 18.6 A, at most 47.1 A[/b]
[*]Standard sizes: [b]20, 25, 30, 40 A[/b]
[*]Wire carries: [b]31.4 A[/b]
[*]Resistance in all: [b]31 mOhm[/b]
[*]Volts lost running: [b]0.29 V = 1.6 %[/b]
[*]Wire, there and back: [b]12 mOhm, 0.12 V, 1.1 W as heat[/b]
[*]Switch: [b]15 mOhm, 0.14 V, 1.3 W as heat[/b]
[*]Short in the wire: [b]187 A[/b]
[*]It is cleared in: [b]11 ms[/b]
[*]Wire stands it for: [b]1.9 s[/b]
[/list]

[b]What stops the drain[/b]
[list]
[*]Opens first: [b]the pack's own electronics[/b]
[*]Charge left then: [b]7.6 %[/b]
[*]Weakest cell at end: [b]2.71 V[/b]
[*]Cuts in and out: [b]no[/b]
[*]Left switched on: [b]41 days until harm[/b]
[*]Left for a week: [b]after a week 5 % of its charge is gone[/b]
[*]Setting that suits: [b]opens at 15.5 V after 2 s and stays open[/b]
[/list]

[b]Charging[/b]
[list]
[*]Charger suits: [b]yes[/b]
[*]To 80 %: [b]1 h 36 min[/b]
[*]To full: [b]2 h 12 min[/b]
[*]Unplug after: [b]3 h[/b]
[*]Takes each cell to: [b]4.2 V at most[/b]
[/list]

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

[b]What to change, in this order[/b]
Nothing that these figures call for.

[b]What to buy[/b]
Nothing that these figures call for.

[b]What was assumed, most important first[/b]
Nothing: the setup gave every value.

[b]What to measure next[/b]
No single measurement would change this answer much.

[b]Cautions[/b]
[list]
[*]Follow the instructions of the makers of the vehicle and the pack, local codes and licensed practice.
[*]A changed vehicle no longer is the one that was tested.
[/list]

[b]Sources[/b]
[list]
[*]changed-toy: a standard on toys (how known: memory)
[*]walking-pace: common practice, no published source (how known: common practice)
[/list]
These are the sources of the findings, the cautions and the weightiest assumptions, by name. Left out here: 5. The JSON form of this report holds them all and whole, and "packcheck sources" lists every source there is.
