#![no_main]

loopwright_fuzz::request!("loop-characteristics");
