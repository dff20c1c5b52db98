//! The pictures of `docs/model.md` and the figures in its text are what the program finds today.
//!
//! `cargo xtask pictures` runs this with `BAYHAND_WRITE_GENERATED` set; then it writes the pictures and prints the figures.

mod pictures {
    pub mod collars;
    pub mod drawing;
    pub mod example;
    pub mod figures;
    pub mod readings;
}

use pictures::figures::Figures;
use pictures::{collars, readings};
use std::fs;
use std::path::{Path, PathBuf};

fn docs() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../docs")
}

#[test]
fn pictures_and_figures_of_the_model() {
    let mut figures = Figures::default();
    let drawn = [
        ("one-number", collars::one_number(&mut figures)),
        ("trade-line", collars::line(&mut figures)),
        ("no-height", collars::no_height(&mut figures)),
        ("level-pad", readings::level_pad(&mut figures)),
        ("settles", readings::settles(&mut figures)),
    ];
    println!("{}", figures.list());
    let file = |name: &str| docs().join("model").join(format!("{name}.svg"));
    if std::env::var_os("BAYHAND_WRITE_GENERATED").is_some() {
        fs::create_dir_all(docs().join("model")).expect("a folder for the pictures");
        drawn.iter().for_each(|(name, svg)| fs::write(file(name), svg).expect("a picture"));
        return;
    }
    let text = fs::read_to_string(docs().join("model.md")).expect("docs/model.md");
    for (name, svg) in &drawn {
        let kept = fs::read_to_string(file(name)).ok();
        assert!(kept.as_ref() == Some(svg), "{name} is another picture now; `cargo xtask pictures` draws it again");
        assert!(text.contains(&format!("(model/{name}.svg)")), "the text shows {name}");
    }
    let (lacks, unknown) = figures.differ(&text);
    assert_eq!((lacks, unknown), (vec![], vec![]), "figures that docs/model.md lacks, and those that nothing computes");
}
