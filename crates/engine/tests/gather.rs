//! `lineproof-engine gather` as a user runs it: the same bytes whatever happens on the way.
#![allow(clippy::unwrap_used, clippy::panic)] // a test ends at the first thing that is not as it must be

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{self, Command, Output, Stdio};
use std::thread;
use std::time::{Duration, Instant};

use engine::samples::Samples;

/// Long enough for a machine that is busy with other things.
const PATIENCE: Duration = Duration::from_secs(60);

/// A folder of its own for each test, gone when it ends.
struct Desk(PathBuf);

impl Desk {
    fn new(name: &str) -> Desk {
        let path = std::env::temp_dir().join(format!("gather-{name}-{}", process::id()));
        let _ = fs::remove_dir_all(&path);
        fs::create_dir(&path).unwrap();
        Desk(path)
    }

    fn path(&self, name: &str) -> PathBuf {
        self.0.join(name)
    }
}

impl Drop for Desk {
    fn drop(&mut self) {
        let _ = fs::remove_dir_all(&self.0);
    }
}

fn command(words: &str, folder: &Path) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_lineproof-engine"));
    command
        .arg("gather")
        .args(words.split_whitespace())
        .arg(folder);
    command
}

fn run(words: &str, folder: &Path) -> Output {
    command(words, folder).output().unwrap()
}

fn succeeds(words: &str, folder: &Path) -> String {
    let output = run(words, folder);
    let errors = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success(), "{words}: {errors}");
    String::from_utf8(output.stdout).unwrap()
}

fn fails(words: &str, folder: &Path) -> String {
    let output = run(words, folder);
    assert_eq!(output.status.code(), Some(2), "{words}");
    String::from_utf8(output.stderr).unwrap()
}

/// Every file but the lock.
fn files(folder: &Path) -> BTreeMap<String, Vec<u8>> {
    fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .map(|path| {
            let name = path.file_name().unwrap().to_str().unwrap().to_owned();
            (name, fs::read(&path).unwrap())
        })
        .filter(|(name, _)| name != "lock")
        .collect()
}

fn segments(folder: &Path) -> usize {
    let Ok(entries) = fs::read_dir(folder) else {
        return 0;
    };
    entries
        .filter(|entry| {
            let name = entry.as_ref().unwrap().file_name();
            name.to_str().unwrap().ends_with(".bin")
        })
        .count()
}

#[test]
fn the_bytes_do_not_depend_on_how_many_games_are_played_at_once() {
    let desk = Desk::new("at-once");
    let words = "--games 12 --segment 3 --nodes 100 --seed 5";
    for at_once in [1, 2, 5] {
        let folder = desk.path(&at_once.to_string());
        succeeds(&format!("{words} --at-once {at_once} --out"), &folder);
    }
    let one = files(&desk.path("1"));
    assert_eq!(one.len(), 5); // four segments and what is said about them
    assert!(one.values().all(|bytes| !bytes.is_empty()));
    assert!(one == files(&desk.path("2")));
    assert!(one == files(&desk.path("5")));
    let other = desk.path("seed");
    succeeds("--games 3 --segment 3 --nodes 100 --seed 6 --out", &other);
    let name = "segment-000000.bin";
    assert!(one[name] != files(&other)[name]);
}

#[test]
fn a_run_that_was_killed_goes_on_to_the_same_end() {
    let desk = Desk::new("killed");
    let (whole, killed) = (desk.path("whole"), desk.path("killed"));
    let words = "--games 40 --segment 2 --nodes 300 --at-once 2 --out";
    succeeds(words, &whole);
    let mut kills = 0;
    for wanted in [1, 4, 9] {
        let mut run = command(words, &killed)
            .stdout(Stdio::null())
            .spawn()
            .unwrap();
        let begun = Instant::now();
        while segments(&killed) < wanted && run.try_wait().unwrap().is_none() {
            assert!(begun.elapsed() < PATIENCE);
            thread::sleep(Duration::from_millis(1));
        }
        kills += usize::from(run.try_wait().unwrap().is_none());
        run.kill().unwrap();
        run.wait().unwrap();
    }
    let left = segments(&killed);
    assert!(kills > 0 && (1..20).contains(&left), "{kills} {left}");
    // As if the last kill had come while a segment was written, and an older segment had been lost.
    let half = killed.join("segment-000019.bin.part");
    fs::write(&half, [7; 100]).unwrap();
    fs::remove_file(killed.join("segment-000000.bin")).unwrap();
    let said = succeeds(words, &killed);
    assert!(said.contains(", 40 in the folder"), "{said}");
    assert!(files(&whole) == files(&killed));
    let again = succeeds(words, &killed);
    assert!(again.starts_with("games: 0 in this run, 40 in the folder"));
}

#[test]
fn a_folder_can_be_made_larger() {
    let desk = Desk::new("larger");
    let (once, twice) = (desk.path("once"), desk.path("twice"));
    let words = "--segment 2 --nodes 60";
    succeeds(&format!("{words} --games 8 --out"), &once);
    succeeds(&format!("{words} --games 3 --out"), &twice);
    assert_eq!(segments(&twice), 2); // the last segment is filled up
    succeeds(&format!("{words} --games 8 --out"), &twice);
    assert!(files(&once) == files(&twice));
}

#[test]
fn time_ends_a_run_with_whole_segments() {
    let desk = Desk::new("time");
    let folder = desk.path("folder");
    succeeds("--seconds 1 --segment 2 --nodes 50 --out", &folder);
    let about = fs::read_to_string(folder.join("about.txt")).unwrap();
    let found = segments(&folder);
    assert!(found > 0);
    assert!(about.contains(&format!("\nsegments: {found}\ngames: {}\n", 2 * found)));
}

#[test]
fn no_record_is_in_check_and_the_counts_agree() {
    let desk = Desk::new("check");
    let folder = desk.path("folder");
    succeeds("--games 20 --segment 5 --nodes 80 --out", &folder);
    let mut positions = 0;
    for number in 0..4 {
        let file = folder.join(format!("segment-{number:06}.bin"));
        for sample in Samples::open(&file).unwrap() {
            assert!(!sample.unwrap().checkers().any());
            positions += 1;
        }
    }
    assert!(positions > 200);
    let said = succeeds("--check", &folder);
    let counted = format!("segments: 4\npositions: {positions}\nmovers in check: 0\n");
    assert!(said.starts_with(&counted), "{said}");
    let about = fs::read_to_string(folder.join("about.txt")).unwrap();
    assert!(about.ends_with(&format!("\ngames: 20\npositions: {positions}\n")));
}

#[test]
fn a_folder_gathered_otherwise_is_refused_and_left_alone() {
    let desk = Desk::new("otherwise");
    let folder = desk.path("folder");
    let list = desk.path("list.txt");
    fs::write(&list, "e4 e5 Nc3 Nf6 f4 # Vienna Gambit\n").unwrap();
    succeeds("--games 2 --segment 2 --nodes 60 --out", &folder);
    let before = files(&folder);
    let other_list = format!(
        "--games 4 --segment 2 --nodes 60 --openings {} --out",
        list.display()
    );
    for (words, there) in [
        (
            "--games 4 --segment 2 --nodes 61 --out",
            "says 'nodes a move: 60', asked for is 'nodes a move: 61'",
        ),
        (
            "--games 4 --segment 2 --nodes 60 --seed 2 --out",
            "says 'seed: 1', asked for is 'seed: 2'",
        ),
        (
            "--games 4 --segment 4 --nodes 60 --out",
            "games a segment: 2",
        ),
        (&other_list, "asked for is 'openings: 1 lines"),
    ] {
        let said = fails(words, &folder);
        assert!(said.contains("gathered otherwise: it says"), "{said}");
        assert!(said.contains(there), "{words}: {said}");
        assert!(before == files(&folder));
    }
    let letters = desk.path("letters");
    fs::create_dir(&letters).unwrap();
    fs::write(letters.join("letter.txt"), "Dear club").unwrap();
    let said = fails("--games 2 --segment 2 --nodes 60 --out", &letters);
    assert!(said.contains("is not empty and has no about.txt"), "{said}");
    assert_eq!(files(&letters).len(), 1);
}

#[test]
fn leaves_are_counted_apart_and_their_settings_are_kept() {
    let desk = Desk::new("leaves");
    let folder = desk.path("folder");
    let words = "--games 4 --segment 2 --nodes 100 --leaves 4 --leaf-nodes 40 --out";
    succeeds(words, &folder);
    let about = fs::read_to_string(folder.join("about.txt")).unwrap();
    assert!(
        about.contains("\nleaves a move: 4, 40 nodes each\n"),
        "{about}"
    );
    let said = succeeds("--check", &folder);
    let apart = said
        .lines()
        .find(|line| line.starts_with("not of the game: "));
    let count: u64 = apart.unwrap().split(' ').nth(4).unwrap().parse().unwrap();
    assert!(count > 200, "{said}");
    let refused = fails("--games 6 --segment 2 --nodes 100 --out", &folder);
    assert!(refused.contains("leaves a move: 4"), "{refused}");
}

#[test]
fn games_of_a_network_are_others_and_name_it() {
    let desk = Desk::new("network");
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("network/network.bin");
    let (by_hand, learned) = (desk.path("by-hand"), desk.path("learned"));
    let words = "--games 2 --segment 2 --nodes 60";
    succeeds(&format!("{words} --out"), &by_hand);
    succeeds(
        &format!("{words} --network {} --out", file.display()),
        &learned,
    );
    let about = |folder: &Path| fs::read_to_string(folder.join("about.txt")).unwrap();
    assert!(about(&by_hand).contains("\nevaluation: hand-made\n"));
    let bytes = fs::read(&file).unwrap();
    let checksum = u64::from_le_bytes(bytes[112..120].try_into().unwrap());
    assert!(about(&learned).contains(&format!("\nevaluation: network {checksum:016x}\n")));
    assert_ne!(files(&by_hand), files(&learned));
    let nothing = desk.path("nothing");
    for path in [&nothing, &learned.join("about.txt")] {
        let said = fails(
            &format!("{words} --network {} --out", path.display()),
            &nothing,
        );
        assert!(said.contains(&path.display().to_string()), "{said}");
    }
    assert!(!nothing.exists());
}

#[test]
fn a_damaged_segment_is_named() {
    let desk = Desk::new("damaged");
    let folder = desk.path("folder");
    succeeds("--games 1 --segment 1 --nodes 60 --out", &folder);
    let file = folder.join("segment-000000.bin");
    let mut bytes = fs::read(&file).unwrap();
    bytes.pop();
    fs::write(&file, bytes).unwrap();
    let said = fails("--check", &folder);
    assert!(said.contains("segment-000000.bin: record "), "{said}");
    assert!(said.contains(" is cut off; delete the file"), "{said}");
    let nothing = desk.path("nothing");
    let said = fails("--check", &nothing);
    assert!(said.contains(&format!("{}: ", nothing.display())), "{said}");
}

#[cfg(target_os = "linux")]
#[test]
fn a_folder_that_cannot_be_written_is_named() {
    let said = fails("--games 1 --nodes 60 --out", Path::new("/proc/positions"));
    assert!(said.contains("/proc/positions: "), "{said}");
}
