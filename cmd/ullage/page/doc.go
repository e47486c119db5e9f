// Package page builds the page's program and makes a site around it: for
// `ullage serve`, which answers from memory, and for `ullage site`, which writes
// a folder.
//
// What comes in is the source of this module, found from the working directory,
// and the go tool. What goes out is a map from paths to files ([Files]), the
// same for both commands, a handler for it, or a folder.
//
// Decisions.
//
// The program is built with a copy of exactly the version of go-app that go.mod
// names, without the server's files, through -modfile: go-app's package holds its
// server too, whose start-up keeps net/http with TLS, a sixth of the program. Price:
// a new version of the library needs a look; the build says so.
//
// What draws the page and says sentences is compiled without inlining: a sentence is
// made in hundreds of places, and each wrote out how its values are made. 54 kB less
// at brotli 11; what plans, measures and reads is inlined as ever. Price: a list of
// packages in source.go.
//
// What was built or packed is kept in the user's cache by the content of what it
// was made of, for commands and tests alike: one build of the page for all of them.
// Price: some tens of megabytes; a file of more than is needed counts as content, so
// that a change of a remark builds anew.
//
// One function gives all files to serve and site; go-app's handler is asked directly
// and its status checked. The policy is said twice, as a header and in the page, for
// hosts that send no headers.
//
// The waiting page loads itself again by a refresh in its head, once a second, and
// is answered with 503: no script, and nothing that a service worker would keep.
//
// Read build.go first.
//
// Files, each using only those above it:
//
//   - module.go: the go tool, and where this module is
//   - cache.go: what was made before, by its content
//   - library.go: the library of the page, without its server
//   - source.go: a name for what the program is made of
//   - build.go: the program
//   - policy.go: what the page may load
//   - files.go: every file of the site
//   - pack.go: a file packed
//   - folder.go: the site as a folder
//   - handler.go: the site as answers
//   - hosts.go: under which names
//   - server.go: a server that nobody can hold up
//   - waiting.go: what is answered until there is a site
package page
