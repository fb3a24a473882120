//! Ice whose gap widths mean nothing: that of a glacier inventory, and zones beside a width that cannot be assumed.

#[cfg(feature = "flatgeobuf")]
use crate::read::flatgeobuf;
use crate::{
    fault::{Code, Fault, Level, Noted, Place, Wrong, geojson::InGeojson, instead::Instead},
    limits::InputLimits,
    read::{
        geojson::{self, Given, KnownShapes},
        input::{Input, Seekable, Text},
        signature,
    },
    trip::{route::Route, zone::Zone},
};

/// What was read of ice.
pub(super) type IceRead = Result<Noted<Vec<Zone>>, Vec<Fault>>;

/// Stands in for the gap widths that an inventory does not give; nothing is reckoned from it.
pub(super) const ANY_GAP: Given = Given { gap_m: Some(1.0) };

/// Zones, with a width for those that give none, or beside what is wrong with that width.
pub(super) fn zones(
    input: Input<Text<'_>>,
    gap: Result<Given, Fault>,
    known: Option<&KnownShapes>,
) -> IceRead {
    match gap {
        Ok(given) => read(input, &given, known),
        Err(fault) => {
            let faults = gapless(read(input, &ANY_GAP, known))
                .err()
                .unwrap_or_default();
            Err(std::iter::once(fault).chain(faults).collect())
        }
    }
}

/// The zones of a file with an index that lie near a line, with a width for those that give none; none is an answer too.
///
/// # Errors
/// It could not be opened or has no index, the width makes no sense, or a zone near the line is at fault.
///
/// ```
/// use schrund::{example, read::{input::{Input, Seekable}, lay}};
///
/// let held: Seekable = Box::new(std::io::Cursor::new(example::PAIR_GLACIERS_GEOJSON.as_bytes()));
/// let line = example::pair()?.route;
/// let faults = lay::zones_near(Input::new("ice.geojson", held), &line, None).unwrap_err();
/// assert_eq!(faults.len(), 1, "a text has no index: `Sources` reads it whole");
/// # Ok::<(), Vec<schrund::fault::Fault>>(())
/// ```
pub fn zones_near(input: Input<Seekable>, line: &Route, gap_m: Option<f64>) -> IceRead {
    let file = (input.source?, &input.limits);
    near(&input.name, file, line, &Given { gap_m })
}

#[cfg(feature = "flatgeobuf")]
fn near(name: &str, file: (Seekable, &InputLimits), line: &Route, given: &Given) -> IceRead {
    let near = flatgeobuf::Near::of(Some(line), &[]);
    flatgeobuf::zones_near(name, file, given, near)
}

/// This build knows no index: the reader of texts says what it is.
#[cfg(not(feature = "flatgeobuf"))]
fn near(name: &str, (file, _): (Seekable, &InputLimits), _: &Route, given: &Given) -> IceRead {
    let text: Text<'_> = Box::new(std::io::BufReader::new(file));
    read(Input::new(name, text), given, None)
}

/// The same for one line of its own: nothing where none is near, or where something is wrong with the file, for then all of it
/// is to be looked at.
#[cfg(feature = "flatgeobuf")]
pub(super) fn zones_near_alone(
    (name, file, limits): (String, Seekable, InputLimits),
    line: &Route,
    given: &Given,
) -> Option<Noted<Vec<Zone>>> {
    let near = flatgeobuf::Near::of(Some(line), &[]);
    flatgeobuf::drawn_near(&name, (file, &limits), given, near)
}

/// This build knows no index.
#[cfg(not(feature = "flatgeobuf"))]
pub(super) fn zones_near_alone(
    _: (String, Seekable, InputLimits),
    _: &Route,
    _: &Given,
) -> Option<Noted<Vec<Zone>>> {
    None
}

/// Polygons of a file; where it is XML or another text instead, of which kind.
pub(super) fn read(input: Input<Text<'_>>, given: &Given, known: Option<&KnownShapes>) -> IceRead {
    let mut text = input.source?;
    let start = text.fill_buf().unwrap_or_default();
    #[cfg(feature = "flatgeobuf")]
    if signature::is_flatgeobuf(start) {
        return flatgeobuf::zones(&input.name, (text, &input.limits), given, known);
    }
    let (xml, other) = (signature::of_xml(start), signature::of_text(start));
    let read = match known {
        Some(known) => geojson::zones_again(&input.name, text, given, known),
        None => geojson::zones(&input.name, text, given),
    };
    read.map_err(|mut faults| {
        for fault in &mut faults {
            let kind = match &fault.what {
                Wrong::Geojson(InGeojson::Is(Instead::Xml)) => &xml,
                Wrong::Geojson(InGeojson::Broken(_)) => &other,
                _ => continue,
            };
            if let Some(kind) = kind {
                let place = Place::file(&input.name);
                *fault = Fault::new(InGeojson::Is(kind.clone()), place);
            }
        }
        faults
    })
}

/// Zones as drawn: beside an inventory a file without any feature is an answer too, since nobody drew anything then and all ice
/// is known without its gaps.
pub(super) fn drawn(zones: IceRead, ice_known: bool) -> IceRead {
    let mut faults = match zones {
        Err(faults) if ice_known => faults,
        zones => return zones,
    };
    let nothing = |fault: &Fault| matches!(fault.what, Wrong::Geojson(InGeojson::NoZones(0, _)));
    let wrong = |fault: &Fault| fault.level() == Level::Error && !nothing(fault);
    if !faults.iter().any(nothing) || faults.iter().any(wrong) {
        return Err(faults);
    }
    faults.retain(|fault| !nothing(fault));
    Ok(Noted {
        value: Vec::new(),
        notes: faults,
    })
}

/// What was read of ice, without the word that [`ANY_GAP`] was assumed.
pub(super) fn gapless(read: IceRead) -> IceRead {
    let is_other = |note: &Fault| note.kind() != Code::GapAssumed;
    match read {
        Ok(mut ice) => {
            ice.notes.retain(is_other);
            Ok(ice)
        }
        Err(mut faults) => {
            faults.retain(is_other);
            Err(faults)
        }
    }
}
