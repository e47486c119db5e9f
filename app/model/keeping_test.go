package model

import (
	"reflect"
	"testing"
)

// What is kept here is told as it is, and a person's choice is done.
func TestKeeping(t *testing.T) {
	forgets := then(planned(), StoreForgets{})
	if !forgets.Forgets {
		t.Error("a browser that keeps nothing is not told of")
	}
	if room := then(planned(), KeptRoom{Used: 2, Most: 9, Desks: make([]Desk, 1)}); room.Used != 2 || room.Most != 9 || len(room.Desks) != 1 {
		t.Errorf("room is %+v", room.Keeping)
	}
	for _, tc := range []struct {
		msg  Msg
		want Effect
	}{
		{EverythingAsked{}, SaveEverything{}}, {DeskOpened{"a"}, OpenDesk{"a"}}, {DeskRemoved{"a"}, RemoveDesk{"a"}},
	} {
		if got := todo[Effect](planned(), tc.msg); !reflect.DeepEqual(got, []Effect{tc.want}) {
			t.Errorf("%T: to do %v", tc.msg, got)
		}
	}
}

// What cannot be read stops a page that has no trip, and no other.
func TestUnreadBesideATrip(t *testing.T) {
	for _, tc := range []struct {
		name string
		m    Model
		set  bool
		want Phase
	}{
		{"no trip", New(nil), false, Failed}, {"set aside", New(nil), true, Loading}, {"a trip", planned(), false, Ready},
	} {
		if got := then(tc.m, KeptUnread{Unread{Set: tc.set}}); got.Phase != tc.want || len(got.Unread) != 1 {
			t.Errorf("%s: %s with %v", tc.name, got.Phase, got.Unread)
		}
	}
}
