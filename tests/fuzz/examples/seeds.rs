//! Writes the first texts of each target into `corpus/`.

use std::fs;
use std::path::Path;

use perchlight_fuzz::seeds::seeds;

fn main() {
    let corpus = Path::new(env!("CARGO_MANIFEST_DIR")).join("corpus");
    for seed in seeds() {
        let folder = corpus.join(seed.target);
        fs::create_dir_all(&folder).expect("the folder can be made");
        fs::write(folder.join(seed.name), seed.bytes).expect("the seed can be written");
    }
}
