//! Why no workbook could be made.

use std::fmt;

/// Why no workbook could be made.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum WorkbookError {
    /// The pairings were asked for, and there is no board.
    NoBoard,
    /// The typesetter refused our own templates, data or pictures.
    Fault(String),
}

impl fmt::Display for WorkbookError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            WorkbookError::NoBoard => {
                f.write_str("there is no pairings board for this dial: make one first, or leave this document out")
            }
            WorkbookError::Fault(what) => write!(
                f,
                "the workbook could not be set ({what}): this is a fault of the program, please report it with the dial file; nothing was changed"
            ),
        }
    }
}

impl std::error::Error for WorkbookError {}
