// Package job is what the page asks of the planner and how the answers come
// back: messages as bytes between two threads that share no memory.
//
// It owns the messages ([Request], [Response]), the side that works
// ([Handler], [Server]) and the side that asks ([Client]). It does not know
// how the bytes travel: in the browser package browser carries them to a
// worker, in tests [InProcess] carries them to a goroutine.
//
// The worker holds the places; the page only ever sees the itinerary made of
// them. Of the plans asked for only the latest counts: an older one is
// stopped within a slice of 30 ms. Roads are read beside the plans: the first
// plan has estimates, and does not wait for them.
//
//	c := job.NewClient(job.InProcess(job.NewHandler()), func(f func()) { f() })
//	c.Open("island.osm.pbf", data, job.OpenOptions{}, nil, func(o job.Opened, err error) { … })
//	c.Plan(t, func(a job.Answer) { … })
package job
