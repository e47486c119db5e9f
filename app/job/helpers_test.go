package job

import (
	"encoding/json"
	"fmt"

	"github.com/paulmach/orb"

	"ullage/data/osm"
)

// readBackdrop reads [Opened.Backdrop] back.
func readBackdrop(text string) (osm.Backdrop, error) {
	var in struct {
		Features []struct {
			Geometry struct {
				Type        string          `json:"type"`
				Coordinates json.RawMessage `json:"coordinates"`
			} `json:"geometry"`
			Properties struct {
				Class string `json:"class"`
				Name  string `json:"name"`
				Rank  int    `json:"rank"`
			} `json:"properties"`
		} `json:"features"`
	}
	var out osm.Backdrop
	if text == "" {
		return out, nil
	}
	if err := json.Unmarshal([]byte(text), &in); err != nil {
		return out, fmt.Errorf("backdrop: %w", err)
	}
	for i, f := range in.Features {
		var p point
		var line orb.LineString
		var rings []orb.LineString
		var err error
		switch f.Geometry.Type {
		case "Point":
			err = json.Unmarshal(f.Geometry.Coordinates, &p)
			out.Towns = append(out.Towns, osm.Town{Name: f.Properties.Name, Point: p, Rank: f.Properties.Rank})
		case "LineString":
			err = json.Unmarshal(f.Geometry.Coordinates, &line)
			out.Lines = append(out.Lines, osm.BackdropLine{Class: f.Properties.Class, Points: line})
		case "Polygon":
			err = json.Unmarshal(f.Geometry.Coordinates, &rings)
			for _, line := range rings {
				out.Lines = append(out.Lines, osm.BackdropLine{Class: f.Properties.Class, Points: line})
			}
		}
		if err != nil {
			return osm.Backdrop{}, fmt.Errorf("backdrop feature %d: %w", i, err)
		}
	}
	return out, nil
}

// inThisProgram dials a server of h in this program, in place of a worker.
func inThisProgram(h *Handler) Dial {
	return func(receive func([]byte), died func(error)) (Link, error) {
		return inProcess{NewServer(h), receive}, nil
	}
}

type inProcess struct {
	server  *Server
	receive func([]byte)
}

func (p inProcess) Send(frame []byte) error {
	p.server.Receive(frame, func(b []byte) error { p.receive(b); return nil })
	return nil
}

func (p inProcess) Close() {}
