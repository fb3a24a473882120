//! What every plan must be read with.

/// The cautions, printed with every plan. Our words.
pub const CAUTIONS: [&str; 7] = [
    "Snow bridges and gap widths are judged on the spot; where the ground differs, the plan is wrong.",
    "Rope techniques are learned from people and practised before the trip.",
    "On steep hard snow a roped team without anchors can be pulled off by the slip of one.",
    "Snow bridges weaken through the day.",
    "Never alone.",
    "What local guides, park services and rescue services say comes before this plan.",
    "A computed answer holds for its assumptions only; read them.",
];
