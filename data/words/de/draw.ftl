### Wörter der Seite zum Zeichnen. Sie nehmen keine Angaben auf; was über Pläne gesagt wird, steht anderswo.

draw-title = Das Eis zeichnen
