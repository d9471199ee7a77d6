//! A file as a body: read as it is sent, so that a log of any size needs a few kilobytes.

use std::pin::Pin;
use std::task::{Context, Poll};

use axum::body::{Body, Bytes, HttpBody};
use hyper::body::Frame;
use tokio::fs::File;
use tokio::io::{AsyncRead, ReadBuf};

/// What is read at a time, in bytes.
const PIECE: usize = 64 * 1024;

struct FileBody {
    file: File,
    piece: Vec<u8>,
}

/// The body of a file, from where it stands to its end.
pub(super) fn of(file: File) -> Body {
    Body::new(FileBody { file, piece: vec![0; PIECE] })
}

impl HttpBody for FileBody {
    type Data = Bytes;
    type Error = std::io::Error;

    fn poll_frame(
        mut self: Pin<&mut Self>,
        cx: &mut Context<'_>,
    ) -> Poll<Option<Result<Frame<Bytes>, std::io::Error>>> {
        let this = &mut *self;
        let mut read = ReadBuf::new(&mut this.piece);
        match Pin::new(&mut this.file).poll_read(cx, &mut read) {
            Poll::Pending => Poll::Pending,
            Poll::Ready(Err(error)) => Poll::Ready(Some(Err(error))),
            Poll::Ready(Ok(())) if read.filled().is_empty() => Poll::Ready(None),
            Poll::Ready(Ok(())) => Poll::Ready(Some(Ok(Frame::data(Bytes::copy_from_slice(read.filled()))))),
        }
    }
}
