package setup

// Setup is one setup file as read: typed values, nothing assumed, to be looked at. It is
// changed with [Setup.With] or [Setup.Change], which check what they are told; one whose
// fields were set otherwise gets no answer but [Faults]. The tags are the registry of
// tables and keys that [Keys] lists; what they mean is said in keys.go.
type Setup struct {
	Name string // file name as given, for messages
	Dir  string // folder of the file; empty when it was not a file: then it may name none

	// AnyFolder lets the setup name files outside its own folder. A setup of a
	// stranger should not: it could have others read.
	AnyFolder bool

	Title Word `key:"title" kind:"text" example:"Tractor for the harvest fair" doc:"a line to print above the report"`

	TablesFile Word `key:"tables_file" kind:"file" example:"my-tables.toml" doc:"a TOML file with grounds, joints, fuses and motors of your own"`

	Rider      Rider      `table:"rider" doc:"the child"`
	Vehicle    Vehicle    `table:"vehicle" doc:"the vehicle without battery and rider"`
	Motors     Motors     `table:"motors" doc:"the motors, all alike"`
	Gears      Gears      `table:"gears" doc:"from motor to wheel"`
	Controller Controller `table:"controller" doc:"what switches the motors"`
	Wire       Wire       `table:"wire" doc:"the way from pack to controller"`
	Fuse       Fuse       `table:"fuse" doc:"the fuse or breaker nearest to the pack"`
	Pack       Pack       `table:"pack" doc:"the battery that is asked about"`
	Cutoff     Cutoffs    `table:"cutoff"`
	Bench      Bench      `table:"load" doc:"any other load, in place of rider, vehicle, motors and gears"`
	Charger    Charger    `table:"charger" doc:"what the pack is charged with"`
	Outing     Outing     `table:"outing" doc:"how it is driven"`
	Storage    Storage    `table:"storage" doc:"the winter"`
	Measured   Measured   `table:"measured" doc:"what was measured, driven from full; on the original battery where [original.pack] is there and [original.measured] is not"`

	// Original is the vehicle as it left the factory, nil when not described.
	Original *Setup
	Place    Place // of [original], in an Original

	// LeftOut are the keys that [Changes.Pack] left out with the setup's own
	// battery, sorted.
	LeftOut []string

	from map[string]string // what faults of changed keys go by, by key
}

// Rider is the child.
type Rider struct {
	Place
	Mass Value `key:"mass" kind:"mass" min:"5" max:"150" example:"20 kg" doc:"mass of the child, or of all who ride, dressed"`
	Age  Value `key:"age" kind:"age" min:"0.5" max:"99" example:"5 years" doc:"age of the child; its mass is taken from growth charts when not given"`

	Count Value `key:"count" kind:"count" min:"1" max:"6" example:"2" doc:"how many ride, all of about the same age; counts where their mass is taken from growth charts"`
}

// Vehicle is the vehicle without battery and rider.
type Vehicle struct {
	Place
	Mass               Value `key:"mass" kind:"mass" min:"0.5" max:"500" example:"15 kg" doc:"mass without battery and rider"`
	WheelDiameter      Value `key:"wheel_diameter" kind:"length" min:"0.03" max:"1.2" example:"250 mm" doc:"diameter of the driven wheels"`
	WheelWidth         Value `key:"wheel_width" kind:"length" min:"0.005" max:"0.6" example:"90 mm" doc:"width of the driven wheels; told only: no published rolling loss of so small wheels goes by their width"`
	Tyres              Word  `key:"tyres" kind:"word" words:"hard|rubber" example:"hard" doc:"what the wheels run on: hard plastic, or a rubber or foam face"`
	DrivenWheels       Value `key:"driven_wheels" kind:"count" min:"1" max:"12" example:"2" doc:"wheels that are driven"`
	Wheels             Value `key:"wheels" kind:"count" min:"2" max:"12" example:"4" doc:"wheels in all"`
	Seats              Value `key:"seats" kind:"count" min:"1" max:"6" example:"1" doc:"seats"`
	Ground             Word  `key:"ground" kind:"ground" example:"short grass" doc:"the ground it runs on, in everyday words"`
	Slope              Value `key:"slope" kind:"slope" min:"0" max:"0.5" example:"3 %" doc:"steepest climb, rise per run; a path that falls on the way there climbs on the way back"`
	ClaimedSpeed       Value `key:"claimed_speed" kind:"speed" min:"0.2" max:"15" example:"5 km/h" doc:"top speed that the box or the manual claims"`
	DesignVoltage      Value `key:"design_voltage" kind:"voltage" min:"3" max:"100" example:"12 V" doc:"voltage that the vehicle was made for"`
	RatedLoad          Value `key:"rated_load" kind:"mass" min:"5" max:"500" example:"30 kg" doc:"greatest mass of all who ride that label or manual allow"`
	RemoteControl      Flag  `key:"remote_control" kind:"yes or no" example:"true" doc:"whether a remote control drives it and still works"`
	Accessories        Word  `key:"accessories" kind:"word" words:"on the pack|own supply|none" example:"on the pack" doc:"where steering motor, radio and lights get their volts from"`
	Brake              Word  `key:"brake" kind:"word" words:"motors|pedal|none" example:"motors" doc:"what stops it when the pedal is let go: its motors, a brake of its own, or nothing"`
	HasBoard           Flag  `key:"has_board" kind:"yes or no" example:"true" doc:"whether an electronic board sits between pack and motors"`
	WeakestPartVoltage Value `key:"weakest_part_voltage" kind:"voltage" min:"1" max:"200" example:"16 V" doc:"highest voltage that the weakest part on the pack's circuit stands"`
	Tray               Word  `key:"tray" kind:"size" example:"155 x 100 x 100 mm" doc:"inside of what the battery sits in: length x width x height under the lid, terminals and plug included"`
	MotorSeat          Value `key:"motor_seat" kind:"length" min:"0.005" max:"0.3" example:"36 mm" doc:"diameter of the seat in the gearbox that takes the motor"`
	MotorRoom          Value `key:"motor_room" kind:"length" min:"0.01" max:"0.5" example:"70 mm" doc:"how long a motor may be there"`
	Axle               Value `key:"axle" kind:"length" min:"0.002" max:"0.1" example:"12 mm" doc:"diameter of the axle that wheel and gear turn on"`
}

// Motors are the motors, all alike.
type Motors struct {
	Place
	Count             Value `key:"count" kind:"count" min:"1" max:"8" example:"2" doc:"how many motors"`
	Wiring            Word  `key:"wiring" kind:"word" words:"parallel|series" example:"parallel" doc:"how they are wired to each other"`
	Can               Word  `key:"can" kind:"can" example:"550" doc:"size of the motor can"`
	RatedVoltage      Value `key:"rated_voltage" kind:"voltage" min:"1" max:"100" example:"12 V" doc:"voltage that the printed speed and currents are for"`
	NoLoadSpeed       Value `key:"no_load_speed" kind:"turning speed" min:"5" max:"10000" example:"15000 rpm" doc:"speed with nothing on the shaft"`
	NoLoadCurrent     Value `key:"no_load_current" kind:"current" min:"0.001" max:"100" example:"1.5 A" doc:"current with nothing on the shaft"`
	StallCurrent      Value `key:"stall_current" kind:"current" min:"0.1" max:"2000" example:"70 A" doc:"current with the shaft held"`
	WindingResistance Value `key:"winding_resistance" kind:"resistance" min:"0.001" max:"100" example:"200 mOhm" doc:"resistance of one motor, cold"`
	TorqueConstant    Value `key:"torque_constant" kind:"torque constant" min:"0.0001" max:"5" example:"0.006 N m/A" doc:"torque per ampere of one motor"`
	Inductance        Value `key:"inductance" kind:"inductance" min:"1e-7" max:"0.1" example:"0.1 mH" doc:"inductance of one motor"`
	RotorInertia      Value `key:"rotor_inertia" kind:"moment of inertia" min:"1e-8" max:"0.01" example:"80 g cm2" doc:"moment of inertia of one rotor"`
	CanDiameter       Value `key:"can_diameter" kind:"length" min:"0.005" max:"0.3" example:"35.8 mm" doc:"diameter of the motor can"`
	CanLength         Value `key:"can_length" kind:"length" min:"0.01" max:"0.5" example:"57 mm" doc:"length of the motor can without its shaft"`
}

// Gears are what lies between motor and wheel.
type Gears struct {
	Place
	Ratio      Value `key:"ratio" kind:"ratio" min:"1" max:"2000" example:"110:1" doc:"motor turns per wheel turn; or the teeth of all pairs of gears, 12:60 x 12:72 x 10:45"`
	Efficiency Value `key:"efficiency" kind:"fraction" min:"0.05" max:"1" example:"60 %" doc:"share of the motor's torque that reaches the wheels"`
	Bore       Value `key:"bore" kind:"length" min:"0.002" max:"0.1" example:"12 mm" doc:"diameter of the hole that the axle goes through"`
}

// Controller is what switches the motors.
type Controller struct {
	Place
	Kind              Word  `key:"kind" kind:"word" words:"contacts|chopper" example:"contacts" doc:"plain contacts, or an electronic speed control"`
	Class             Word  `key:"class" kind:"class" example:"24 V 30 A" doc:"volts and amps printed on it together: a nominal class, from which the lasting current is taken, and a guess at the highest volts, where these are not told"`
	MaxVoltage        Value `key:"max_voltage" kind:"voltage" min:"1" max:"200" example:"30 V" doc:"highest voltage that it stands"`
	ContinuousCurrent Value `key:"continuous_current" kind:"current" min:"0.1" max:"1000" example:"30 A" doc:"current that it stands for good"`
	PeakCurrent       Value `key:"peak_current" kind:"current" min:"0.1" max:"5000" example:"80 A" doc:"current that it stands for seconds"`
	Ramp              Value `key:"ramp" kind:"time" min:"0" max:"60" example:"1 s" doc:"soft start: time from nothing to full voltage"`
	CurrentLimit      Value `key:"current_limit" kind:"current" min:"0.1" max:"5000" example:"40 A" doc:"limit that it holds on the motors' current"`
	Reverses          Word  `key:"reverses" kind:"word" words:"at once|after a stop" example:"after a stop" doc:"whether it waits for a standstill before it reverses"`
	Resistance        Value `key:"resistance" kind:"resistance" min:"0" max:"10" example:"5 mOhm" doc:"resistance of contacts or transistors"`
	InputCapacitance  Value `key:"input_capacitance" kind:"capacitance" min:"0" max:"1" example:"1000 uF" doc:"capacitors across its input"`
	StandbyCurrent    Value `key:"standby_current" kind:"current" min:"0" max:"20" example:"10 mA" doc:"current that it draws when nothing moves"`
	ConverterLimit    Value `key:"converter_limit" kind:"current" min:"0.1" max:"1000" example:"20 A" doc:"current limit of a step-down converter between pack and board"`
	ConverterVoltage  Value `key:"converter_voltage" kind:"voltage" min:"1" max:"100" example:"12 V" doc:"output voltage of that converter"`
}

// Wire is the way from pack to controller and back.
type Wire struct {
	Place
	Gauge           Value `key:"gauge" kind:"wire gauge" example:"14 AWG" doc:"thinnest wire on the way, by gauge"`
	Area            Value `key:"area" kind:"wire area" min:"0.05" max:"240" example:"2.5 mm2" doc:"thinnest wire on the way, by area; not together with gauge"`
	Kind            Word  `key:"kind" kind:"word" words:"awg|automotive" example:"awg" doc:"which gauge: American wire gauge, or the thinner automotive one"`
	OneWayLength    Value `key:"one_way_length" kind:"length" min:"0.01" max:"50" example:"1.2 m" doc:"length of the way there, not there and back"`
	Insulation      Value `key:"insulation" kind:"temperature" min:"60" max:"250" example:"80 C" doc:"temperature that the insulation is rated for"`
	Joints          Value `key:"joints" kind:"count" min:"0" max:"200" example:"6" doc:"plugs, crimps and screws on the way there and back"`
	JointResistance Value `key:"joint_resistance" kind:"resistance" min:"0" max:"1" example:"2 mOhm" doc:"resistance of one joint"`
	Joint           Word  `key:"joint" kind:"joint" example:"crimped tab" doc:"kind of the weakest joint"`
}

// Fuse is the fuse or breaker nearest to the pack.
type Fuse struct {
	Place
	Form             Word  `key:"form" kind:"fuse form" example:"small blade" doc:"kind of fuse, or none"`
	Rating           Value `key:"rating" kind:"current" min:"0.1" max:"1000" example:"30 A" doc:"printed current"`
	MaxVoltage       Value `key:"max_voltage" kind:"voltage" min:"1" max:"1000" example:"32 V" doc:"printed voltage"`
	DistanceFromPack Value `key:"distance_from_pack" kind:"length" min:"0" max:"50" example:"100 mm" doc:"wire between the pack's terminal and the fuse"`
}

// Pack is the battery that is asked about.
type Pack struct {
	Place
	Chemistry     Word   `key:"chemistry" kind:"chemistry" example:"li-ion" doc:"kind of cell"`
	ChemistryFile Word   `key:"chemistry_file" kind:"file" example:"my-cells.toml" doc:"a TOML file with a chemistry of your own"`
	Label         Word   `key:"label" kind:"text" example:"20 V max 5 Ah" doc:"what is printed on it"`
	CellsInSeries Value  `key:"cells_in_series" kind:"count" min:"1" max:"100" example:"5" doc:"cells in series"`
	Strings       Value  `key:"strings" kind:"count" min:"1" max:"100" example:"2" doc:"cells side by side"`
	Capacity      Value  `key:"capacity" kind:"charge" min:"0.05" max:"500" example:"5 Ah" doc:"printed capacity of the whole pack"`
	Rate          Value  `key:"rate" kind:"time" min:"60" max:"720000" example:"20 h" doc:"hours over which that capacity is given"`
	Resistance    Value  `key:"resistance" kind:"resistance" min:"0.0001" max:"50" example:"60 mOhm" doc:"resistance of the whole pack, by a meter or in the first second of a load"`
	Health        Value  `key:"health" kind:"fraction" min:"0.02" max:"1" example:"80 to 100 %" doc:"capacity left, of that when new"`
	Tested        Flag   `key:"tested" kind:"yes or no" example:"true" doc:"whether capacity and health together are what it gave in a logged discharge, as packcheck fit writes them; otherwise capacity is taken as a promise of its label"`
	TestedOver    Value  `key:"tested_over" kind:"time" min:"60" max:"720000" example:"2 h" doc:"how long that discharge took, without its pauses; of several at different currents, from the shortest to the longest. At other currents its charge is the less sure"`
	Temperature   Value  `key:"temperature" kind:"temperature" min:"-40" max:"150" example:"20 C" doc:"temperature of the pack at the start"`
	Charge        Value  `key:"charge" kind:"fraction" min:"0" max:"1" example:"100 %" doc:"state of charge at the start"`
	Age           Word   `key:"age" kind:"word" words:"new|1 year|2 years|3 years|worn" example:"2 years" doc:"how old it is or how it does; health is taken from this when not given"`
	Maker         Word   `key:"maker" kind:"word" words:"own|look-alike" example:"own" doc:"whether tool or vehicle came with it, or somebody made it to fit"`
	Cells         Word   `key:"cells" kind:"word" words:"power|middle|energy|general|high-rate|long-life|cyclic" example:"power" doc:"what its cells are made for: lithium for high currents or for much charge, lead-acid for everything, for minutes, for years on a charger or for deep discharges"`
	MaxCurrent    Value  `key:"max_current" kind:"current" min:"0.1" max:"5000" example:"30 A" doc:"greatest lasting current that its maker allows"`
	MaxCharge     Value  `key:"max_charge_current" kind:"current" min:"0.01" max:"1000" example:"4 A" doc:"greatest charging current that its own sheet or print allows, of the whole pack; of a cell's sheet times the strings side by side"`
	Housing       Word   `key:"housing" kind:"word" words:"bare cells|closed shell" example:"closed shell" doc:"what the cells sit in"`
	Mass          Value  `key:"mass" kind:"mass" min:"0.02" max:"200" example:"0.7 kg" doc:"mass of the whole pack"`
	WatchesCells  Flag   `key:"watches_cells" kind:"yes or no" example:"true" doc:"whether its electronics watch every cell and disconnect for the weakest"`
	Joined        Word   `key:"joined" kind:"word" words:"series|parallel" example:"series" doc:"two such packs joined; [pack] and [cutoff.pack] then describe one of them, every other table sees both"`
	Second        Second `table:"second" doc:"the other of two joined packs, where it is not like the first"`
	SelfDischarge Value  `key:"self_discharge" kind:"fraction" min:"0" max:"1" example:"3 %" doc:"share of its charge that it loses in a month on the shelf"`
	Size          Word   `key:"size" kind:"size" example:"151 x 65 x 94 mm" doc:"length x width x height of one pack, terminals included, as it stands upright"`
}

// Second is the other of two joined packs, where it is not like the first.
type Second struct {
	Place
	Label     Word  `key:"label" kind:"text" example:"12 V 9 Ah" doc:"what is printed on it"`
	Chemistry Word  `key:"chemistry" kind:"chemistry" example:"agm" doc:"kind of cell; left out: what its label names, or that of the first"`
	Capacity  Value `key:"capacity" kind:"charge" min:"0.05" max:"500" example:"9 Ah" doc:"its printed capacity"`
	Health    Value `key:"health" kind:"fraction" min:"0.02" max:"1" example:"80 to 100 %" doc:"capacity left, of that when new; left out: that of the first"`
}

// Cutoffs are the things that disconnect the pack, from the cells outwards.
type Cutoffs struct {
	Pack       Cutoff `table:"pack" doc:"low-voltage cutoff inside the pack; of two joined packs, inside each, with the volts of one"`
	Module     Module `table:"module" doc:"added low-voltage disconnect behind the pack; sees two packs in series as one"`
	Controller Cutoff `table:"controller" doc:"low-voltage cutoff of the controller, or of the converter before it; sees two packs in series as one"`
}

// Cutoff is one thing that disconnects the pack.
type Cutoff struct {
	Place
	OpensAt        Value `key:"opens_at" kind:"voltage" min:"0.5" max:"200" example:"15 V" doc:"pack voltage at which it disconnects"`
	Delay          Value `key:"delay" kind:"time" min:"0" max:"3600" example:"2 s" doc:"how long the voltage must stay that low"`
	ClosesAt       Value `key:"closes_at" kind:"voltage" min:"0.5" max:"200" example:"17.5 V" doc:"voltage at which it connects again; left out: it stays open"`
	StandbyCurrent Value `key:"standby_current" kind:"current" min:"0" max:"20" example:"1 mA" doc:"current that it draws itself"`
}

// Module is an added disconnect, which may have a soft start of its own.
type Module struct {
	Cutoff
	Ramp Value `key:"ramp" kind:"time" min:"0" max:"60" example:"0.5 s" doc:"soft start in the module"`
}

// Bench is any other load, in place of rider, vehicle, motors and gears.
type Bench struct {
	Place
	Current Value `key:"current" kind:"current" min:"0.001" max:"5000" example:"10 A" doc:"constant current"`
	Power   Value `key:"power" kind:"power" min:"0.01" max:"200000" example:"150 W" doc:"constant power"`
	Pattern Word  `key:"pattern" kind:"file" example:"log.csv" doc:"a table of time and amperes (CSV) whose currents are drawn; volts beside them make it a log (mean current between two rows), without them a row holds until the next"`
	Until   Value `key:"until" kind:"voltage" min:"0.1" max:"500" example:"10.5 V" doc:"battery voltage at which it ends, of both packs where two are in series"`
}

// Charger is what the pack is charged with.
type Charger struct {
	Place
	Label        Word  `key:"label" kind:"text" example:"14.7 V 1.5 A DC centre positive" doc:"its whole printed output line"`
	MadeFor      Word  `key:"made_for" kind:"word" words:"agm|gel|lead-acid|li-ion|lithium-ion|lifepo4|nimh|power supply" example:"lead-acid" doc:"kind of battery that it was made for"`
	Voltage      Value `key:"voltage" kind:"voltage" min:"0.5" max:"500" example:"14.7 V" doc:"printed output voltage"`
	Current      Value `key:"current" kind:"current" min:"0.005" max:"200" example:"1000 mA" doc:"printed output current"`
	Stops        Word  `key:"stops" kind:"word" words:"by itself|timer|never" example:"by itself" doc:"what ends the charge"`
	Timer        Value `key:"timer" kind:"time" min:"60" max:"1000000" example:"12 h" doc:"time after which a timer ends the charge"`
	Output       Word  `key:"output" kind:"word" words:"ac|dc" example:"dc" doc:"kind of current that it gives"`
	Polarity     Word  `key:"polarity" kind:"word" words:"centre positive|centre negative" example:"centre positive" doc:"polarity of its round plug"`
	JackPolarity Word  `key:"jack_polarity" kind:"word" words:"centre positive|centre negative" example:"centre positive" doc:"polarity that the jack wants, printed beside it"`
	Jack         Word  `key:"jack" kind:"word" words:"pack|terminals|vehicle" example:"pack" doc:"where it is plugged in"`
	CameWithPack Flag  `key:"came_with_pack" kind:"yes or no" example:"true" doc:"whether the pack's maker supplied it for this pack"`

	BlocksDriving Flag `key:"blocks_driving" kind:"yes or no" example:"true" doc:"whether the vehicle cannot be driven while it charges"`
}

// Described reports whether the charger itself is told, and not only what it is plugged
// into.
func (c *Charger) Described() bool {
	return c.Label.Given || c.MadeFor.Given || c.Voltage.Given || c.Current.Given || c.Stops.Given || c.Timer.Given ||
		c.Output.Given || c.Polarity.Given || c.CameWithPack.Given
}

// Outing is how it is driven.
type Outing struct {
	Place
	Air       Value `key:"air" kind:"temperature" min:"-40" max:"80" example:"20 C" doc:"temperature of the air"`
	ChargedAt Value `key:"charged_at" kind:"temperature" min:"-40" max:"80" example:"15 to 25 C" doc:"temperature of the air where the battery is charged"`
	Drive     Value `key:"drive" kind:"time" min:"0.5" max:"86400" example:"25 s" doc:"time with the pedal down, each time"`
	Pause     Value `key:"pause" kind:"time" min:"0" max:"86400" example:"10 s" doc:"time with the pedal up, each time"`
	Wanted    Value `key:"wanted" kind:"time" min:"10" max:"604800" example:"1 h" doc:"how long the outing should last, by the clock"`
}

// Storage is the time in which nobody drives.
type Storage struct {
	Place
	From        Date  `key:"from" kind:"date" example:"2026-11-01" doc:"first day in store"`
	Until       Date  `key:"until" kind:"date" example:"2027-03-31" doc:"last day in store"`
	Temperature Value `key:"temperature" kind:"temperature" min:"-40" max:"80" example:"5 to 15 C" doc:"temperature where it is kept"`
	Connected   Flag  `key:"connected" kind:"yes or no" example:"false" doc:"whether the pack stays connected to the vehicle all that time"`
}

// Measured is what was measured on the real thing.
type Measured struct {
	Place
	RestVoltage    Value `key:"rest_voltage" kind:"voltage" min:"0" max:"500" example:"12.6 V" doc:"battery voltage with nothing connected; of two packs in series it may be that of one or of both, which the volts tell"`
	SecondRest     Value `key:"second_rest_voltage" kind:"voltage" min:"0" max:"500" example:"12.9 V" doc:"of two joined packs that are asked about, the resting voltage of the other one by itself; rest_voltage beside it is of the first"`
	HoursRested    Value `key:"hours_rested" kind:"time" min:"0" max:"63072000" example:"12 h" doc:"time since it was last charged or used, before rest_voltage was read"`
	LoadedVoltage  Value `key:"loaded_voltage" kind:"voltage" min:"0" max:"500" example:"11.4 V" doc:"battery voltage while driving, at any charge or, beside rest_voltage, at the one that it tells; of two packs in series, of one or of both"`
	LoadedCurrent  Value `key:"loaded_current" kind:"current" min:"0.01" max:"1000" example:"15 A" doc:"current at that moment"`
	RideTime       Value `key:"ride_time" kind:"time" min:"1" max:"604800" example:"45 min" doc:"how long a full charge lasted, by the clock"`
	TopSpeed       Value `key:"top_speed" kind:"speed" min:"0.05" max:"30" example:"5 km/h" doc:"speed on the flat, freshly charged, in the fast gear where it has two"`
	BlockedCurrent Value `key:"blocked_current" kind:"current" min:"0.1" max:"5000" example:"60 A" doc:"current with the wheels held"`
	PullForce      Value `key:"pull_force" kind:"force" min:"0.5" max:"20000" example:"40 N" doc:"force that pulls the loaded vehicle along slowly"`
	FuseRating     Value `key:"fuse_rating" kind:"current" min:"0.1" max:"1000" example:"30 A" doc:"rating of the fuse that opened"`
	FuseSeconds    Value `key:"fuse_seconds" kind:"time" min:"0.001" max:"86400" example:"3 s" doc:"time until it opened"`
	ResetSeconds   Value `key:"reset_seconds" kind:"time" min:"0.001" max:"604800" example:"20 s" doc:"time until it came back by itself"`

	RestoredBy   Word  `key:"restored_by" kind:"word" words:"itself|released pedal|unplugged|charger|nothing" example:"released pedal" doc:"what brought it back after it stopped"`
	Distance     Value `key:"distance" kind:"length" min:"1" max:"200000" example:"2 km" doc:"how far it went on a full charge"`
	MotorVoltage Value `key:"motor_voltage" kind:"voltage" min:"0.1" max:"500" example:"10.8 V" doc:"voltage across one motor while it drives on the flat"`

	MotorTemperature Value `key:"motor_temperature" kind:"temperature" min:"-40" max:"250" example:"65 C" doc:"case of a motor straight after a drive"`
	MotorTouch       Value `key:"motor_touch" kind:"time" min:"0.5" max:"28800" example:"5 s" doc:"how long a hand could be held on a motor's case straight after a drive"`

	PackTemperature Value `key:"pack_temperature" kind:"temperature" min:"-40" max:"250" example:"35 C" doc:"surface of the battery straight after a drive; judged itself, and not held against a computed one: how long was driven is not told"`
}
