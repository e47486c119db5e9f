// Command ullage plans the stops of a motorhome trip: where to refuel, top
// up, fill, drain, empty, charge and spend the nights.
//
//	ullage plan [-trip F] [-route F] [-places F,…] [-json]
//	ullage places FILE…
//	ullage solve [-within TIME] PROBLEM.json
//	ullage audit PROBLEM.json PLAN.json
//	ullage serve [-addr HOST:PORT]
//	ullage site -out DIR
//	ullage help COMMAND
//
// It exits 0 if all went well, 1 if an audited plan is broken, 2 if a flag or
// a file is wrong, 3 if no plan exists.
//
// What comes in are flags and files; what goes out are sheets, JSON and pages.
// Words are those of app/say, mistakes in flags and files are plain Go errors: what,
// where, what to do. Results go to the standard output, everything else to the
// standard error; what a long command is doing is shown on terminals only.
//
// Decision. Flags are read with package flag's sets but not by its Parse: its
// errors cannot be told apart but by their text, and an unknown flag shall name the
// nearest that there is.
//
// Read command.go first.
//
// Files, each using only those above it:
//
//   - command.go: what a command is, its flags, its exit codes
//   - flags.go: the arguments of a command
//   - help.go: every command and flag with an example
//   - places.go: map data and place files, and ullage places
//   - answer.go: a plan with what a person asks next
//   - problem.go: problems as files, ullage solve
//   - audit.go: ullage audit
//   - input.go: what a plan is made of
//   - roads.go: the roads of its map data
//   - onroad.go: planning on from the road
//   - via.go: a route drawn on roads
//   - plan.go: ullage plan
//   - building.go: saying how the page is built
//   - serve.go: ullage serve
//   - site.go: ullage site
//   - main.go: all commands
package main
