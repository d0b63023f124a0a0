package plating

import (
	"testing"
	"time"

	"example.com/laydown/faraday"
	"example.com/laydown/units"
)

func benchLayer() Layer {
	dep, _ := faraday.NewDeposit("Au", 1)
	dep.Density = 17.3 * units.GramPerCubicCentimetre
	return Layer{
		Bath: OperatingBath{
			Name: "gold, acid cyanide, cobalt hardened", Metal: "Au", Deposit: dep, Fine: 0.997,
			Efficiency: ConstantEfficiency(0.35),
			Window: CurrentDensityWindow{0.5 * units.AmperePerSquareDecimetre,
				1.5 * units.AmperePerSquareDecimetre},
			Temperature: TemperatureWindow{units.Celsius(30), units.Celsius(45), units.Celsius(38)},
			Content:     8 * units.GramPerLitre, Volume: 5 * units.Litre, MaxThickness: 5 * units.Micrometre,
		},
		Area:           184 * units.SquareCentimetre,
		Distribution:   Distribution{MinToAverage: 0.7},
		MinThickness:   1 * units.Micrometre,
		CurrentDensity: 0.8 * units.AmperePerSquareDecimetre,
	}
}

var sinkResult LayerEstimate

func BenchmarkEstimate(b *testing.B) {
	l := benchLayer()
	b.ReportAllocs()
	for b.Loop() {
		l.MinThickness += 1e-12
		r, err := Estimate(&l)
		if err != nil {
			b.Fatal(err)
		}
		sinkResult = r
	}
}

type bareInput struct {
	promise, ratio, j, rho, eps, eta, area, fine, content, volume float64
}
type bareOutput struct {
	j, i, t, q, eta, mean, thin, m, fine, left, cleft, drawn float64
}

//go:noinline
func bareEstimate(in *bareInput) bareOutput {
	var o bareOutput
	o.j, o.eta = in.j, in.eta
	o.mean = in.promise / in.ratio
	o.t = in.rho * o.mean / (in.eps * in.eta * in.j)
	o.i = in.j * in.area
	o.q = o.i * o.t
	o.thin = o.mean * in.ratio
	o.m = in.rho * o.mean * in.area
	o.fine = in.fine * o.m
	held := in.content * in.volume
	o.left = held - o.fine
	o.cleft = o.left / in.volume
	o.drawn = o.fine / held
	return o
}

var sinkBare bareOutput

func BenchmarkEstimateBare(b *testing.B) {
	l := benchLayer()
	in := bareInput{float64(l.MinThickness), float64(l.Distribution.MinToAverage), float64(l.CurrentDensity),
		float64(l.Bath.Deposit.Density),
		float64(l.Bath.Deposit.Equivalent), 0.35, float64(l.Area), 0.997, float64(l.Bath.Content),
		float64(l.Bath.Volume)}
	b.ReportAllocs()
	for b.Loop() {
		in.promise += 1e-12
		sinkBare = bareEstimate(&in)
	}
}

// BenchmarkEstimateRatio times both in turn in one run and reports how many
// times as long the checked estimate takes as the bare arithmetic.
func BenchmarkEstimateRatio(b *testing.B) {
	l := benchLayer()
	in := bareInput{float64(l.MinThickness), float64(l.Distribution.MinToAverage), float64(l.CurrentDensity),
		float64(l.Bath.Deposit.Density),
		float64(l.Bath.Deposit.Equivalent), 0.35, float64(l.Area), 0.997, float64(l.Bath.Content),
		float64(l.Bath.Volume)}
	const rounds = 10000
	var checked, bare time.Duration
	for b.Loop() {
		start := time.Now()
		for range rounds {
			r, err := Estimate(&l)
			if err != nil {
				b.Fatal(err)
			}
			sinkResult = r
		}
		middle := time.Now()
		for range rounds {
			sinkBare = bareEstimate(&in)
		}
		checked += middle.Sub(start)
		bare += time.Since(middle)
	}
	b.ReportMetric(float64(checked)/float64(bare), "ratio")
	b.ReportMetric(float64(checked)/float64(b.N)/rounds, "ns/estimate")
	b.ReportMetric(0, "ns/op")
}
