//! What leaves the house: sheets for the machine, tickets that lie beside it, pictures, figures, and the job folder.

mod dial_front;
mod folder;
mod job_files;
mod layers;
mod light;
mod picture;
mod png;
mod report;
mod sheet;
mod strip;
mod svg;
mod symmetry;
mod ticket;
mod ticket_picture;

pub use dial_front::{dial_front, findings_picture, wheel_face};
pub use folder::{FolderError, Written, write_job};
pub use job_files::{Make, job_files, slug};
pub use layers::{Look, look, path_data};
pub use png::{PngError, png};
pub use report::{job_report, report};
pub use sheet::sheet;
pub use strip::strip;
pub use symmetry::symmetry;
pub use ticket::ticket;
pub use ticket_picture::ticket_picture;
