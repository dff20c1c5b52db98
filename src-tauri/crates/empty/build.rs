//! Reads the windows for Tauri.

fn main() {
    tauri_build::build();
}
