#![no_main]

loopwright_fuzz::request!("existing-loop");
