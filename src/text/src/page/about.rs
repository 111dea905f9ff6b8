//! What Finrun is.

/// What the calculation rests on, paragraph by paragraph.
pub const ABOUT: &[&str] = &[
    "Finrun sizes hot-water fin-tube baseboard: the heat loss of each room, stock lengths of \
     element at the water temperature that reaches it, and piping that works, from one loop to zones \
     of any kind. It needs no connection and no account, and keeps jobs in this browser alone.",
    "Heat loss: steady, on the design day. U-values by ISO 6946 from layers, IECC default tables, \
     or yours. No gains from sun or people, no reheat, no hidden safety factor.",
    "Ground: slabs, basements and crawl spaces by ISO 13370, whose formulas were read in public \
     implementations of it, or by the F-factors of US codes. Unheated spaces at the temperature of \
     their own balance.",
    "Air: by class, blower door or leakage area, with the model of Sherman and Grimsrud, shared among \
     the rooms by the area they show to outdoors and to unheated spaces.",
    "How sure: ranges of the inputs are judgement and can be changed; they are carried through by \
     exact derivatives to first order.",
    "Climate: statistics of 1,020 US stations from the Typical Meteorological Year 3 files of the \
     National Renewable Energy Laboratory for the U.S. Department of Energy, checked against NOAA \
     daily records; middles of ZIP areas from the US Census Bureau. Neither endorses Finrun. Such \
     years are not made for the worst case: a station is good to about 3 °F, less in mountains and \
     in Alaska.",
    "Element: the rating's power law, carried along the tube exactly as the water cools. Pieces are \
     chosen from the supply on, for as little element as does it or for what you ask instead; the page \
     says whether no choice is better, or how far off it may be. Prices are your own.",
    "Piping: every arrangement is solved as one network by the global gradient algorithm of Todini \
     and Pilati, flow and temperature and lengths together. Water properties after IAPWS, friction after Darcy, Weisbach and Colebrook, fittings in \
     the form of Crane TP-410 from memory.",
    "Boiler and fill: the diaphragm tank by the ASHRAE Handbook, boiling by IAPWS-IF97, propylene \
     glycol by fits to Melinder's data; burner cycles by the heat that the water alone stores.",
    "Limits: no thermal bridges beyond the framing; the design day only, no season; hot risers push \
     nothing; typical circulators are nobody's. What stands marked as common practice or judgement has no source.",
    "Typeface: Barlow Semi Condensed, SIL Open Font License 1.1.",
];
