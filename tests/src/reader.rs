//! What a screen reader is told of a page.
use crate::{Browser, Page, app};
use serde_json::json;

impl Browser {
    /// The names, values and properties of the tree that a screen reader is told, without the browser's own numbers of its nodes
    /// and without our own address: the number of its port, any of tens of thousands, may hold a figure that is looked for.
    pub fn told_to_a_reader(&mut self, page: &Page) -> String {
        let tree = self.on(page, "Accessibility.getFullAXTree", json!({}));
        let nodes = tree["nodes"].as_array().into_iter().flatten();
        let said = nodes.flat_map(|node| ["role", "name", "value", "description", "properties"].map(|member| node[member].to_string()));
        said.collect::<Vec<String>>().join("\n").replace(app::address(), "/")
    }
}
