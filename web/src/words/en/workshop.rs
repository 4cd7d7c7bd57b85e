//! English: Workshop.
