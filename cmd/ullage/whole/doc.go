// Package whole writes files and folders that are whole, or as they were before: a run that is killed, or finds no room left
// on the disk, leaves what was there.
//
// What comes in is a name and what is to be written. What goes out is on the disk, under that name, or an error. Read file.go first.
//
// Decisions. What is new is written beside what it replaces, in the same folder, brought to the disk, and takes the name in
// one step; then the folder is brought to the disk too. A folder changes places with the new one in one step where
// the system can do that (Linux), else by two renames, of which the first can be the last: the next run then finds the old
// folder and gives it its name back. What a killed run left beside is called .NAME.new-…, or .NAME.old-…, and is removed
// by the next run once it is an hour old: a younger one may be another run at work. Price: room for both on the disk, and a
// folder that is a mount point cannot be replaced.
//
// Own code: github.com/google/renameio v2 does not bring the folder to the disk and knows neither folders nor
// Windows, github.com/natefinch/atomic does not bring the file to the disk. golang.org/x/sys, which the terminal needs
// anyway, has the exchange of names.
//
// Files, each using only those above it:
//
//   - exchange_linux.go: two names change places in one step
//   - exchange_other.go: they cannot
//   - disk.go: what is asked of a disk
//   - left.go: what a killed run left
//   - file.go: a file
//   - folder.go: a folder
package whole
