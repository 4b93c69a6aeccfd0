//! Writes the readings of all pages of a folder: `readings TEXTS OUT`.

#![allow(clippy::unwrap_used, clippy::print_stdout)]

fn main() {
    let mut args = std::env::args().skip(1);
    let (texts, out) = (args.next().unwrap(), args.next().unwrap());
    std::fs::create_dir_all(&out).unwrap();
    for entry in std::fs::read_dir(texts).unwrap() {
        let path = entry.unwrap().path();
        let id = path.file_stem().unwrap().to_string_lossy().into_owned();
        let text = std::fs::read_to_string(&path).unwrap();
        let recipe = potwright_manuscript::read(&text);
        let reading = potwright_manuscript::reading(&recipe, &text, &id);
        std::fs::write(
            format!("{out}/{id}.json"),
            serde_json::to_string_pretty(&reading).unwrap(),
        )
        .unwrap();
        if std::env::var("SHOW").is_ok_and(|show| id.contains(&show)) {
            for block in &recipe.blocks {
                println!("{:?} {:?}", block.kind, block.span.of(&text));
            }
            println!("{:#?}", recipe.unsure);
        }
    }
}
