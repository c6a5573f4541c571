#![no_main]

loopwright_fuzz::request!("installation-plan");
