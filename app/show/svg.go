package show

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/draw"
)

const svgNS = "http://www.w3.org/2000/svg"

// SVG shows a picture.
func SVG(n draw.Node) app.UI {
	el := app.Elem(n.Tag).XMLNS(svgNS)
	for _, a := range n.Attrs {
		el = el.Attr(a.Name, a.Value)
	}
	var body []app.UI
	if n.Text != "" {
		body = append(body, app.Text(n.Text))
	}
	for _, k := range n.Kids {
		if k.Tag != "" {
			body = append(body, SVG(k))
		}
	}
	return el.Body(body...)
}
