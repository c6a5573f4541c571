#![no_main]

loopwright_fuzz::request!("cure-guidance");
