package page

import (
	"fmt"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"ullage/app/job"
	"ullage/app/model"
)

// A core is what all parts of the program on the page share: the model, and the
// planner to ask.
type core struct {
	m      model.Model
	client *job.Client
	then   func(app.Context, []model.Effect) // does what is to be done
}

// tell updates the model, and has done what is to be done.
func (c *core) tell(ctx app.Context, msg model.Msg) {
	var todo []model.Effect
	c.m, todo = model.Update(c.m, msg)
	c.then(ctx, todo)
}

// beside does work that waits, off the page's own thread. A panic of it is put in
// words: the page stays.
func (c *core) beside(ctx app.Context, work func()) {
	ctx.Async(func() {
		defer func() {
			if r := recover(); r != nil {
				app.Logf("%v", r)
				c.later(ctx, model.Broke{Why: fmt.Sprint(r)})
			}
		}()
		work()
	})
}

// later tells from beside the page.
func (c *core) later(ctx app.Context, msg model.Msg) {
	ctx.Dispatch(func(ctx app.Context) { c.tell(ctx, msg) })
}
