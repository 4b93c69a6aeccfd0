//! Writes the readings of all pages of a folder: `readings TEXTS OUT`.

use std::error::Error;
use std::path::Path;
use std::{env, fs};

fn main() -> Result<(), Box<dyn Error>> {
    let arguments: Vec<String> = env::args().skip(1).collect();
    let [texts, out] = arguments.as_slice() else {
        return Err("name the folder of texts and the folder to write to".into());
    };
    fs::create_dir_all(out)?;
    for entry in fs::read_dir(texts)? {
        let path = entry?.path();
        let id = path
            .file_stem()
            .map(|stem| stem.to_string_lossy().into_owned())
            .unwrap_or_default();
        let text = fs::read_to_string(&path)?;
        let recipe = potwright_manuscript::read(&text);
        let reading = potwright_manuscript::reading(&recipe, &text, &id);
        fs::write(
            Path::new(out).join(format!("{id}.json")),
            serde_json::to_string_pretty(&reading)?,
        )?;
    }
    Ok(())
}
