package cellfit_test

import (
	"errors"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"example.org/packcheck/internal/cellfit"
)

// rows is the same discharge in every file below: 10 s apart, 12.9 V at rest,
// then 3 A with the voltage falling from 12.4 V.
func rows(format string, args func(s, v, a float64) []any) string {
	var b strings.Builder
	for k := range 12 {
		s, v, a := float64(10*k), 12.9, 0.0
		if k > 2 {
			v, a = 12.43-0.01*float64(k), 3.0
		}
		fmt.Fprintf(&b, format, args(s, v, a)...)
	}
	return b.String()
}

func sva(s, v, a float64) []any { return []any{s, v, a} }

// counted adds the number of the row.
func counted(s, v, a float64) []any { return []any{s, v, a, int(s) / 10} }

// clocked writes the seconds as a time of the calendar.
func clocked(layout string) func(s, v, a float64) []any {
	return func(s, v, a float64) []any {
		return []any{time.Date(2026, 3, 1, 14, 0, int(s), 0, time.UTC).Format(layout), v, a}
	}
}

func TestReadUnderstandsCommonLogs(t *testing.T) {
	comma := func(text string) string { return strings.ReplaceAll(text, ".", ",") }
	for _, c := range []struct{ name, text string }{
		{"plain", "time_s,voltage_v,current_a\n" + rows("%.1f,%.3f,%.3f\n", sva)},
		{"units in brackets, other order", "Current (A);Voltage [V];Test_Time(s)\n" + rows("%.3[3]f;%.3[2]f;%.1[1]f\n", sva)},
		{"decimal comma and semicolon", "Zeit (s);Spannung (V);Strom (A)\n" + comma(rows("%.1f;%.3f;%.3f\n", sva))},
		{"tabs, milliunits, milliseconds", "ms\tmV\tmA\n" + rows("%.0f\t%.0f\t%.0f\n", func(s, v, a float64) []any { return []any{1000 * s, 1000 * v, 1000 * a} })},
		{"discharge counted negative", "t,U,I\n" + rows("%.1f,%.3f,%.3f\n", func(s, v, a float64) []any { return []any{s, v, -a} })},
		{"hours, minutes, seconds", "Time,Volts,Amps\n" + rows("%s,%.3f,%.3f\n", func(s, v, a float64) []any {
			return []any{fmt.Sprintf("%02d:%02d:%04.1f", int(s)/3600, int(s)/60%60, math.Mod(s, 60)), v, a}
		})},
		{"over midnight", "clock,volts,amps\n" + rows("%s,%.3f,%.3f\n", func(s, v, a float64) []any {
			x := math.Mod(86350+s, 86400)
			return []any{fmt.Sprintf("%02d:%02d:%02d", int(x)/3600, int(x)/60%60, int(x)%60), v, a}
		})},
		{"date and time", "Date,Voltage,Current\n" + rows("%s,%.3f,%.3f\n", func(s, v, a float64) []any {
			return []any{fmt.Sprintf("2024-09-14 10:%02d:%02d", int(s)/60, int(s)%60), v, a}
		})},
		{"units on a line of their own, comments above", "# bench of the harvest fair\n\nTime,Voltage,Current\ns,V,A\n" + rows("%.1f,%.3f,%.3f\n", sva)},
		{"the clock's form on the line of units", "Bench 3\n\nElapsed,Volts,Amps\n(hh:mm:ss),(V),(A)\n" + rows("%s,%.3f,%.3f\n", func(s, v, a float64) []any {
			return []any{fmt.Sprintf("%02d:%02d:%02d", int(s)/3600, int(s)/60%60, int(s)%60), v, a}
		})},
		{"units and nothing else", "min,V,A\n" + rows("%.9f,%.3f,%.3f\n", func(s, v, a float64) []any { return []any{s / 60, v, a} })},
		{"quoted fields", "\"Time (s)\",\"Voltage (V)\",\"Current (A)\"\n" + rows("\"%.1f\",\"%.3f\",\"%.3f\"\n", sva)},
		{"no titles", rows("%.1f,%.3f,%.3f\n", sva)},
		{"no titles, blanks, amps first", rows("%.3[3]f  %.1[1]f   %.3[2]f\n", sva)},
		{"more columns than needed", "Index,Step,Time (s),Power (W),Voltage (V),Current (A),Note\n" + rows("7,1,%.1f,0,%.3f,%.3f,ok\n", sva)},
		{"milliseconds since 1970", "timestamp,voltage,current\n" + rows("%.0f,%.3f,%.3f\n", func(s, v, a float64) []any { return []any{1.7e12 + 1000*s, v, a} })},
		{"byte order mark and carriage returns", "\xef\xbb\xbftime_s,voltage_v,current_a\r\n" + strings.ReplaceAll(rows("%.1f,%.3f,%.3f\n", sva), "\n", "\r\n")},
		{"rows counted in Sample", "Sample,Time,Voltage,Current\n" + rows("%[4]d,%.1[1]f,%.3[2]f,%.3[3]f\n", counted)},
		{"rows counted in Sample No, amps by name", "Sample No,Seconds,Volts,Amps\n" + rows("%[4]d,%.1[1]f,%.3[2]f,%.3[3]f\n", counted)},
		{"rows counted behind a #", "#,Time,Voltage,Current\n" + rows("%[4]d,%.1[1]f,%.3[2]f,%.3[3]f\n", counted)},
		{"rows counted, no titles", rows("%[4]d,%.1[1]f,%.3[2]f,%.3[3]f\n", counted)},
		{"titles behind a comment's #", "# time voltage current\n" + rows("%.1f %.3f %.3f\n", sva)},
		{"a set current before the measured one", "Time,Set Current,Voltage,Current\n" + rows("%.1f,5.000,%.3f,%.3f\n", sva)},
		{"a set voltage and a current limit", "Time,Set Voltage (V),Current Limit (A),Voltage,Current\n" + rows("%.1f,14.4,9,%.3f,%.3f\n", sva)},
		{"discharge current", "Time (s),Voltage (V),Discharge current (A)\n" + rows("%.1f,%.3f,%.3f\n", sva)},
		{"discharge current beside charge current", "Time,Voltage,Charge current,Discharge current\n" + rows("%.1f,%.3f,0.000,%.3f\n", sva)},
		{"a clock in seconds of 1970", "epoch,voltage,current\n" + rows("%.0f,%.3f,%.3f\n", func(s, v, a float64) []any { return []any{1.7e9 + s, v, a} })},
		{"short names, milliseconds", "millis,vbat,ibat\n" + rows("%.0f,%.3f,%.3f\n", func(s, v, a float64) []any { return []any{1000 * s, v, a} })},
		{"date and time in two columns", "Date,Time,Voltage,Current\n" + rows("%s,%.3f,%.3f\n", clocked("2026-03-01,15:04:05"))},
		{"date and time in two columns, over midnight", "Time,Date,Voltage,Current\n" + rows("%s,%.3f,%.3f\n", func(s, v, a float64) []any {
			return []any{time.Date(2026, 3, 1, 23, 59, 0, 0, time.UTC).Add(time.Duration(s) * time.Second).Format("15:04:05,02.01.2006"), v, a}
		})},
		{"day, month, year with decimal commas", "Datum/Zeit;Spannung [V];Strom [A]\n" + rows("%s;%s;%s\n", func(s, v, a float64) []any {
			return []any{clocked("02.01.2006 15:04:05")(s, v, a)[0], comma(fmt.Sprintf("%.3f", v)), comma(fmt.Sprintf("%.3f", a))}
		})},
		{"a name for the month", "Date,Voltage,Current\n" + rows("%s,%.3f,%.3f\n", clocked("02-Jan-2006 15:04:05"))},
		{"before noon and after", "Time,Voltage,Current\n" + rows("%s,%.3f,%.3f\n", func(s, v, a float64) []any {
			return []any{time.Date(2026, 3, 1, 11, 59, 0, 0, time.UTC).Add(time.Duration(s) * time.Second).Format("3:04:05 PM"), v, a}
		})},
		{"minutes and seconds", "Duration (mm:ss),Voltage,Current\n" + rows("%s,%.3f,%.3f\n", clocked("04:05"))},
		{"units in the cells", "Time,Voltage,Current\n" + rows("%.0f s,%.3f V,%.0f mA\n", func(s, v, a float64) []any { return []any{s, v, 1000 * a} })},
		{"a shunt's millivolts first", "Time,Shunt voltage (mV),Bus voltage (V),Current (mA)\n" + rows("%.1f,7.5,%.3f,%.0f\n", func(s, v, a float64) []any { return []any{s, v, 1000 * a} })},
		{"a shunt's millivolts last", "Time,Voltage,Shunt voltage (mV),Current\n" + rows("%.1f,%.3f,7.5,%.3f\n", sva)},
		{"cells before the pack", "Time,Cell1 V,Cell2 V,Pack V,Current A\n" + rows("%.1f,4.1,4.1,%.3f,%.3f\n", sva)},
		{"one cell alone", "Time,Cell voltage (V),Current (A)\n" + rows("%.1f,%.3f,%.3f\n", sva)},
		{"French", "Temps (s);Tension (V);Courant (A)\n" + comma(rows("%.1f;%.3f;%.3f\n", sva))},
		{"Dutch", "Tijd (s);Spanning (V);Stroom (A)\n" + comma(rows("%.1f;%.3f;%.3f\n", sva))},
		{"Spanish", "Tiempo (s);Voltaje (V);Corriente (A)\n" + comma(rows("%.1f;%.3f;%.3f\n", sva))},
		{"decimal commas in quotes, commas between", "Zeit,Spannung,Strom\n" + strings.ReplaceAll(comma(rows("%.0f;\"%.3f\";\"%.3f\"\n", sva)), ";", ",")},
		{"a separator behind every row and not behind the titles", "Time (s),Voltage (V),Current (mA)\n" + rows("%.0f,%.3f,%.0f,\n", func(s, v, a float64) []any { return []any{s, v, 1000 * a} })},
		{"what was not read, in words of loggers", "s,V,A\n-10,NaN,NaN\n" + rows("%.1f,%.3f,%.3f\n", sva) + "112,n/a,3\n113,12.3,-\n114,12.3,null\n"},
		{"a comment that names more than there is", "# Time, voltage, current of a pack, by hand\nTime,Volts,Amps,Step\n" + rows("%.1f,%.3f,%.3f,1\n", sva)},
		{"a blank voltage now and then", "s,V,A\n" + rows("%.1f,%.3f,%.3f\n", sva) + "115,,\n"},
	} {
		t.Run(c.name, func(t *testing.T) {
			l, err := cellfit.Read(strings.NewReader(c.text), cellfit.Options{Name: "log.csv"})
			if err != nil {
				t.Fatal(err)
			}
			near := func(what string, got, want float64) {
				if math.Abs(got-want) > 1e-6*math.Max(1, math.Abs(want)) {
					t.Errorf("%s = %v, want %v (%+v)", what, got, want, l.Columns)
				}
			}
			if l.Rows() != 12 {
				t.Fatalf("%d rows, want 12", l.Rows())
			}
			near("time", l.TimeS[11], 110)
			near("rest volts", l.Volts[0], 12.9)
			near("loaded volts", l.Volts[11], 12.32)
			near("amps", l.Amps[11], 3)
			near("charge", l.ChargeAh[11], 3*85./3600)
		})
	}
}

func TestReadSaysWhereAndWhat(t *testing.T) {
	head := "time_s,voltage_v,current_a\n0,12.9,0\n1,12.8,1\n"
	for _, c := range []struct {
		name, text   string
		line, column int
		says         string
	}{
		{"a word among the numbers", head + "2,low,1\n", 4, 2, `log.csv:4: column 2: "low"; want a number for volts`},
		{"time going back", head + "0.5,12.7,1\n", 4, 1, "rows in the order of time"},
		{"too few columns", head + "2,12.7\n3,12.6,1\n", 4, 0, "2 columns; want at least 3"},
		{"more than the meter shows", head + "2,OL,1\n", 4, 2, `"OL"; want a number for volts`},
		{"decimal commas with commas between", "Zeit,Spannung,Strom\n0,20,9,5,0\n10,20,8,5,0\n", 2, 0, "5 columns under 3 titles; want a semicolon or a tab"},
		{"the same, whole volts first", "Zeit,Spannung,Strom\n0,21,5\n10,20,9,5,0\n", 3, 0, "5 columns under 3 titles"},
		{"the same, titles behind a #", "# Zeit,Spannung,Strom\n0,20,9,5,0\n10,20,8,5,0\n", 2, 0, "5 columns under 3 titles"},
		{"the same without titles", "0,20,9,5,0\n10,20,8,5,0\n", 1, 0, "5 columns of whole numbers without titles"},
		{"only a current that was set", "time_s,voltage_v,Set Current\n0,12,1\n1,12,1\n", 1, 0, "no column for amps among"},
		{"a unit of something else", head + "2,12 A,1\n", 4, 2, `"12 A"; want a number for volts`},
		{"no current", "time_s,voltage_v\n0,12\n1,12\n", 1, 0, "no column for amps"},
		{"empty", "", 0, 0, "an empty file"},
		{"only words", "hello world\nnothing here\n", 0, 0, "no row of numbers"},
		{"a picture", "\x89PNG\x00\x00", 0, 0, "bytes that are no text"},
		{"UTF-16", "\xff\xfet\x00i\x00", 0, 0, "UTF-16"},
		{"a clock that is none", "time,V,A\n10:00:00,12,0\n10:xx:01,12,1\n", 3, 1, "want a time"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := cellfit.Read(strings.NewReader(c.text), cellfit.Options{Name: "log.csv"})
			re, ok := errors.AsType[cellfit.ReadError](err)
			if !ok {
				t.Fatalf("error %v, want a ReadError", err)
			}
			if re.Line != c.line || re.Column != c.column || !strings.Contains(err.Error(), c.says) {
				t.Errorf("%v (line %d, column %d)\nwant %q (line %d, column %d)", err, re.Line, re.Column, c.says, c.line, c.column)
			}
		})
	}
}

func TestReadReportsProgress(t *testing.T) {
	text := "s,V,A\n" + strings.Repeat("", 1)
	var b strings.Builder
	b.WriteString(text)
	for k := range 200_000 {
		fmt.Fprintf(&b, "%d,12.5,1\n", k)
	}
	var calls int
	var last int64
	_, err := cellfit.Read(strings.NewReader(b.String()), cellfit.Options{Progress: func(n int64) {
		if n < last {
			t.Errorf("progress went back from %d to %d", last, n)
		}
		calls, last = calls+1, n
	}})
	if err != nil || calls < 3 || last != int64(b.Len()) {
		t.Errorf("%d calls, the last at %d of %d bytes (%v)", calls, last, b.Len(), err)
	}
}

func FuzzRead(f *testing.F) {
	f.Add("time_s,voltage_v,current_a\n0,12.9,0\n1,12.8,1\n2,12.7,1\n")
	f.Add("Zeit;Spannung;Strom\n0,0;12,9;0\n1,5;12,8;1,5\n")
	f.Add("0 12.9 0\n1 12.8 -1\n")
	f.Add("t,V,A,T\n00:00:01,12,1,25\n00:00:02,12,1,\n")
	var long strings.Builder
	for k := range 200 {
		fmt.Fprintf(&long, "%d %g %d\n", k, 12.9-0.001*float64(k), 4*(k/9%2)-k/150)
	}
	f.Add(long.String())
	f.Fuzz(func(t *testing.T, text string) {
		for _, held := range []int{allRows, 64} {
			l, err := cellfit.Read(strings.NewReader(text), cellfit.Options{HeldRows: held})
			if err != nil {
				return
			}
			if l.Rows() > held || l.Rows() > l.FileRows {
				t.Fatalf("%d rows of %d are held", l.Rows(), l.FileRows)
			}
			for i := range l.TimeS {
				if i > 0 && !(l.TimeS[i] > l.TimeS[i-1]) {
					t.Fatalf("time does not rise at row %d: %v", i, l.TimeS)
				}
				for _, x := range []float64{l.TimeS[i], l.Volts[i], l.Amps[i], l.ChargeAh[i]} {
					if math.IsNaN(x) || math.IsInf(x, 0) {
						t.Fatalf("row %d holds %v", i, x)
					}
				}
			}
			_ = l.Parts()
			_ = l.Condense(50)
		}
	})
}

// A load to be played may lack volts; a log to be fitted may not.
func TestVoltsMayBeAbsentOnlyWhereThatIsAllowed(t *testing.T) {
	for _, text := range []string{
		"Time (min),Current (mA)\n0,800\n2,800\n",
		"0,0.8\n120,0.8\n",
		"Current (A);Temp (C);Time (s)\n0,8;20;0\n0,8;21;120\n",
	} {
		l, err := cellfit.Read(strings.NewReader(text), cellfit.Options{WithoutVolts: true})
		if err != nil {
			t.Errorf("%q: %v", text, err)
			continue
		}
		if l.Volts != nil || l.Rows() != 2 || l.TimeS[1] != 120 || math.Abs(l.Amps[0]-0.8) > 1e-12 || math.Abs(l.ChargeAh[1]-0.8/30) > 1e-12 {
			t.Errorf("%q: %+v, want 0.8 A for 120 s and no volts", text, l)
		}
		var re cellfit.ReadError
		if _, err := cellfit.Read(strings.NewReader(text), cellfit.Options{}); !errors.As(err, &re) {
			t.Errorf("%q is read as a log: %v", text, err)
		}
	}
}

// refdata is the directory of the published datasets; they are not part of
// the project.
func refdata(t testing.TB, what string) string {
	t.Helper()
	dir := os.Getenv("PACKCHECK_REFDATA")
	if dir == "" {
		t.Skip("PACKCHECK_REFDATA is not set: would have checked " + what)
	}
	return dir
}

// The charge that the datasets' own counters show, from their tables
// (Ah between first and last row).
func TestReadAgreesWithTheDatasetsOwnCounters(t *testing.T) {
	dir := refdata(t, "that logs of five laboratories are read with the charge their testers counted")
	for name, ah := range map[string]float64{
		"*_18650_3ah/s001_cc_c10_rt":        2.969,
		"*_18650_3ah/s001_cc_3c_rt":         2.925,
		"*_2p9ah/c20_discharge_25c":         2.997,
		"*_2p9ah/cccv_1c_charge_25c":        -2.784,
		"*_lmo_pouch_33ah/cell_cc_3c_25c":   28.716,
		"*_6s_pack_65ah/pack6s_cc_2p0c_22c": 55.398,
		"vrla_12v_17ah/unit_a_cc_2p0a":      19.691,
	} {
		files, err := filepath.Glob(filepath.Join(dir, name+".csv"))
		if err != nil || len(files) != 1 {
			t.Fatalf("%s: found %v, %v", name, files, err)
		}
		text, err := os.ReadFile(files[0])
		if err != nil {
			t.Fatal(err)
		}
		l := read(t, string(text))
		if got := l.ChargeAh[l.Rows()-1]; math.Abs(got-ah) > 0.001 {
			t.Errorf("%s: %.4f Ah, the dataset says %.3f", name, got, ah)
		}
	}
}
