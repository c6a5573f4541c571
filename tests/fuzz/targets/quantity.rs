#![no_main]

libfuzzer_sys::fuzz_target!(|text: &[u8]| loopwright_fuzz::checks::check("quantity", text));
