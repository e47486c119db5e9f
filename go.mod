module ullage

go 1.26.0

require (
	github.com/andybalholm/brotli v1.2.8
	github.com/chromedp/cdproto v0.159.0
	github.com/chromedp/chromedp v0.23.0
	github.com/maxence-charriere/go-app/v10 v10.1.9
	github.com/paulmach/orb v0.14.0
	github.com/paulmach/osm v0.8.0
	github.com/tidwall/geodesic v1.52.4
	github.com/tidwall/rtree v1.10.0
	golang.org/x/sys v0.50.0
	golang.org/x/term v0.48.0
	google.golang.org/protobuf v1.36.12
	pgregory.net/rapid v1.3.0
)

require (
	github.com/go-json-experiment/json v0.0.0-20260213210345-44df1a37e875 // indirect
	github.com/google/uuid v1.6.0 // indirect
	github.com/tidwall/geoindex v1.7.0 // indirect
	go.mongodb.org/mongo-driver/v2 v2.5.0 // indirect
)
