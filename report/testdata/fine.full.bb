[b]YES:[/b] as far as these figures go. Not full, it lasts 29 min.
[b]Why:[/b] Nothing above watch.
[b]Next:[/b] Ride, and measure the time.

[b]Bramble Lane tractor with controller, cutoff and fuse[/b]

[b]Words[/b]
Winding = a motor's coil of wire; board = a flat plate of small soldered parts; mOhm = thousandths of an ohm; Resistance = how much it holds the amps back; Weakest cell = one of the small batteries that it is made of.

[b]Part by part[/b]
[list]
[*][b]NOT KNOWN:[/b] fuse (Not told: kind, amps and place of the fuse)
[/list]

[b]All figures[/b]
[list]
[*][b]Draws:[/b] 8 of 10 vehicles like this lie in a range; 1024 drawn, 256 of them judged (a share may be off by 7 in 100)
[/list]

[b]Ride[/b]
[list]
[*][b]Charged now:[/b] 85 %; what follows is for that
[*][b]Pedal down:[/b] 29 min
[*][b]With the pauses:[/b] 41 min
[*][b]Ended by:[/b] wanted time reached
[*][b]Distance:[/b] 3.1 km (1.93 mi)
[*][b]Starts:[/b] 71
[*][b]Delivered:[/b] 4.62 Ah; 80 Wh
[*][b]Charge left:[/b] 7.6 %
[*][b]Rests at, after:[/b] 15.9 V
[*][b]Battery gets to:[/b] 34 C (93 F)
[*][b]Motor case:[/b] 71 C (160 F)
[*][b]Motor winding:[/b] 98 C (208 F)
[/list]

[b]Speed on the level[/b]
[list]
[*][b]Speed:[/b] 6.8 km/h (4.3 mph)
[*][b]Amps:[/b] 9.3 A; in the motors 4.7 A
[*][b]Volts at the board:[/b] 17.4 V
[*][b]Power at wheels:[/b] 61 % of the pack's
[/list]

[b]Start[/b]
[list]
[*][b]Amps at a start:[/b] 88 A; in the motors 44 A; after 2.1 ms
[*][b]Volts fall to:[/b] 9.7 V
[*][b]It gets to:[/b] 4.4 km/h (2.7 mph) after 1 s; 6.5 km/h (4 mph) after 3 s
[*][b]Wheels blocked:[/b] 92 A; in the motors 46 A
[*][b]Windings stand it:[/b] 14 s
[*][b]Reversed rolling:[/b] 151 A
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

[b]Wire and fuse[/b]
[list]
[*][b]Fuse must be:[/b] at least 18.6 A, at most 47.1 A
[*][b]Standard sizes:[/b] 20, 25, 30, 40 A
[*][b]Wire carries:[/b] 31.4 A
[*][b]In all:[/b] 31 mOhm
[*][b]Volts lost:[/b] 0.29 V = 1.6 %
[*][b]Of that:[/b] wire, there and back 12 mOhm, 0.12 V, 1.1 W as heat; switch 15 mOhm, 0.14 V, 1.3 W
[*][b]Short in the wire:[/b] 187 A
[*][b]Cleared in:[/b] 11 ms
[*][b]Wire stands it:[/b] 1.9 s
[/list]

[b]What stops the drain[/b]
[list]
[*][b]Opens first:[/b] the pack's own electronics
[*][b]Charge left then:[/b] 7.6 %
[*][b]Weakest cell:[/b] 2.71 V
[*][b]Cuts in and out:[/b] no
[*][b]Left on:[/b] 41 days until harm
[*][b]Left for a week:[/b] after a week 5 % of its charge is gone
[*][b]Setting that suits:[/b] opens at 15.5 V after 2 to 20 s and stays open
[/list]

[b]Charging[/b]
[list]
[*][b]Charger suits:[/b] yes
[*][b]Charged to 80 %:[/b] 1 h 36 min
[*][b]Charged full in:[/b] 2 h 12 min
[*][b]Unplug after:[/b] 3 h
[*][b]Each cell to:[/b] 4.2 V at most
[/list]

[b]Original[/b]
[list]
[*][b]Now over then:[/b] speed 1.5; amps at a start 1.9; blocked 1.8; load on gear teeth 1.8; motor heat 3.4; ride time 0.71; short circuit not known; of each vehicle by itself
[*][b]It had:[/b] speed 4.5 km/h (2.8 mph); pedal down 41 min; amps at a start 47 A
[/list]

[b]Look or measure next[/b]
No single measurement would change this answer much.

[b]What was assumed, most important first[/b]
Nothing: the setup gave every value.

[b]Sources[/b]
By how they are known ("packcheck sources" tells more).

[list]
[*]Common practice: walking-pace.
[*]Copy: child-charts; nobody-cites.
[*]Memory: changed-toy; iec-62133; vehicle-trade.
[*]Primary: cfr-183-455.
[/list]

[b]Cautions[/b]
[list]
[*]Follow the instructions of the makers of the vehicle and the pack, local codes and licensed practice.
[*]A changed vehicle no longer is the one that was tested.
[/list]
