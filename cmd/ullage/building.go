package main

import (
	"context"
	"fmt"
	"io"
	"time"

	"ullage/cmd/ullage/page"
	"ullage/cmd/ullage/progress"
	"ullage/planner/fact"
)

// A building says how the page is built: each stage in a line of its own with the
// time that it took, and on a terminal what is being done meanwhile.
type building struct {
	w     io.Writer
	line  *progress.Line
	hear  func(now, usual string) // the waiting page; may be nil
	stage page.Stage
	since time.Time
}

func newBuilding(w io.Writer) *building { return &building{w: w, line: progress.To(w)} }

// files builds the program and makes all files of the page.
func (b *building) files(ctx context.Context) (map[string][]byte, error) {
	client, err := page.Build(ctx, b.step)
	b.end()
	if err != nil {
		return nil, err
	}
	return page.Files(client)
}

// step announces a stage when it begins, and how far it has come.
func (b *building) step(s page.Step) {
	b.announce(s.Stage, voice.Text("build."+string(s.Stage), fact.V{"n": fact.Count(s.Count)}))
}

// packing announces a file that is packed, which takes a while.
func (b *building) packing(name string) {
	if b.stage != page.Packing {
		b.announce(page.Packing, voice.Text("build.packing"))
	}
	b.line.Update(voice.Text("build.pack", fact.V{"name": fact.Text(name)}))
}

// announce says in a line what stage begins and how long that usually takes, and
// on a terminal and on the waiting page what is done now.
func (b *building) announce(stage page.Stage, now string) {
	usual := voice.Text("usual." + string(stage))
	if stage != b.stage {
		b.end()
		b.stage, b.since = stage, time.Now()
		if usual != "" {
			fmt.Fprintln(b.w, voice.Text("build.begins", fact.V{"now": fact.Text(now), "usual": fact.Text(usual)}))
		}
		b.line.Show(now)
	}
	b.line.Update(now)
	if b.hear != nil {
		b.hear(now, usual)
	}
}

// end says how long the stage took, if it took long enough to be asked.
func (b *building) end() {
	b.line.Clear()
	if took := time.Since(b.since); b.stage != "" && took >= time.Second {
		fmt.Fprintln(b.w, voice.Text("build.took", fact.V{"done": fact.Text(voice.Text("done." + string(b.stage))), "seconds": fact.Quantity(took.Seconds(), "s", 0)}))
	}
	b.stage = ""
}
