//! The packages for Debian and what is made from it: the app with the command line, and the voice model as a second one.
//!
//! Debian's own tools make them, which come with a compiler there: `dpkg-shlibdeps` says which packages hold the libraries
//! that are linked, `dpkg-deb` packs. [`tree`]: the files as they will be installed. [`licences`]: the copyright file.

mod licences;
mod tree;

use crate::call::{self, Done};
use crate::run::APP_FEATURES;
use crate::{system, ui, voice};
use std::fs;
use std::path::PathBuf;
use std::process::Command;
use tree::Tree;

/// Programs of the package.
const PROGRAMS: [&str; 2] = ["bayhand", "bayhand-cli"];

/// Sizes of the icon, pixels.
const ICONS: [&str; 3] = ["32x32", "128x128", "256x256"];

/// Makes both packages, says where they lie and how large they are, and gives their files.
///
/// # Errors
/// In words: what is missing, did not build, or has no licence text. Without a voice model that can be fetched the first
/// package is made all the same, and it is said that the other was not.
pub fn package() -> Done<Vec<PathBuf>> {
    let mut made = vec![app()?];
    match voice() {
        Ok(voice) => made.push(voice),
        Err(says) => println!("NOT MADE: the package of the voice model. {says}"),
    }
    println!();
    for package in &made {
        let size = fs::metadata(package).map_err(|error| format!("{}: {error}.", package.display()))?.len();
        println!("{:6.1} MB  {}", size as f64 / 1e6, package.display());
    }
    Ok(made)
}

/// Makes the package of the app and gives its file.
fn app() -> Done<PathBuf> {
    if !["dpkg-deb", "dpkg-shlibdeps"].iter().all(|tool| call::on_path(tool)) {
        return Err(
            "A package is made by dpkg-deb and dpkg-shlibdeps (Debian's package dpkg-dev), which are missing.".into()
        );
    }
    system::prepare(system::For::Running)?;
    ui::install()?;
    // The pages first: they are embedded when the app compiles.
    ui::build()?;
    let mut build = call::cargo();
    build.args(["build", "--release", "--locked", "--features", APP_FEATURES]);
    call::run(build.args(PROGRAMS.iter().flat_map(|name| ["--package", name])))?;
    let (target, root) = (call::target()?, call::root());
    let tree = Tree::new(&target.join("package/bayhand"))?;
    for name in PROGRAMS {
        tree.program(&target.join("release").join(name), &format!("usr/bin/{name}"))?;
    }
    tree.text("usr/share/applications/bayhand.desktop", &read("src-tauri/package/bayhand.desktop")?)?;
    for size in ICONS {
        let to = format!("usr/share/icons/hicolor/{size}/apps/bayhand.png");
        tree.file(&root.join("icons").join(format!("{size}.png")), &to)?;
    }
    tree.file(&root.join("icons/bayhand.svg"), "usr/share/icons/hicolor/scalable/apps/bayhand.svg")?;
    tree.packed_text("usr/share/doc/bayhand/CHANGELOG.md", &read("CHANGELOG.md")?)?;
    tree.text("usr/share/doc/bayhand/copyright", &licences::copyright()?)?;
    let depends = tree.linked(&PROGRAMS.map(|name| format!("usr/bin/{name}")))?;
    let architecture = call::told(Command::new("dpkg").arg("--print-architecture"))?;
    tree.pack(&read("src-tauri/package/control")?, architecture.trim(), &depends)
}

/// Makes the package of the voice model, which is fetched when it is not there yet, and gives its file.
fn voice() -> Done<PathBuf> {
    voice::voice()?;
    let tree = Tree::new(&call::target()?.join("package/bayhand-voice-en"))?;
    let mut copy = Command::new(call::built("bayhand-voice")?);
    call::run(copy.arg("copy").arg(tree.place("usr/share/bayhand/voice/tiny-en.model")?))?;
    tree.text("usr/share/doc/bayhand-voice-en/copyright", &read("src-tauri/package/voice-copyright")?)?;
    tree.pack(&read("src-tauri/package/voice-control")?, "all", "")
}

/// A text of the project, by its path from the root.
fn read(path: &str) -> Done<String> {
    fs::read_to_string(call::root().join(path)).map_err(|error| format!("{path} could not be read: {error}."))
}
