[b]YES, WITH CARE:[/b] 0 things to watch. Not full, it lasts 33 min.
[b]Why:[/b] none found; the cautions still hold
[b]Next:[/b] read the cautions

[b]Bench discharge at 5 A[/b]

[b]Words[/b]
Cutoff = it switches an empty battery off in time; insulation = the skin of a wire; mOhm = thousandths of an ohm; Clamp meter = it reads the amps in a wire from outside; Resistance = how much it holds the amps back; Weakest cell = one of the small batteries that it is made of.

[b]Part by part[/b]
[list]
[*][b]NOT KNOWN:[/b] fuse (Not told: kind, amps and place of the fuse)
[/list]

[b]All figures[/b]
[list]
[*][b]Draws:[/b] 8 of 10 setups like this lie in a range; 1024 drawn, 256 of them judged (a share may be off by 7 in 100)
[/list]

[b]Ride[/b]
[list]
[*][b]Charged now:[/b] 85 %; what follows is for that
[*][b]Under load:[/b] 33 min
[*][b]Ended by:[/b] cutoff in the pack
[*][b]As you asked:[/b] 45 min with the pauses: yes
[*][b]Within that:[/b] 29 min (22 to 38) under load; by the clock 41 min (30 to 54); ended by: wanted time reached
[*][b]Delivered:[/b] 4.62 Ah; 80 Wh
[*][b]Charge left:[/b] 7.6 %
[*][b]Rests at, after:[/b] 15.9 V
[*][b]Battery gets to:[/b] 34 C (93 F)
[/list]

[b]Battery[/b]
[list]
[*][b]Cells:[/b] li-ion, 5 in series, 1 side by side; label read as 5 cells in series, one string, 18 V nominal, 21 V full
[*][b]Volts:[/b] 21 V full and rested, 18 V nominal, 14 V empty
[*][b]Rated capacity:[/b] 5 Ah
[*][b]Usable here:[/b] 4.6 Ah; 80 Wh
[*][b]Resistance after 10 s:[/b] 81 mOhm
[*][b]Short at its posts:[/b] 259 A
[*][b]Weight:[/b] 640 g (1.4 lb)
[/list]

[b]What stops the drain[/b]
[list]
[*][b]Opens first:[/b] nothing: the pack can be drained to ruin
[*][b]Weakest cell:[/b] 2.4 V
[*][b]Cuts in and out:[/b] no
[*][b]Left, load off:[/b] harm not reached
[/list]

[b]Charging[/b]
No charger was described, so none was judged. Use only the charger that the maker of the pack names for it.

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

[b]Cautions[/b]
[list]
[*]The maker's instructions, local codes and licensed practice come before this report.
[*]A changed vehicle no longer is the one that was tested when it was sold.
[*]These are computed figures. Try the vehicle without a child first, and stay within reach after that.
[/list]
