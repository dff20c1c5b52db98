//! Has cargo build the crate again when a migration is added; the macro that embeds them cannot see new files by itself.

fn main() {
    println!("cargo::rerun-if-changed=migrations");
}
