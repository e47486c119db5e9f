// Command client is the program in the browser: the page where there is a
// document, its planner where there is none, which is in a worker. One file
// serves both, so one file is loaded and kept.
//
//	GOOS=js GOARCH=wasm go build -trimpath -ldflags="-s -w" -o app.wasm ./cmd/client
package main

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	page "ullage/app"
	"ullage/app/browser"
	"ullage/app/job"
)

func main() {
	if browser.InWorker() {
		browser.ServeWorker(job.NewServer(job.NewHandler()).Receive)
	}
	app.Route("/", func() app.Composer { return &page.Page{} })
	app.RunWhenOnBrowser()
}
