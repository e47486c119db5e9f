// Package mapview shows the map: live where the browser can, else drawn; the route
// being drawn upon it, and what is said beside it.
//
// What comes in is a [MapModel], made by [Of] from the page's model, and somebody who
// finds ways while a point is dragged. What goes out are messages: a point set, a
// place on the route pointed at. The map library itself is behind package browser.
//
// Decisions. A drag goes past the page and past the map: the map asks for ways itself,
// one question at a time, and what is under the pointer is sketched in SVG above it,
// since without a graphics card a frame of the map takes a tenth of a second. Until
// the end of a drag the line of before is only made pale, and the map cannot be tilted.
// A source is set only if it changed: no tile is made, no frame drawn. MapLibre GL JS
// is vendored; without WebGL2, and on paper, the drawn overview takes its place. The
// style is text with the names of colours, a fifth of what Go literals take.
//
// Read mapmodel.go first, then mapview.go.
//
// Files, each using only those above it:
//
//   - mapstyle.go: colours and layers
//   - mapdata.go: what is shown, as GeoJSON
//   - sketch.go: what follows the pointer
//   - overview.go: the drawn map
//   - mapmodel.go: what the map shows of the page's model
//   - otherways.go: other ways between two points
//   - draftbar.go: the controls of a drawing
//   - mapview.go: the map with its controls
//   - dragging.go: points moved and pulled out of the line
//   - giving.go: what the live map is given
//   - listening.go: what happens on it
package mapview
