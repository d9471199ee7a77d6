//! Files kept by their checksum.
