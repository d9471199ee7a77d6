//! Canonical content, signature, fingerprint.
