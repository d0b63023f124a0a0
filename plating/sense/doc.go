// Package sense holds the limits of sense: what no shop has, for each kind of
// figure, and what is unusual. A figure far outside is a slip of the unit or of the
// point, and is refused; one outside the usual is questioned.
//
// Every package that takes such a figure goes by this one table:
//
//	err := sense.Content().Check(content)     // refused
//	question := sense.Content().Question(v)   // "" when it is usual
//
// The limits are from memory and common practice. They are wide: what is usual in a
// large shop and at a bench passes. They do not say that a figure is right.
package sense
