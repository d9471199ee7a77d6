//! A message to an envelope, and the transports that carry it.
