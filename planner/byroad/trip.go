package byroad

import (
	"context"

	"ullage/planner/trip"
)

// Trip returns what planner/trip asks of roads. The questions of one trip
// must be asked in one go: see [trip.Roads].
func (g *Guide) Trip(ctx context.Context) trip.Roads { return &asked{g: g, ctx: ctx} }
