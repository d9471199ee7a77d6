//! The folder that an export is written into: empty before, and nothing is ever written beside it.

use std::collections::HashSet;
use std::fs::{self, DirBuilder, File};
use std::io::{ErrorKind, Write};
use std::path::{Path, PathBuf};

use anyhow::{Context, bail};

/// A folder that may be written into.
#[derive(Debug)]
pub struct Target {
    folder: PathBuf,
    taken: HashSet<String>,
}

impl Target {
    /// Looks whether `folder` may be written into, and changes nothing.
    ///
    /// # Errors
    /// One sentence: it is a file, it holds something already, or it lies in the shop's own folder `data`.
    pub fn look(folder: &Path, data: &Path) -> anyhow::Result<()> {
        match fs::read_dir(folder).map(|mut entries| entries.next().is_some()) {
            Ok(true) => bail!(
                "the folder {} is not empty; an export takes a folder that is empty or not there yet",
                folder.display()
            ),
            Ok(false) => {}
            Err(error) if error.kind() == ErrorKind::NotFound => {
                if fs::symlink_metadata(folder).is_ok() {
                    bail!("{} points to a place that is not there", folder.display());
                }
            }
            Err(error) if error.kind() == ErrorKind::NotADirectory => bail!("{} is no folder", folder.display()),
            Err(error) => return Err(error).with_context(|| format!("cannot read the folder {}", folder.display())),
        }
        if let (Ok(data), Ok(place)) = (data.canonicalize(), nearest(folder))
            && place.starts_with(&data)
        {
            bail!("{} lies in the shop's own folder {}; name another", folder.display(), data.display());
        }
        Ok(())
    }

    /// Takes the folder, making it where it is missing, readable by its owner alone.
    ///
    /// # Errors
    /// Those of [`Target::look`], and a folder that cannot be made.
    pub fn take(folder: &Path, data: &Path) -> anyhow::Result<Self> {
        Self::look(folder, data)?;
        if !folder.exists() {
            let mut make = DirBuilder::new();
            make.recursive(true);
            owner_only(&mut make);
            make.create(folder).with_context(|| format!("cannot make the folder {}", folder.display()))?;
        }
        let folder = folder.canonicalize().with_context(|| format!("cannot read the folder {}", folder.display()))?;
        Ok(Self { folder, taken: HashSet::new() })
    }

    /// A place in it that nothing else has: folders and a name, each made harmless, `ending` with its dot at the end.
    /// Returns the place as the index names it, with `/` between its pieces.
    pub fn place(&mut self, folders: &[&str], name: &str, ending: &str) -> String {
        let pieces: Vec<String> = folders.iter().filter(|one| !one.is_empty()).map(|one| harmless(one)).collect();
        let start = [pieces, vec![harmless(name)]].concat().join("/");
        let mut place = format!("{start}{ending}");
        // Two names that differ in a letter's case are one file on some disks.
        for n in 2.. {
            if self.taken.insert(place.to_lowercase()) {
                break;
            }
            place = format!("{start}-{n}{ending}");
        }
        place
    }

    /// Writes a file at a place that [`Target::place`] gave, and waits until the disk has it. It must not be there: no
    /// file is replaced and no link is followed.
    ///
    /// # Errors
    /// A disk that is full, or a file that came there meanwhile.
    pub fn write(&self, place: &str, content: &[u8]) -> anyhow::Result<()> {
        let path = self.folder.join(place);
        let mut folder = self.folder.clone();
        let pieces: Vec<&str> = place.split('/').collect();
        for piece in &pieces[..pieces.len() - 1] {
            folder.push(piece);
            self.folder(&folder)?;
        }
        let told = || format!("cannot write {}", path.display());
        let mut file = File::create_new(&path).with_context(told)?;
        file.write_all(content).with_context(told)?;
        file.sync_all().with_context(told)
    }

    fn folder(&self, path: &Path) -> anyhow::Result<()> {
        let mut make = DirBuilder::new();
        owner_only(&mut make);
        match make.create(path) {
            Ok(()) => Ok(()),
            Err(error) if error.kind() == ErrorKind::AlreadyExists => {
                // A link put there meanwhile would lead out of the folder.
                let is_folder = fs::symlink_metadata(path).is_ok_and(|found| found.is_dir());
                let stays = path.canonicalize().is_ok_and(|found| found.starts_with(&self.folder));
                if is_folder && stays { Ok(()) } else { bail!("{} is no folder", path.display()) }
            }
            Err(error) => Err(error).with_context(|| format!("cannot make the folder {}", path.display())),
        }
    }
}

#[cfg(unix)]
fn owner_only(make: &mut DirBuilder) {
    use std::os::unix::fs::DirBuilderExt;
    make.mode(0o700);
}

#[cfg(not(unix))]
fn owner_only(_: &mut DirBuilder) {}

/// Where a folder that may not be there yet would lie.
fn nearest(folder: &Path) -> std::io::Result<PathBuf> {
    let whole = std::path::absolute(folder)?;
    for above in whole.ancestors() {
        if let Ok(found) = above.canonicalize() {
            return Ok(found);
        }
    }
    Ok(whole)
}

/// A piece of a path that is a plain name on any disk: letters, digits, dots, lines; never hidden, never `..`, never empty.
fn harmless(name: &str) -> String {
    let kept = |c: char| if c.is_alphanumeric() || matches!(c, '-' | '_' | '.') { c } else { '-' };
    let plain: String = name.chars().take(80).map(kept).collect();
    let plain = plain.trim_matches(|c| c == '.' || c == '-');
    if plain.is_empty() { "unnamed".to_owned() } else { plain.to_owned() }
}

#[cfg(test)]
mod tests {
    use super::harmless;

    #[test]
    fn a_name_that_would_climb_out_becomes_a_plain_one() {
        for (given, wanted) in [
            ("C-2026-0001", "C-2026-0001"),
            ("../../etc/passwd", "etc-passwd"),
            ("..", "unnamed"),
            ("/root", "root"),
            ("a\\b:c\0", "a-b-c"),
            ("", "unnamed"),
        ] {
            assert_eq!(harmless(given), wanted, "{given:?}");
        }
    }
}
