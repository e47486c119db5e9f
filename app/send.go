package page

import "github.com/maxence-charriere/go-app/v10/pkg/app"

const msgAction = "page.msg"

// send hands a message to the page.
func send(ctx app.Context, msg Msg) { ctx.NewActionWithValue(msgAction, msg) }

// text is a paragraph, or nothing for no words.
func text(class, words string) app.UI {
	return app.If(words != "", func() app.UI { return app.P().Class(class).Text(words) })
}
