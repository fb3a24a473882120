### What is wrong with the inputs. `.hint` says what to write instead. No capital at the start, no full stop at the end.

## How a fault is told

fault-at = at
fault-do = do
fault-and-more = { $says } (and { $more } more like this)
fault-more = and { $more } more like this

## Where it is

place-line = line { $line }
place-line-column = line { $line } column { $column }

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
item-flags = flags
item-party = party
item-start = start
item-stage = stage
item-practice = practice
item-zones = zones
item-relief = relief

## Files, addresses and flags

file-unreadable = cannot read { $name }: { refused }
    .hint = check the name and that you may read it
refused = { $why ->
    [folder] it is a folder, not a file
    [not-found] there is no such file or folder
    [permission] you have no permission
   *[other] { $words }
 }
file-stopped = reading stopped: { $words }
    .hint = read the file again
file-one-standard-input = standard input can give only one of the inputs
    .hint = name files for the others
file-not-seekable = a terrain model is read here and there, so it must be a file
    .hint = save it first and name the file
file-not-utf8 = the file is not UTF-8 text
file-toml = { $words }
file-nul-in-name = a NUL character stands in "{ $found }", shown as ␀
    .hint = write it without that character
file-swapped = the two files look swapped: { $route } is GeoJSON and { $zones } is GPX
    .hint = name the line first: `{ $zones-typed } { $route-typed }`
file-swapped-axes = no zone of { $zones } lies near the line of { $route }, but with longitude and latitude swapped in one of the files they would meet
    .hint = look in which of the two: GeoJSON positions are [longitude, latitude], GPX points have `lat` and `lon`
file-no-fetch = this build of schrund cannot fetch addresses
    .hint = download the file and name it
file-answered = the server answered { $status }
    .hint = check the address
file-too-much = the answer is larger than { $mb } MB
file-not-fetched = cannot fetch it: { $why ->
    [late] no answer in time
    [no-connection] no connection
   *[other] { $words }
 }
    .hint = check the address and the connection, or download the file and name it
file-no-folder = cannot make the folder { $name }: { refused }
file-unwritable = cannot write { $name }: { refused }
    .hint = write to a folder that is there and that you may write to
file-is-input = { $name } is an input and is never written over
    .hint = write to another place
file-there = { $count ->
    [1] { $names } is there already
   *[other] { $count } files are there already: { $names }
 }
    .hint = { $count ->
        [1] `--force` replaces it
       *[other] `--force` replaces them
     }
file-no-code = there is no code "{ $name }"
    .hint = codes stand in brackets in what schrund says, as in error[gap-not-given]
file-no-code-but = there is no code "{ $name }"
    .hint = did you mean `{ $near }`?
file-no-place = "{ $found }" is no longitude,latitude in degrees
    .hint = write it as 7.65,45.97, longitude first

## Trip files and flags

trip-no-member = a trip file has no `{ $member }`
    .hint = `schrund new DIR` writes a trip file that shows every member
trip-no-member-but = a trip file has no `{ $member }`
    .hint = perhaps `{ $near }` is meant; figures go under [assume]
trip-form = `{ $member }` is not in a form that is understood
    .hint = it takes { $member ->
        [party] how many, a list of masses in kg, or [[party]] blocks with `name` and `mass_kg`
        [rope] [[rope]] blocks with `length_m`, and `diameter_mm` and `name` where known
        [stage] the number or the name of a stage
        [assume] a table [assume] of figures and words by name
        [terrain] a list of files
        [emergency] [[emergency]] blocks with `name`, `contact` and `note`
       *[other] one of { $words }
     }
trip-member = `{ $member }`: { $words }
    .hint = `schrund new DIR` writes a trip file that shows every member
trip-nobody = a party of 0: nobody goes
    .hint = name who goes: how many, or their masses with pack in kg
trip-too-many = a party of { $people } is more than the { $most } that are planned for
    .hint = one number is a head count; masses in kg come for two and more
trip-far-too-many = a party of so many is more than the { $most } that are planned for
    .hint = one number is a head count; masses in kg come for two and more
trip-nobody-said = nobody said how many go
    .hint = `--party 3`, or their masses with pack: `--party 82,75,90`
trip-mass = person { $person } weighs { $mass }, outside { $min } to { $max } kg
    .hint = give kilograms with pack
trip-rope-length = a rope of { $length } is outside { $min } to { $max }
    .hint = give its length in metres
trip-rope-across = a rope of { $across } across is outside { $min } to { $max }
    .hint = give millimetres
trip-no-stage = the route has no such stage: { $asked }
    .hint = it has { $stages }
trip-stage = stage { $number }
trip-stage-named = stage { $number } "{ $name }"
trip-no-start = bridges are trusted until { $until }, but nobody said when the party starts
    .hint = `--start 04:30`, or `start = "04:30"` in the trip file
trip-no-figure = there is no figure "{ $name }"
    .hint = `schrund practice arm-span` prints the figures and words there are
trip-set-elsewhere = "{ $name }" is not set as an assumption
    .hint = { $by ->
        [practice] `--practice NAME`, or `practice` in the trip file
        [party] `--party 82,75`, or `party` in the trip file
        [terrain] `--terrain FILE`, or `terrain` in the trip file
        [gap] `--gap 6`, `gap_m` in the trip file, or better `gap_m` of the zone
        [sold] name the ropes at hand: `--rope 60`, or `[[rope]]` in the trip file
       *[rope] `--rope 60`, or `[[rope]]` in the trip file
     }
trip-no-word = { $name } does not take the word "{ $found }"
    .hint = use one of { $words }
trip-no-time = { $name } takes a time of day, and "{ $found }" is none
    .hint = write it as 04:30
trip-no-number = { $name } takes a number, and "{ $found }" is none

## Practice sets

practice-no-set = there is no practice set "{ $name }"
    .hint = use one of { $sets }, or the path of a practice file
practice-no-figure = there is no figure "{ $name }"
    .hint = `schrund practice arm-span` prints the figures a set can give
practice-missing = the practice set does not give { $name }
    .hint = add [{ $name }] with `value` in metres and `standing`
practice-unit = the figure is given in "{ $found }", and it is one in "{ $takes }"
    .hint = work it out in that unit and leave `unit` away
practice-growing = the spacing of { $many } people is greater than that of { $few }
    .hint = more people hold more, so a spacing never grows with their number

## Figures that are not taken

figure-out-of-bounds = { $what } { $value } is outside { $min } to { $max }
figure-out-of-bounds-named = { $name }: { $what } { $value } is outside { $min } to { $max }
figure-disorder = { $name }: adverse { $adverse }, central { $central } and favourable { $favourable } are out of order
figure-no-spring-peak = peak force { $force } N fits no spring
figure-no-spring-stretch = static elongation { $share } fits no spring
figure-unknown = no assumption is called `{ $name }`
figure-built-in = { $words }
figure-nobody = nobody is on the rope
figure-sides = a faller has one or two sides to hold him, not { $sides }
figure-no-holder = a side without a holder holds nobody
figure-orders = orders of { $people } people are too many to try
figure-no-turn = no figure says what a turn round a { $turn } leaves of the force

## All of them together

alone = a party of { $people } cannot rope up: nobody goes alone
    .hint = take at least one partner: `--party 2`

no-zone-met = { $zones ->
    [0] the zones file holds no zone
    [one] the one zone is not met by the route
   *[other] none of the { $zones } zones is met by the route
 }
    .hint =
        check that both files belong to the same place
        and that coordinates are longitude, latitude

relief-window = a relief of { $columns } × { $rows } heights is empty or above { $most }
