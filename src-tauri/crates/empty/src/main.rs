//! An app of the same three windows as ours with nothing in them: what `cargo xtask bench windows` compares ours with.
//!
//! *Invariant:* knows nothing of the project but how large its windows are.

fn main() -> tauri::Result<()> {
    tauri::Builder::default().run(tauri::generate_context!())
}
