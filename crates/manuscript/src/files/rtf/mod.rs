//! Rich Text Format (Specification 1.9): groups, what each holds, and the words of its body.

mod body;
mod code_pages;
mod tokens;

use super::error::FileError;
use super::{Taken, own_comments, running_heads};
use body::Body;
use tokens::Tokens;

/// Reads a file.
///
/// # Errors
///
/// Its groups stand too deep in each other, or it holds too much text.
pub(super) fn read(bytes: &[u8]) -> Result<Taken, FileError> {
    let mut body = Body::default();
    for token in Tokens::new(bytes) {
        body.token(token)?;
    }
    let (own, hidden, letters, running) = body.notes();
    let mut taken = Taken {
        parts: body.finish(),
        said: Vec::new(),
    };
    taken.said.extend(running_heads(&running));
    taken.said.extend(own_comments(own));
    taken.said.extend(hidden.then(|| "hidden text is left out".to_owned()));
    taken.said.extend(letters);
    Ok(taken)
}
