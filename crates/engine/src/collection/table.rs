//! A Parquet file of whole numbers, sorted by its first column.

use std::fs::File;
use std::io;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use parquet::basic::{Compression, Encoding, ZstdLevel};
use parquet::data_type::{Int32Type, Int64Type};
use parquet::errors::ParquetError;
use parquet::file::properties::{EnabledStatistics, WriterProperties, WriterVersion};
use parquet::file::writer::SerializedFileWriter;
use parquet::schema::parser::parse_message_type;
use parquet::schema::types::ColumnPath;

use super::failure::CollectError;

/// Rows that are found together.
const GROUP: usize = 1 << 16;

/// A column's name and the bits of its numbers, all of them without a sign.
pub type Column = (&'static str, u8);

/// Writes one file.
pub struct Table {
    path: PathBuf,
    columns: &'static [Column],
    values: Vec<Vec<u64>>,
    writer: SerializedFileWriter<File>,
    rows: u64,
}

impl Table {
    /// `packed`: whether what is left after encoding is worth compressing. Columns in `steps` are kept as differences.
    ///
    /// # Errors
    /// When the system refuses.
    pub fn new(
        path: &Path,
        columns: &'static [Column],
        steps: &[&str],
        packed: bool,
    ) -> Result<Table, CollectError> {
        let fields: String = columns
            .iter()
            .map(|(name, bits)| {
                let kind = if *bits > 32 { 64 } else { 32 };
                format!("REQUIRED INT{kind} {name} (INTEGER({bits}, false)); ")
            })
            .collect();
        let failed = |error| wrong(path, error);
        let schema = parse_message_type(&format!("message rows {{ {fields} }}")).map_err(failed)?;
        let level = ZstdLevel::try_new(1).map_err(failed)?;
        let mut properties = WriterProperties::builder()
            .set_writer_version(WriterVersion::PARQUET_2_0)
            .set_created_by("lineproof".to_owned())
            .set_max_row_group_row_count(None)
            .set_statistics_enabled(EnabledStatistics::None)
            .set_column_statistics_enabled(ColumnPath::from(columns[0].0), EnabledStatistics::Chunk)
            .set_offset_index_disabled(true)
            .set_compression(if packed {
                Compression::ZSTD(level)
            } else {
                Compression::UNCOMPRESSED
            });
        for name in steps {
            properties = properties
                .set_column_dictionary_enabled(ColumnPath::from(*name), false)
                .set_column_encoding(ColumnPath::from(*name), Encoding::DELTA_BINARY_PACKED);
        }
        let file = File::create(path).map_err(CollectError::at(path))?;
        let writer =
            SerializedFileWriter::new(file, Arc::new(schema), Arc::new(properties.build()))
                .map_err(failed)?;
        Ok(Table {
            path: path.to_owned(),
            columns,
            values: vec![Vec::with_capacity(GROUP); columns.len()],
            writer,
            rows: 0,
        })
    }

    /// Adds a row, of as many numbers as there are columns.
    ///
    /// # Errors
    /// When the system refuses.
    pub fn push(&mut self, row: &[u64]) -> Result<(), CollectError> {
        for (values, value) in self.values.iter_mut().zip(row) {
            values.push(*value);
        }
        self.rows += 1;
        if self.values[0].len() == GROUP {
            self.flush()?;
        }
        Ok(())
    }

    fn flush(&mut self) -> Result<(), CollectError> {
        if self.values[0].is_empty() {
            return Ok(());
        }
        let failed = |error| wrong(&self.path, error);
        let mut group = self.writer.next_row_group().map_err(failed)?;
        for ((_, bits), values) in self.columns.iter().zip(&mut self.values) {
            let Some(mut column) = group.next_column().map_err(failed)? else {
                break;
            };
            if *bits > 32 {
                let words: Vec<i64> = values.iter().map(|value| *value as i64).collect();
                column
                    .typed::<Int64Type>()
                    .write_batch(&words, None, None)
                    .map_err(failed)?;
            } else {
                let words: Vec<i32> = values.iter().map(|value| *value as i32).collect();
                column
                    .typed::<Int32Type>()
                    .write_batch(&words, None, None)
                    .map_err(failed)?;
            }
            column.close().map_err(failed)?;
            values.clear();
        }
        group.close().map_err(failed)?;
        Ok(())
    }

    /// Ends the file, and has it on the disk; gives its rows.
    ///
    /// # Errors
    /// When the system refuses.
    pub fn finish(mut self) -> Result<u64, CollectError> {
        self.flush()?;
        let file = self
            .writer
            .into_inner()
            .map_err(|error| wrong(&self.path, error))?;
        file.sync_all().map_err(CollectError::at(&self.path))?;
        Ok(self.rows)
    }
}

fn wrong(path: &Path, error: ParquetError) -> CollectError {
    let error = match error {
        ParquetError::External(inner) => match inner.downcast::<io::Error>() {
            Ok(inner) => *inner,
            Err(other) => io::Error::other(other),
        },
        other => io::Error::other(other),
    };
    CollectError::File(path.to_owned(), error)
}
