//! Writes every text a person can meet, English and Spanish side by side, as one page for a vet and a
//! native speaker to read and mark: `cargo run --no-default-features --example texts -- FILE`.

mod found;
mod page;

use std::error::Error;
use std::fs;
use std::path::PathBuf;

fn main() -> Result<(), Box<dyn Error>> {
    let file = PathBuf::from(std::env::args().nth(1).ok_or("which file?")?);
    fs::write(file, page::page(&found::all_texts()?))?;
    Ok(())
}
