//! English: Jobs.
