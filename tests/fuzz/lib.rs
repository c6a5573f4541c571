//! Fuzz targets: the checks that the replay shares, and a mutator that knows the description.

pub mod batch;
pub mod checks;
pub mod mutate;
pub mod quantity;
pub mod values;

/// A target whose bytes are a request, changed as JSON more often than as bytes.
#[macro_export]
macro_rules! request {
    ($name:literal) => {
        libfuzzer_sys::fuzz_target!(|body: &[u8]| $crate::checks::check($name, body));
        libfuzzer_sys::fuzz_mutator!(|data: &mut [u8], size: usize, max_size: usize, seed: u32| {
            $crate::mutate::mutate($name, data, size, max_size, seed)
        });
    };
}
