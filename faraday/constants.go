package faraday

// The constants that define the SI of 2019. All are exact.
//
// Source: [SI2019].
const (
	ElementaryCharge  = 1.602176634e-19 // C
	AvogadroConstant  = 6.02214076e23   // 1/mol
	BoltzmannConstant = 1.380649e-23    // J/K
)

// Constants that follow from them as products, exact too; being untyped they
// keep all their digits until they meet a float64.
//
// Source: [SI2019].
const (
	FaradayConstant = ElementaryCharge * AvogadroConstant  // 96485.3321233100184 C/mol
	GasConstant     = BoltzmannConstant * AvogadroConstant // 8.31446261815324 J/(mol·K)
)
