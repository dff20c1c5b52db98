//! Where a book lies, and the files beside it.

use std::fs::{self, File, OpenOptions, TryLockError};
use std::io;
use std::path::{Path, PathBuf};

use crate::BookError;
use crate::error::AtPath as _;

/// The one true path of a book. Links are followed, so that two names of a book have the same lock.
#[derive(Debug, Clone)]
pub(crate) struct Place {
    folder: PathBuf,
    name: String,
    path: PathBuf,
}

impl Place {
    /// Resolves `path`, where a book is or may be made.
    pub(crate) fn of(path: &Path) -> Result<Self, BookError> {
        let path = match fs::canonicalize(path) {
            Ok(resolved) => resolved,
            Err(error) if error.kind() == io::ErrorKind::NotFound => not_there_yet(path)?,
            Err(source) => return Err(BookError::File { path: path.into(), source }),
        };
        if path.is_dir() {
            return Err(BookError::NotABook { path, found: crate::Instead::Folder });
        }
        let (Some(folder), Some(name)) = (path.parent(), path.file_name().and_then(|name| name.to_str())) else {
            return Err(BookError::NotABook { path, found: crate::Instead::NoPlainName });
        };
        Ok(Self { folder: folder.into(), name: name.into(), path: path.clone() })
    }

    pub(crate) fn path(&self) -> &Path {
        &self.path
    }

    /// The name under which a new book is made before it gets its own.
    pub(crate) fn unfinished(&self) -> PathBuf {
        self.folder.join(format!(".{}.new", self.name))
    }

    /// SQLite's write-ahead log: the newest entries may be in it alone.
    pub(crate) fn log(&self) -> PathBuf {
        with_suffix(&self.path, "-wal")
    }

    /// Where the contents of a book go that was removed while it was open.
    pub(crate) fn rescued(&self) -> PathBuf {
        with_suffix(&self.path, ".rescued")
    }

    /// Which file the book is: device and number, where the system tells. None when it is gone.
    pub(crate) fn identity(&self) -> Option<(u64, u64)> {
        #[cfg(unix)]
        {
            use std::os::unix::fs::MetadataExt as _;
            self.path.metadata().ok().map(|data| (data.dev(), data.ino()))
        }
        // Other systems do not let an open file be removed.
        #[cfg(not(unix))]
        None
    }

    fn lock_file(&self) -> PathBuf {
        self.folder.join(format!("{}.lock", self.name))
    }

    /// True when some program has, or once had, this book open for writing.
    pub(crate) fn has_lock_file(&self) -> bool {
        self.lock_file().exists()
    }

    /// Takes the lock, which is held until the file is dropped.
    ///
    /// It is a file of its own because opening and closing the database beside SQLite would drop SQLite's locks. It is
    /// never removed: another program may be about to lock it.
    pub(crate) fn lock(&self) -> Result<File, BookError> {
        let file = OpenOptions::new().write(true).create(true).truncate(false).open(self.lock_file());
        let file = file.at_path(&self.path)?;
        match file.try_lock() {
            Ok(()) => Ok(file),
            Err(TryLockError::WouldBlock) => Err(BookError::LockedByAnother { path: self.path.clone() }),
            Err(TryLockError::Error(source)) => Err(source).at_path(&self.path),
        }
    }

    /// Removes what an interrupted creation left. Only to be called with the lock held.
    pub(crate) fn clear_unfinished(&self) -> Result<(), BookError> {
        for suffix in ["", "-wal", "-shm", "-journal"] {
            match fs::remove_file(with_suffix(&self.unfinished(), suffix)) {
                Err(error) if error.kind() != io::ErrorKind::NotFound => return Err(error).at_path(&self.path),
                _ => {}
            }
        }
        Ok(())
    }

    /// Gives the finished new book its name, and syncs both to the disk. Only to be called with the lock held.
    pub(crate) fn finish(&self) -> Result<(), BookError> {
        let sync_and_rename = || {
            OpenOptions::new().write(true).open(self.unfinished())?.sync_all()?;
            fs::rename(self.unfinished(), &self.path)?;
            // The name is kept by the folder. Other systems than Unix cannot open one to sync it.
            if cfg!(unix) { File::open(&self.folder)?.sync_all() } else { Ok(()) }
        };
        sync_and_rename().at_path(&self.path)
    }
}

fn not_there_yet(path: &Path) -> Result<PathBuf, BookError> {
    let Some(name) = path.file_name() else {
        return Err(BookError::NoSuchFolder { folder: path.into() });
    };
    let folder = path.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."));
    match fs::canonicalize(folder) {
        Ok(resolved) => Ok(resolved.join(name)),
        Err(error) if error.kind() == io::ErrorKind::NotFound => Err(BookError::NoSuchFolder { folder: folder.into() }),
        Err(source) => Err(BookError::File { path: folder.into(), source }),
    }
}

fn with_suffix(path: &Path, suffix: &str) -> PathBuf {
    let mut name = path.as_os_str().to_owned();
    name.push(suffix);
    name.into()
}
