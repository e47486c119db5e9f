// Package units shows numbers as people want them and reads what they enter.
//
// What comes in is a stored number (km, km/h, L, L/100 km, °C, kg, m, kWh) or one that
// was typed; what goes out is the number in the unit that a person chose, or as it is
// stored. Everything else in the program counts in the stored units only.
//
//	mpg, _ := units.Of("mpg-imp")
//	fmt.Println(mpg.Show(10.5)) // 26.9…
//	stored, err := mpg.Read(27)
//
// Read units.go first.
//
// Decisions. A system names its unit for each quantity, so that people may mix them.
// Money is never exchanged: rates change, and the tool is used offline.
//
// Files, each using only those above it:
//
//   - units.go: quantities, and the units of each
//   - system.go: which unit each quantity is shown in
//   - money.go: currencies
package units
