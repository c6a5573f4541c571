#![no_main]

loopwright_fuzz::request!("batch");
