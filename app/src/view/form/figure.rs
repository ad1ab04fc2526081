//! Where the tape goes: small drawings, the thing in pencil and the measure in the marking accent.

use calc::ask::Figure;

/// A figure as inline SVG; empty where there is none.
pub fn figure(which: Figure) -> String {
    let [thing, measure] = paths(which);
    if thing.is_empty() {
        return String::new();
    }
    [
        "<svg class=\"figure\" viewBox=\"0 0 64 40\" width=\"64\" height=\"40\" aria-hidden=\"true\"><path d=\"",
        thing,
        "\"/><path class=\"tape-at\" d=\"",
        measure,
        "\"/></svg>",
    ]
    .concat()
}

/// The thing, and the measure with its ticks; y down, 64 by 40.
fn paths(which: Figure) -> [&'static str; 2] {
    match which {
        Figure::None => ["", ""],
        Figure::Along => ["M4 8h56v15H4zM10 15h20M36 12h18", "M4 32h56M4 28v8M60 28v8"],
        Figure::Across => ["M14 8h48M14 26h48M14 8v18M24 14h30M20 20h24", "M6 8v18M2 8h8M2 26h8"],
        Figure::Thickness => {
            ["M14 18h46v8H14zM14 18l8-10h40l-2 10", "M6 18v8M2 18h8M2 26h8M6 10v8M6 26v8"]
        }
        Figure::Gap => ["M2 6h22v20H2zM40 6h22v20H40z", "M24 33h16M24 29v8M40 29v8"],
        Figure::Diameter => [
            "M19 16a13 13 0 1 0 26 0a13 13 0 1 0-26 0M32 12v8M28 16h8",
            "M19 36h26M19 20v19M45 20v19",
        ],
        Figure::Depth => ["M2 8h20v24h20V8h20", "M32 8v24M28 8h8M28 32h8"],
        Figure::Standoff => ["M2 12h24M32 2v28H8", "M14 12v18M10 12h8M10 30h8"],
        Figure::RimHeight => ["M24 4v28H4", "M40 4v28M36 4h8M36 32h8"],
        Figure::CeilingDepth => ["M2 6h60M2 28h30M2 32h30V28", "M46 6v22M42 6h8M34 28h16"],
        Figure::Spacing => {
            ["M8 6h12v18H8zM44 6h12v18H44zM14 2v26M50 2v26", "M14 34h36M14 30v8M50 30v8"]
        }
        Figure::FromEnd => ["M62 6H8v16h54M30 10l8 8M38 10l-8 8", "M8 32h26M8 28v8M34 28v8"],
        Figure::FromFront => [
            "M8 2v36M8 4l-6 6M8 14l-6 6M8 24l-6 6M44 4v20M40 10l8 8M48 10l-8 8",
            "M8 32h36M44 28v8",
        ],
        Figure::FromLeft => [
            "M4 34h58M12 34l-6 5M24 34l-6 5M36 34l-6 5M48 34l-6 5M40 4l8 8M48 4l-8 8",
            "M24 34V8M20 8h8",
        ],
        Figure::BodyLength => [
            "M2 4h60v32H2zM14 4v32M26 4v32M38 4v32M50 4v32",
            "M2 20h60M6 16l-4 4 4 4M58 16l4 4-4 4",
        ],
        Figure::BodyWidth => {
            ["M2 4h60v32H2zM14 4v32M26 4v32M38 4v32M50 4v32", "M32 4v32M28 8l4-4 4 4M28 32l4 4 4-4"]
        }
        Figure::Height => ["M6 6q26-6 52 0v30H6z", "M32 4v32M28 8l4-4 4 4M28 32l4 4 4-4"],
        Figure::OneWay => [
            "M2 26h14v10H2zM47 31a6 6 0 1 0 12 0a6 6 0 1 0-12 0",
            "M9 26V6h44v19M9 26l-4-6M9 26l4-6M53 25l-4-6M53 25l4-6",
        ],
        Figure::Wheels => [
            "M4 4h56v16H4zM8 20a7 7 0 1 0 14 0a7 7 0 1 0-14 0M42 20a7 7 0 1 0 14 0a7 7 0 1 0-14 0",
            "M15 35h34M15 20v19M49 20v19",
        ],
    }
}
