### Words of the page for drawing. They take no arguments; what is said of plans is said elsewhere.

draw-title = Draw the ice
draw-needs-script = This page draws and plans by a script, and none runs here. Open it in a browser, not in a viewer of files.

## Panels

draw-tabs = Parts of the page
draw-tab-plan = Plan
draw-tab-zone = Zone
draw-tab-trip = Trip
draw-tab-field = Field
draw-tab-files = Files
draw-language = Language
draw-language-en = English
draw-language-de = Deutsch
draw-undo = Undo
draw-redo = Redo
draw-save = Save
draw-starting = The program is being unpacked
draw-planning = The plan comes as soon as there is a route and a party.
draw-no-route = There is no route yet. Open a GPX file, or drop it here.
draw-gave-up = The program inside this page does not run here; what follows is the plan as it was when the page was made.
draw-broken = The program broke off and goes on with the next change.
draw-no-plan = No plan yet
draw-fault-go = To this zone
draw-legs = { report-legs }
draw-notices = What was noticed
draw-team = Rope team
draw-not-given = not given
draw-verdict-unroped = { verdict-unroped }
draw-verdict-inside = { verdict-inside }
draw-verdict-look = { verdict-look }
draw-verdict-outside = { verdict-outside }
draw-verdict-stop = { verdict-stop }
draw-figure-spacing = Spacing
draw-figure-knots = Knots
draw-figure-coils = Coils
draw-figure-rope = Rope
draw-unit-m = m
draw-unit-km = km
draw-unit-mm = mm
draw-unit-kg = kg
draw-unit-deg = °

## The picked zone

draw-zone = Zone
draw-zone-choice = Picked zone
draw-zone-none = no zone picked
draw-zone-pick = Pick a zone on the map or in the list, or draw one.
draw-gap = Gaps
draw-gap-kind = One width or a range
draw-gap-one = one width
draw-gap-range = from–to
draw-gap-width = Widest gap expected
draw-gap-from = From
draw-gap-to = To; this end counts
draw-snow-and-rope = Snow and rope
draw-snow-depth = Snow on the ice
draw-surface = Surface
draw-surface-snow = snow: gaps are hidden
draw-surface-bare = bare ice: gaps are in sight
draw-rope = Rope here
draw-rope-auto = as the plan finds
draw-rope-always = always, by the leader's word
draw-rope-never = never, by the leader's word
draw-strike = Direction in which the gaps run
draw-strike-deg = Strike
draw-strike-doubt = Give or take
draw-zone-about = About this zone
draw-zone-name = Name
draw-zone-observed-on = Seen on
draw-zone-source = Source
draw-zone-note = Note
draw-zone-copy = Copy the properties
draw-zone-copied = Properties copied: pick the next zone and paste them.
draw-zone-paste = Paste them here
draw-zone-delete = Delete the zone

## The trip

draw-people = Party
draw-person = Person
draw-person-add = One more person
draw-person-drop = Take out person
draw-person-mass = With pack
draw-ropes = Ropes at hand
draw-rope-add = One more rope
draw-rope-drop = Take out rope
draw-rope-name = Rope
draw-rope-length = Length
draw-rope-diameter = Thick
draw-day = The day
draw-how = How
draw-trip-name = Name of the trip
draw-trip-date = Date
draw-trip-utc-offset = Clock against UTC
draw-trip-start = Start
draw-trip-bridges-until = Snow bridges trusted until
draw-trip-back-by = Back by
draw-trip-gap-m = Gap width for zones that give none
draw-trip-practice = Practice set
draw-trip-travel = On foot or on skis
draw-trip-snow = Snow that the team stands on
draw-trip-knots = Brake knots
draw-trip-undrawn-ice = Ice on which no zone is drawn
draw-trip-cover = Whose fall the spare rope must reach
draw-trip-reserve = How the spare rope is measured
draw-trip-pace = Walking times
draw-assume = Figures of the rules
draw-assume-search = Search figures
draw-assume-back = Back to

## On the ice

draw-field-back = Back to the plan of before
draw-field-where = Where am I?
draw-field-km = Kilometre
draw-field-height = Height
draw-field-nowhere = Type a kilometre or a height to see the leg.
draw-field-not-there = The line has no such place.
draw-field-gap = The gap here is another one
draw-field-gap-here = Gap as seen
draw-field-no-zone = No drawn zone here.
draw-field-party = Somebody or something is missing
draw-field-one-more = + one more
draw-field-rope-lost = Without rope
draw-field-snow = The snow is another one

## Files

draw-open-title = Open
draw-open-what = Route (GPX), zones or glacier inventory (GeoJSON), trip (TOML), terrain model (GeoTIFF or .hgt). They may be dropped anywhere on the page.
draw-open = Open files
draw-open-not = cannot be used
draw-open-as-inventory = It is the glacier inventory, not my zones
draw-kind-route = route
draw-kind-zones = zones
draw-kind-inventory = glacier inventory
draw-kind-trip = trip
draw-kind-terrain = terrain model
draw-kind-other = file
draw-save-title = Take along
draw-save-page = This page as it is now
draw-save-zip = Everything in one archive (.zip)
draw-save-zones = Zones (GeoJSON)
draw-save-trip = Trip file (TOML)
draw-save-html = Report (HTML)
draw-save-sheet = Sheet to print (HTML)
draw-save-gpx = For a device (GPX)
draw-save-geojson = Map (GeoJSON)
draw-save-kml = For globes (KML)
draw-save-csv = Legs as a table (CSV)
draw-save-json = For programs (JSON)
draw-save-text = As a message (text)
draw-saved = Saved:
draw-save-not = This cannot be made yet:

## What was done, for who listens to the page

draw-did-undo = Undone
draw-did-redo = Done again
draw-did-restored = Work of last time
draw-did-delete = Zone deleted
draw-did-paste = Properties pasted
draw-did-gap-kind = Gap as one width or a range
draw-did-gap-m = Gap changed
draw-did-gap-min-m = Gap changed
draw-did-gap-max-m = Gap changed
draw-did-snow-depth-m = Snow changed
draw-did-surface = Surface changed
draw-did-rope = Rope here changed
draw-did-strike-deg = Strike changed
draw-did-strike-uncertainty-deg = Doubt of the strike changed
draw-did-name = Name changed
draw-did-observed-on = Day changed
draw-did-source = Source changed
draw-did-note = Note changed
draw-did-person-name = Name changed
draw-did-person-mass-kg = Weight changed
draw-did-person-add = Person added
draw-did-person-drop = Person taken out
draw-did-rope-name = Rope changed
draw-did-rope-length-m = Rope changed
draw-did-rope-diameter-mm = Rope changed
draw-did-rope-add = Rope added
draw-did-rope-drop = Rope taken out
draw-did-trip = Trip changed
draw-did-assume = Figure changed
draw-did-field-gap = Gap here changed
draw-did-field-leave = One fewer
draw-did-field-join = One more
draw-did-field-rope = Without this rope
draw-did-field-snow = Snow changed
draw-did-field-back = The plan of before
draw-did-open-route = Route opened
draw-did-open-zones = Zones opened
draw-did-open-trip = Trip opened
draw-did-open-terrain = Terrain model opened
draw-did-open-inventory = Glacier inventory opened
