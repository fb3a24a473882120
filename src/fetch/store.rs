//! What is kept of addresses: files named by the hash of the address, each with a small JSON beside it.
//!
//! Whatever is not as it was written counts as not there: it is asked for again.

use std::{
    collections::BTreeMap,
    fs::{self, File},
    io::{self, BufReader, Cursor, Read, Write},
    path::{Path, PathBuf},
    sync::{Arc, Mutex, PoisonError},
};

use etcetera::BaseStrategy;
use serde::{Deserialize, Serialize, de::DeserializeOwned};
use sha2::{Digest, Sha256};
use tempfile::NamedTempFile;

use super::{
    address::{Address, hash, hexadecimal},
    answer::AnswerFacts,
};
use crate::raster::RasterSource;

/// Names another folder than the user's own for what is kept; empty for none.
const FOLDER: &str = "SCHRUND_CACHE";
/// Bytes of the beginning by which a file is known. Our judgement.
const HEAD: usize = 512;

/// Where answers are kept from call to call: in a folder, or nowhere, and then for the time of this run.
///
/// ```
/// use schrund::fetch::{Address, AddressStore, Fetcher, Manners, Wanted};
///
/// let folder = tempfile::tempdir().expect("a folder");
/// let fetcher = Fetcher::new(Manners::default(), AddressStore::in_folder(folder.path().join("schrund")), true);
/// let ice = Address::parse("https://maps.example/ice.geojson")?;
/// assert!(fetcher.whole(&ice, Wanted::Data).is_err(), "it was never fetched");
/// assert!(!folder.path().join("schrund").exists(), "where nothing is kept no folder is made");
/// # Ok::<(), schrund::fault::Fault>(())
/// ```
#[derive(Debug, Default)]
pub struct AddressStore {
    folder: Option<PathBuf>,
    memory: Mutex<BTreeMap<String, KeptFile>>,
}

/// A file that is kept, and what was said of it.
#[derive(Clone, Debug)]
pub(super) struct KeptFile {
    pub(super) facts: AnswerFacts,
    pub(super) bytes: KeptBytes,
}

/// Where its bytes are.
#[derive(Clone, Debug)]
pub(super) enum KeptBytes {
    File(PathBuf),
    Memory(Arc<[u8]>),
}

/// What stands beside a file. No secret is in it.
#[derive(Debug, Serialize, Deserialize)]
struct Sidecar {
    address: String,
    bytes: u64,
    sha256: String,
    #[serde(flatten)]
    facts: AnswerFacts,
}

/// The same beside the parts of a file.
#[derive(Clone, Debug, Serialize, Deserialize)]
pub(super) struct PartsSidecar {
    pub(super) address: String,
    /// Of the whole file.
    pub(super) bytes: u64,
    #[serde(flatten)]
    pub(super) facts: AnswerFacts,
}

impl KeptBytes {
    pub(super) fn open(&self) -> io::Result<RasterSource> {
        Ok(match self {
            Self::File(path) => Box::new(BufReader::new(File::open(path)?)),
            Self::Memory(bytes) => Box::new(Cursor::new(Arc::clone(bytes))),
        })
    }
}

impl AddressStore {
    /// That keeps nothing beyond this run.
    #[must_use]
    pub fn nothing() -> Self {
        Self::default()
    }

    /// In this folder, which is made when something comes.
    #[must_use]
    pub fn in_folder(folder: PathBuf) -> Self {
        Self {
            folder: Some(folder),
            ..Self::default()
        }
    }

    /// Where the user keeps such things, or in the folder that `SCHRUND_CACHE` names; empty it keeps nothing.
    #[must_use]
    pub fn of_user() -> Self {
        match std::env::var_os(FOLDER) {
            Some(folder) if folder.is_empty() => Self::nothing(),
            Some(folder) => Self::in_folder(folder.into()),
            None => etcetera::choose_base_strategy().map_or_else(
                |_| Self::nothing(),
                |base| Self::in_folder(base.cache_dir().join("schrund")),
            ),
        }
    }

    pub(super) fn get(&self, key: &str) -> Option<KeptFile> {
        let Some(folder) = &self.folder else {
            return self.lock().get(key).cloned();
        };
        let sidecar: Sidecar = read_json(&folder.join(format!("{key}.json")))?;
        let path = folder.join(format!("{key}.data"));
        let whole = path.metadata().is_ok_and(|of| of.len() == sidecar.bytes);
        let good = whole && hash_of(&path).is_some_and(|hash| hash == sidecar.sha256);
        good.then_some(KeptFile {
            facts: sidecar.facts,
            bytes: KeptBytes::File(path),
        })
    }

    /// Room for a file that is to come.
    pub(super) fn room(&self) -> FileRoom {
        let file = self.folder.as_deref().and_then(|folder| {
            fs::create_dir_all(folder).ok()?;
            beside(folder).ok()
        });
        FileRoom {
            into: file.map_or_else(|| RoomFor::Memory(Vec::new()), RoomFor::File),
            head: Vec::new(),
            hash: Sha256::new(),
            bytes: 0,
        }
    }

    /// Keeps a file that came whole.
    ///
    /// # Errors
    /// The folder does not take it.
    pub(super) fn keep(
        &self,
        address: &Address,
        facts: AnswerFacts,
        room: FileRoom,
    ) -> io::Result<KeptFile> {
        let key = address.key();
        match (room.into, &self.folder) {
            (RoomFor::File(file), Some(folder)) if !facts.no_store => {
                let path = folder.join(format!("{key}.data"));
                file.persist(&path).map_err(|why| why.error)?;
                let sidecar = Sidecar {
                    address: address.to_string(),
                    bytes: room.bytes,
                    sha256: hexadecimal(&room.hash.finalize()),
                    facts: facts.clone(),
                };
                write_json(folder, &format!("{key}.json"), &sidecar)?;
                let bytes = KeptBytes::File(path);
                Ok(KeptFile { facts, bytes })
            }
            (RoomFor::File(file), _) => {
                let bytes = KeptBytes::Memory(fs::read(file.path())?.into());
                Ok(KeptFile { facts, bytes })
            }
            (RoomFor::Memory(bytes), _) => {
                let bytes = KeptBytes::Memory(bytes.into());
                let kept = KeptFile { facts, bytes };
                self.lock().insert(key, kept.clone());
                Ok(kept)
            }
        }
    }

    /// A file that is still as it was: what is said of it now.
    pub(super) fn renew(&self, address: &Address, facts: &AnswerFacts) {
        let key = address.key();
        if let Some(kept) = self.lock().get_mut(&key) {
            kept.facts = facts.clone();
        }
        let Some(folder) = &self.folder else { return };
        let name = format!("{key}.json");
        if let Some(old) = read_json::<Sidecar>(&folder.join(&name)) {
            let facts = facts.clone();
            // It is asked again the next time where this fails.
            let _ = write_json(folder, &name, &Sidecar { facts, ..old });
        }
    }

    /// What is known of a file of which parts are kept.
    pub(super) fn parts(&self, key: &str) -> Option<PartsSidecar> {
        read_json(&self.folder.as_ref()?.join(format!("{key}.parts.json")))
    }

    /// Remembers a file of which parts will be kept, and throws away those of other states of it.
    pub(super) fn keep_parts(&self, key: &str, of: &PartsSidecar) {
        let Some(folder) = &self.folder else { return };
        let state = of.state();
        for file in folder.read_dir().into_iter().flatten().flatten() {
            let name = file.file_name().to_string_lossy().into_owned();
            let other = !name.starts_with(&format!("{key}-{state}-"));
            if other && name.starts_with(&format!("{key}-")) && name.ends_with(".part") {
                let _ = fs::remove_file(file.path());
            }
        }
        if fs::create_dir_all(folder).is_ok() {
            let _ = write_json(folder, &format!("{key}.parts.json"), of);
        }
    }

    /// Forgets a file of which parts are kept: it is another one now.
    pub(super) fn forget_parts(&self, key: &str) {
        if let Some(folder) = &self.folder {
            let _ = fs::remove_file(folder.join(format!("{key}.parts.json")));
        }
    }

    /// A part of a file in this state.
    pub(super) fn part(&self, key: &str, state: &str, number: u64) -> Option<Vec<u8>> {
        let name = format!("{key}-{state}-{number}.part");
        let kept = fs::read(self.folder.as_ref()?.join(name)).ok()?;
        let (sum, bytes) = kept.split_at_checked(SUM)?;
        (Sha256::digest(bytes)[..] == *sum).then(|| bytes.to_vec())
    }

    /// Keeps it, its sum before it.
    pub(super) fn keep_part(&self, key: &str, state: &str, number: u64, bytes: &[u8]) {
        let Some(folder) = &self.folder else { return };
        let name = format!("{key}-{state}-{number}.part");
        let sum = Sha256::digest(bytes);
        // What cannot be kept is asked for again.
        let _ = write_whole(folder, &name, &[&sum[..], bytes]);
    }

    fn lock(&self) -> std::sync::MutexGuard<'_, BTreeMap<String, KeptFile>> {
        self.memory.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// Bytes of a SHA-256.
const SUM: usize = 32;

impl PartsSidecar {
    /// The state of the file: what is kept of one is nothing of another.
    pub(super) fn state(&self) -> String {
        let facts = &self.facts;
        let mark = facts.etag.as_ref().or(facts.last_modified.as_ref());
        let mark = mark.map_or_else(|| facts.asked_s.to_string(), Clone::clone);
        let mut state = hash(format!("{mark} {}", self.bytes).as_bytes());
        state.truncate(16);
        state
    }
}

/// A file that is still coming.
pub(super) struct FileRoom {
    into: RoomFor,
    head: Vec<u8>,
    hash: Sha256,
    bytes: u64,
}

enum RoomFor {
    File(NamedTempFile),
    Memory(Vec<u8>),
}

impl FileRoom {
    /// How it begins.
    pub(super) fn head(&self) -> &[u8] {
        &self.head
    }
}

impl Write for FileRoom {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        match &mut self.into {
            RoomFor::File(file) => file.write_all(bytes)?,
            RoomFor::Memory(memory) => memory.extend_from_slice(bytes),
        }
        let missing = HEAD.saturating_sub(self.head.len());
        self.head.extend(bytes.iter().take(missing));
        self.hash.update(bytes);
        self.bytes += bytes.len() as u64;
        Ok(bytes.len())
    }

    fn flush(&mut self) -> io::Result<()> {
        match &mut self.into {
            RoomFor::File(file) => file.flush(),
            RoomFor::Memory(_) => Ok(()),
        }
    }
}

fn beside(folder: &Path) -> io::Result<NamedTempFile> {
    tempfile::Builder::new()
        .prefix(".schrund-")
        .tempfile_in(folder)
}

fn write_whole(folder: &Path, name: &str, pieces: &[&[u8]]) -> io::Result<()> {
    let mut file = beside(folder)?;
    pieces.iter().try_for_each(|piece| file.write_all(piece))?;
    file.persist(folder.join(name)).map_err(|why| why.error)?;
    Ok(())
}

fn write_json(folder: &Path, name: &str, of: &impl Serialize) -> io::Result<()> {
    let text = serde_json::to_string_pretty(of)?;
    write_whole(folder, name, &[text.as_bytes(), b"\n"])
}

fn read_json<T: DeserializeOwned>(path: &Path) -> Option<T> {
    serde_json::from_slice(&fs::read(path).ok()?).ok()
}

fn hash_of(path: &Path) -> Option<String> {
    let mut file = File::open(path).ok()?;
    let mut hash = Sha256::new();
    let mut buffer = vec![0; 1 << 16];
    loop {
        match file.read(&mut buffer).ok()? {
            0 => return Some(hexadecimal(&hash.finalize())),
            count => hash.update(buffer.get(..count)?),
        }
    }
}
