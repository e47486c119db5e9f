package show

import (
	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/model"
)

// MsgAction is the action that carries messages to the page.
const MsgAction = "page.msg"

// Send hands a message to the page.
//
//go:noinline
func Send(ctx app.Context, msg model.Msg) { ctx.NewActionWithValue(MsgAction, msg) }
