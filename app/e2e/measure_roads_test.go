//go:build !js

package e2e_test

import (
	"flag"
	"os"
	"path/filepath"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/paulmach/orb"

	"ullage/data/osm/osmtest"
)

var measured = flag.Bool("measure", false, "run the measurements too (minutes)")

// watchStates keeps when the status and the line about roads change, and with
// noRoads lets nobody ask for roads.
const watchStates = `
	const post = Worker.prototype.postMessage;
	Worker.prototype.postMessage = function(m, ...rest) {
		if (window.noRoads && m instanceof Uint8Array && new TextDecoder().decode(m.subarray(4, 60)).includes('"roads":true')) return;
		return post.call(this, m, ...rest);
	};
	window.states = [];
	new MutationObserver(() => {
		const s = [document.querySelector("#status")?.dataset.state, document.querySelector("#roads")?.dataset.state, document.querySelector("main")?.textContent.includes("Measured") ? "new" : "old"].join(" ");
		if (window.states.at(-1)?.[0] !== s) window.states.push([s, performance.now()]);
	}).observe(document, {subtree: true, childList: true, attributes: true, attributeFilter: ["data-state"]});`

// TestMeasureRoads reports how long after map data and a route are dropped the
// first answer is shown, with roads being read beside it and without, and when
// the answer by road is. go test ./app/e2e -run MeasureRoads -v -count=1 -measure
func TestMeasureRoads(t *testing.T) {
	if !*measured {
		t.Skip("a measurement of minutes: run with -measure")
	}
	url := serve(t)
	for _, region := range []struct {
		name, data string
		route      orb.LineString
	}{
		// Pas de la Casa, Andorra la Vella and the border in the south; Wilmington, Dover and Lewes: straight lines.
		{"Andorra", "osm/andorra-2025-01-19.osm.pbf", orb.LineString{{1.735, 42.543}, {1.521, 42.507}, {1.457, 42.436}}},
		{"Delaware", "module:delaware-latest.osm.pbf", orb.LineString{{-75.55, 39.74}, {-75.52, 39.16}, {-75.14, 38.77}}},
	} {
		t.Run(region.name, func(t *testing.T) {
			extract, route := filepath.Join(t.TempDir(), "region.osm.pbf"), gpxFile(t, "Measured", region.route)
			if err := os.WriteFile(extract, osmtest.Bytes(t, region.data), 0o644); err != nil {
				t.Fatal(err)
			}
			for range 3 {
				t.Run("with", func(t *testing.T) { measureRoads(t, url, []string{extract, route}, false) })
				t.Run("without", func(t *testing.T) { measureRoads(t, url, []string{extract, route}, true) })
			}
		})
	}
}

func measureRoads(t *testing.T, url string, files []string, noRoads bool) {
	p := openAlone(t, 1400, 900)
	p.beforeScripts(watchStates)
	p.do(chromedp.Navigate(url))
	p.planned()
	if noRoads {
		eval[bool](p, `(window.noRoads = true)`)
	}
	eval[bool](p, `(document.querySelector("#file").addEventListener("change", () => { window.dropped = performance.now(); window.states = []; }, true), true)`)
	p.do(chromedp.SetUploadFiles("#file", files))
	const first = `states.find(s => /^(planned|refused) \w+ new/.test(s[0]))`
	const byRoad = `states.find(s => /^(planned|refused) ready new/.test(s[0]))`
	p.until("an answer", first)
	if noRoads {
		t.Logf("without roads: first answer after %.0f ms", eval[float64](p, first+`[1] - dropped`))
		return
	}
	p.until("an answer by road", byRoad)
	load, _ := os.ReadFile("/proc/loadavg")
	t.Logf("with roads: first answer after %.0f ms, roads ready after %.0f ms, answer by road after %.0f ms; load %s", eval[float64](p, first+`[1] - dropped`),
		eval[float64](p, `states.find(s => s[0].endsWith("ready new"))[1] - dropped`), eval[float64](p, byRoad+`[1] - dropped`), load)
}
