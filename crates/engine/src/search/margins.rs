//! The margins of the search: numbers that say how daring its pruning is, by name, so that others can be tried.

macro_rules! margins {
    ($($(#[$doc:meta])* $variant:ident = $name:literal, $value:literal;)*) => {
        /// One margin. Centipawns and plies unless it says otherwise.
        #[derive(Debug, Clone, Copy, PartialEq, Eq)]
        #[repr(u8)]
        pub enum Margin {
            $($(#[$doc])* $variant,)*
        }

        impl Margin {
            /// All of them.
            pub const ALL: &'static [Margin] = &[$(Margin::$variant,)*];

            /// Its name in lists.
            #[must_use]
            pub fn name(self) -> &'static str {
                match self {
                    $(Margin::$variant => $name,)*
                }
            }

            /// What it is when nothing else is said.
            #[must_use]
            pub fn standard(self) -> i32 {
                STANDARD[self as usize]
            }
        }

        const STANDARD: [i32; [$($value),*].len()] = [$($value),*];
    };
}

margins! {
    /// Half the first window at the root.
    Aspiration = "aspiration-window", 22;
    /// Depth up to which a node far above the window is cut.
    ReverseFutilityDepth = "reverse-futility-depth", 6;
    /// A ply of depth is worth so much there.
    ReverseFutility = "reverse-futility-margin", 75;
    /// Depth up to which a node far below the window is left to quiescence.
    RazoringDepth = "razoring-depth", 3;
    /// How far below, doubled for each ply of depth.
    Razoring = "razoring-margin", 200;
    /// Plies that a pass saves, beside a quarter of the depth.
    NullMove = "null-move-reduction", 3;
    /// A pass is tried where the static value is at most so far below the window.
    NullMoveStatic = "null-move-static", 0;
    /// A pass saves one ply more from so far above the window on.
    NullMoveFar = "null-move-far", 250;
    /// Depth up to which quiet moves far below the window are left out.
    FutilityDepth = "futility-depth", 6;
    /// How far below, at first and for each ply.
    Futility = "futility-margin", 90;
    /// Depth up to which late quiet moves are left out.
    LateMovesDepth = "late-moves-depth", 7;
    /// Quiet moves tried in any case.
    LateMoves = "late-moves-first", 3;
    /// Material that a quiet move may lose, for each ply.
    ExchangeQuiet = "exchange-quiet", 50;
    /// Material that a capture may lose, for each ply.
    ExchangeCapture = "exchange-capture", 110;
    /// Reduction of every late move, in 256ths of a ply.
    ReductionBase = "reduction-base", 100;
    /// Its growth with the product of the logarithms of depth and number, in 256ths.
    ReductionSlope = "reduction-slope", 70;
    /// History that changes a reduction by a ply.
    ReductionHistory = "reduction-history", 6000;
    /// Least depth of a singular test.
    SingularDepth = "singular-depth", 7;
    /// How far below the table's value all others must be, beside one for each ply.
    Singular = "singular-margin", 12;
    /// How far below for a second ply.
    SingularTwice = "singular-twice", 40;
    /// Weight of a capture's history beside twelve times the piece taken, in 16ths.
    CaptureHistory = "capture-history-weight", 4;
    /// What a capture in quiescence may gain beside the piece taken.
    Delta = "delta-margin", 180;
    /// Least depth whose errors are learned.
    CorrectionDepth = "correction-depth", 4;
    /// Weight of a new error among the old ones, in 256ths for each ply of depth.
    Correction = "correction-weight", 1;
}

/// A value for each margin.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Margins([i32; STANDARD.len()]);

impl Margins {
    /// What the search uses when nothing else is said.
    pub const STANDARD: Margins = Margins(STANDARD);

    /// The value of one.
    #[must_use]
    pub fn get(&self, margin: Margin) -> i32 {
        self.0[margin as usize]
    }

    /// The same with another value of one.
    #[must_use]
    pub fn with(mut self, margin: Margin, value: i32) -> Margins {
        self.0[margin as usize] = value;
        self
    }
}

impl Default for Margins {
    fn default() -> Margins {
        Margins::STANDARD
    }
}
