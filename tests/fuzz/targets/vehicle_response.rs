#![no_main]

loopwright_fuzz::request!("vehicle-response");
