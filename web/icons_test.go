package web

import (
	"bytes"
	"flag"
	"image"
	"image/color"
	"image/png"
	"os"
	"testing"
)

var update = flag.Bool("update", false, "draw the icons anew")

// The icons are the mark of mark.svg, drawn here from the same corners on a
// grid of 512: a strip whose headroom dips and recovers above its reserve.
var mark = []struct {
	fill   color.RGBA
	corner [][2]float64
}{
	{color.RGBA{0x12, 0x34, 0x3b, 255}, [][2]float64{{0, 0}, {512, 0}, {512, 512}, {0, 512}}},
	{color.RGBA{0xe9, 0xf1, 0xee, 255}, [][2]float64{{96, 176}, {416, 176}, {416, 336}, {96, 336}}},
	{color.RGBA{0x2c, 0x7a, 0x7b, 255}, [][2]float64{{96, 176}, {416, 176}, {416, 220}, {336, 272}, {272, 236}, {184, 296}, {96, 224}}},
	{color.RGBA{0xd9, 0x82, 0x2b, 255}, [][2]float64{{96, 312}, {416, 312}, {416, 336}, {96, 336}}},
}

// drawMark draws the mark with size pixels a side, each the mean of 4 × 4 samples.
func drawMark(size int) []byte {
	const n = 4
	img := image.NewRGBA(image.Rect(0, 0, size, size))
	for y := range size {
		for x := range size {
			var r, g, b int
			for s := range n * n {
				at := [2]float64{
					(float64(x) + (float64(s%n)+.5)/n) * 512 / float64(size),
					(float64(y) + (float64(s/n)+.5)/n) * 512 / float64(size),
				}
				var c color.RGBA
				for _, m := range mark {
					if inside(m.corner, at) {
						c = m.fill
					}
				}
				r, g, b = r+int(c.R), g+int(c.G), b+int(c.B)
			}
			img.SetRGBA(x, y, color.RGBA{uint8(r / n / n), uint8(g / n / n), uint8(b / n / n), 255})
		}
	}
	var out bytes.Buffer
	e := png.Encoder{CompressionLevel: png.BestCompression}
	if err := e.Encode(&out, img); err != nil {
		panic(err)
	}
	return out.Bytes()
}

func inside(ring [][2]float64, p [2]float64) bool {
	in := false
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		if (a[1] > p[1]) != (b[1] > p[1]) && p[0] < a[0]+(b[0]-a[0])*(p[1]-a[1])/(b[1]-a[1]) {
			in = !in
		}
	}
	return in
}

func TestIcons(t *testing.T) {
	for name, size := range map[string]int{"icon-192.png": 192, "icon-512.png": 512} {
		want := drawMark(size)
		if *update {
			if err := os.WriteFile(name, want, 0o644); err != nil {
				t.Fatal(err)
			}
		}
		got, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		a, err := png.Decode(bytes.NewReader(got))
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		b, _ := png.Decode(bytes.NewReader(want))
		if a.Bounds() != b.Bounds() {
			t.Fatalf("%s has %v, want %v", name, a.Bounds(), b.Bounds())
		}
		for y := range size {
			for x := range size {
				if a.At(x, y) != b.At(x, y) {
					t.Fatalf("%s is not the mark at %d,%d; go test ./web -update draws it", name, x, y)
				}
			}
		}
	}
}
