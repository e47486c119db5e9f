package model

// A Msg is something that happened. What it does to the model stands beside
// its type.
type Msg interface{ update(Model) Model }

// Update returns the model after something happened, and what is to be done
// because of it. It is pure.
func Update(m Model, msg Msg) (Model, []Effect) {
	m = msg.update(m)
	todo := m.todo
	m.todo = nil
	return m, todo
}
