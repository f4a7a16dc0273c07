package tables

// VehicleClass is what the trade builds for one design voltage and number of
// seats; all from memory unless a Value's source says otherwise.
type VehicleClass struct {
	Name           string
	Words          []string
	DesignV        float64
	Seats          int
	MassKG         Value // vehicle without rider and pack
	WheelDiameterM Value
	GearRatio      Value // motor turns per wheel turn
	TopSpeedMS     Value
	Motors         Value  // number of motors
	LoadKG         Value  // greatest mass of all who ride
	RideS          Value  // how long one lasts when new, on paved ground; unknown where nobody told
	BatteryAh      Value  // batteries that such times are told of
	Can            string // usual can size; a name of [Tables.MotorCan]
	Source         string
}

// VehicleClasses returns the classes, sorted by name.
func (t *Tables) VehicleClasses() []VehicleClass {
	return valuesOf(t.vehicles, VehicleClass.copy)
}

// VehicleClass looks a class up by name or word: "6 V one seat", "12 V one
// seat", "12 V two seats", "24 V two seats".
func (t *Tables) VehicleClass(word string) (VehicleClass, error) {
	v, err := byWord(t.vehicles, "vehicle class", word, func(v VehicleClass) []string { return v.Words })
	return v.copy(), err
}

// VehicleClassFor returns the class for a design voltage and number of seats
// (0 when unknown): the nearest voltage, then the fewest seats not below.
func (t *Tables) VehicleClassFor(designV float64, seats int) VehicleClass {
	var best VehicleClass
	score := -1.0
	for i := range t.vehicles {
		v := &t.vehicles[i].Value
		s := max(v.DesignV/designV, designV/v.DesignV) * 10
		s += float64(max(seats-v.Seats, v.Seats-seats, 0))
		if score < 0 || s < score {
			best, score = *v, s
		}
	}
	return best.copy()
}

// ThermalClass is a class of winding insulation (IEC 60085).
type ThermalClass struct {
	Letter string  // "A" ...
	LimitC float64 // hottest allowed, degC
	RiseK  float64 // rise over 40 degC that IEC 60034-1 allows; 0 where not listed
	Source string
}

// ThermalClass looks a class up by its letter: A, E, B, F, H or N.
func (t *Tables) ThermalClass(letter string) (ThermalClass, error) {
	return byWord(t.thermal, "thermal class", letter, func(c ThermalClass) []string { return []string{"class " + c.Letter} })
}

// Caution is something that happened, or that a public body warns of.
type Caution struct {
	Name   string
	Text   string // one or two plain sentences
	Source string
}

// Caution returns the caution of this name.
func (t *Tables) Caution(name string) (Caution, error) {
	return byWord(t.cautions, "caution", name, func(Caution) []string { return nil })
}

// Cautions returns all cautions, sorted by name.
func (t *Tables) Cautions() []Caution {
	return valuesOf(t.cautions, func(c Caution) Caution { return c })
}

func (v VehicleClass) copy() VehicleClass {
	v.Words = clone(v.Words)
	return v
}

func readVehicle(t *Tables, w *row) {
	v := VehicleClass{Name: w.name(), Words: w.texts("words"), Source: w.source()}
	v.DesignV = w.number("design_v", span{1, 100})
	v.Seats = int(w.number("seats", span{1, 8}))
	v.MassKG = w.wanted("mass_kg", span{0.5, 500})
	v.WheelDiameterM = w.wanted("wheel_diameter_mm", span{30, 1000}).Scale(1e-3)
	v.GearRatio = w.wanted("gear_ratio", span{1, 1000})
	v.TopSpeedMS = w.value("top_speed_kmh", span{0.1, 100}).Scale(1 / 3.6)
	v.Motors = w.wanted("motors", span{1, 8})
	v.LoadKG = w.value("load_kg", span{5, 500})
	v.RideS = w.value("ride_min", span{1, 1000}).Scale(60)
	v.BatteryAh = w.value("battery_ah", span{0.5, 200})
	v.Can = w.textOr("can", "")
	put(w, &t.vehicles, v)
}

func readThermal(t *Tables, w *row) {
	c := ThermalClass{Letter: w.name(), Source: w.source()}
	c.LimitC = w.number("limit_c", span{50, 500})
	c.RiseK = w.numberOr("rise_k", 0, span{0, 400})
	put(w, &t.thermal, c)
}

func readCaution(t *Tables, w *row) {
	put(w, &t.cautions, Caution{Name: w.name(), Text: w.text("text"), Source: w.source()})
}
