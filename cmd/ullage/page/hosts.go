package page

import (
	"net"
	"net/http"
	"slices"
	"strings"
)

// OnlyHosts answers requests for this machine by its own names and addresses, and for the hosts given, and refuses all others:
// a page from elsewhere whose name is made to lead here (DNS rebinding) would otherwise be of one origin with this
// one, and read what people keep in it.
func OnlyHosts(hosts []string, h http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if name := hostName(r.Host); !ownName(name) && !slices.ContainsFunc(hosts, func(h string) bool { return strings.EqualFold(h, name) }) {
			strict(w.Header())
			http.Error(w, "this is not the host "+name+": start ullage serve with -host "+name+" if it shall be", http.StatusMisdirectedRequest)
			return
		}
		h.ServeHTTP(w, r)
	})
}

// hostName is a Host header without its port.
func hostName(header string) string {
	name, _, err := net.SplitHostPort(header)
	if err != nil {
		name = header
	}
	return strings.TrimSuffix(strings.Trim(name, "[]"), ".")
}

// ownName: nobody else can own these. An address in figures is asked for by whoever means it.
func ownName(name string) bool {
	lower := strings.ToLower(name)
	return lower == "localhost" || strings.HasSuffix(lower, ".localhost") || net.ParseIP(name) != nil
}
