### What is wrong with the inputs. `.hint` says what to write instead. No capital at the start, no full stop at the end.

## How a fault is told

fault-at = at
fault-do = do
fault-and-more = { $says } (and { $more } more like this)
fault-more = and { $more } more like this

## Where it is

place-line = line { $line }
place-line-column = line { $line } column { $column }

place-flag = { $property ->
    [party] `--party`
    [rope] `--rope`
    [practice] `--practice`
    [gap_m] `--gap`
    [margin_m] `--margin`
    [stage] `--stage`
    [travel] `--travel`
    [pace] `--pace`
    [terrain] `--terrain`
    [glaciers] `--glaciers`
    [start] `--start`
    [bridges_until] `--bridges-until`
    [back_by] `--back-by`
    [snow] `--snow`
   *[other] flags, `{ $property }`
 }

place-assumed = `--assume { $name }`

item-feature = feature { $number }
item-feature-named = feature { $number } "{ $name }"
item-line = { line-sort } { $number }
item-line-named = { line-sort } { $number } "{ $name }"
line-sort = { $sort ->
    [track] track
   *[route] route
 }
item-segment = segment { $number }
item-point = point { $number }
item-detail = detail { $number }
item-halt = halt { $number }
item-flags = flags
item-party = party
item-practice = practice
item-zones = zones
item-relief = relief

## Files, addresses and flags

file-unreadable = { $why ->
    [folder] `{ $name }` is a folder, not a file
   *[other] cannot read { $name }: { refused }
 }
    .hint = { $why ->
        [folder] { $count ->
            [0] name a file: nothing in this folder has the name of one that is read here
            [one] name the file in it: `{ $holds }`
           *[other] name one of the files in it: { $holds }{ and-so-many-more }
         }
        [not-found] { $has-near ->
            [yes] perhaps `{ $near }` is meant{ $count ->
                [0] { "" }
               *[other] ; the folder also holds { $holds }{ and-so-many-more }
             }
           *[no] { $count ->
                [0] check the name and the folder
               *[other] check the name; the folder holds { $holds }{ and-so-many-more }
             }
         }
       *[other] check that you may read it
     }
and-so-many-more = { $more ->
    [0] { "" }
   *[other] {" "}and { $more } more
 }
refused = { $why ->
    [folder] it is a folder, not a file
    [not-found] there is no such file or folder
    [file] a file has this name
    [permission] you have no permission
    [full] there is no room for it
   *[other] { $words }
 }
file-stopped = reading stopped: { $words }
    .hint = read the file again
file-one-standard-input = standard input can give only one of the inputs
    .hint = name files for the others
file-not-seekable = a terrain model is read here and there, so it must be a file
    .hint = save it first and name the file
file-not-utf8 = the file is not UTF-8 text
    .hint = save it as UTF-8 from a text editor
file-no-toml = this is { instead-what }, not TOML, as trip and practice files are
    .hint = { $interface ->
        [flags] { $what ->
            [json] zones come second, without a flag; `schrund new tour` writes a trip file to fill in
            [gpx] a route comes first, without a flag; `schrund new tour` writes a trip file to fill in
            [tiff] a terrain model is given with `--terrain`
           *[other] `schrund new tour` writes a trip file to fill in
        }
       *[members] write lines `name = value`, such as `party = 3`
    }
file-too-large = the file is larger than { $mib } MiB, and no trip file or practice file is
    .hint = was another file given in its place?
limit-raised = { $cure }; { $name ->
    [answer-s] { $flag } waits longer
    [people] { $flag } plans for more
    [route-km] { $flag } plans longer ones
   *[other] { $flag } takes more, from a file you trust
 }
file-nul-in-name = a NUL character stands in "{ $found }", shown as ␀
    .hint = write it without that character
file-swapped = the two files look swapped: { $route } is GeoJSON and { $zones } is GPX
    .hint = name the line first: { $known ->
        [yes] `{ $call }`
       *[no] `{ $zones-typed } { $route-typed }`
     }
file-trip-in-place = this is TOML, as trip files are, and { $of ->
    [route] the route comes first, as GPX
    [zones] the ice comes second, as GeoJSON
   *[inventory] a glacier inventory is GeoJSON
 }
    .hint = a trip file has its flag: `{ $call }`
file-swapped-axes = no zone of { $zones } lies near the line of { $route }, but with longitude and latitude swapped in one of the files they would meet
    .hint = look in which of the two: GeoJSON positions are [longitude, latitude], GPX points have `lat` and `lon`
file-no-folder = cannot make the folder { $name }: { refused }
    .hint = { $kind ->
        [start] name a new folder: `schrund new { $free }`
       *[set] { no-folder-for-outputs }
     }
no-folder-for-outputs = { $why ->
        [file] the outputs go into a folder: `--out { $free }`{ $trip ->
            [yes] ; a trip file is given with `--trip { $name }`
           *[no] { "" }
         }
       *[other] name a folder in one that is there and that you may write to
     }
file-unwritable = cannot write { $name }: { refused }
    .hint = { $why ->
        [not-found] make its folder first, or write to one that is there
        [full] make room on that disk, or write to another one
        [permission] take the write protection off the file or its folder, or write to another place
       *[other] write to a folder that is there and that you may write to
     }
file-is-input = { $name } is an input and is never written over
    .hint = { $kind ->
        [set] write into another folder: `--out { $free }`
        [zones] zones go into a file of their own: `--into { $free }`
       *[output] write to another file: `--output { $free }`
     }
file-is-folder = { $name } is a folder, and one file is to be written
    .hint = name a file in it: `--output { $free }`
file-there = { $count ->
    [1] { $names } is there already
   *[other] { $count } files are there already: { $names }
 }
    .hint = { $kind ->
        [output] write to another file: `--output { $free }`
        [trip] a trip file is given with `--trip { $names }`; the plan goes to another file: `--output { $free }`
        [start] write into a new folder: `schrund new { $free }`
        [zones] name a file: `--into { $free }`
       *[set] write into another folder, `--out { $free }`, or replace these with `--force`
     }
file-no-code = there is no code "{ $name }"
    .hint = { $count ->
        [0] `schrund check --explain` lists all codes; they stand in brackets in what schrund says, as in error[gap-not-given]
        [one] perhaps { $near } is meant; `schrund check --explain` lists all codes
       *[other] perhaps one of { $near } is meant; `schrund check --explain` lists all codes
     }
file-no-place = "{ $found }" is no place: neither longitude,latitude in degrees nor a position of the UTM grid with its zone
    .hint = write two numbers, longitude first, with a comma and no blank between, as in `--at 7.65,45.97`; or a grid position as plans print it, as in `--at "32T 396088 5092288"`
file-one-number = `{ $found }` is one number, and a place takes two
    .hint = longitude, a comma, latitude, as in `--at 7.65,45.97`
file-no-band = the letter `{ $letter }` is not that of the band in which this northing lies
    .hint = { $count ->
        [one] { $meant }
       *[other] the first lies south of the equator, the second north: { $meant }
     }

## The text and the form of trip files and practice files

toml-twice = `{ $member }` stands there a second time: { $line }
    .hint = keep one of the two
toml-not-closed = { $what ->
    [list] a list is not closed, or lacks a comma, before the end of: { $line }
    [braces] a table in braces is not closed: { $line }
    [name] the name of a table is not closed: { $line }
   *[text] a text is not closed: { $line }
 }
    .hint = { $what ->
        [list] put a comma between its items and close it with `]`
        [braces] close it with `{ "}" }` on the same line
        [name] close it with as many `]` as it has `[`
       *[text] close it with the quotation mark it begins with
     }
toml-no-value = a name without a value: { $line }
    .hint = write `name = value`, such as `party = 3`, or take the line out
meant-line = { $meant ->
    [point] write a decimal with a point: `{ $write }`
    [thousand] the comma can mean two things: write `{ $write }` or `{ $other }`
    [half-mass] for { $write } kg write `{ $write }` with a point; people stand in brackets: `party = [82.5, 75]`
    [half-rope] write a decimal with a point, and each rope in braces: `{ $write }`
    [ropes-or-one] one rope of that length is `{ $write }`; two ropes are `{ $other }`
    [ropes] write each rope in braces: `{ $write }`
    [alone] write the number alone: `{ $write }`
    [list] a list stands in brackets: `{ $write }`
    [people] write how many: `{ $write }`, or their masses with pack in kg: `party = [82, 75, 90]`
    [quoted] put it between quotation marks: `{ $write }`
   *[line] write `{ $write }`
 }
toml-commas = a comma stands in a number, or a list has no brackets: { $line }
    .hint = { $meant ->
        [unknown] write decimals with a point, and lists in brackets: `party = [82.5, 75]`
       *[line] { meant-line }
     }
toml-after-number = something stands behind a number: { $line }
    .hint = { $meant ->
        [unknown] write the number alone, in the unit that its name ends with, or put a text between quotation marks
       *[line] { meant-line }
     }
toml-unquoted = a text without quotation marks: { $line }
    .hint = { $meant ->
        [unknown] put it between quotation marks, such as `knots = "auto"`
       *[line] { meant-line }
     }
toml-curly = curly quotation marks, as text programs write them: { $line }
    .hint = { $cut ->
        [yes] write straight ones: `"…"`
       *[no] write straight ones: `{ $write }`
     }
toml-deep = too many brackets or names with dots inside each other: { $line }
    .hint = nothing here is nested so deeply: correct the line or take it out
toml-broken = this is no TOML ({ $words }): { $line }
    .hint = a line is `name = value`: texts between quotation marks, lists in brackets, a remark after `#`
toml-printed-set = this is a practice set as it is printed for reading, not a practice file
    .hint = { $interface ->
        [flags] `schrund practice { $set } --toml > { $free }` writes one, which `--practice { $free }` takes; what you changed here, change there
       *[members] take the set by its name, or write it out as TOML and change that
     }
trip-members = { $interface ->
    [flags] `schrund new tour` writes a trip file that shows every member
   *[members] the schema of the trip file shows every member
 }
toml-table = { $table ->
    [trip] a trip file
    [person] a person of `[[party]]`
    [rope] a rope of `[[rope]]`
    [contact] a contact of `[[emergency]]`
    [halt] a halt of `[[halt]]`
    [practice] a practice file
    [about] a sentence of a practice file
   *[figure] a figure of a practice file
 }
toml-no-member = { toml-table } has no `{ $member }`
    .hint = { $table ->
        [trip] take it out; { trip-members }
        [person] it has `name` and `mass_kg`
        [rope] it has `length_m`, `diameter_mm` and `name`
        [contact] it has `name`, `contact` and `note`
        [halt] it has `at_km`, `stage`, `name` and `minutes`
        [practice] it has `name`, `says`, `comes_from`, `used`, `beside`, the words `reserve`, `knots`, `cover` and `rope_on_bare`, and a table such as `[spacing_2_m]` for each figure
        [about] it has `says` and `standing`, and `sources` where they help
       *[figure] it has `value` and `standing`, and `says`, `sources` and `note` where they help
     }
toml-no-member-but = { toml-table } has no `{ $member }`
    .hint = { perhaps-this }
perhaps-this = perhaps `{ $near }` is meant{ $apart ->
    [yes] , which is in { $unit }: convert the number
   *[no] { "" }
 }
toml-no-member-figure = { toml-table } has no `{ $member }`
    .hint = it is a figure or word that a plan rests on: write it under `[assume]`
toml-lacks = { toml-table } lacks `{ $member }`
    .hint = { $member ->
        [length_m] add its length in metres: `length_m = 60`
        [contact] add the number or channel: `contact = "…"`
        [minutes] add how long it is: `minutes = 20`
        [value] add the figure: `value = …`
        [says] add the sentence: `says = "…"`
        [standing] add what stands behind it: `standing = "our judgement"`
       *[name] add what it is called: `name = "…"`
     }
toml-form = `{ $member }` does not take { $found }
    .hint = { $meant ->
        [unknown] { what-it-takes }
       *[line] { meant-line }
     }
what-it-takes = { $takes ->
    [number] write a plain number with a point, such as `3.5`, without its unit
    [text] write a text between quotation marks
    [texts] write a list of texts, each between quotation marks: `["first", "second"]`
    [truth] write `true` or `false`
    [time] write a time of day between quotation marks, such as `"04:30"`
    [date] write a day between quotation marks, such as `"2027-07-14"`
    [offset] write how far the clocks are ahead of UTC between quotation marks, such as `"+02:00"`
    [words] use one of { $words }
    [people] write how many, `party = 3`, or their masses with pack in kg, `party = [82, 75, 90]`
    [stage] it takes the number or the name of a stage
    [teams] write how many go on each rope: `teams = [3, 2]`
    [ropes] write each rope in braces: `rope = [{ "{" } length_m = 60 { "}" }]`, or as a [[rope]] block
    [contacts] it takes [[emergency]] blocks with `name`, `contact` and `note`
    [halts] it takes [[halt]] blocks with `minutes`, and `at_km` or the `name` of a waypoint
    [assumptions] it takes a table [assume] of figures and words by name
    [assumption] write a number, a word between quotation marks, or `true` or `false`
    [about] it takes a table with `says` and `standing`
   *[figure] it takes a table with `value` and `standing`
 }
toml-huge = `{ $member }` does not take a number as large as { $found }
    .hint = write a smaller number

## Trip files and flags

trip-nobody = a party of 0: nobody goes
    .hint = name who goes: how many, or their masses with pack in kg
trip-too-many = a party of { $people } is more than the { $most } that are planned for
    .hint = one number is a head count, and masses in kg come for two and more; a larger group is planned in parts
trip-far-too-many = a party of so many is more than the { $most } that are planned for
    .hint = one number is a head count, and masses in kg come for two and more; a larger group is planned in parts
trip-too-many-ropes = { $ropes } ropes are more than the { $most } that are planned for
    .hint = name the ropes that you may take along; the others stay in the store
trip-nobody-said = nobody said how many go
    .hint = { $interface ->
        [flags] `--party 3`, or their masses with pack: `--party 82,75,90`
        [page] add everybody who goes under Trip, with the mass with pack
       *[members] `party = 3`, or their masses with pack: `party = [82, 75, 90]`
     }
trip-no-rope = no rope is left, so no set-up can be tied
    .hint = { $interface ->
        [page] stay off the ice; on it call for help rather than go on unroped. A rope that is there after all is added under Trip
       *[members] name each rope at hand in a table `[[rope]]` with its `length_m`; leave `rope` out where the ropes are not chosen yet
     }
trip-mass = person { $person } weighs { $mass }, outside { $min } to { $max } kg
    .hint = { $decimals ->
        [yes] a comma stands between people: for { $pointed } kg write `{ $pointed }`
       *[no] give kilograms with pack
     }
trip-pounds = { $people ->
    [one] a person weighs
   *[other] all { $people } weigh
 } more than { $most } with pack: are these pounds?
    .hint = in kg they are { $interface ->
        [flags] `--party { $typed }`
       *[members] `party = [{ $listed }]`
     }; where they are kg already nothing is to be done
trip-teams = rope teams of { $sizes } do not suit the { $people } people who go
    .hint = name whole teams of { $least } to { $most } people that come to { $people }, or leave it out
trip-rope-length = a rope of { $length } is outside { $min } to { $max }
    .hint = give its length in metres
trip-gap = a gap width of { $gap } is outside { $min } to { $max }
    .hint = give it in metres, for zones that give none
trip-rope-across = a rope of { $across } across is outside { $min } to { $max }
    .hint = give millimetres
trip-no-stage = the route has no such stage: { $asked }
    .hint = it has { $stages }
trip-stage = stage { $number }
trip-stage-named = stage { $number } "{ $name }"
trip-no-start = bridges are trusted until { $until }, but nobody said when the party starts
    .hint = { $interface ->
        [flags] `--start 04:30`, or `start = "04:30"` in the trip file
        [page] set the start under Trip
       *[members] `start = "04:30"`
     }
trip-no-start-back = the line is to be done by { $by }, but nobody said when the party starts
    .hint = { $interface ->
        [flags] `--start 04:30`, or `start = "04:30"` in the trip file
        [page] set the start under Trip
       *[members] `start = "04:30"`
     }
halt-minutes = a halt of { $minutes } is outside { $min } to { $max }
    .hint = give minutes; whoever rests longer begins a new stage
halt-nowhere = nobody said where the halt is
    .hint = give `at_km`, the kilometre of the line, or `name`, that of a waypoint of the route file
start-before = an hour at { $at } counts on no line
    .hint = give the kilometre from the start of the stage, 0 or more
start-beyond = an hour at { $at } counts beyond the end of the line, { $length }
    .hint = give a kilometre from 0 to { $length }
place-without-start = an hour counts at { $at }, but nobody said which
    .hint = say the hour there with `start`, such as `start = "05:00"`
halt-before = a halt at { $at } lies on no line
    .hint = give the kilometre from the start of the stage, 0 or more
halt-beyond = a halt at { $at } lies beyond the end of the line, { $length }
    .hint = give a kilometre from 0 to { $length }
halt-on-which-stage = a halt at a kilometre, and the route has several stages
    .hint = say which with `stage`: it has { $stages }
halt-no-waypoint = the route file has no waypoint "{ $name }"
    .hint = { $has ->
        [0] it has none with a name: give `at_km`
        [one] it has 1 with another name: write that one, or give `at_km`
       *[other] it has { $has } with other names: write one of those, or give `at_km`
     }
halt-no-waypoint-but = the route file has no waypoint "{ $name }"
    .hint = perhaps `{ $near }` is meant
halt-waypoint-away = the waypoint "{ $name }" lies { $away } from the line, farther than the margin of { $margin }
    .hint = give `at_km`, where on the line the halt is
trip-no-day = { $name } takes a day, and "{ $found }" is none
    .hint = write it as 2027-07-14
trip-no-offset = { $name } takes how far the clocks are ahead of UTC, and "{ $found }" is no such thing
    .hint = write it as +02:00
figures-there-are = { $interface ->
    [flags] `schrund practice arm-span` prints the figures and words there are
   *[members] the assumptions of a plan list the figures and words there are
 }
trip-no-figure = there is no figure "{ $name }"
    .hint = { figures-there-are }
no-figure-but = there is no figure "{ $name }"
    .hint = { perhaps-this }
trip-set-elsewhere = "{ $name }" is not set as an assumption
    .hint = { $by ->
        [practice] `practice` of the trip sets it{ or-flag }
        [party] `party` of the trip sets it{ or-flag }
        [person] a mass stands with the person: `mass_kg` in a [[party]] block, or `party = [82, 75]`; `person_kg` is the mass of whoever gives none
        [terrain] `terrain` of the trip sets it{ or-flag }
        [trip] write `{ $name }` into the trip file above its first table in brackets
        [gap] `gap_m` of the trip sets it{ or-flag }, or better `gap_m` of the zone
        [sold] `rope` of the trip names the ropes at hand{ or-flag }
       *[rope] `rope` of the trip sets it{ or-flag }
     }
or-flag = { $interface ->
    [flags] , or { $by ->
        [practice] `--practice NAME`
        [party] `--party 82,75`
        [terrain] `--terrain FILE`
        [gap] `--gap 6`
       *[rope] `--rope 60`
     }
   *[members] { "" }
 }
trip-no-word = { $name } does not take the word "{ $found }"
    .hint = use one of { $words }
trip-no-time = { $name } takes a time of day, and "{ $found }" is none
    .hint = write it as 04:30, or 04:30 +1 on the day after the start
trip-no-number = { $name } takes a number, and "{ $found }" is none
    .hint = write a plain number, in metres where the name ends with `_m`, such as `3.5`
trip-not-laid = { $property ->
    [practice] the practice file { $file } is named and was not opened
    [terrain] the terrain model { $file } is named and was not opened
   *[glaciers] the glacier inventory { $file } is named and was not opened
 }
    .hint = whoever reads the trip has to open that file and lay it beside the trip; to plan without it, take it out of `{ $property }`

## Zones by kilometre

stretch-none = "{ $found }" does not say from where to where
    .hint = write two kilometres of the line with a dash between, as in `5.9-8.3`
stretch-comma = in "{ $found }" a comma can mean two things
    .hint = write `{ $pointed }` or `{ $whole }`
stretch-metres = "{ $found }" is in metres
    .hint = write kilometres: `{ $meant }`
stretch-backwards = "{ $found }" ends before it begins
    .hint = write `{ $meant }`: the line has one direction, the smaller kilometre comes first
stretch-before = "{ $found }" begins before the line does
    .hint = write kilometres from the start of the line, 0 or more
stretch-short = "{ $found }" is shorter than { $least }
    .hint = say from where to where the ice reaches along the line
stretch-beyond = "{ $found }" reaches beyond the line, which is { $length } long
    .hint = { $metres ->
        [yes] write kilometres: `{ $meant }`
       *[no] give kilometres from 0 to { $length }
     }
stretch-half-width = a half width of { $half } is outside { $min } to { $max }
    .hint = give how far the ice reaches to either side of the line, in metres; draw it in a map editor, or on the page for drawing, where it is another shape
stretch-which-stage = a stretch by kilometre, and the route has several stages
    .hint = say of which{ $interface ->
        [flags] {" "}with `--stage`
       *[members] { "" }
     }: it has { $stages }
stretch-stretched = "{ $found }" is too long, or too near a pole: the strip could not be as wide as is asked, within { $most }
    .hint = ask for it in shorter pieces, one after the other
stretch-is = this is { instead-what }, and zones go into GeoJSON
    .hint = name the zones file: one that is not there is made
stretch-empty = the file is empty
    .hint = take it away, or name another one: a file that is not there is made
stretch-no-collection = this is GeoJSON, but no single FeatureCollection, so no zone can be put into it
    .hint = save the zones as one FeatureCollection in the map editor, or name another file: one that is not there is made
stretch-changed = the file was changed while the zone was made, and was left as it is now
    .hint = run the command again

## Practice sets

practice-no-set = there is no practice set "{ $name }"
    .hint = { $has-near ->
        [yes] perhaps `{ $near }` is meant; there are { $sets }, or give the path of a practice file
       *[no] use one of { $sets }, or the path of a practice file
     }
practice-no-figure = there is no figure "{ $name }"
    .hint = { figures-there-are }
practice-missing = the practice set does not give { $name }
    .hint = add [{ $name }] with `value` in metres and `standing`
practice-unit = the figure is given in "{ $found }", and it is one in "{ $takes }"
    .hint = work it out in that unit and leave `unit` away
practice-growing = the spacing of { $many } people is greater than that of { $few }
    .hint = more people hold more, so a spacing never grows with their number

## Figures that are not taken

figure-out-of-bounds = { $what } { $value } is outside { $min } to { $max }
    .hint = give a number from { $min } to { $max }
figure-out-of-bounds-named = { $name }: { $what } { $value } is outside { $min } to { $max }
    .hint = give a number from { $min } to { $max }
figure-disorder = { $name }: adverse { $adverse }, central { $central } and favourable { $favourable } are out of order
    .hint = the central value lies between the other two: give the ends that do not fit it anew
figure-no-spring-peak = peak force { $force } N fits no spring
    .hint = { rope-label }
figure-no-spring-stretch = static elongation { $share } fits no spring
    .hint = { rope-label }
rope-label = give peak force and static elongation as the rope's label or its maker has them
figure-unknown = no assumption is called `{ $name }`
    .hint = { figures-there-are }
figure-built-in = { $words }
figure-nobody = nobody is on the rope
figure-sides = a faller has one or two sides to hold him, not { $sides }
figure-no-holder = a side without a holder holds nobody
figure-orders = orders of { $people } people are too many to try
figure-no-turn = no figure says what a turn round a { $turn } leaves of the force

## What comes from addresses

network-not-built = this build of schrund cannot fetch addresses
    .hint = download the file and name it

## All of them together

alone = a party of { $people } cannot rope up: nobody goes alone
    .hint = { $interface ->
        [flags] take at least one partner: `--party 2`
        [page] on the ice call for help rather than go on alone. Who goes takes at least one partner, added under Trip
       *[members] take at least one partner: `party = 2`
     }

no-zone-met = { $zones ->
    [0] the zones file holds no zone
    [one] the one zone is not met by the route
   *[other] none of the { $zones } zones is met by the route
 }{ $far ->
    [yes] : { $nearest }{ $more ->
        [0] { "" }
        [one] ; the other one lies farther away
       *[other] ; the other { $more } lie farther away
     }
   *[no] { "" }
 }
    .hint = { $zones ->
        [0] draw the broken ice as polygons in a map editor and give each a `gap_m`, the width of the widest gap you expect, in metres
       *[other] { $far-off ->
            [yes] the zones are of another place: give those of this route
           *[no] draw the zones as far as the line goes, or look whether it is the right line
         }
     }
far-zone = { $zone } lies { $away } to the { $toward ->
    [n] north
    [ne] north-east
    [e] east
    [se] south-east
    [s] south
    [sw] south-west
    [w] west
   *[nw] north-west
 } of the line, at { $at }

relief-window = a relief of { $columns } × { $rows } heights is empty or above { $most }
    .hint = ask for a smaller window, or for fewer heights in it
