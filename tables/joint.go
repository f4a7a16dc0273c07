package tables

// Joint is one kind of connection or contact.
type Joint struct {
	Name    string
	Words   []string
	What    string
	NewOhm  Value   // resistance of a sound new one
	AgedOhm Value   // aged or loose; the zero Value where no figure is known
	SteadyA Value   // current that it carries continuously; the zero Value where unknown
	MostMM2 float64 // thickest wire that it takes, mm2; 0 unknown
	Source  string
}

// Joint looks a kind of joint up: "crimped tab", "bullet connector",
// "terminal block 2.5 mm2", "pedal switch" ...
func (t *Tables) Joint(kind string) (Joint, error) {
	j, err := byWord(t.joints, "joint", kind, func(j Joint) []string { return j.Words })
	return j.copy(), err
}

// Joints returns all kinds of joint, sorted by name.
func (t *Tables) Joints() []Joint {
	return valuesOf(t.joints, Joint.copy)
}

func (j Joint) copy() Joint {
	j.Words = clone(j.Words)
	return j
}

func readJoint(t *Tables, w *row) {
	j := Joint{Name: w.name(), Words: w.texts("words"), What: w.text("what"), Source: w.source()}
	ohm := span{0, 10}
	j.NewOhm, j.AgedOhm = w.value("new_ohm", ohm), w.value("aged_ohm", ohm)
	j.SteadyA = w.value("steady_a", span{0.01, 1000})
	j.MostMM2 = w.numberOr("most_mm2", 0, span{0, 300})
	if !j.NewOhm.Known() && !j.SteadyA.Known() {
		w.fault("", nil, "new_ohm or steady_a")
	}
	put(w, &t.joints, j)
}
