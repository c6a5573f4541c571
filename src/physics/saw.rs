//! What a round blade leaves at the end of a cut. Lengths in metres.

/// How far the blade must run on past a point for the cut to have its full depth there: `√(d(D − d))` for depth d and blade
/// diameter D. A depth beyond the middle of the blade counts as its radius.
///
/// Source: geometry (the half chord of a circle). Worked number: 14 in blade, 2 in deep, 4.899 in.
pub fn run_out(depth: f64, blade: f64) -> f64 {
    let depth = depth.min(blade / 2.0);
    (depth * (blade - depth)).sqrt()
}

/// The area of the run-out seen from the side, from a distance past the point of full depth to its end, in square metres.
///
/// Source: geometry, the area under the arc of the blade: `∫ √(r² − x²) − (r − d) dx` with r = D/2. Worked number: 14 in blade, 2 in
/// deep, from 0: 6.745 in².
pub fn run_out_area(depth: f64, blade: f64, from: f64) -> f64 {
    let radius = blade / 2.0;
    let depth = depth.min(radius);
    let end = run_out(depth, blade);
    let from = from.min(end);
    let under_arc = |x: f64| {
        0.5 * (x * (radius * radius - x * x).max(0.0).sqrt() + radius * radius * (x / radius).min(1.0).asin())
            - (radius - depth) * x
    };
    under_arc(end) - under_arc(from)
}

#[cfg(test)]
mod tests {
    use super::{run_out, run_out_area};

    const INCH: f64 = 0.0254;

    #[test]
    fn the_half_chord_of_usual_blades() {
        // 14 in / 2 in, 12 in / 1.5 in, 16 in / 2 in, 18 in / 2.5 in.
        for (blade, depth, expected) in [(14.0, 2.0, 4.899), (12.0, 1.5, 3.969), (16.0, 2.0, 5.292), (18.0, 2.5, 6.225)]
        {
            let got = run_out(depth * INCH, blade * INCH) / INCH;
            assert!((got / expected - 1.0).abs() < 1e-3, "{blade} in, {depth} in: {got}");
        }
    }

    #[test]
    fn the_area_is_that_of_the_arc_summed_in_slices() {
        let (blade, depth) = (14.0 * INCH, 2.0 * INCH);
        for from in [0.0, 1.5 * INCH] {
            let reach = run_out(depth, blade) - from;
            let slices = 100_000;
            let sum: f64 = (0..slices)
                .map(|index| {
                    let x = from + (f64::from(index) + 0.5) / f64::from(slices) * reach;
                    let radius = blade / 2.0;
                    ((radius * radius - x * x).sqrt() - (radius - depth)) * reach / f64::from(slices)
                })
                .sum();
            assert!((run_out_area(depth, blade, from) / sum - 1.0).abs() < 1e-6);
        }
        let square_inches = run_out_area(depth, blade, 0.0) / (INCH * INCH);
        assert!((square_inches - 6.745).abs() < 1e-3, "{square_inches}");
    }

    #[test]
    fn a_blade_cuts_no_deeper_than_its_middle() {
        assert_eq!(run_out(0.3, 0.4), run_out(0.2, 0.4));
        assert!(run_out_area(0.3, 0.4, 0.0).is_finite() && run_out_area(0.3, 0.4, 1.0) == 0.0);
    }
}
