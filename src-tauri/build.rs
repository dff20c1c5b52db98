//! Lists every command for Tauri.
//!
//! Without this list every window of ours might call every command. With it a window may call only what its file in
//! `capabilities/` allows, and a command that is missing here may be called by none.

fn main() {
    let commands = tauri_build::AppManifest::new().commands(&[
        "labels",
        "step_view",
        "act",
        "first_supervisor",
        "recover",
        "hand_over",
        "sign_off",
        "change_pin",
        "keep_people",
        "waive",
        "look_at_procedure",
        "shipped_procedure",
        "sign_for_procedure",
        "preview",
        "read_back",
        "settings",
        "set_preferences",
        "pedal",
        "say_again",
        "attend",
        "talk",
        "confirm_heard",
        "bay_view",
        "review_view",
        "review_act",
        "seal",
        "send_back",
        "correct",
        "person_record",
        "cars",
        "manual",
        "car",
        "instruments",
        "origin",
        "book_view",
        "copy_to",
        "export_job",
        "import_job",
        "imported_job",
        "customer",
        "set_customer",
        "erase_customer",
        "verify",
        "coach",
        "write_sheet",
    ]);
    // The pages are embedded when this package compiles, so it compiles again when they were built again.
    println!("cargo:rerun-if-changed=../ui/dist");
    if let Err(error) = tauri_build::try_build(tauri_build::Attributes::new().app_manifest(commands)) {
        eprintln!("{error:#}");
        std::process::exit(1);
    }
}
