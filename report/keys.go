package report

import "strings"

// keyWords says a key of a setup file in words: "the gauge of the wire". A key
// that is not listed reads as it is written.
func keyWords(key string) string {
	path := strings.Split(clean(key), ".")
	original := len(path) > 1 && path[0] == "original"
	if original {
		path = path[1:]
	}
	name, table := path[len(path)-1], strings.Join(path[:len(path)-1], ".")
	text := "the " + keyName(name)
	switch {
	case name == "watches_cells":
		text = "whether anything watches the cells of " + tableName(table)
	case name == "came_with_pack":
		text = "who supplied " + tableName(table)
	case name == "weakest_part_voltage":
		text = "the highest voltage that the weakest part of " + tableName(table) + " stands"
	case table != "":
		text += " of " + tableName(table)
	}
	if original {
		text += " as it was made"
	}
	return text
}

// keyName is the last part of a key in words.
func keyName(name string) string {
	switch name {
	case "opens_at":
		return "opening voltage"
	case "closes_at":
		return "closing voltage"
	case "can":
		return "can size"
	case "has_board":
		return "electronic board"
	case "made_for":
		return "purpose"
	case "stops":
		return "way of stopping"
	case "max_voltage":
		return "highest voltage"
	case "max_current":
		return "greatest current"
	case "max_charge_current":
		return "greatest charging current"
	case "one_way_length":
		return "length"
	case "distance_from_pack":
		return "distance from the pack"
	}
	words := strings.FieldsFunc(name, func(r rune) bool { return r == '_' })
	return orElse(strings.Join(words, " "), "value")
}

// tableName is the table of a key in words.
func tableName(table string) string {
	switch table {
	case "rider":
		return "the child"
	case "pack":
		return "the battery"
	case "cutoff.pack":
		return "the cutoff in the pack"
	case "cutoff.module":
		return "the added cutoff"
	case "cutoff.controller":
		return "the cutoff in the controller"
	}
	words := strings.FieldsFunc(table, func(r rune) bool { return r == '.' || r == '_' })
	return "the " + orElse(strings.Join(words, " "), "setup")
}
