package faraday

import "example.com/laydown/units"

// elementTable is read only. Weights: [IUPAC2021], Tables 1 and 2; the columns
// are lower and upper end of the interval (0 when there is none), value,
// uncertainty, abridged value, its uncertainty. Densities in g/cm³ at 295 K:
// [CRC95] (mercury is liquid); 0 where this library has none. The last column
// lists the valences that the metal is deposited from, a digit each, the usual
// one first.
var elementTable = [...]Element{
	element("H", "hydrogen", 1, weight(1.00784, 1.00811, 1.0080, 0.0002, 1.0080, 0.0002), 0, "1"),
	element("He", "helium", 2, weight(0, 0, 4.002602, 0.000002, 4.0026, 0.0001), 0, ""),
	element("Li", "lithium", 3, weight(6.938, 6.997, 6.94, 0.06, 6.94, 0.06), 0, ""),
	element("Be", "beryllium", 4, weight(0, 0, 9.0121831, 0.0000005, 9.0122, 0.0001), 0, ""),
	element("B", "boron", 5, weight(10.806, 10.821, 10.81, 0.02, 10.81, 0.02), 0, ""),
	element("C", "carbon", 6, weight(12.0096, 12.0116, 12.011, 0.002, 12.011, 0.002), 0, ""),
	element("N", "nitrogen", 7, weight(14.00643, 14.00728, 14.007, 0.001, 14.007, 0.001), 0, ""),
	element("O", "oxygen", 8, weight(15.99903, 15.99977, 15.999, 0.001, 15.999, 0.001), 0, "2"),
	element("F", "fluorine", 9, weight(0, 0, 18.998403162, 0.000000005, 18.998, 0.001), 0, ""),
	element("Ne", "neon", 10, weight(0, 0, 20.1797, 0.0006, 20.180, 0.001), 0, ""),
	element("Na", "sodium", 11, weight(0, 0, 22.98976928, 0.00000002, 22.990, 0.001), 0, ""),
	element("Mg", "magnesium", 12, weight(24.304, 24.307, 24.305, 0.002, 24.305, 0.002), 0, ""),
	element("Al", "aluminium", 13, weight(0, 0, 26.9815384, 0.0000003, 26.982, 0.001), 2.7, "3"),
	element("Si", "silicon", 14, weight(28.084, 28.086, 28.085, 0.001, 28.085, 0.001), 0, ""),
	element("P", "phosphorus", 15, weight(0, 0, 30.973761998, 0.000000005, 30.974, 0.001), 0, ""),
	element("S", "sulfur", 16, weight(32.059, 32.076, 32.06, 0.02, 32.06, 0.02), 0, ""),
	element("Cl", "chlorine", 17, weight(35.446, 35.457, 35.45, 0.01, 35.45, 0.01), 0, ""),
	element("Ar", "argon", 18, weight(39.792, 39.963, 39.95, 0.16, 39.95, 0.16), 0, ""),
	element("K", "potassium", 19, weight(0, 0, 39.0983, 0.0001, 39.098, 0.001), 0, ""),
	element("Ca", "calcium", 20, weight(0, 0, 40.078, 0.004, 40.078, 0.004), 0, ""),
	element("Sc", "scandium", 21, weight(0, 0, 44.955907, 0.000004, 44.956, 0.001), 0, ""),
	element("Ti", "titanium", 22, weight(0, 0, 47.867, 0.001, 47.867, 0.001), 4.506, ""),
	element("V", "vanadium", 23, weight(0, 0, 50.9415, 0.0001, 50.942, 0.001), 0, ""),
	element("Cr", "chromium", 24, weight(0, 0, 51.9961, 0.0006, 51.996, 0.001), 7.15, "632"),
	element("Mn", "manganese", 25, weight(0, 0, 54.938043, 0.000002, 54.938, 0.001), 7.3, "2"),
	element("Fe", "iron", 26, weight(0, 0, 55.845, 0.002, 55.845, 0.002), 7.87, "23"),
	element("Co", "cobalt", 27, weight(0, 0, 58.933194, 0.000003, 58.933, 0.001), 8.86, "23"),
	element("Ni", "nickel", 28, weight(0, 0, 58.6934, 0.0004, 58.693, 0.001), 8.9, "2"),
	element("Cu", "copper", 29, weight(0, 0, 63.546, 0.003, 63.546, 0.003), 8.96, "21"),
	element("Zn", "zinc", 30, weight(0, 0, 65.38, 0.02, 65.38, 0.02), 7.134, "2"),
	element("Ga", "gallium", 31, weight(0, 0, 69.723, 0.001, 69.723, 0.001), 5.91, "3"),
	element("Ge", "germanium", 32, weight(0, 0, 72.630, 0.008, 72.630, 0.008), 5.3234, "42"),
	element("As", "arsenic", 33, weight(0, 0, 74.921595, 0.000006, 74.922, 0.001), 5.75, "3"),
	element("Se", "selenium", 34, weight(0, 0, 78.971, 0.008, 78.971, 0.008), 0, ""),
	element("Br", "bromine", 35, weight(79.901, 79.907, 79.904, 0.003, 79.904, 0.003), 0, ""),
	element("Kr", "krypton", 36, weight(0, 0, 83.798, 0.002, 83.798, 0.002), 0, ""),
	element("Rb", "rubidium", 37, weight(0, 0, 85.4678, 0.0003, 85.468, 0.001), 0, ""),
	element("Sr", "strontium", 38, weight(0, 0, 87.62, 0.01, 87.62, 0.01), 0, ""),
	element("Y", "yttrium", 39, weight(0, 0, 88.905838, 0.000002, 88.906, 0.001), 0, ""),
	element("Zr", "zirconium", 40, weight(0, 0, 91.224, 0.002, 91.224, 0.002), 0, ""),
	element("Nb", "niobium", 41, weight(0, 0, 92.90637, 0.00001, 92.906, 0.001), 0, ""),
	element("Mo", "molybdenum", 42, weight(0, 0, 95.95, 0.01, 95.95, 0.01), 10.2, "6"),
	element("Ru", "ruthenium", 44, weight(0, 0, 101.07, 0.02, 101.07, 0.02), 12.1, "348"),
	element("Rh", "rhodium", 45, weight(0, 0, 102.90549, 0.00002, 102.91, 0.01), 12.4, "342"),
	element("Pd", "palladium", 46, weight(0, 0, 106.42, 0.01, 106.42, 0.01), 12.0, "243"),
	element("Ag", "silver", 47, weight(0, 0, 107.8682, 0.0002, 107.87, 0.01), 10.5, "1"),
	element("Cd", "cadmium", 48, weight(0, 0, 112.414, 0.004, 112.41, 0.01), 8.69, "2"),
	element("In", "indium", 49, weight(0, 0, 114.818, 0.001, 114.82, 0.01), 7.31, "31"),
	element("Sn", "tin", 50, weight(0, 0, 118.710, 0.007, 118.71, 0.01), 7.287, "24"),
	element("Sb", "antimony", 51, weight(0, 0, 121.760, 0.001, 121.76, 0.01), 6.68, "35"),
	element("Te", "tellurium", 52, weight(0, 0, 127.60, 0.03, 127.60, 0.03), 0, ""),
	element("I", "iodine", 53, weight(0, 0, 126.90447, 0.00003, 126.90, 0.01), 0, ""),
	element("Xe", "xenon", 54, weight(0, 0, 131.293, 0.006, 131.29, 0.01), 0, ""),
	element("Cs", "caesium", 55, weight(0, 0, 132.90545196, 0.00000006, 132.91, 0.01), 0, ""),
	element("Ba", "barium", 56, weight(0, 0, 137.327, 0.007, 137.33, 0.01), 0, ""),
	element("La", "lanthanum", 57, weight(0, 0, 138.90547, 0.00007, 138.91, 0.01), 0, ""),
	element("Ce", "cerium", 58, weight(0, 0, 140.116, 0.001, 140.12, 0.01), 0, ""),
	element("Pr", "praseodymium", 59, weight(0, 0, 140.90766, 0.00001, 140.91, 0.01), 0, ""),
	element("Nd", "neodymium", 60, weight(0, 0, 144.242, 0.003, 144.24, 0.01), 0, ""),
	element("Sm", "samarium", 62, weight(0, 0, 150.36, 0.02, 150.36, 0.02), 0, ""),
	element("Eu", "europium", 63, weight(0, 0, 151.964, 0.001, 151.96, 0.01), 0, ""),
	element("Gd", "gadolinium", 64, weight(0, 0, 157.25, 0.03, 157.25, 0.03), 0, ""),
	element("Tb", "terbium", 65, weight(0, 0, 158.925354, 0.000007, 158.93, 0.01), 0, ""),
	element("Dy", "dysprosium", 66, weight(0, 0, 162.500, 0.001, 162.50, 0.01), 0, ""),
	element("Ho", "holmium", 67, weight(0, 0, 164.930329, 0.000005, 164.93, 0.01), 0, ""),
	element("Er", "erbium", 68, weight(0, 0, 167.259, 0.003, 167.26, 0.01), 0, ""),
	element("Tm", "thulium", 69, weight(0, 0, 168.934219, 0.000005, 168.93, 0.01), 0, ""),
	element("Yb", "ytterbium", 70, weight(0, 0, 173.045, 0.010, 173.05, 0.02), 0, ""),
	element("Lu", "lutetium", 71, weight(0, 0, 174.9668, 0.0001, 174.97, 0.01), 0, ""),
	element("Hf", "hafnium", 72, weight(0, 0, 178.486, 0.006, 178.49, 0.01), 0, ""),
	element("Ta", "tantalum", 73, weight(0, 0, 180.94788, 0.00002, 180.95, 0.01), 0, ""),
	element("W", "tungsten", 74, weight(0, 0, 183.84, 0.01, 183.84, 0.01), 19.3, "6"),
	element("Re", "rhenium", 75, weight(0, 0, 186.207, 0.001, 186.21, 0.01), 20.8, "7"),
	element("Os", "osmium", 76, weight(0, 0, 190.23, 0.03, 190.23, 0.03), 22.5872, "48"),
	element("Ir", "iridium", 77, weight(0, 0, 192.217, 0.002, 192.22, 0.01), 22.5622, "34"),
	element("Pt", "platinum", 78, weight(0, 0, 195.084, 0.009, 195.08, 0.02), 21.5, "42"),
	element("Au", "gold", 79, weight(0, 0, 196.966570, 0.000004, 196.97, 0.01), 19.3, "13"),
	element("Hg", "mercury", 80, weight(0, 0, 200.592, 0.003, 200.59, 0.01), 13.5336, "21"),
	element("Tl", "thallium", 81, weight(204.382, 204.385, 204.38, 0.01, 204.38, 0.01), 0, ""),
	element("Pb", "lead", 82, weight(206.14, 207.94, 207.2, 1.1, 207.2, 1.1), 11.3, "2"),
	element("Bi", "bismuth", 83, weight(0, 0, 208.98040, 0.00001, 208.98, 0.01), 9.79, "3"),
	element("Th", "thorium", 90, weight(0, 0, 232.0377, 0.0004, 232.04, 0.01), 0, ""),
	element("Pa", "protactinium", 91, weight(0, 0, 231.03588, 0.00001, 231.04, 0.01), 0, ""),
	element("U", "uranium", 92, weight(0, 0, 238.02891, 0.00003, 238.03, 0.01), 0, ""),
}

// weight keeps the rows of the table short: plain g/mol in, molar masses out.
func weight(low, high, value, u, abridged, abridgedU float64) AtomicWeight {
	const g = float64(units.GramPerMole)
	return AtomicWeight{
		Low: units.MolarMass(low * g), High: units.MolarMass(high * g),
		Value: units.MolarMass(value * g), Uncertainty: units.MolarMass(u * g),
		Abridged: units.MolarMass(abridged * g), AbridgedUncertainty: units.MolarMass(abridgedU * g),
	}
}

func element(symbol, name string, number int, w AtomicWeight, gramPerCm3 float64, valences string) Element {
	return Element{Symbol: symbol, Name: name, Number: number, Weight: w,
		Density: units.Density(gramPerCm3 * float64(units.GramPerCubicCentimetre)), valences: valences}
}
