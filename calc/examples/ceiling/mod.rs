//! A ceiling whose layout is timed, natively and as wasm.

use calc::carpentry::cut_stock::Stock;
use calc::carpentry::joints::{JointTask, Span};

/// Sixteen courses over thirteen ribs from three stock lengths.
pub fn ceiling() -> JointTask {
    let ribs = [212, 631, 1049, 1472, 1888, 2311, 2727, 3150, 3566, 3988, 4407, 4829, 5246];
    let span = Span {
        from_mm: 3.0,
        to_mm: 5477.0,
        joints_mm: ribs.iter().map(|at| f64::from(*at)).collect(),
    };
    let stock = [(2438.4, 11.5), (3048.0, 14.4), (3657.6, 17.9)].map(|(length_mm, price)| Stock {
        length_mm,
        price: Some(price),
        on_hand: 0,
        available: None,
    });
    JointTask {
        courses: vec![vec![span]; 16],
        support_width_mm: 38.0,
        edge_distance_mm: 9.5,
        stagger_mm: 400.0,
        least_piece_mm: 304.8,
        joint_price: 0.0,
        stock: stock.to_vec(),
        kerf_mm: 3.0,
        end_trim_mm: 0.0,
        effort: 24_000_000,
    }
}
