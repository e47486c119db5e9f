// Package job is what the page asks of the planner and how the answers come
// back: messages as bytes between two threads that share no memory.
//
// It owns the messages ([Request], [Response]), the side that works
// ([Handler], [Server]) and the side that asks ([Client]). It does not know
// how the bytes travel: in the browser package browser carries them to a
// worker, in tests they go to a goroutine.
//
// The worker holds the places, and the files of map data for their roads; the page
// only ever sees the itinerary made of them, and holds no file: if the worker dies,
// files are read once more from where they are. Of the plans asked for only the latest
// counts: an older one is stopped within a slice of 30 ms.
//
// Decisions. Cancelling is cooperative: a browser's worker hears nothing while Go
// computes, so the context of long work rests 1 ms after each 30 ms when it is asked.
// It is a context and no other object because geo, data and planner ask one anyway, in
// some forty places, and know nothing of browsers; Err and Done say the same. Price:
// some 10 % of the time. Roads are read beside the plans: the first plan has estimates,
// and does not wait for them. A frame is a JSON head and a raw body, lines as whole
// numbers: JSON takes a millisecond for a thousand points. The worker keeps the bytes of
// map data rather than their decoded roads, which are several times as large; beyond
// 400 MB or 12 million road points the page says that it stays with estimates.
//
//	c := job.NewClient(dial, func(f func()) { f() })
//	c.Open("island.osm.pbf", data, job.OpenOptions{}, func(o job.Opened, err error) { … })
//	c.Plan(job.Plan{Trip: t}, func(a job.Answer) { … })
//
// Read message.go first, then server.go.
//
// Files, each using only those above it:
//
//   - hours.go: opening hours
//   - kind.go: what a file holds
//   - line.go: lines as bytes
//   - backdrop.go: what is drawn behind, as GeoJSON
//   - message.go: what is asked and answered
//   - pace.go: long work that lets others be heard
//   - roads.go: the roads, one question at a time
//   - most.go: what is too much for a page
//   - held.go: what the worker holds
//   - open.go: files opened
//   - planning.go: plans
//   - network.go: roads read
//   - handler.go: requests done
//   - server.go: requests in their turn
//   - client.go: the side that asks
package job
