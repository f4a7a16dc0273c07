package ride

// Bounds of what is left out of an outing of very many presses: rounds that
// take less than one part in skipGrain of the pack's charge are alike enough
// to be counted instead of followed, and never for longer than skipS, in which
// nothing but a winding comes to a new temperature.
// Of the charge that is still available no more than one part in skipLast goes,
// so that the end, where volts fall fast, is followed closely.
const (
	skipGrain = 500
	skipLast  = 20
	skipS     = 600
)

// skip counts as many further rounds of driving and pausing as may pass for
// copies of the last one, which began at before, and returns how many. Charge,
// time, distance and energy go on as in that round, temperatures as its mean
// heat has it. An outing of the usual length is never shortened.
//
// The next two rounds are followed again, so a cutoff is met within one part in
// skipGrain of the charge. Of the two only the second is like those that are
// left out: in the first the pack's fast branch comes back from the mean.
func (o *outing) skip(before *moment) int {
	if o.every {
		return 0
	}
	if o.settling {
		o.settling = false
		return 0
	}
	n, c := &o.now, o.c
	roundS, usedAs := n.clockS-before.clockS, n.chargeAs-before.chargeAs
	if !(roundS > 0 && usedAs > 0) {
		return 0
	}
	if n.fuse.Early() > before.fuse.Early() || n.fuse.Late() > before.fuse.Late() {
		return 0 // every round ages the fuse: it will open
	}
	leftAs := 3600 * c.Pack.AvailableAh(n.pack) / skipLast
	rounds := min(3600*c.Pack.FullAh()/skipGrain/usedAs, leftAs/usedAs, skipS/roundS, (o.stopS()-n.clockS)/roundS-1)
	if rounds < 2 {
		return 0
	}
	k := int(rounds)
	f := float64(k)

	tempC := n.pack.TempC + f*(n.pack.TempC-before.pack.TempC)
	step := c.Pack.Over(f * roundS)
	step.AdvanceFrom(&n.look, &n.pack, usedAs/roundS, c.AmbientC)
	n.pack.TempC = tempC
	n.look = c.Pack.Look(&n.pack)
	if tempC > n.hottestC {
		n.hottestC = tempC
	}
	if c.Vehicle.Motor.Thermal.Known() {
		heat := c.Vehicle.Motor.Thermal.Over(f * roundS)
		heat.Advance(&n.heat, (n.copperJ-before.copperJ)/roundS, (n.otherJ-before.otherJ)/roundS, c.AmbientC)
	}

	n.clockS += f * roundS
	n.pedalS += f * (n.pedalS - before.pedalS)
	n.metres += f * (n.metres - before.metres)
	n.chargeAs += f * usedAs
	n.energyJ += f * (n.energyJ - before.energyJ)
	n.a2s += f * (n.a2s - before.a2s)
	n.copperJ += f * (n.copperJ - before.copperJ)
	n.otherJ += f * (n.otherJ - before.otherJ)
	o.settling = true
	return k
}
