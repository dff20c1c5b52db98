//! The files of a package as they will be installed, and packing them.

use crate::call::{self, Done};
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

/// A folder that stands for the root of the system on which the package will be installed.
pub struct Tree {
    root: PathBuf,
}

impl Tree {
    /// An empty one at `root`; what was there goes.
    ///
    /// # Errors
    /// When the folder cannot be made anew.
    pub fn new(root: &Path) -> Done<Self> {
        if root.exists() {
            fs::remove_dir_all(root).map_err(|error| no(root, &error))?;
        }
        fs::create_dir_all(root).map_err(|error| no(root, &error))?;
        Ok(Self { root: root.to_owned() })
    }

    /// Where the file that will be installed as `/PLACE` is to be written; the folder for it is there.
    ///
    /// # Errors
    /// When that folder cannot be made.
    pub fn place(&self, place: &str) -> Done<PathBuf> {
        let file = self.root.join(place);
        let folder = file.parent().unwrap_or(&self.root);
        fs::create_dir_all(folder).map_err(|error| no(folder, &error))?;
        Ok(file)
    }

    /// A copy of the file `from`.
    ///
    /// # Errors
    /// When it cannot be copied.
    pub fn file(&self, from: &Path, place: &str) -> Done {
        fs::copy(from, self.place(place)?).map(drop).map_err(|error| no(from, &error))
    }

    /// A copy of the program `from`, which everybody may run.
    ///
    /// # Errors
    /// When it cannot be copied.
    pub fn program(&self, from: &Path, place: &str) -> Done {
        self.file(from, place)?;
        call::run(Command::new("chmod").arg("755").arg(self.root.join(place)))
    }

    /// A file with this text.
    ///
    /// # Errors
    /// When it cannot be written.
    pub fn text(&self, place: &str, text: &str) -> Done {
        let file = self.place(place)?;
        fs::write(&file, text).map_err(|error| no(&file, &error))
    }

    /// A file with this text, packed as `PLACE.gz`.
    ///
    /// # Errors
    /// When it cannot be written or packed.
    pub fn packed_text(&self, place: &str, text: &str) -> Done {
        self.text(place, text)?;
        // Without the time, so that the same text gives the same file.
        call::run(Command::new("gzip").args(["-9", "--no-name", "--force"]).arg(self.root.join(place)))
    }

    /// The packages that hold the libraries which these programs link, as a `Depends` field names them.
    ///
    /// # Errors
    /// When a library belongs to no package.
    pub fn linked(&self, programs: &[String]) -> Done<String> {
        // The tool reads a source package's `debian/control`, of which it needs only that it is there.
        let source = self.root.with_extension("source");
        fs::create_dir_all(source.join("debian")).map_err(|error| no(&source, &error))?;
        let control = "Source: bayhand\n\nPackage: bayhand\nArchitecture: any\n";
        fs::write(source.join("debian/control"), control).map_err(|error| no(&source, &error))?;
        let mut tool = Command::new("dpkg-shlibdeps");
        tool.current_dir(&source).arg("-O").args(programs.iter().map(|program| self.root.join(program)));
        let told = call::told(&mut tool)?;
        let depends = told.lines().find_map(|line| line.strip_prefix("shlibs:Depends="));
        depends.map(str::to_owned).ok_or_else(|| format!("dpkg-shlibdeps named no package: {told:?}"))
    }

    /// Packs it beside its folder, described by `control` with its `{fields}` filled in, and gives the package.
    ///
    /// # Errors
    /// When it cannot be packed.
    pub fn pack(&self, control: &str, architecture: &str, depends: &str) -> Done<PathBuf> {
        let control = control
            .replace("{version}", env!("CARGO_PKG_VERSION"))
            .replace("{architecture}", architecture)
            .replace("{size}", &size(&self.root)?.div_ceil(1024).to_string())
            .replace("{depends}", depends);
        self.text("DEBIAN/control", &control)?;
        self.text("DEBIAN/md5sums", &self.sums()?)?;
        let named = self.root.file_name().unwrap_or_default().to_string_lossy();
        let package = self.root.with_file_name(format!("{named}_{}_{architecture}.deb", env!("CARGO_PKG_VERSION")));
        // Whatever mask this person's files are made under.
        call::run(Command::new("chmod").args(["-R", "u=rwX,go=rX"]).arg(&self.root))?;
        call::run(Command::new("dpkg-deb").args(["--root-owner-group", "--build"]).arg(&self.root).arg(&package))?;
        Ok(package)
    }

    /// What `dpkg --verify` will compare the installed files with.
    fn sums(&self) -> Done<String> {
        let mut files = files(&self.root)?;
        files.sort();
        let names = files.iter().filter_map(|file| file.strip_prefix(&self.root).ok());
        let names = names.filter(|name| !name.starts_with("DEBIAN"));
        call::told(Command::new("md5sum").arg("--").args(names).current_dir(&self.root))
    }
}

/// All files below `folder`.
fn files(folder: &Path) -> Done<Vec<PathBuf>> {
    let mut found = Vec::new();
    for entry in fs::read_dir(folder).map_err(|error| no(folder, &error))? {
        let path = entry.map_err(|error| no(folder, &error))?.path();
        if path.is_dir() { found.extend(files(&path)?) } else { found.push(path) }
    }
    Ok(found)
}

/// Bytes of all files below `folder`.
fn size(folder: &Path) -> Done<u64> {
    files(folder)?.iter().map(|file| fs::metadata(file).map(|m| m.len()).map_err(|error| no(file, &error))).sum()
}

fn no(path: &Path, error: &std::io::Error) -> String {
    format!("{} cannot be had: {error}.", path.display())
}
