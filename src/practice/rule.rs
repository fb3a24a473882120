//! The names of the figures, in the order of the flow.

macro_rules! rules {
    ($($variant:ident $name:literal,)+) => {
        /// The name of one figure. What each is stands in `data/rules.toml`.
        ///
        /// ```
        /// use schrund::practice::Rule;
        ///
        /// assert_eq!(Rule::named("margin_m"), Some(Rule::MarginM));
        /// assert_eq!(Rule::base_spacing(3).name(), "spacing_3_m", "the name ends in the unit");
        /// assert_eq!(Rule::base_spacing(7), Rule::Spacing5M, "sets give nothing for more than five on a rope");
        /// ```
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Rule { $(#[doc = concat!("`", $name, "`")] $variant,)+ }

        impl Rule {
            /// All of them, in the order of the flow.
            pub const ALL: &'static [Rule] = &[$(Rule::$variant,)+];

            /// As it stands in data files and plans; ends in the unit where it has one.
            #[must_use]
            pub fn name(self) -> &'static str {
                match self { $(Self::$variant => $name,)+ }
            }
        }
    };
}

rules! {
    MarginM "margin_m",
    LeastUnropedM "least_unroped_m",
    TurnBackM "turn_back_m",
    AlongDeg "along_deg",
    GapMostWidths "gap_most_widths",
    Spacing2M "spacing_2_m",
    Spacing3M "spacing_3_m",
    Spacing4M "spacing_4_m",
    Spacing5M "spacing_5_m",
    NeighbourRoomM "neighbour_room_m",
    GapShareThree "gap_share_three",
    GapShareFour "gap_share_four",
    SpacingFloorM "spacing_floor_m",
    SpacingCapM "spacing_cap_m",
    SpacingStepM "spacing_step_m",
    KnotsNoBiteM "knots_no_bite_m",
    KnotsBiteM "knots_bite_m",
    KnotFirstM "knot_first_m",
    KnotStepM "knot_step_m",
    KnotCount "knot_count",
    TightFirstM "tight_first_m",
    TightStepM "tight_step_m",
    KnotRopeM "knot_rope_m",
    ButterflyRopeM "butterfly_rope_m",
    KnotClearM "knot_clear_m",
    HeavierFactor "heavier_factor",
    SteepDescentDeg "steep_descent_deg",
    TieInM "tie_in_m",
    ReachFactor "reach_factor",
    ObligedReachFactor "obliged_reach_factor",
    LoopEndsM "loop_ends_m",
    SlingM "sling_m",
    ChestCoilM "chest_coil_m",
    ChestCoils2 "chest_coils_2",
    ChestCoils3 "chest_coils_3",
    ChestCoils4 "chest_coils_4",
    ChestCoils5 "chest_coils_5",
    PersonKg "person_kg",
    ArmSpanM "arm_span_m",
    NearCapM "near_cap_m",
    ThinRopeMm "thin_rope_mm",
    NearLipM "near_lip_m",
    NearRopeM "near_rope_m",
    AvalancheDeg "avalanche_deg",
    AnchorsDeg "anchors_deg",
    BareSlipDeg "bare_slip_deg",
    BareStopDeg "bare_stop_deg",
    SkiedSnowM "skied_snow_m",
    SkiedGapM "skied_gap_m",
    ThinSnowM "thin_snow_m",
    ObservedDays "observed_days",
    AscentThresholdM "ascent_threshold_m",
    ClimbUnknownM "climb_unknown_m",
    TimedPieceM "timed_piece_m",
    OnePlaceM "one_place_m",
    ClimbCells "climb_cells",
    AscentsApartShare "ascents_apart_share",
    SteepOverM "steep_over_m",
    LoneHeightM "lone_height_m",
    RopeUpMin "rope_up_min",
    ChangeMin "change_min",
    BelayMin "belay_min",
    BelayEachMin "belay_each_min",
    BelayEveryM "belay_every_m",
    BelayPitchM "belay_pitch_m",
    WalkKmh "walk_kmh",
    ClimbMPerH "climb_m_per_h",
    DescendMPerH "descend_m_per_h",
    DescendOnSkisMPerH "descend_on_skis_m_per_h",
    DescendRopedOnSkisMPerH "descend_roped_on_skis_m_per_h",
    SnowshoeFactor "snowshoe_factor",
    MunterUp "munter_up",
    MunterDown "munter_down",
    MunterSkiDown "munter_ski_down",
    MunterSkiDownRoped "munter_ski_down_roped",
    NaismithKmh "naismith_kmh",
    NaismithMPerH "naismith_m_per_h",
    BreakMinPerH "break_min_per_h",
    LongestStageH "longest_stage_h",
    SlowerFactor "slower_factor",
    EffortClimbM "effort_climb_m",
    EffortDescentM "effort_descent_m",
    EffortSteepShare "effort_steep_share",
    GroundStepM "ground_step_m",
    HeightsApartM "heights_apart_m",
    FallLineDeg "fall_line_deg",
    ProposedStrikeDeg "proposed_strike_deg",
    ConvexDeg "convex_deg",
    ConvexOverM "convex_over_m",
    ConvexMost "convex_most",
    StraightM "straight_m",
    AnchorShare "anchor_share",
    RopeDiameterMm "rope_diameter_mm",
    CoilMostM "coil_most_m",
    CoilMostKg "coil_most_kg",
    HolderClearM "holder_clear_m",
    LongSlingM "long_sling_m",
    JoinBendM "join_bend_m",
    WideMinPerKmM "wide_min_per_km_m",
    KitHarnesses "kit_harnesses",
    KitHelmets "kit_helmets",
    KitAxes "kit_axes",
    KitSlings "kit_slings",
    KitCords "kit_cords",
    KitKarabiners "kit_karabiners",
    KitSnowAnchors "kit_snow_anchors",
    KitIceScrews "kit_ice_screws",
    KitCrampons "kit_crampons",
    KitLamps "kit_lamps",
    KitProbes "kit_probes",
    KitPulleys "kit_pulleys",
}

impl Rule {
    /// The figure of that name.
    #[must_use]
    pub fn named(name: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|rule| rule.name() == name)
    }

    /// Least spacing of a practice set for a rope team of 2 to 5.
    #[must_use]
    pub fn base_spacing(people: usize) -> Self {
        match people {
            ..=2 => Self::Spacing2M,
            3 => Self::Spacing3M,
            4 => Self::Spacing4M,
            _ => Self::Spacing5M,
        }
    }

    /// Chest coils at each end for a rope team of 2 to 5.
    #[must_use]
    pub fn chest_coils(people: usize) -> Self {
        match people {
            ..=2 => Self::ChestCoils2,
            3 => Self::ChestCoils3,
            4 => Self::ChestCoils4,
            _ => Self::ChestCoils5,
        }
    }

    pub(super) const fn index(self) -> usize {
        self as usize
    }
}
