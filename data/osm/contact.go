package osm

import (
	"net/url"
	"strings"

	"ullage/data/osm/file"
	"ullage/data/plain"
	"ullage/planner/trip"
)

// This file reads how to ask a place. Sources: Key:contact, Key:phone, Key:website,
// Key:email of wiki.openstreetmap.org.

// mostContact is the longest text that is taken for a number or an address.
const mostContact = 200

// contactOf is what the tags say of how to reach a place; what is no number or address is left out.
func contactOf(tags file.Tags) trip.Contact {
	var c trip.Contact
	first := func(into *string, read func(string) string, keys ...string) {
		for _, k := range keys {
			for _, text := range strings.Split(tags[k], ";") {
				if text = strings.TrimSpace(plain.Text(text)); *into == "" && text != "" && len(text) <= mostContact {
					*into = read(text)
				}
			}
		}
	}
	first(&c.Phone, phone, "phone", "contact:phone", "mobile", "contact:mobile")
	first(&c.Website, website, "website", "contact:website", "url")
	first(&c.Email, email, "email", "contact:email")
	return c
}

// phone is a number as people write it: digits, and what parts them.
func phone(text string) string {
	digits := 0
	for _, r := range text {
		switch {
		case r >= '0' && r <= '9':
			digits++
		case !strings.ContainsRune("+-()/. ", r):
			return ""
		}
	}
	if digits < 3 || digits > 20 {
		return ""
	}
	return text
}

// website is an address of the web; one without a scheme gets that of all of them.
func website(text string) string {
	if !strings.Contains(text, "://") {
		text = "https://" + text
	}
	u, err := url.Parse(text)
	if err != nil || u.Scheme != "http" && u.Scheme != "https" || u.User != nil || !strings.Contains(u.Hostname(), ".") || strings.ContainsAny(text, " \"<>\\") {
		return ""
	}
	return text
}

func email(text string) string {
	name, host, ok := strings.Cut(text, "@")
	if !ok || name == "" || !strings.Contains(host, ".") || strings.ContainsAny(text, " \"<>,:()\\") || strings.Contains(host, "@") {
		return ""
	}
	return text
}
