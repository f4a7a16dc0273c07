package main

import "fmt"

// stock is a vehicle as it left the factory, by the labels that a parent has.
type stock struct {
	name, volts, label, ground string
	also                       string // more of [vehicle]
	motors, pack               string // all of [motors], more of [pack]
}

// toml is the setup of it, with a child of 3 to 5 years.
func (s *stock) toml() string {
	return fmt.Sprintf("[rider]\nage = \"3 to 5\"\n[vehicle]\ndesign_voltage = %q\nground = %q\n%s\n[motors]\n%s\n[pack]\nlabel = %q\n%s\n",
		s.volts, s.ground, s.also, s.motors, s.label, s.pack)
}

const (
	pedal = "has_board = false"
	board = "has_board = true"
	two   = "count = 2"
	fresh = `age = "new"`
)

var stocks = []stock{
	{name: "12 V 7 Ah", volts: "12 V", label: "12 V 7 Ah", ground: "asphalt"},
	{name: "12 V 9.5 Ah", volts: "12 V", label: "12 V 9.5 Ah", ground: "asphalt"},
	{name: "12 V 7 Ah, new", volts: "12 V", label: "12 V 7 Ah", ground: "asphalt", pack: fresh},
	{name: "12 V 9.5 Ah, new", volts: "12 V", label: "12 V 9.5 Ah", ground: "asphalt", pack: fresh},
	{name: "two motors behind a pedal", volts: "12 V", label: "12 V 7 Ah", ground: "asphalt", also: pedal, motors: two},
	{name: "two motors behind a pedal, new", volts: "12 V", label: "12 V 7 Ah", ground: "asphalt", also: pedal, motors: two, pack: fresh},
	{name: "two motors behind a board", volts: "12 V", label: "12 V 7 Ah", ground: "asphalt", also: board, motors: two},
	{name: "two motors behind a board, new", volts: "12 V", label: "12 V 7 Ah", ground: "asphalt", also: board, motors: two, pack: fresh},
	{name: "one motor behind a board", volts: "12 V", label: "12 V 7 Ah", ground: "asphalt", also: board, motors: "count = 1"},
	{name: "one motor behind a board, new", volts: "12 V", label: "12 V 7 Ah", ground: "asphalt", also: board, motors: "count = 1", pack: fresh},
	{name: "one motor behind a pedal", volts: "12 V", label: "12 V 7 Ah", ground: "asphalt", also: pedal, motors: "count = 1"},
	{name: "12 V 7 Ah on a lawn", volts: "12 V", label: "12 V 7 Ah", ground: "lawn"},
	{name: "12 V 7 Ah on a lawn, new", volts: "12 V", label: "12 V 7 Ah", ground: "lawn", pack: fresh},
	{name: "6 V 4.5 Ah", volts: "6 V", label: "6 V 4.5 Ah", ground: "asphalt"},
	{name: "6 V 4.5 Ah, new", volts: "6 V", label: "6 V 4.5 Ah", ground: "asphalt", pack: fresh},
	{name: "24 V, two of 12 V 7 Ah", volts: "24 V", label: "24 V (two 12 V 7 Ah)", ground: "asphalt"},
	{name: "24 V, two of 12 V 7 Ah, new", volts: "24 V", label: "24 V (two 12 V 7 Ah)", ground: "asphalt", pack: fresh},
}
