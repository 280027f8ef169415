//! How fast games become a segment: `collect FOLDER THREADS FILE...`, or `collect invent COUNT random|shared plain|clocks`.
#![allow(clippy::unwrap_used)] // an example ends at the first thing that goes wrong

use std::io::{self, BufWriter};
use std::path::PathBuf;
use std::sync::atomic::AtomicBool;
use std::time::Instant;

use engine::bulk::{Frames, Reading, Wanted, invent, read_frame};
use engine::collection::{Import, import};

fn main() {
    let words: Vec<String> = std::env::args().skip(1).collect();
    if words[0] == "invent" {
        let wanted = Wanted {
            games: words[1].parse().unwrap(),
            first: 0,
            seed: 1,
            plies: 80,
            shared: words[2] == "shared",
            clocks: words[3] == "clocks",
        };
        invent(&wanted, &mut BufWriter::new(io::stdout().lock())).unwrap();
        return;
    }
    if words[0] == "frames" {
        let begun = Instant::now();
        let mut frames = Frames::new(std::fs::File::open(&words[1]).unwrap());
        let (mut count, mut all) = (0, 0);
        let mut batches = Reading::default();
        while let Some(chunk) = frames.next_chunk().unwrap() {
            all += chunk.frames.len();
            if words[2] == "read" {
                for frame in &chunk.frames {
                    read_frame(&chunk, frame, &mut batches);
                }
                count += batches.games.len();
                batches = Reading::default();
            }
        }
        println!("{all} {count} {:?}", begun.elapsed());
        return;
    }
    let what = Import {
        files: words[2..]
            .iter()
            .map(|path| (1, Some(PathBuf::from(path))))
            .collect(),
        folder: PathBuf::from(&words[0]),
        name: "segment".to_owned(),
        threads: words[1].parse().unwrap(),
        ..Import::default()
    };
    let begun = Instant::now();
    let report = import(&what, &AtomicBool::new(false), |_, _| {}).unwrap();
    let seconds = begun.elapsed().as_secs_f64();
    let (mut games, mut bytes) = (0, 0);
    for file in &report.files {
        games += file.added;
        bytes += file.bytes;
    }
    let disk: u64 = report
        .segments
        .iter()
        .map(|(_, summary)| summary.bytes)
        .sum();
    println!(
        "{games} games, {:.0} a second, {:.0} MB/s, {:.0} bytes a game; {report:#?}",
        games as f64 / seconds,
        bytes as f64 / seconds / 1e6,
        disk as f64 / games as f64,
    );
}
