//! A limit's line in words: source, id and set, so that whoever reads a result knows which line decided.

use crate::rules::LimitLine;
use crate::words::Words;

/// "UN R67 17.9; shut.2s of UN baseline", with a mark where nobody read the source.
pub fn line_said(w: &Words, line: &LimitLine) -> String {
    let key = if line.checked || line.practice { "limit-line" } else { "limit-line-unread" };
    let values = [
        ("source", line.source.as_str().into()),
        ("line", line.id.as_str().into()),
        ("set", line.set.title.as_str().into()),
    ];
    w.tv(key, &values)
}
