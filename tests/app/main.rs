//! The application as people use it, without a browser.
