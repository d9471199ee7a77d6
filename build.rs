//! Lets `sqlx::migrate!` and the language files notice a new file.
fn main() {
    println!("cargo:rerun-if-changed=migrations");
    println!("cargo:rerun-if-changed=templates/words");
}
