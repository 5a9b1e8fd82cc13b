//! Against magpylib, a general-purpose field library (tools/magnet_peer.py).

use crate::table::{disc, pair, rows};

/// Forces by its mesh. How far two of its meshes (a factor 4 in cells) differ tells its error, with
/// the factor of safety 3 for a study of two meshes (P. J. Roache, Perspective: a method for
/// uniform reporting of grid refinement studies, J. Fluids Eng. 116 (1994) 405-413); its finite
/// differences leave about 1e-6 besides.
#[test]
fn forces() {
    let mut errors = Vec::new();
    for row in rows(include_str!("../data/peer_forces.csv"), 11) {
        let found = pair(&row).forces(row[6], row[7]);
        let length = row[8].hypot(row[9]);
        let error = (found.axial - row[8]).hypot(found.lateral - row[9]);
        assert!(error < 3.0 * row[10] + 1e-6 * length, "{row:?}: {found:?}, {:.1e}", error / length);
        errors.push(error / length);
    }
    // The bound of a single row may be wide where the mesh is poor; most of them are narrow.
    errors.sort_by(f64::total_cmp);
    assert!(errors[errors.len() / 2] < 2e-4, "{errors:?}");
    assert!(errors[errors.len() - 1] < 5e-3, "{errors:?}");
}

/// Fields by its closed forms, inside and out.
#[test]
fn fields() {
    for row in rows(include_str!("../data/peer_fields.csv"), 7) {
        let found = disc(row[0], row[1], row[2]).field(row[3], row[4]);
        let length = row[5].hypot(row[6]);
        let error = (found.away - row[5]).hypot(found.along - row[6]);
        // Its own digits run out far away, where it subtracts two ends of the disc.
        assert!(error < 1e-10 * length, "{row:?}: {found:?}, {:.1e}", error / length);
    }
}
