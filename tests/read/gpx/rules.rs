//! What is accepted, and what is noted about it.

use super::{PAIR, good, points, shown};
use crate::fixture::texts::{gpx_of, segment_of};

#[test]
fn every_track_is_a_stage_with_its_segments_and_names() {
    let noted = good(gpx_of(&format!(
        "<metadata><name> Über den\n Firn </name><author><name>nobody</name></author></metadata>\
         <trk><name>Up &amp; <![CDATA[over]]></name><trkseg>{PAIR}</trkseg></trk>\
         <trk><link href=\"x\"><text>t</text></link><trkseg>{PAIR}</trkseg></trk>"
    )));
    let route = noted.value;
    assert_eq!(route.name.as_deref(), Some("Über den Firn"));
    let names: Vec<_> = route.stages.iter().map(|s| s.name.as_deref()).collect();
    assert_eq!(names, [Some("Up & over"), None]);
    assert_eq!(points(&route), [[(8.0, 46.5), (8.0, 46.501)]; 2]);
    assert_eq!(noted.notes, []);
}

#[test]
fn a_jump_is_not_walked_and_is_noted_with_place_and_length() {
    let noted = good(gpx_of(
        r#"<trk><name>A</name><trkseg><trkpt lat="0" lon="0"/><trkpt lat="0" lon="0.001"/></trkseg><trkseg/>
           <trkseg><trkpt lat="0" lon="0.003"/><trkpt lat="0" lon="0.004"/></trkseg></trk>"#,
    ));
    let stage = &noted.value.stages[0];
    assert_eq!(stage.segments().collect::<Vec<_>>(), [0..2, 2..4]);
    // 0.001 degrees of the equator are 111.319 m: 6378137 m × π/180 000 [wgs84] [derived].
    let step_m = 6_378_137.0 * std::f64::consts::PI / 180_000.0;
    assert!(
        (stage.length_m() - 2.0 * step_m).abs() < 1e-6,
        "{}",
        stage.length_m()
    );
    assert_eq!(
        shown(&noted.notes),
        [
            "note[jump]: the line jumps 222.6 m at 111.3 m; the jump is not walked and adds no length\n  \
          at: tour.gpx, track 1 \"A\""
        ]
    );
}

#[test]
fn segments_that_touch_are_no_jump() {
    let noted = good(gpx_of(&format!(
        r#"<trk><trkseg>{PAIR}</trkseg><trkseg><trkpt lat="46.501" lon="8"/><trkpt lat="46.502" lon="8"/></trkseg></trk>"#
    )));
    assert_eq!(noted.notes, []);
}

#[test]
fn a_segment_of_one_place_is_left_out() {
    let noted = good(gpx_of(&format!(
        r#"<trk><trkseg><trkpt lat="46" lon="8"/><trkpt lat="46" lon="8"/></trkseg><trkseg>{PAIR}</trkseg></trk>"#
    )));
    assert_eq!(points(&noted.value), [[(8.0, 46.5), (8.0, 46.501)]]);
    assert_eq!(
        shown(&noted.notes),
        ["note[part-left-out]: 1 segment with a single position left out\n  at: tour.gpx, track 1"]
    );
}

#[test]
fn a_track_without_a_line_beside_a_good_one_is_noted() {
    let noted = good(gpx_of(&format!(
        r#"<trk><name>pub</name><trkseg><trkpt lat="46" lon="8"/></trkseg></trk><trk/><trk><trkseg>{PAIR}</trkseg></trk>"#
    )));
    assert_eq!(noted.value.stages.len(), 1);
    assert_eq!(
        shown(&noted.notes),
        [
            "note[part-left-out]: no two different points follow one another here (1 point): left out\n  \
             at: tour.gpx, track 1 \"pub\"",
            "note[part-left-out]: no two different points follow one another here (0 points): left out\n  \
             at: tour.gpx, track 2",
        ]
    );
}

const ROUTE: &str = r#"<rte><name>R</name><rtept lat="1" lon="2"><ele>3</ele></rtept><rtept lat="1.01" lon="2"/></rte>"#;

#[test]
fn routes_count_where_no_track_has_a_line() {
    let noted = good(gpx_of(&format!(
        r#"{ROUTE}<trk><trkseg><trkpt lat="46" lon="8"/></trkseg></trk>"#
    )));
    assert_eq!(points(&noted.value), [[(2.0, 1.0), (2.0, 1.01)]]);
    assert_eq!(noted.value.stages[0].name.as_deref(), Some("R"));
    assert_eq!(
        noted.value.stages[0].heights_m().collect::<Vec<_>>(),
        [Some(3.0), None]
    );
}

#[test]
fn tracks_go_before_routes_which_is_noted() {
    let noted = good(gpx_of(&format!(
        "{ROUTE}<trk><trkseg>{PAIR}</trkseg></trk>"
    )));
    assert_eq!(points(&noted.value), [[(8.0, 46.5), (8.0, 46.501)]]);
    assert_eq!(
        shown(&noted.notes),
        [
            "note[part-left-out]: 1 route beside the tracks left out\n  at: tour.gpx\n  \
          do: to plan along a route, take the tracks out of the file"
        ]
    );
}

#[test]
fn detail_inside_route_points_is_used_in_order() {
    let noted = good(gpx_of(
        r#"<rte><rtept lat="1" lon="2"><ele>7</ele><extensions><x:E xmlns:x="u"><x:a lat="1.001" lon="2"/><x:b>
           <x:c lat="1.002" lon="2"><x:ele>9</x:ele></x:c></x:b></x:E></extensions></rtept>
           <rtept lat="1.003" lon="2"/></rte>"#,
    ));
    assert_eq!(
        points(&noted.value),
        [[(2.0, 1.0), (2.0, 1.001), (2.0, 1.002), (2.0, 1.003)]]
    );
    assert_eq!(
        noted.value.stages[0].heights_m().collect::<Vec<_>>(),
        [Some(7.0), None, None, None]
    );
    assert_eq!(
        shown(&noted.notes),
        [
            "note[detail-used]: 2 points between the route points taken from their extensions\n  \
          at: tour.gpx, route 1"
        ]
    );
}

#[test]
fn positions_in_other_extensions_are_never_dropped_silently() {
    let noted = good(gpx_of(&format!(
        r#"<trk><extensions><y lat="1" lon="2"/></extensions><trkseg><trkpt lat="46" lon="8"><extensions>
           <z><y lat="1" lon="2"/></z></extensions></trkpt>{PAIR}</trkseg></trk>
           <wpt lat="1" lon="2"><extensions><y lat="1" lon="2"/></extensions></wpt>
           <extensions><y lat="1" lon="2"/></extensions>"#
    )));
    let hint = "do: if they are the line, export it as a track";
    let expected = [
        format!(
            "warning[detail-ignored]: 2 positions in extensions not used\n  at: tour.gpx, track 1\n  {hint}"
        ),
        format!(
            "warning[detail-ignored]: 1 position in extensions not used\n  at: tour.gpx\n  {hint}"
        ),
    ];
    assert_eq!(shown(&noted.notes)[..2], expected);
}

#[test]
fn heights_that_are_none_count_as_not_given() {
    let noted = good(segment_of(
        "<trkpt lat=\"1\" lon=\"2\"><ele> 12.5\r\n</ele></trkpt>\n<trkpt lat=\"1.001\" lon=\"2\"><ele/></trkpt>\n\
         <trkpt lat=\"1.002\" lon=\"2\">\n  <ele>NaN</ele></trkpt>\n<trkpt lat=\"1.003\" lon=\"2\"><ele>12,5</ele></trkpt>\n\
         <trkpt lat=\"1.004\" lon=\"2\"><ele>1e99</ele></trkpt>",
    ));
    assert_eq!(
        noted.value.stages[0].heights_m().collect::<Vec<_>>(),
        [Some(12.5), None, None, None, None]
    );
    let warning = |value: &str, place: &str| {
        let why = match value {
            "1e99" => "too large to be one",
            _ => "no finite number",
        };
        format!(
            "warning[bad-height]: the height \"{value}\" is {why} and counts as not given\n  \
             at: tour.gpx, {place}, `ele`\n  do: give `ele` in metres, its decimals behind a point, or leave it out"
        )
    };
    assert_eq!(
        shown(&noted.notes),
        [
            warning("NaN", "line 5 column 3, track 1, segment 1, point 3"),
            warning("12,5", "line 6 column 28, track 1, segment 1, point 4"),
            "warning[bad-height]: the height \"1e99\" is none, being below -500 m or above 9000 m: it counts as not given\n  \
             at: tour.gpx, line 7 column 28, track 1, segment 1, point 5, `ele`\n  \
             do: give `ele` in metres above the sea, or leave it out"
                .to_owned(),
        ]
    );
}

#[test]
fn repeated_points_are_one_and_keep_the_height() {
    let noted = good(segment_of(
        r#"<trkpt lat="1" lon="180"/><trkpt lat="1" lon="-180"><ele>5</ele></trkpt><trkpt lat="1" lon="-179.99"/>"#,
    ));
    assert_eq!(points(&noted.value), [[(180.0, 1.0), (180.01, 1.0)]]);
    assert_eq!(
        noted.value.stages[0].heights_m().collect::<Vec<_>>(),
        [Some(5.0), None]
    );
}

#[test]
fn version_1_0_with_its_own_and_foreign_children_is_accepted() {
    let noted = good(
        "\u{feff}\r\n<?xml version='1.0'?>\r\n<!DOCTYPE gpx>\r\n<gpx xmlns=\"http://www.topografix.com/GPX/1/0\" xmlns:f='f'>\r\n\
         <name>old</name><url>u</url><f:name>new</f:name><trk><f:name>no</f:name><name>day 1</name><url/><trkseg>\r\n\
         <trkpt lat='46.5 ' lon='\n8'><f:ele>1</f:ele><ele>2</ele><course>3</course><speed>4</speed></trkpt>\r\n\
         <trkpt lon='8' lat='+46.6'><sat>7.0</sat><time/></trkpt></trkseg></trk></gpx>\r\n<!-- bye -->\r\n",
    );
    assert_eq!(noted.value.name.as_deref(), Some("old"));
    assert_eq!(noted.value.stages[0].name.as_deref(), Some("day 1"));
    assert_eq!(points(&noted.value), [[(8.0, 46.5), (8.0, 46.6)]]);
    assert_eq!(
        noted.value.stages[0].heights_m().collect::<Vec<_>>(),
        [Some(2.0), None]
    );
}

#[test]
fn any_prefix_will_do() {
    let noted = good(
        r#"<g:gpx xmlns:g="u"><g:trk><g:name>p</g:name><g:trkseg><g:trkpt lat="1" lon="2"><g:ele>3</g:ele></g:trkpt>
           <g:trkpt lat="1.001" lon="2"/></g:trkseg></g:trk></g:gpx>"#,
    );
    assert_eq!(noted.value.stages[0].name.as_deref(), Some("p"));
    assert_eq!(
        noted.value.stages[0].heights_m().collect::<Vec<_>>(),
        [Some(3.0), None]
    );
}

#[test]
fn points_in_comments_and_cdata_are_none() {
    let noted = good(segment_of(&format!(
        r#"<!-- <trkpt lat="0" lon="0"/> -->{PAIR}<![CDATA[<trkpt lat="0" lon="0"/>]]><?p <trkpt lat="0" lon="0"/>?>"#
    )));
    assert_eq!(points(&noted.value), [[(8.0, 46.5), (8.0, 46.501)]]);
}

#[test]
fn entities_of_the_file_stay_as_text_and_cannot_grow() {
    let noted = good(format!(
        "<!DOCTYPE gpx [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b \"&a;&a;&a;&a;\">]>{}",
        gpx_of(&format!(
            "<trk><name>A&#66;&#x43; &b; &lt;</name><trkseg>{PAIR}</trkseg></trk>"
        ))
    ));
    assert_eq!(noted.value.stages[0].name.as_deref(), Some("ABC &b; <"));
}

#[test]
fn the_encoding_may_be_any_that_the_file_declares() {
    let named = |encoding: &str| {
        format!(
            "<?xml version=\"1.0\" encoding=\"{encoding}\" standalone=\"no\"                        ?>{}",
            gpx_of(&format!(
                "<trk><name>Mönch</name><trkseg>{PAIR}</trkseg></trk>"
            ))
        )
    };
    let single_byte = |text: &str| -> Vec<u8> {
        text.chars()
            .map(|c| u8::try_from(u32::from(c)).expect("latin-1"))
            .collect()
    };
    let wide = |text: &str, to: fn(u16) -> [u8; 2]| -> Vec<u8> {
        text.encode_utf16().flat_map(to).collect()
    };
    let utf_16 = named("UTF-16");
    for (what, bytes) in [
        ("ISO-8859-1", single_byte(&named("ISO-8859-1"))),
        ("windows-1252", single_byte(&named("windows-1252"))),
        ("windows-1254", single_byte(&named("windows-1254"))),
        ("UTF-8", named("UTF-8").into_bytes()),
        (
            "UTF-8 by its mark",
            format!("\u{feff}{}", named("ISO-8859-1")).into_bytes(),
        ),
        ("UTF-8 called UTF-16", utf_16.clone().into_bytes()),
        ("unknown name", named("martian").into_bytes()),
        (
            "UTF-16 little",
            wide(&format!("\u{feff}{utf_16}"), u16::to_le_bytes),
        ),
        (
            "UTF-16 big",
            wide(&format!("\u{feff}{utf_16}"), u16::to_be_bytes),
        ),
        ("UTF-16 little, no mark", wide(&utf_16, u16::to_le_bytes)),
        ("UTF-16 big, no mark", wide(&utf_16, u16::to_be_bytes)),
    ] {
        assert_eq!(
            good(&bytes).value.stages[0].name.as_deref(),
            Some("Mönch"),
            "{what}"
        );
    }
}

#[test]
fn deep_nesting_costs_no_more_than_its_length() {
    let deep = format!(
        "<extensions>{}{}</extensions>",
        "<a>".repeat(1_000_000),
        "</a>".repeat(1_000_000)
    );
    let noted = good(segment_of(&format!(
        r#"<trkpt lat="46" lon="8">{deep}</trkpt><trkpt lat="46.001" lon="8"/>"#
    )));
    assert_eq!(noted.value.stages[0].points().len(), 2);
}
