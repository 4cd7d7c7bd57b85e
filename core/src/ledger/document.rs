//! A copy: one JSON document that holds the lines unchanged. Reading and writing are described to the byte in docs/STORAGE.md.
