package form

import (
	"fmt"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/field"
	"ullage/app/model"
	"ullage/app/show"
)

// A Control is one field of the form: label, control, unit, hint and, where
// the text is wrong, what is wrong with it.
type Control struct {
	app.Compo
	Key, Label, Unit, Hint, Input, Value, Wrong string
	Options                                     []field.Option
	Wide                                        bool
}

func (c *Control) Render() app.UI {
	class := "field " + c.Input
	if c.Wide {
		class += " wide"
	}
	if c.Wrong != "" {
		class += " wrong"
	}
	return app.Div().Class(class).Body(
		app.Label().For(c.id()).Text(c.Label),
		app.Div().Class("control").Body(c.control(), app.If(c.Unit != "", func() app.UI {
			return app.Span().Class("unit").ID(c.id() + "-unit").Text(c.Unit)
		})),
		app.If(c.Wrong != "", func() app.UI { return app.P().Class("error").ID(c.id() + "-wrong").Text(c.Wrong) }),
		app.If(c.Hint != "", func() app.UI { return app.P().Class("hint").ID(c.id() + "-hint").Text(c.Hint) }),
	)
}

func (c *Control) id() string { return "f-" + strings.ReplaceAll(c.Key, ":", "-") }

// describedBy lists what a screen reader adds to the label.
func (c *Control) describedBy() string {
	var ids []string
	if c.Unit != "" {
		ids = append(ids, c.id()+"-unit")
	}
	if c.Wrong != "" {
		ids = append(ids, c.id()+"-wrong")
	}
	if c.Hint != "" {
		ids = append(ids, c.id()+"-hint")
	}
	return strings.Join(ids, " ")
}

func (c *Control) control() app.UI {
	invalid := fmt.Sprint(c.Wrong != "")
	switch c.Input {
	case "select":
		var options []app.UI
		for _, o := range c.Options {
			options = append(options, app.Option().Value(o.Value).Text(o.Label).Selected(o.Value == c.Value))
		}
		return app.Select().ID(c.id()).Name(c.Key).Aria("describedby", c.describedBy()).OnChange(c.onChange).Body(options...)
	case "checkbox":
		return app.Input().ID(c.id()).Name(c.Key).Type("checkbox").Aria("describedby", c.describedBy()).
			Checked(c.Value == "true").OnChange(c.onCheck)
	}
	in := app.Input().ID(c.id()).Name(c.Key).Aria("describedby", c.describedBy()).Aria("invalid", invalid).
		AutoComplete(false).Value(c.Value).OnInput(c.onChange)
	switch c.Input {
	case "number":
		return in.Type("text").Attr("inputmode", "decimal")
	case "whole":
		return in.Type("text").Attr("inputmode", "numeric")
	}
	return in.Type(c.Input)
}

func (c *Control) onChange(ctx app.Context, e app.Event) {
	show.Send(ctx, model.Edited{Field: c.Key, Text: ctx.JSSrc().Get("value").String()})
}

func (c *Control) onCheck(ctx app.Context, e app.Event) {
	show.Send(ctx, model.Edited{Field: c.Key, Text: fmt.Sprint(ctx.JSSrc().Get("checked").Bool())})
}

// group is a heading with its fields.
func group(title string, fields []app.UI) app.UI {
	return app.FieldSet().Body(app.Legend().Text(title), app.Div().Class("fields").Body(fields...))
}
