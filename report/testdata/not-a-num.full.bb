[b]NO:[/b] no child may ride it like this: 2 dangers, 1 to put right.
[b]Why:[/b] No fuse.
[b]Next:[/b] Fit a fuse of 20 to 30 A within 178 mm of the pack.

[b]Figures that did not come out[/b]

[b]Words[/b]
Cutoff = it switches an empty battery off in time; speed control = electronics that feed the motors; winding = a motor's coil of wire; insulation = the skin of a wire; board = a flat plate of small soldered parts; mOhm = thousandths of an ohm; Clamp meter = it reads the amps in a wire from outside; Resistance = how much it holds the amps back; weakest cell = one of the small batteries that it is made of.

[b]What was found, worst first[/b]
Figures are those of the middle one of those that have it. In brackets: found, right, name, source.

[b]DANGER (fire):[/b] There is no fuse in the path. (not known, at most 31.4 A; no-fuse; cfr-183-455)

[b]DANGER (fire):[/b] Never put this charger on this pack. (charger-wrong; iec-62133)

[b]FIX FIRST:[/b] Likely, in 9 of 10 vehicles like this: The board was made for 12 V and sees 21 V. (21 V in these, at most 12 V; a guess: rider.mass; board-overvolted)

[b]WATCH (child):[/b] Possibly, in 3 of 10: It is faster than a walking adult. (6.8 km/h in these, at most 5 km/h; speed-above-walk; walking-pace) [b]To do:[/b] Keep to a fenced place.

[b]WATCH (child):[/b] Seldom, in 1 of 30: The pedal switch can melt shut. (88 A in these, at most 60 A; pedal-welds; vehicle-trade) [b]To do:[/b] Fit a speed control.

[b]WATCH:[/b] The weakest cell runs low. (2.71 V, at least 2.8 V; weak-cell; iec-62133)

[b]INFO:[/b] The volts at rest are sound. (reading-odd)

[b]Part by part[/b]
[list]
[*][b]NOT KNOWN:[/b] fuse (Not told: kind, amps and place of the fuse)
[/list]

[b]What to change, in this order[/b]
[list=1]
[*]Fit a fuse of 20 to 30 A within 178 mm of the pack.
[*]Replace the board.
[/list]

[b]What to buy[/b]
[list]
[*][b]Fuse:[/b] 20 A, the smallest that holds; right at the pack
[*][b]Charger:[/b] one for li-ion cells that ends at 21 V
[/list]

[b]How to use it[/b]
[list]
[*]Let go of the pedal at once when the vehicle does not move.
[/list]

[b]All figures[/b]
[list]
[*][b]Draws:[/b] 8 of 10 vehicles like this lie in a range; 1024 drawn, 256 of them judged (a share may be off by 7 in 100); it does not get going (1 of 12); the motors burn out on the way (1 of 50)
[/list]

[b]Ride[/b]
[list]
[*][b]Charged now:[/b] 85 %; what follows is for that
[*][b]Pedal down:[/b] 33 min
[*][b]With the pauses:[/b] 46 min
[*][b]Ended by:[/b] cutoff in the pack
[*][b]As you asked:[/b] 45 min with the pauses: likely (7 of 10)
[*][b]Within that:[/b] 29 min under load; by the clock 41 min (30 to 54); ended by: wanted time reached
[*][b]Over all draws:[/b] the time asked for is over (7 of 10); a cutoff opens (3 of 10)
[*][b]Distance:[/b] 3.1 km (2.3 to 4; 1.4 to 2.5 mi) in the 45 min asked
[*][b]Starts:[/b] 71
[*][b]Delivered:[/b] 4.62 Ah; 80 Wh
[*][b]Charge left:[/b] 7.6 %
[*][b]Rests at, after:[/b] 15.9 V
[*][b]Battery gets to:[/b] 34 C (93 F)
[*][b]Motor case:[/b] 71 C (160 F)
[*][b]Motor winding:[/b] 98 C (208 F)
[/list]

[b]Note:[/b] Amp-hours say how long, not how hard it pulls.

[b]Speed on the level[/b]
[list]
[*][b]Speed:[/b] 6.8 km/h (6.1 to 7.5; 3.8 to 4.7 mph); without the 18 km/h that was read
[*][b]Amps:[/b] 9.3 A; in the motors 4.7 A
[*][b]Volts at the board:[/b] 17.4 V
[*][b]Power at wheels:[/b] 61 % of the pack's
[/list]

[b]Start[/b]
[list]
[*][b]Amps at a start:[/b] 88 A (71 to 118); in the motors 44 A; after 2.1 ms
[*][b]Volts fall to:[/b] 9.7 V
[*][b]It gets to:[/b] 4.4 km/h (2.7 mph) after 1 s; 6.5 km/h (4 mph) after 3 s
[*][b]Grip:[/b] the wheels spin: the ground, not the motors, sets the shove
[*][b]Above limit:[/b] pack, 30 A: for 620 ms
[*][b]Wheels blocked:[/b] 92 A; in the motors 46 A
[*][b]Windings stand it:[/b] 14 s
[*][b]Reversed rolling:[/b] 151 A
[*][b]Plug-in spark:[/b] 210 A, 0.104 J
[*][b]Resistor to tame it:[/b] 47 Ohm
[/list]

[b]Battery[/b]
[list]
[*][b]Cells:[/b] li-ion, 5 in series, 1 side by side; label read as 5 cells in series, one string, 18 V nominal, 21 V full
[*][b]Volts:[/b] 21 V full and rested, 18 V nominal, 14 V empty
[*][b]Rated capacity:[/b] 5 Ah
[*][b]Usable here:[/b] 4.6 Ah; 80 Wh
[*][b]Resistance after 10 s:[/b] 81 mOhm
[*][b]Short at its posts:[/b] 259 A
[*][b]Weight:[/b] not known
[/list]

[b]Note:[/b] 20 V max and 18 V nominal are the same pack: full and half full.

[b]Wire and fuse[/b]
[list]
[*][b]Fuse must be:[/b] at least 18.6 A, at most 47.1 A
[*][b]Standard sizes:[/b] unknown, 20 A
[*][b]Wire carries:[/b] 31.4 A
[*][b]In all:[/b] 31 mOhm
[*][b]Volts lost:[/b] 0.29 V = 1.6 %
[*][b]Of that:[/b] wire, there and back 12 mOhm, 0.12 V, 1.1 W as heat; switch 15 mOhm, 0.14 V, 1.3 W
[*][b]Short in the wire:[/b] 187 A
[*][b]Cleared in:[/b] never: nothing opens it
[*][b]Wire stands it:[/b] not known
[/list]

[b]What stops the drain[/b]
[list]
[*][b]Opens first:[/b] the pack's own electronics
[*][b]Over all draws:[/b] the pack's own electronics (9 of 10); nothing (1 of 10)
[*][b]Charge left then:[/b] 7.6 %
[*][b]Weakest cell:[/b] 2.71 V
[*][b]Cuts in and out:[/b] 3 times
[*][b]Left on:[/b] 41 days until harm
[*][b]Left for a week:[/b] after a week 5 % of its charge is gone
[/list]

[b]Charging[/b]
[list]
[*][b]Charger suits:[/b] no: do not connect it to this pack
[*][b]Each cell to:[/b] 2.94 V at most
[*][b]Left plugged in:[/b] One night: Some gas is lost.
[*][b]Left plugged in:[/b] One week, one month: It is gassed dry.
[/list]

[b]Original[/b]
[list]
[*][b]Now over then:[/b] speed unknown; amps at a start 1.9; blocked 1.8; load on gear teeth 1.8; motor heat 3.4; ride time 0.71; short circuit not known; of each vehicle by itself
[*][b]It had:[/b] speed 4.5 km/h (2.8 mph); pedal down 41 min; amps at a start 47 A
[/list]

[b]While it is put away[/b]
[list]
[*][b]Best put away at:[/b] 50 %
[*][b]Left at the end:[/b] 31 % of a full charge, if it is put away as it is now and nothing is done
[/list]

[list]
[*]2026-01-15: Look at the volts and top up to half.
[/list]

[b]What you read, and what was foretold[/b]
Top speed and ride time cannot both be true.

[list]
[*][b]Ride time by the clock:[/b] 38 min, give or take 5 min as such readings usually are. Foretold: 21 min to 2 h 50 min by labels alone, 33 to 45 min with all readings. The slow reading of the two.
[*][b]Top speed:[/b] 18 km/h +- 1 km/h. Foretold: 5 to 9.4 km/h (3.1 to 5.8 mph) by labels alone, 6.1 to 7.6 km/h (3.8 to 4.7 mph) with the others. Left out, because it contradicts the others. Three times what it can do.
[*][b]Not all true:[/b] top speed; ride time by the clock
[*][b]Likeliest wrong:[/b] top speed; the answer does without it
[*][b]Nearly as likely:[/b] ride time by the clock
[*][b]By mere chance:[/b] honest readings disagree this much in 1 of 500
[*][b]They would need:[/b] The ratio of the gears at 42:1, 3.1 standard deviations from its middle
[/list]

[b]What else that tells[/b]
[list]
[*][b]Rest volts:[/b] measured 18.6 V, computed 20.1 to 20.9 V. The pack was not full.
[/list]

[b]Look or measure next[/b]
[list=1]
[*]Current with the wheels blocked for one second. Clamp meter on the red wire. (Narrows: time 12 %, speed 8 %, amps at a start 55 %, verdict 21 %.)
[/list]

[b]What was assumed, most important first[/b]
[list]
[*]gears.ratio: 60:1 to 110:1.
[*]rider.mass: 15 to 24 kg.
[*]wire.insulation: 80 C.
[*]Of less effect:
[*](pack) charge 100 %.
[/list]

[b]Sources[/b]
By how they are known ("packcheck sources" tells more).

[list]
[*]Common practice: walking-pace (common practice, no published source).
[*]Copy: child-charts; nobody-cites.
[*]Memory: changed-toy; iec-62133 (a standard on packs); vehicle-trade (the trade).
[*]Primary: cfr-183-455 (33 CFR 183.455, overcurrent protection).
[/list]

[b]Cautions[/b]
[list]
[*]Follow the instructions of the makers of the vehicle and the pack, local codes and licensed practice.
[*]A changed vehicle no longer is the one that was tested.
[/list]
