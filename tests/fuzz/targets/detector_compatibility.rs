#![no_main]

loopwright_fuzz::request!("detector-compatibility");
