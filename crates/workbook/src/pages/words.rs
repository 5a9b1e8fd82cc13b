//! Words that the pages of text say as well: their blocks, by the heading they stand under.

use press::Block;
use serde_json::{Value, json};

/// One part of a page: its heading, and what stands under it.
pub(super) struct Part {
    pub(super) heading: String,
    pub(super) blocks: Vec<Block>,
}

/// A page in parts; what stands before the first heading has an empty one.
pub(super) fn parts(blocks: Vec<Block>) -> Vec<Part> {
    let mut all = vec![Part { heading: String::new(), blocks: Vec::new() }];
    for block in blocks {
        match block {
            Block::Heading(heading) => all.push(Part { heading, blocks: Vec::new() }),
            Block::Title(_) => {}
            other => {
                if let Some(part) = all.last_mut() {
                    part.blocks.push(other);
                }
            }
        }
    }
    all.retain(|part| part.blocks.iter().any(|block| *block != Block::Gap));
    all
}

/// A part as data.
pub(super) fn part(part: &Part) -> Value {
    json!({ "heading": part.heading, "blocks": part.blocks.iter().filter_map(block).collect::<Vec<_>>() })
}

fn block(block: &Block) -> Option<Value> {
    Some(match block {
        Block::Fact { name, words } => json!({ "kind": "fact", "name": name, "words": words }),
        Block::Item { name, words } => json!({ "kind": "item", "name": name, "words": words }),
        Block::Text(words) => json!({ "kind": "text", "words": words }),
        Block::Bullet(words) => json!({ "kind": "bullet", "words": words }),
        Block::Tick { number, words } => json!({ "kind": "tick", "number": number, "words": words }),
        Block::Detail(words) => json!({ "kind": "detail", "words": words }),
        Block::Title(_) | Block::Heading(_) | Block::Gap => return None,
    })
}
