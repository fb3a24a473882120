### What is wrong with what comes from addresses, or comes not.

network-no-address = this is no address that can be asked: it takes http:// or https://, a server, and a path
    .hint = copy the address from where the data are offered
network-not-kept = nothing is kept of this address, and no request may be made
    .hint = { $interface ->
        [flags] call it once with a network, without `--offline`; or save the file and name that
       *[members] ask once with a network; or save the file and name that
     }
network-no-server = no server of this name is known
    .hint = check the name in the address, and whether there is a network
network-no-connection = no connection: { $words }
    .hint = check the address and the network, or download the file and name it
network-insecure = no secure connection: { $words }
    .hint = check the address, whether the server takes https, and the clock of this machine; nothing is fetched from a server that nobody vouches for
network-no-authorities = no secure connection: this system holds no certificates of authorities, so nobody can vouch for the server
    .hint = install them (on Debian and Alpine the package ca-certificates), or name a file of them in SSL_CERT_FILE; or download the file elsewhere and name it
network-late = no whole answer within { $allowed }
    .hint = try again with a better connection, or download the file and name it
network-cut = the answer broke off after { $got } bytes{ $known ->
    [yes] {" "}of { $due }
   *[no] { "" }
 }, asked for { $tries ->
    [one] once
   *[other] { $tries } times
 }
    .hint = try again with a better connection, or download the file and name it
network-too-big = the answer is larger than { $mib } MiB{ $unpacked ->
    [yes] {" "}unpacked
   *[no] { "" }
 }
    .hint = download it, cut it down to the region of the route, and name the file
network-web-page = the server sent a page for browsers in place of data
    .hint = open the address in a browser: it may want a login, or the data have another address, often behind a button
network-coding = the answer is packed as { $words }, which is not read here
    .hint = download the file and name it
network-answered = the server answered { $status }
    .hint = { $sort ->
        [gone] there is no such file any more: look up the address where the data are offered
        [closed] the server wants to know who asks: download the file in a browser and name it
        [broken] the fault is the server's: try again later, or download the file elsewhere and name it
       *[other] check the address
     }
network-busy = the server answered { $status }, asked { $tries ->
    [one] once
   *[other] { $tries } times
 }{ $known ->
    [yes] ; it wants to be left alone for { $wait }
   *[no] { "" }
 }
    .hint = { $known ->
        [yes] try again after { $wait }
       *[no] try again later, or download the file and name it
     }
network-sent-on = the server sends on to { $to }, { $why ->
    [no-web] which is no http(s) address
    [open] which is open to every listener where the first one was not
   *[too-often] and that after { $most } others
 }
    .hint = look up the address where the data are offered
network-changed = the file was exchanged on the server while parts of it were read
    .hint = call again: it is then read anew
network-no-outlines = the answer is no GeoJSON collection of outlines
    .hint = name the address of the items of a collection, which ends with /items, or of a GeoJSON file
network-same-page = the server gives page { $page } of the outlines again, and never all of them
    .hint = download the outlines and name the file
network-few-outlines = the server gave { $got } of { $said } outlines and names no further page
    .hint = try again later, or download the outlines and name the file
network-many-pages = after { $most } pages the server still names a further one
    .hint = name a smaller collection, or download the outlines and name the file
network-none-here = { $outlines ->
    [0] the server has no outline within { $around } of the route
    [one] the one outline does not come within { $around } of the route
   *[other] none of the { $outlines } outlines comes within { $around } of the route
 }
    .hint = check whether the address is of this region; { $interface ->
        [flags] `--around` looks farther
       *[members] look farther
     }
network-no-placeholder = the address has { $words }, which stands for nothing
    .hint = of a tile named by its south-west corner write {"{"}NS{"}"} and {"{"}EW{"}"} for the letters ({"{"}ns{"}"}, {"{"}ew{"}"} for small ones), {"{"}lat{"}"} for two digits and {"{"}lon{"}"} for three
network-many-tiles = the surroundings of the route reach over { $tiles } tiles, and { $most } are fetched at most
    .hint = fetch the stages one by one
network-many-cells = the surroundings of the route are { $cells } cells of the model, and { $most } are cut out at most
    .hint = { $interface ->
        [flags] `--around` looks less far; or fetch the stages one by one
       *[members] look less far, or fetch the stages one by one
     }
network-no-heights = the model has no heights near the route
    .hint = check whether the address is of this region
network-no-geotiff = heights are cut out of a GeoTIFF, and this is none
    .hint = download the file and name it
network-other = cannot fetch it: { $words }
    .hint = check the address and the connection, or download the file and name it
