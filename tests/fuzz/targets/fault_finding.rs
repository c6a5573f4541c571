#![no_main]

loopwright_fuzz::request!("fault-finding");
