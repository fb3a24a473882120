### Words of the page for drawing. They take no arguments; what is said of plans is said elsewhere.

draw-title = Draw the ice
