//! A few thousand damaged inputs for each reader, always the same ones; `make fuzz` finds others.
#![allow(clippy::unwrap_used, clippy::panic)] // a test ends at the first thing that is not as it must be

use std::fs;
use std::path::{Path, PathBuf};

use engine::random::Random;

#[path = "../../../fuzz/src/checks.rs"]
#[allow(missing_docs)]
mod checks;

/// Inputs for each reader.
const INPUTS: u64 = 3_000;
/// Bytes of an input, at most.
const LONGEST: usize = 600;

fn folder(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../../fuzz")
        .join(name)
}

fn seeds(target: &str) -> Vec<Vec<u8>> {
    let mut files: Vec<PathBuf> = fs::read_dir(folder("seeds").join(target))
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .collect();
    files.sort();
    files.iter().map(|file| fs::read(file).unwrap()).collect()
}

/// The words of the dictionary; escapes in it are left as they are, which damages an input as well as anything.
fn words(target: &str) -> Vec<Vec<u8>> {
    let file = folder("dictionaries").join(format!("{target}.dict"));
    fs::read_to_string(file)
        .unwrap()
        .lines()
        .filter_map(|line| line.strip_prefix('"')?.strip_suffix('"'))
        .map(|word| word.as_bytes().to_vec())
        .collect()
}

fn damaged(random: &mut Random, seeds: &[Vec<u8>], words: &[Vec<u8>]) -> Vec<u8> {
    let mut input = seeds[random.below(seeds.len())].clone();
    for _ in 0..=random.below(8) {
        let at = random.below(input.len() + 1);
        let to = (at + 1 + random.below(20)).min(input.len());
        match random.below(7) {
            0 => {
                input.drain(at.min(to)..to);
            }
            1 => input.insert(at, random.next() as u8),
            2 if at < input.len() => input[at] ^= 1 << random.below(8),
            3 => {
                let copied = input[at.min(to)..to].to_vec();
                let place = random.below(input.len() + 1);
                input.splice(place..place, copied);
            }
            4 => input.truncate(at),
            5 => {
                let other = &seeds[random.below(seeds.len())];
                let from = random.below(other.len());
                input.splice(at.., other[from..].iter().copied());
            }
            _ => {
                let word = words[random.below(words.len())].clone();
                input.splice(at..at, word);
            }
        }
    }
    input.truncate(LONGEST);
    input
}

fn try_all(target: &str, check: fn(&[u8])) {
    let (seeds, words) = (seeds(target), words(target));
    assert!(seeds.len() > 1 && words.len() > 10);
    for seed in &seeds {
        check(seed);
    }
    for number in 0..INPUTS {
        let mut random = Random::new(0, number);
        check(&damaged(&mut random, &seeds, &words));
    }
}

#[test]
fn a_damaged_fen_is_refused_or_a_position() {
    try_all("fen", checks::fen);
}

#[test]
fn a_damaged_conversation_ends_with_its_input() {
    try_all("uci", checks::uci);
}

#[test]
fn a_damaged_pgn_is_read_without_loss() {
    try_all("pgn", checks::pgn);
}

#[test]
fn damaged_games_by_the_million_are_read_or_named() {
    try_all("bulk", checks::bulk);
}

#[test]
fn a_damaged_segment_is_told_or_its_games_are_legal() {
    try_all("segment", checks::segment);
}
