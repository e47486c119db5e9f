package main

import (
	"flag"
	"fmt"
	"io"
	"strings"

	"ullage/planner/fact"
)

// helpWidth is as wide as most terminals.
const helpWidth = 80

// usage lists the commands.
func usage(w io.Writer, all []command) {
	fmt.Fprintln(w, voice.Text("help.usage"))
	for _, c := range all {
		fmt.Fprintf(w, "  %-8s %s\n", c.name, voice.Text("command."+c.name))
	}
	fmt.Fprintln(w, voice.Text("help.more"))
}

// help explains a command and every flag of it, with an example.
func help(w io.Writer, c command) {
	set := flag.NewFlagSet(c.name, flag.ContinueOnError)
	c.setUp(set)
	fmt.Fprintf(w, "%s\n\n", voice.Text("usage."+c.name))
	paragraph(w, "", voice.Text("about."+c.name))
	set.VisitAll(func(f *flag.Flag) {
		text := voice.Text("flag." + c.name + "-" + f.Name)
		if d := f.DefValue; d != "" && !isSwitch(f) {
			text += " " + voice.Text("help.default", fact.V{"value": fact.Text(d)})
		}
		fmt.Fprintf(w, "\n  -%s\n", f.Name)
		paragraph(w, "      ", text)
		paragraph(w, "      ", voice.Text("help.example", fact.V{"example": fact.Text(exampleOf(c.name, f.Name))}))
	})
}

// paragraph prints words in lines of helpWidth.
func paragraph(w io.Writer, indent, text string) {
	line := indent
	for _, word := range strings.Fields(text) {
		if len([]rune(line))+1+len([]rune(word)) > helpWidth && line != indent {
			fmt.Fprintln(w, line)
			line = indent
		}
		if line != indent {
			line += " "
		}
		line += word
	}
	fmt.Fprintln(w, line)
}
