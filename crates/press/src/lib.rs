//! What leaves the house: sheets for the machine, tickets that lie beside it, pictures, figures, and the job folder.

mod card_page;
mod dial_front;
mod folder;
mod job_files;
mod layers;
mod light;
mod magnet_map;
mod magnets_page;
mod page;
mod picture;
mod png;
mod pole_plan;
mod report;
mod sheet;
mod strip;
mod svg;
mod symmetry;
mod ticket;
mod ticket_picture;
mod turning_page;

pub use card_page::{card_page, card_sample};
pub use dial_front::{dial_front, findings_picture, wheel_face};
pub use folder::{FolderError, Written, write_job};
pub use job_files::{Make, job_files, slug};
pub use layers::{Look, look, path_data};
pub use magnet_map::magnet_map;
pub use magnets_page::magnets_page;
pub use png::{PngError, png};
pub use pole_plan::pole_plan;
pub use report::{chooser_report, job_report, job_schema, map_report, report, report_schema};
pub use sheet::sheet;
pub use strip::strip;
pub use symmetry::symmetry;
pub use ticket::ticket;
pub use ticket_picture::ticket_picture;
pub use turning_page::{Wardrobe, chosen, code, turning_page};
