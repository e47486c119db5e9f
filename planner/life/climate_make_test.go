package life

import (
	"bufio"
	"bytes"
	"compress/gzip"
	"encoding/csv"
	"flag"
	"math"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"testing"
)

// This file makes climate.bin: go test ./planner/life -run TestClimateGrid -update
// It needs the climate grid beside the project and, for the heights, the tool
// CDO and NOAA's ETOPO5 at 20 minutes (Debian: cdo, ferret-datasets).

var update = flag.Bool("update", false, "write climate.bin")

const (
	climateCSV = "../../../shared/data/climate/ncep-air-ltm-1981-2010-2.5deg.csv.gz"
	topography = "/usr/share/ferret-vis/data/etopo20.cdf"
)

func TestClimateGrid(t *testing.T) {
	f, err := os.Open(climateCSV)
	if err != nil {
		t.Skipf("the climate grid is not beside the project, as ../shared/data/climate: %v", err)
	}
	defer f.Close()
	unzipped, err := gzip.NewReader(f)
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(unzipped).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	grid := []byte(climateGrid)
	if len(grid) != 6*gridCells {
		grid = make([]byte, 6*gridCells)
	}
	var sum float64
	cells := 0
	for _, row := range rows[1:] {
		var v [14]float64
		for i, s := range row {
			if v[i], err = strconv.ParseFloat(s, 64); err != nil {
				t.Fatal(err)
			}
		}
		cell, ok := gridCell(v[0], v[1])
		if !ok {
			continue
		}
		cells++
		for plane, b := range harmonics(v[2:]) {
			grid[plane*gridCells+cell] = b
		}
	}
	if cells != gridCells {
		t.Fatalf("the source has %d cells of the grid, want %d", cells, gridCells)
	}
	heights(t, grid[5*gridCells:])
	if *update {
		if err := os.WriteFile("climate.bin", grid, 0o644); err != nil {
			t.Fatal(err)
		}
		t.Skip("climate.bin is written: run the tests again without -update")
	}
	if !bytes.Equal(grid, []byte(climateGrid)) {
		t.Error("climate.bin is not what its source gives: run with -update")
	}

	// What rounding and two harmonics cost.
	for _, row := range rows[1:] {
		lat, _ := strconv.ParseFloat(row[0], 64)
		lon, _ := strconv.ParseFloat(row[1], 64)
		cell, ok := gridCell(lat, lon)
		if !ok {
			continue
		}
		height := heightStep * float64(climateGrid[5*gridCells+cell])
		for m := range 12 {
			want, _ := strconv.ParseFloat(row[2+m], 64)
			got := Outside(Where{Lat: lat, Lon: lon, AltM: &height}, midMonth(m+1)).MeanC
			sum += (got - want) * (got - want)
		}
	}
	rms := math.Sqrt(sum / float64(12*gridCells))
	t.Logf("%d bytes, root mean square error %.3f °C", len(climateGrid), rms)
	if rms > 0.40 {
		t.Errorf("root mean square error %.3f °C, want ≤ 0.40", rms)
	}
}

func gridCell(lat, lon float64) (int, bool) {
	row := int(math.Round((gridNorth - lat) / gridStep))
	col := int(math.Round((lon+180)/gridStep)) % gridCols
	return row*gridCols + col, row >= 0 && row < gridRows
}

// harmonics of twelve monthly means, in the file's steps.
func harmonics(months []float64) [5]byte {
	var sums [5]float64
	for m, t := range months {
		x := 2 * math.Pi * (float64(m) + 0.5) / 12
		for k, base := range [5]float64{0.5, math.Cos(x), math.Sin(x), math.Cos(2 * x), math.Sin(2 * x)} {
			sums[k] += t * base / 6
		}
	}
	var out [5]byte
	for k, step := range [5]float64{meanStep, yearStep, yearStep, halfStep, halfStep} {
		out[k] = byte(int8(math.Round(min(max(sums[k]/step, -128), 127))))
	}
	return out
}

// heights fills in the mean height of each cell, the sea counted as 0, and leaves it alone,
// saying so, where the tool or the topography is absent.
func heights(t *testing.T, plane []byte) {
	if _, err := exec.LookPath("cdo"); err != nil {
		t.Logf("heights are not checked: %v", err)
		return
	}
	if _, err := os.Stat(topography); err != nil {
		t.Logf("heights are not checked: %v", err)
		return
	}
	out, err := exec.Command("cdo", "-s", "outputtab,lat,lon,value", "-remapcon,r144x73", "-setrtoc,-20000,0,0", topography).Output()
	if err != nil {
		t.Fatalf("cdo: %v", err)
	}
	lines := bufio.NewScanner(bytes.NewReader(out))
	for lines.Scan() {
		f := strings.Fields(lines.Text())
		if len(f) != 3 || f[0] == "#" {
			continue
		}
		var v [3]float64
		for i := range f {
			if v[i], err = strconv.ParseFloat(f[i], 64); err != nil {
				t.Fatal(err)
			}
		}
		if v[1] > 180 {
			v[1] -= 360
		}
		if cell, ok := gridCell(v[0], v[1]); ok {
			plane[cell] = byte(math.Round(min(max(v[2], 0)/heightStep, 255)))
		}
	}
}
