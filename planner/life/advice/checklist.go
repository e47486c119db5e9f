package advice

import "ullage/planner/fact"

// A Checklist is what is ticked off at one moment.
type Checklist struct {
	ID    string    `json:"id"` // set-off, arrival, service, return
	Title fact.Fact `json:"title"`
	Items []Item    `json:"items"`
}

// A list is a checklist of the table.
type list struct {
	id   string
	rows []row
}

func (l list) checklist(has Has) Checklist {
	of := "check." + l.id
	return Checklist{l.id, fact.Of(kind(of, "title"), nil), items(of, l.rows, has)}
}
