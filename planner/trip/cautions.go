package trip

// tripCautions belong to every trip; those of its stops are the how-tos of
// package life. They are common practice, no source; none replaces the vehicle's
// handbook, local rules or a licensed person.
var tripCautions = []string{
	"Map data can be old or wrong: a place may be closed, full, frozen off or too low. The sign on the spot decides. Know the height on the vehicle's plate, and add what is on the roof.",
	"Before you drive off: gas off, steps in, windows and hatches closed, awning in, cable and hose off, everything heavy tied down.",
	"Hot water: a boiler that stood warm at 40 °C can grow legionella; heat it to 60 °C before you shower, and mind scalding. In frost a valve may empty the boiler by itself.",
	"Take a break of 15 minutes after two hours at the wheel.",
	"The vehicle's handbook, local rules and licensed people come before this plan.",
}
