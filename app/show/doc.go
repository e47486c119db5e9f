// Package show is what all that is seen on the page is made with: a message sent to
// the page, a picture, a list of texts, and words that several rooms need.
//
// Read any file.
//
// Files, each using only those above it:
//
//   - send.go: messages to the page
//   - svg.go: pictures
//   - text.go: texts
package show
