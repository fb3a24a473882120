//! How the list of what a plan can find becomes an enum, its codes, levels and explanations.

macro_rules! facts {
    ($($(#[doc = $doc:literal])+ $kind:ident { $($field:ident: $type:ty),* } = $code:literal, $level:ident;)+) => {
        /// Something found, with the numbers, places and names that belong to it. Lengths in metres, slopes in
        /// degrees. The doc comment of each is what `check --explain` prints.
        ///
        /// ```
        /// use schrund::plan::fact::Fact;
        ///
        /// let plan = schrund::plan(&schrund::example::job()?)?;
        /// let two = plan.legs[1].findings.iter().find_map(|finding| match finding.fact()? {
        ///     Fact::TwoOverGap { over, left, effective_gap_m, spacing_m, .. } => {
        ///         Some((over, left, effective_gap_m - spacing_m))
        ///     }
        ///     _ => None,
        /// });
        /// assert_eq!(two, Some((&2, &1, 1.5)), "two of three fit onto one bridge of 15 m with 13.5 m between them");
        /// # Ok::<(), Vec<schrund::fault::Fault>>(())
        /// ```
        #[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
        #[serde(tag = "code", content = "values")]
        #[expect(missing_docs, reason = "the fields are named like those of the legs and set-ups they come from")]
        pub enum Fact { $($(#[doc = $doc])+ #[serde(rename = $code)] $kind { $($field: $type),* },)+ }

        impl Fact {
            /// The stable name, as printed and as `check --explain` takes it.
            #[must_use]
            pub fn code(&self) -> &'static str {
                match self { $(Self::$kind { .. } => $code,)+ }
            }

            /// How much it matters.
            #[must_use]
            pub fn level(&self) -> Level {
                match self { $(Self::$kind { .. } => Level::$level,)+ }
            }

            /// How far down the order of alarm it stands: what can kill first comes first.
            #[must_use]
            pub fn alarm(&self) -> usize {
                const ORDER: &[&str] = &[$($code,)+];
                let known = |code: &&str| *code == self.code();
                ORDER.iter().position(known).unwrap_or(ORDER.len())
            }

            /// What it means and what to do, in a few sentences.
            #[must_use]
            pub fn explain(&self) -> String {
                told(match self { $(Self::$kind { .. } => concat!($($doc, "\n",)+),)+ })
            }

            /// The numbers, places and names that belong to it, by name.
            #[must_use]
            pub fn values(&self) -> Value {
                let document = serde_json::to_value(self).unwrap_or_default();
                document.get("values").cloned().unwrap_or_default()
            }

            /// Every code with its level and its doc comment, in the order of alarm; [`crate::plan::explained::explained`] shows them.
            pub const KINDS: &'static [(&'static str, Level, &'static str)] =
                &[$(($code, Level::$level, concat!($($doc, "\n",)+)),)+];
        }
    };
}

pub(super) use facts;
