package units_test

import (
	"encoding/json"
	"testing"

	"example.com/laydown/units"
)

// What a bench sheet of many parts does over and over.

func BenchmarkParse(b *testing.B) {
	for name, parse := range map[string]func() error{
		"length":        func() error { _, err := units.ParseLength("25 µin"); return err },
		"concentration": func() error { _, err := units.ParseMassConcentration("1.1 ozt/US gal"); return err },
		"temperature":   func() error { _, err := units.ParseTemperature("100.4 °F"); return err },
		"duration":      func() error { _, err := units.ParseDuration("1 h 20 min 30 s"); return err },
	} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if err := parse(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkParseError(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := units.ParseLength("25 furlong"); err == nil {
			b.Fatal("read")
		}
	}
}

func BenchmarkFormat(b *testing.B) {
	coat, bath, time := 25*units.Microinch, units.Celsius(38), 80*units.Minute
	for name, format := range map[string]func() string{
		"String":            coat.String,
		"String of time":    time.String,
		"Text 3":            func() string { return coat.Text(units.Micrometre, 3) },
		"Text fewest":       func() string { return coat.Text(units.Micrometre, -1) },
		"Text fewest of °C": func() string { return bath.Text(units.CelsiusScale, -1) },
	} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if format() == "" {
					b.Fatal("empty")
				}
			}
		})
	}
}

func BenchmarkMarshal(b *testing.B) {
	coat := 25 * units.Microinch
	b.Run("AppendText", func(b *testing.B) {
		b.ReportAllocs()
		buffer := make([]byte, 0, 64)
		for b.Loop() {
			if _, err := coat.AppendText(buffer); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("JSON there and back", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			text, err := json.Marshal(coat)
			if err != nil {
				b.Fatal(err)
			}
			var back units.Length
			if err := json.Unmarshal(text, &back); err != nil || back != coat {
				b.Fatal(back, err)
			}
		}
	})
}

func BenchmarkConvert(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := units.Convert("25 µin", "µm"); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkQuotient(b *testing.B) {
	b.ReportAllocs()
	current, area := 1.4*units.Ampere, 1.5*units.SquareDecimetre
	for b.Loop() {
		if _, err := current.PerArea(area); err != nil {
			b.Fatal(err)
		}
	}
}
