//! English: the sums of a year.

/// "Sums of 2026".
pub fn sums_of(year: i32) -> String {
    format!("Sums of {year}")
}

pub const CAME_IN: &str = "Came in";
pub const GIVEN_BACK: &str = "Given back";
pub const TAX: &str = "Sales tax recorded";
pub const FEES: &str = "Fees of payments";
pub const ON_JOBS: &str = "Spent on jobs";
pub const ON_WOOD: &str = "Hauls";
pub const WORKSHOP: &str = "Workshop costs";
pub const LEFT: &str = "Left";
pub const UNPRICED: &str = "a drive without a rate is in no sum";

/// "Worked 120 h, of it 96 h logged to jobs and hauls."
pub fn hours(worked: &str, logged: &str) -> String {
    format!("Worked {worked}, of it {logged} logged to jobs and hauls.")
}

pub const SUMS_UNDER: &str = "Each sum is of the year it came in or was spent in, hauls of the year they began in. What is left is before your pay and before tools wear out.";
