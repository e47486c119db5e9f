// Package bound says what the rest of a trip costs at least, from any stop on and
// with anything in hand.
//
// What comes in is a model and a [Recipe]: which tanks to see together, and how
// finely. What goes out are [Bounds] with tables for all stops, and an [Outlook]
// on one visit before it is worked out. Read bound.go first: it says how the parts
// add up. Then tank.go for one tank alone, and nights.go for those together.
//
// Decisions:
//
//   - Tanks that nights use are solved in one table with the nights; each tank
//     that driving uses alone, exactly, with straight pieces. A stop's visit is
//     shared among these groups: the dearest tank pays first, and gives away what
//     its own bound does not need. Several rounds of giving were 0.02 % closer at
//     best. The price: nights give nothing back.
//
//   - Worth per unit, a Lagrangian multiplier, charges the fuel of a detour to
//     whoever makes it. A worth above the cheapest price would give more, but what
//     is bought where it is cheaper must then be bounded from above, which rounding
//     up cannot. The price: one more loop in every look-up.
//
//   - Very many classes of one tank that driving restores, for each little charge
//     of a detour rounds up to a class. What it costs to go on has few steps along
//     that scale, so tables are packed into runs, a tenth of the room. Detours of
//     stops that the bound does not know count as made: kind to plans with many.
//
//   - Up to four nights are counted in the table. More get a wage, a multiplier on
//     their number; finer bounds count up to 21, for where few places are stayed
//     at only counting closes the gap.
//
//   - Rows of a class lie side by side, so that filling a tank is one loop over all
//     of them, and tables lie in a few blocks that are used again.
//
//   - The look-ups take values, not the partial plans of the search, so that
//     nothing here knows how a search keeps them.
//
//   - What tables keep is limited, and grows no faster than the stops. Beyond, rows that
//     reach about as far become one, and pieces of a tank are joined below both. The
//     price: looser bounds where thousands of stops crowd.
//
// Files, each using only those above it:
//
//   - store.go: room for numbers, taken back at once
//   - pieces.go: functions of straight pieces
//   - recipe.go: how fine the bounds shall be
//   - groups.go: which tanks are alone, which together, and what they are worth
//   - share.go: which group pays for a visit
//   - tank.go: one tank alone
//   - scale.go: headroom in classes
//   - table.go: cost to go by class and reach, packed or not
//   - nights.go: nights and the tanks that only they use
//   - room.go: how much tables may keep
//   - classes.go: how many classes each tank has
//   - rows.go: what is done to classes: filled, moved
//   - look.go: a partial plan looked up in them
//   - apart.go: nights that lie apart
//   - backwards.go: the tables, from the last stop to the first
//   - bound.go: all groups together
//   - outlook.go: a visit bounded before it is worked out
package bound
