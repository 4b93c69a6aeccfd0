//! Reads ingredient lines from standard input, one a line.
#![allow(clippy::unwrap_used, clippy::print_stdout)]
fn main() {
    for line in std::io::stdin().lines() {
        let line = line.unwrap();
        let text = format!("T\n\n## Ingredients\n\n- {line}\n");
        let r = potwright_manuscript::read(&text);
        let v = potwright_manuscript::reading(&r, &text, "x");
        println!("{line}");
        for (i, g) in r.ingredients.iter().zip(v["ingredients"].as_array().unwrap()) {
            let a = &g["amount"]["text"];
            println!(
                "      {} {} {} | {} | alt {} {} size {:?} {}{}{}{}{}",
                a.as_str().unwrap_or("-"),
                g["unit"].as_str().unwrap_or("-"),
                g["items"],
                g["preparation"].as_str().unwrap_or("-"),
                g["alternatives"],
                g["flags"],
                i.size,
                if i.optional { "OPT " } else { "" },
                if i.divided { "DIV " } else { "" },
                if i.equipment { "EQ " } else { "" },
                if i.quantity.is_some_and(|q| q.amount.about) {
                    "~"
                } else {
                    ""
                },
                i.section.map(|s| r.sections[s].name.clone()).unwrap_or_default()
            );
        }
        for u in &r.unsure {
            println!("      UNSURE {}", u.what);
        }
    }
}
