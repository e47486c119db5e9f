package field

import "testing"

func TestFormats(t *testing.T) {
	for _, tc := range []struct{ got, want string }{
		{clock(575), "09:35"}, {clock(1440 + 60), "01:00"}, {Plain(17.0), "17"}, {Plain(43.52), "43.52"},
	} {
		if tc.got != tc.want {
			t.Errorf("got %q, want %q", tc.got, tc.want)
		}
	}
}
