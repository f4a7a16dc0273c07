package main

import (
	"io"
	"slices"
	"strings"

	"github.com/urfave/cli/v3"

	"example.org/packcheck/report"
	"example.org/packcheck/setup"
)

// candidate is a word that may come next, and what it is.
type candidate struct{ word, about string }

// writeWords answers a shell: a word on each line, and behind a tab what it is.
func writeWords(w io.Writer, line string, std streams) error {
	var b strings.Builder
	for _, c := range candidates(line, std) {
		b.WriteString(c.word)
		if c.about != "" {
			b.WriteString("\t" + c.about)
		}
		b.WriteByte('\n')
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// candidates lists what may come next on a command line that ends at the cursor.
func candidates(line string, std streams) []candidate {
	words := shellWords(line)
	if len(words) == 0 {
		return nil
	}
	before, cur := words[1:max(1, len(words)-1)], words[len(words)-1] // the first is packcheck itself
	if len(words) == 1 {
		return nil
	}
	app := newApp(std, new(int))
	flags, command := app.Flags, ""
	var operands []string
	for i := 0; i < len(before); i++ {
		word := before[i]
		if !looksLikeFlag(word) {
			if c := app.Command(word); c != nil && command == "" && len(operands) == 0 {
				command, flags = c.Name, c.Flags
				continue
			}
			operands = append(operands, word)
			continue
		}
		f := flagOf(flags, word)
		if f == nil || !takesValue(f) || strings.Contains(word, "=") {
			continue
		}
		if i == len(before)-1 {
			return starting(cur, valuesOf(f.Names()[0]))
		}
		i++
	}
	if strings.HasPrefix(cur, "-") {
		if name, value, is := strings.Cut(cur, "="); is {
			if f := flagOf(flags, name); f != nil {
				return starting(value, valuesOf(f.Names()[0]))
			}
		}
		return starting(cur, optionsOf(flags))
	}
	return starting(cur, operandsOf(command, operands, app))
}

// flagOf finds an option by its word.
func flagOf(flags []cli.Flag, word string) cli.Flag {
	name, _, _ := strings.Cut(strings.TrimLeft(word, "-"), "=")
	for _, f := range flags {
		if slices.Contains(f.Names(), name) {
			return f
		}
	}
	return nil
}

func optionsOf(flags []cli.Flag) []candidate {
	var list []candidate
	for _, f := range flags {
		list = append(list, candidate{word: "--" + f.Names()[0]})
	}
	if flagOf(flags, flagHelp) == nil {
		list = append(list, candidate{word: "--" + flagHelp})
	}
	return list
}

// valuesOf lists what may stand behind an option.
func valuesOf(flag string) []candidate {
	switch flag {
	case flagFormat:
		var list []candidate
		for _, f := range report.Formats() {
			list = append(list, candidate{word: string(f)})
		}
		return list
	case flagSet:
		return keysAndValues()
	case flagPack:
		return []candidate{{ownPack, "the battery of the file"}, {"12 V 7 Ah AGM", "for example"}, {"20 V max 5 Ah", "for example"}}
	case flagWay:
		return []candidate{{word: "A"}, {word: "B"}, {word: "C"}}
	case flagChemistry:
		return words(setup.Chemistries())
	case flagDraws, flagLabel, flagCells, flagCutoff, flagAir, flagName:
		return nil
	case flagDischarge:
		return words([]string{"plus", "minus"})
	}
	return []candidate{{word: filesToo}}
}

// keysAndValues are all keys, each with the values that it may have.
func keysAndValues() []candidate {
	var list []candidate
	for _, prefix := range []string{"", "original."} {
		for _, k := range setup.Keys() {
			key := prefix + k.Path() + "="
			list = append(list, candidate{key, k.Doc})
			values := k.Words
			switch {
			case k.What == "yes or no":
				values = []string{"true", "false"}
			case k.What == "chemistry":
				values = setup.Chemistries()
			case len(values) == 0:
				values = []string{k.Example}
			}
			for _, v := range values {
				list = append(list, candidate{word: key + v})
			}
		}
	}
	return list
}

// operandsOf lists what may stand behind a command, or first of all.
func operandsOf(command string, operands []string, app *cli.Command) []candidate {
	files := candidate{word: filesToo}
	first := len(operands) == 0
	var list []candidate
	switch command {
	case "":
		if first {
			for _, c := range app.Commands {
				list = append(list, candidate{word: c.Name})
			}
		}
		return append(list, files)
	case "explain":
		if first {
			return words(findingCodes())
		}
	case "ask":
		if first {
			for _, v := range verbs() {
				list = append(list, candidate{v.name, v.about})
			}
		}
	case "help":
		if first {
			for _, t := range topics() {
				list = append(list, candidate{t.name, t.about})
			}
			for _, c := range app.Commands {
				list = append(list, candidate{word: c.Name})
			}
		}
	case "keys":
		if first {
			return words(keyTopics())
		}
	case "completion":
		if first {
			return words(shellNames())
		}
	case "sources", "manual":
	default:
		return []candidate{files}
	}
	return list
}

func words(list []string) []candidate {
	var out []candidate
	for _, w := range list {
		out = append(out, candidate{word: w})
	}
	return out
}

// starting keeps what begins like the word at the cursor. Values of a key come
// once its name is there.
func starting(cur string, list []candidate) []candidate {
	var out []candidate
	for _, c := range list {
		key, value, is := strings.Cut(c.word, "=")
		early := is && value != "" && !strings.HasPrefix(cur, key+"=")
		done := is && value == "" && strings.HasPrefix(cur, c.word)
		if c.word == filesToo || strings.HasPrefix(c.word, cur) && !early && !done {
			out = append(out, c)
		}
	}
	return out
}

// shellWords parts a command line into words; the last one is that at the cursor,
// empty behind a space. Quotes that are open end there.
func shellWords(line string) []string {
	var all []string
	var b strings.Builder
	quote, inside := rune(0), false
	escaped := false
	for _, r := range line {
		switch {
		case escaped:
			b.WriteRune(r)
			escaped = false
		case r == '\\' && quote != '\'':
			escaped, inside = true, true
		case quote != 0 && r == quote:
			quote = 0
		case quote == 0 && (r == '"' || r == '\''):
			quote, inside = r, true
		case quote == 0 && (r == ' ' || r == '\t'):
			if inside {
				all = append(all, b.String())
			}
			b.Reset()
			inside = false
		default:
			b.WriteRune(r)
			inside = true
		}
	}
	return append(all, b.String())
}
